package rules.lines.broken_at_opening_test

import data.rules.lines.broken_at_opening as rule

line(over) := object.union(
	{
		"id": "east/door over right", "at": "/runs/0", "on": "east", "opening": "east/door", "where": "over",
		"side": "right", "piece": "E3", "other": "E4", "comparable": true, "offset": 7, "direction": "right", "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.lines as [line(over)]
		with data.limits as {"lines.at_opening": 1.5}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, offset, direction) := {{
	"kind": kind, "subject": "east/door over right", "measured": offset, "limit": "lines.at_opening",
	"values": {
		"piece": "E3", "other": "E4", "where": "over", "side": "right",
		"direction": direction, "opening": "east/door",
	},
	"related": ["E3", "E4"],
}}

test_fires if results({}) == expected("fail", 7, "right")

test_passes if results({"offset": 0, "direction": "none"}) == expected("pass", 0, "none")

test_boundary if {
	kinds({"offset": 1.5}) == {"pass"}
	kinds({"offset": 1.51}) == {"fail"}
}

test_leaf_is_no_subject if results({"where": "leaf", "side": "above"}) == set()

test_different_patterns_are_no_subject if results({"comparable": false, "offset": 0}) == set()

test_hidden_pair_is_no_subject if results({"in_view": false}) == set()
