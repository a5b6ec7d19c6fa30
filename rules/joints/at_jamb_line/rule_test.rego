package rules.joints.at_jamb_line_test

import data.rules.joints.at_jamb_line as rule

jamb(over) := object.union(
	{
		"id": "east/door left jamb, run E", "at": "/runs/0", "on": "east", "opening": "east/door", "side": "left",
		"x": 1410, "joint": "E3 | E4", "distance": 30, "where": "over the opening", "held_by": 0, "fixing_stated": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.jambs as [jamb(over)]
		with data.limits as {"joints.jamb_band": 50}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, distance, where) := {{
	"kind": kind, "subject": "east/door left jamb, run E", "measured": distance, "limit": "joints.jamb_band",
	"values": {"joint": "E3 | E4", "where": where, "side": "left", "opening": "east/door"},
}}

test_fires if results({}) == expected("fail", 30, "over the opening")

test_fires_on_the_line if results({"distance": 0, "where": "on the line"}) == expected("fail", 0, "on the line")

test_passes_where_far if results({"distance": 210, "where": "beside it"}) == expected("pass", 210, "beside it")

test_passes_where_held if results({"held_by": 1}) == expected("pass", 30, "over the opening")

test_passes_where_far_and_held if results({"distance": 210, "held_by": 4}) == expected("pass", 210, "over the opening")

test_boundary if {
	kinds({"distance": 50}) == {"pass"}
	kinds({"distance": 49.99}) == {"fail"}
}

test_open_where_fixing_is_unsaid if {
	results({"fixing_stated": false}) == {{
		"kind": "open", "subject": "east/door left jamb, run E",
		"missing": "what holds the pieces beside this jamb",
	}}
}

test_far_joint_passes_whatever_holds_it if kinds({"fixing_stated": false, "distance": 50}) == {"pass"}

test_no_subject if {
	found := rule.results with input.jambs as []
	found == set()
}
