package rules.sequence.cut_before_measured_test

import data.rules.sequence.cut_before_measured as rule

results(stated, dos) := found if {
	found := rule.results with input.sequence as {"id": "sequence", "stated": stated, "steps": [{"do": what} | some what in dos]}
}

test_fires if {
	results(true, ["order", "cut", "glue"]) == {{"kind": "fail", "subject": "sequence"}}
	results(true, ["cut", "survey", "cut"]) == {{"kind": "fail", "subject": "sequence"}}
}

test_passes if {
	results(true, ["survey", "order", "cut", "cut"]) == {{"kind": "pass", "subject": "sequence"}}
	results(true, ["survey", "cut", "survey"]) == {{"kind": "pass", "subject": "sequence"}}
}

test_open_where_unsaid if {
	results(false, []) == {{
		"kind": "open", "subject": "sequence",
		"missing": "in which order the work is done",
	}}
}

test_no_cutting_is_no_subject if {
	results(true, ["survey", "glue"]) == set()
	results(true, []) == set()
}
