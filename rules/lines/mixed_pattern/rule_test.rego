package rules.lines.mixed_pattern_test

import data.rules.lines.mixed_pattern as rule

line(over) := object.union(
	{
		"id": "L1 under E3", "at": "/runs/0", "on": "east/door/leaf", "opening": "east/door", "where": "leaf",
		"side": "above", "piece": "L1", "other": "E3", "comparable": true, "offset": 0, "direction": "right", "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.lines as [line(over)]
}

expected(kind, subject, piece, other) := {{
	"kind": kind, "subject": subject,
	"values": {"piece": piece, "other": other}, "related": [piece, other],
}}

test_fires_on_a_leaf if results({"comparable": false, "direction": "none"}) == expected("fail", "L1 under E3", "L1", "E3")

test_fires_at_an_opening if {
	found := results({
		"id": "east/door over right", "on": "east", "where": "over", "side": "right",
		"piece": "E3", "other": "F1", "comparable": false, "direction": "none",
	})
	found == expected("fail", "east/door over right", "E3", "F1")
}

test_passes_whatever_the_offset if {
	every offset in [0, 5] {
		results({"offset": offset}) == expected("pass", "L1 under E3", "L1", "E3")
	}
}

test_hidden_pair_is_no_subject if results({"comparable": false, "in_view": false}) == set()
