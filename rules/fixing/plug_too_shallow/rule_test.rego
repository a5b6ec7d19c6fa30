package rules.fixing.plug_too_shallow_test

import data.rules.fixing.plug_too_shallow as rule

results(into) := found if {
	found := rule.results with input.fixings as [{"id": "E1", "screws": {"count": 4, "into": [into]}}]
		with data.limits as {"fixing.plug_depth": 30}
}

masonry(depth) := {"what": "masonry", "count": 4, "depth": depth}

expected(kind, depth) := {{"kind": kind, "subject": "E1", "measured": depth, "limit": "fixing.plug_depth"}}

test_fires if results(masonry(23)) == expected("fail", 23)

test_fires_in_the_plaster if results(masonry(0)) == expected("fail", 0)

test_passes if results(masonry(38)) == expected("pass", 38)

test_boundary if {
	results(masonry(30)) == expected("pass", 30)
	results(masonry(29.99)) == expected("fail", 29.99)
}

test_open_where_length_unsaid if {
	results({"what": "masonry", "count": 4}) == {{"kind": "open", "subject": "E1", "missing": "how long the screws are"}}
}

test_other_backgrounds_are_no_subject if {
	results({"what": "wood", "count": 4, "depth": 5}) == set()
	results({"what": "unsaid", "count": 4}) == set()
}
