package rules.fixing.rows_too_far_apart_test

import data.rules.fixing.rows_too_far_apart as rule

results(fixing) := found if {
	found := rule.results with input.fixings as [fixing]
		with data.limits as {"fixing.rows_on_solid": 600, "fixing.rows_on_framing": 406}
}

masonry := {"kind": "plaster on masonry", "lining": 13, "solid_wall": true, "framed": false}

studs := {"kind": "plasterboard on studs", "lining": 12.5, "solid_wall": false, "framed": true}

leaf := {"kind": "leaf", "lining": 0, "solid_wall": false, "framed": false}

screwed(background, gap) := {"id": "E1", "background": background, "screws": {"count": 6, "row_gap": gap}}

expected(kind, gap, limit) := {{"kind": kind, "subject": "E1", "measured": gap, "limit": limit}}

test_fires_on_studs if results(screwed(studs, 1150)) == expected("fail", 1150, "fixing.rows_on_framing")

test_fires_on_a_leaf if results(screwed(leaf, 500)) == expected("fail", 500, "fixing.rows_on_framing")

test_passes_on_masonry if results(screwed(masonry, 500)) == expected("pass", 500, "fixing.rows_on_solid")

test_boundary_on_framing if {
	results(screwed(studs, 406)) == expected("pass", 406, "fixing.rows_on_framing")
	results(screwed(studs, 406.01)) == expected("fail", 406.01, "fixing.rows_on_framing")
}

test_boundary_on_masonry if {
	results(screwed(masonry, 600)) == expected("pass", 600, "fixing.rows_on_solid")
	results(screwed(masonry, 600.01)) == expected("fail", 600.01, "fixing.rows_on_solid")
}

test_open_where_the_wall_is_unsaid if {
	results(object.remove(screwed(studs, 1150), {"background"})) == {{
		"kind": "open", "subject": "E1",
		"missing": "what the wall is made of",
	}}
}

test_glued_piece_is_no_subject if {
	results(object.union(screwed(studs, 1150), {"bead": {"zigzag": 300}})) == set()
	results(object.union(screwed(masonry, 1150), {"bead": {"zigzag": 300}})) == set()
	results({"id": "E1", "bead": {"zigzag": 300}, "screws": {"count": 6, "row_gap": 1150}}) == set()
}

test_piece_without_screws_is_no_subject if {
	results({"id": "E1", "background": studs}) == set()
	results(object.union(screwed(studs, 0), {"screws": {"count": 0}})) == set()
}
