package rules.fire.rated_door_test

import data.rules.fire.rated_door as rule

leaf := {
	"id": "east/door/leaf", "at": "/walls/east/openings/door/leaf", "on": "east/door/leaf",
	"width": 762, "height": 2024, "thickness": 44, "clad": true, "fire_rating": "FD30",
}

results(leaf) := found if {
	found := rule.results with input.leaves as [leaf]
}

but(over) := results(object.union(leaf, over))

test_asks if results(leaf) == {{"kind": "review", "subject": "east/door/leaf", "values": {"rating": "FD30"}}}

test_asks_whatever_the_rating if {
	but({"fire_rating": "20 min"}) == {{"kind": "review", "subject": "east/door/leaf", "values": {"rating": "20 min"}}}
}

test_passes_where_there_is_no_rating if but({"fire_rating": "none"}) == {{"kind": "pass", "subject": "east/door/leaf"}}

test_unknown_is_no_subject if {
	but({"fire_rating": "unknown"}) == set()
	results(object.remove(leaf, {"fire_rating"})) == set()
}

test_bare_leaf_is_no_subject if {
	but({"clad": false}) == set()
	but({"clad": false, "fire_rating": "none"}) == set()
}
