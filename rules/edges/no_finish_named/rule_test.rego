package rules.edges.no_finish_named_test

import data.rules.edges.no_finish_named as rule

edge := {"id": "E1 left edge", "piece": "E1", "cut": true, "in_view": true, "cover": "bare", "treatment": "finish"}

results(over) := found if {
	found := rule.results with input.edges as [object.union(edge, over)]
}

test_fires if {
	results({}) == {{"kind": "fail", "subject": "E1 left edge", "values": {"treatment": "finish"}}}
}

test_fires_for_a_trim if {
	results({"treatment": "trim"}) == {{"kind": "fail", "subject": "E1 left edge", "values": {"treatment": "trim"}}}
}

test_passes if results({"treatment_with": "oak oil"}) == {{"kind": "pass", "subject": "E1 left edge"}}

test_other_treatments_are_no_subject if {
	results({"treatment": "none"}) == set()
	results({"treatment": "scribe"}) == set()
}

test_no_subject if {
	results({"cut": false}) == set()
	results({"in_view": false}) == set()
	results({"cover": "covered"}) == set()
}
