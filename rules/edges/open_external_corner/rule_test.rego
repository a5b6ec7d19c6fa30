package rules.edges.open_external_corner_test

import data.rules.edges.open_external_corner as rule

edge := {
	"id": "E7 right edge", "piece": "E7", "side": "right", "cut": false,
	"meets": "open corner", "cover": "bare", "treatment": "finish", "in_view": true,
}

results(edge) := found if {
	found := rule.results with input.edges as [edge]
}

kinds(over) := {result.kind | some result in results(object.union(edge, over))}

test_fires if {
	results(edge) == {{"kind": "fail", "subject": "E7 right edge", "values": {"treatment": "finish"}}}
	kinds({"treatment": "none"}) == {"fail"}
	kinds({"cut": true}) == {"fail"}
}

test_passes if {
	kinds({"treatment": "trim"}) == {"pass"}
	kinds({"treatment": "return"}) == {"pass"}
}

test_open_where_unsaid if {
	results(object.remove(edge, {"treatment"})) == {{
		"kind": "open", "subject": "E7 right edge",
		"missing": "how the corner is finished",
	}}
}

test_no_subject if {
	kinds({"meets": "open wall"}) == set()
	kinds({"in_view": false}) == set()
}
