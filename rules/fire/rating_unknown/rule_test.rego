package rules.fire.rating_unknown_test

import data.rules.fire.rating_unknown as rule

leaf := {"id": "east/door/leaf", "clad": true, "fire_rating": "unknown"}

results(leaf) := found if {
	found := rule.results with input.leaves as [leaf]
}

kinds(leaf) := {result.kind | some result in results(leaf)}

test_asks if results(leaf) == {{"kind": "review", "subject": "east/door/leaf"}}

test_passes_where_recorded if {
	kinds(object.union(leaf, {"fire_rating": "none"})) == {"pass"}
	kinds(object.union(leaf, {"fire_rating": "FD30"})) == {"pass"}
}

test_open_where_unsaid if {
	results(object.remove(leaf, {"fire_rating"})) == {{
		"kind": "open", "subject": "east/door/leaf",
		"missing": "whether the leaf is a fire door",
	}}
}

test_bare_leaf_is_no_subject if {
	results(object.union(leaf, {"clad": false})) == set()
}
