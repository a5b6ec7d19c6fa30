package rules.services.not_traced_test

import data.rules.services.not_traced as rule

sequence := {
	"id": "sequence", "at": "/sequence", "on": "", "stated": true,
	"steps": [{"do": "mark out"}, {"do": "drill"}, {"do": "screw"}], "traced": false, "holes": true,
}

results(over) := found if {
	found := rule.results with input.sequence as object.union(sequence, over)
}

test_fires if results({}) == {{"kind": "fail", "subject": "sequence"}}

test_passes if results({"traced": true}) == {{"kind": "pass", "subject": "sequence"}}

test_open_where_unsaid if {
	results({"stated": false, "steps": []}) == {{
		"kind": "open", "subject": "sequence",
		"missing": "in which order the work is done",
	}}
}

test_work_without_holes_is_no_subject if {
	results({"holes": false}) == set()
	results({"holes": false, "stated": false}) == set()
}
