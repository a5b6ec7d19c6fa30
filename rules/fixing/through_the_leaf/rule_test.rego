package rules.fixing.through_the_leaf_test

import data.rules.fixing.through_the_leaf as rule

results(into) := found if {
	found := rule.results with input.fixings as [{"id": "L1", "on_leaf": true, "screws": {"count": 4, "into": [into]}}]
		with data.limits as {"fixing.leaf_left": 5}
}

leaf(spare) := {"what": "leaf", "count": 4, "depth": 40 - spare, "spare": spare}

expected(kind, spare) := {{"kind": kind, "subject": "L1", "measured": spare, "limit": "fixing.leaf_left"}}

test_fires_near_the_far_face if results(leaf(4)) == expected("fail", 4)

test_fires_where_they_come_through if {
	results(leaf(-1)) == expected("fail", -1)
	results(leaf(0)) == expected("fail", 0)
}

test_passes if results(leaf(15)) == expected("pass", 15)

test_boundary if {
	results(leaf(5)) == expected("pass", 5)
	results(leaf(4.99)) == expected("fail", 4.99)
}

test_open_where_length_unsaid if {
	results({"what": "leaf", "count": 4}) == {{"kind": "open", "subject": "L1", "missing": "how long the screws are"}}
}

test_other_backgrounds_are_no_subject if {
	results({"what": "wood", "count": 4, "depth": 20}) == set()
	results({"what": "masonry", "count": 4}) == set()
}
