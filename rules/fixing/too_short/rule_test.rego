package rules.fixing.too_short_test

import data.rules.fixing.too_short as rule

results(fixing) := found if {
	found := rule.results with input.fixings as [fixing]
		with data.limits as {"fixing.wood_depth": 19}
}

screwed(into) := {"id": "E1", "screws": {"count": 6, "into": into}}

wood(depth) := screwed([{"what": "space", "count": 2}, {"what": "wood", "count": 4, "depth": depth}])

expected(kind, depth) := {{"kind": kind, "subject": "E1", "measured": depth, "limit": "fixing.wood_depth"}}

test_fires if results(wood(13.5)) == expected("fail", 13.5)

test_fires_where_they_do_not_reach if results(wood(0)) == expected("fail", 0)

test_passes if results(wood(28.5)) == expected("pass", 28.5)

test_boundary if {
	results(wood(19)) == expected("pass", 19)
	results(wood(18.99)) == expected("fail", 18.99)
}

test_open_where_length_unsaid if {
	results(screwed([{"what": "wood", "count": 4}])) == {{
		"kind": "open", "subject": "E1",
		"missing": "how long the screws are",
	}}
}

test_glued_piece_is_no_subject if {
	results(object.union(wood(13.5), {"bead": {"zigzag": 300}})) == set()
	results(object.union(screwed([{"what": "wood", "count": 4}]), {"bead": {"zigzag": 300}})) == set()
}

test_other_backgrounds_are_no_subject if {
	results(screwed([{"what": "masonry", "count": 4, "depth": 5}])) == set()
	results({"id": "E1"}) == set()
}
