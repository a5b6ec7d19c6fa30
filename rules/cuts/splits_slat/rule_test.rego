package rules.cuts.splits_slat_test

import data.rules.cuts.splits_slat as rule

rip(over) := object.union(
	{
		"id": "E3 right notch", "at": "/runs/0", "on": "east", "piece": "E3", "side": "right", "made_by": "notch",
		"x": 1410, "into_slat": 4, "slat_left": 4, "slat_width": 28, "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.rips as [rip(over)]
		with data.limits as {"cuts.slat_edge": 1}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, into, left) := {{
	"kind": kind, "subject": "E3 right notch", "measured": into, "limit": "cuts.slat_edge",
	"values": {"x": 1410, "slat_left": left, "slat_width": 28},
}}

test_fires if results({}) == expected("fail", 4, 4)

test_passes_in_a_space if results({"into_slat": 0, "slat_left": 0}) == expected("pass", 0, 0)

test_boundary if {
	kinds({"into_slat": 1, "slat_left": 27}) == {"pass"}
	kinds({"into_slat": 1.01, "slat_left": 26.99}) == {"fail"}
}

test_hidden_cut_is_no_subject if results({"in_view": false}) == set()
