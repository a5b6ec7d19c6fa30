package rules.cuts.takes_interlock_test

import data.rules.cuts.takes_interlock as rule

joint(over) := object.union(
	{
		"id": "E1 | E2", "at": "/runs/0", "on": "east", "left": "E1", "right": "E2", "x": 600, "bottom": 0, "top": 2390,
		"left_made_by": "tongue", "right_made_by": "recess", "has_interlock": true, "interlocks": true, "apart": 0,
		"gap": 12, "pattern_gap": 12, "gap_error": 0, "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.joints as [joint(over)]
}

expected(kind, ripped) := {{"kind": kind, "subject": "E1 | E2", "values": {"pieces": ripped}, "related": ripped}}

test_fires_on_the_left if results({"left_made_by": "rip", "interlocks": false}) == expected("fail", ["E1"])

test_fires_on_the_right if results({"right_made_by": "rip", "interlocks": false}) == expected("fail", ["E2"])

test_fires_on_both if {
	results({"left_made_by": "rip", "right_made_by": "rip", "interlocks": false}) == expected("fail", ["E1", "E2"])
}

test_passes if results({}) == expected("pass", [])

test_passes_out_of_view_too if results({"in_view": false}) == expected("pass", [])

test_square_product_is_no_subject if {
	results({"left_made_by": "rip", "right_made_by": "square", "has_interlock": false, "interlocks": false}) == set()
}
