package rules.lines.broken_on_leaf_test

import data.rules.lines.broken_on_leaf as rule

line(over) := object.union(
	{
		"id": "L1 under E3", "at": "/runs/0", "on": "east/door/leaf", "opening": "east/door", "where": "leaf",
		"side": "above", "piece": "L1", "other": "E3", "comparable": true, "offset": 5, "direction": "right", "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.lines as [line(over)]
		with data.limits as {"lines.on_leaf": 2}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, offset, direction) := {{
	"kind": kind, "subject": "L1 under E3", "measured": offset, "limit": "lines.on_leaf",
	"values": {"direction": direction}, "related": ["L1", "E3"],
}}

test_fires if results({}) == expected("fail", 5, "right")

test_passes if results({"offset": 0, "direction": "none"}) == expected("pass", 0, "none")

test_boundary if {
	kinds({"offset": 2}) == {"pass"}
	kinds({"offset": 2.01}) == {"fail"}
}

test_wall_is_no_subject if results({"where": "over", "side": "left"}) == set()

test_different_patterns_are_no_subject if results({"comparable": false, "offset": 0}) == set()

test_hidden_pair_is_no_subject if results({"in_view": false}) == set()
