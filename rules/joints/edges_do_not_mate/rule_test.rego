package rules.joints.edges_do_not_mate_test

import data.rules.joints.edges_do_not_mate as rule

joint(over) := object.union(
	{
		"id": "E1 | E2", "at": "/runs/0", "on": "east", "left": "E1", "right": "E2", "x": 600, "bottom": 0, "top": 2390,
		"left_made_by": "square", "right_made_by": "square", "has_interlock": false, "interlocks": false, "apart": 0,
		"gap": 15, "pattern_gap": 12, "gap_error": 3, "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.joints as [joint(over)]
}

edges(left, right, interlocks) := results({
	"left_made_by": left, "right_made_by": right,
	"has_interlock": true, "interlocks": interlocks,
})

expected(kind, left, right) := {{
	"kind": kind, "subject": "E1 | E2",
	"values": {"left_edge": left, "right_edge": right},
}}

test_fires_where_alike if {
	edges("tongue", "tongue", false) == expected("fail", "tongue", "tongue")
	edges("recess", "recess", false) == expected("fail", "recess", "recess")
}

test_fires_where_one_is_square if {
	edges("tongue", "square", false) == expected("fail", "tongue", "square")
	edges("square", "recess", false) == expected("fail", "square", "recess")
}

test_passes_where_they_interlock if {
	edges("tongue", "recess", true) == expected("pass", "tongue", "recess")
	edges("recess", "tongue", true) == expected("pass", "recess", "tongue")
}

test_passes_where_both_are_square if results({}) == expected("pass", "square", "square")

test_sawn_edge_is_no_subject if {
	edges("rip", "recess", false) == set()
	edges("tongue", "rip", false) == set()
	edges("rip", "rip", false) == set()
}
