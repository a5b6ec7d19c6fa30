package rules.cuts.narrow_piece_test

import data.rules.cuts.narrow_piece as rule

piece(over) := object.union({"id": "E7", "cover_width": 40, "ripped": true, "in_view": true}, over)

results(over) := found if {
	found := rule.results with input.pieces as [piece(over)]
		with data.limits as {"cuts.narrowest": 100}
}

test_fires if results({}) == {{"kind": "fail", "subject": "E7", "measured": 40, "limit": "cuts.narrowest"}}

test_passes if results({"cover_width": 240}) == {{"kind": "pass", "subject": "E7", "measured": 240, "limit": "cuts.narrowest"}}

test_boundary if {
	some just in results({"cover_width": 100})
	just.kind == "pass"
	some under in results({"cover_width": 99.99})
	under.kind == "fail"
}

test_whole_panel_is_no_subject if results({"ripped": false}) == set()

test_hidden_piece_is_no_subject if results({"in_view": false}) == set()
