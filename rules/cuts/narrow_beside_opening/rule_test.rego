package rules.cuts.narrow_beside_opening_test

import data.rules.cuts.narrow_beside_opening as rule

leg(over) := object.union(
	{
		"id": "E3 left of door", "at": "/runs/0", "on": "east", "piece": "E3", "opening": "east/door", "side": "left",
		"width": 120, "y": 0, "height": 2032, "notched": true, "ripped": true, "in_view": true,
	},
	over,
)

results(over) := found if {
	found := rule.results with input.legs as [leg(over)]
		with data.limits as {"cuts.beside_opening": 150, "cuts.narrowest": 100, "cuts.narrowest_leg": 60}
}

kinds(over) := {result.kind | some result in results(over)}

expected(kind, width) := {{
	"kind": kind, "subject": "E3 left of door", "measured": width, "limit": "cuts.beside_opening",
	"values": {"opening": "east/door", "side": "left", "piece": "E3"},
}}

test_fires if results({}) == expected("fail", 120)

test_passes if results({"width": 210}) == expected("pass", 210)

test_boundary if {
	kinds({"width": 150}) == {"pass"}
	kinds({"width": 149.99}) == {"fail"}
}

test_narrow_notched_leg_is_left_to_its_own_rule if {
	kinds({"width": 60}) == {"fail"}
	kinds({"width": 59.99}) == set()
}

test_narrow_piece_is_left_to_its_own_rule if {
	kinds({"notched": false, "width": 100}) == {"fail"}
	kinds({"notched": false, "width": 99.99}) == set()
}

test_narrow_panel_from_the_factory_is_not if kinds({"notched": false, "ripped": false, "width": 90}) == {"fail"}

test_hidden_leg_is_no_subject if results({"in_view": false}) == set()
