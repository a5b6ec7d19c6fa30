package rules.lines.joint_gap_test

import data.rules.lines.joint_gap as rule

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
		with data.limits as {"lines.joint_gap": 1}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, gap, off) := {{
	"kind": kind, "subject": "E1 | E2", "measured": off, "limit": "lines.joint_gap",
	"values": {"gap": gap, "pattern_gap": 12, "left": "E1", "right": "E2"},
}}

test_fires_where_wide if results({}) == expected("fail", 15, 3)

test_fires_where_narrow if results({"gap": 8, "gap_error": 4}) == expected("fail", 8, 4)

test_passes if results({"gap": 12, "gap_error": 0}) == expected("pass", 12, 0)

test_boundary if {
	kinds({"gap": 13, "gap_error": 1}) == {"pass"}
	kinds({"gap": 13.01, "gap_error": 1.01}) == {"fail"}
}

test_hidden_joint_is_no_subject if results({"in_view": false}) == set()
