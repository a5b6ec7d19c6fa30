package rules.cuts.wider_than_space_test

import data.rules.cuts.wider_than_space as rule

piece(over) := object.union(
	{
		"id": "E7", "at": "/runs/0", "on": "east", "run": "E", "panel": "oak", "on_leaf": false,
		"left": 3400, "right": 3645, "bottom": 0, "top": 2390, "cover_width": 245, "height": 2390, "area": 0.5856,
		"ripped": true, "notched": false, "in_view": true, "stated_width": 245, "space": 240, "excess": 5,
	},
	over,
)

found(piece) := results if {
	results := rule.results with input.pieces as [piece]
		with data.limits as {"cuts.fit": 1}
}

results(over) := found(piece(over))

expected(kind, excess, stated, space) := {{
	"kind": kind, "subject": "E7", "measured": excess, "limit": "cuts.fit",
	"values": {"stated": stated, "space": space},
}}

test_fires if results({}) == expected("fail", 5, 245, 240)

test_passes if results({"stated_width": 240, "excess": 0}) == expected("pass", 0, 240, 240)

test_narrower_is_no_excess if results({"stated_width": 180, "excess": 0}) == expected("pass", 0, 180, 240)

test_boundary if {
	results({"stated_width": 241, "excess": 1}) == expected("pass", 1, 241, 240)
	results({"stated_width": 241.01, "excess": 1.01}) == expected("fail", 1.01, 241.01, 240)
}

test_unstated_width_is_no_subject if found(object.remove(piece({}), {"stated_width", "space", "excess"})) == set()
