package rules.cuts.narrow_leg_test

import data.rules.cuts.narrow_leg as rule

leg(over) := object.union(
	{
		"id": "E3 left of door", "at": "/runs/0", "on": "east", "piece": "E3", "opening": "east/door", "side": "left",
		"width": 45, "y": 100, "height": 1932, "notched": true, "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.legs as [leg(over)]
		with data.limits as {"cuts.narrowest_leg": 60}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, width) := {{
	"kind": kind, "subject": "E3 left of door", "measured": width, "limit": "cuts.narrowest_leg",
	"values": {"piece": "E3", "y": 100, "opening": "east/door", "side": "left"},
}}

test_fires if results({}) == expected("fail", 45)

test_passes if results({"width": 210}) == expected("pass", 210)

test_boundary if {
	kinds({"width": 60}) == {"pass"}
	kinds({"width": 59.99}) == {"fail"}
}

test_whole_piece_is_no_subject if results({"notched": false}) == set()

test_hidden_leg_is_no_subject if results({"in_view": false}) == set()
