package rules.sequence.glued_before_dry_fit_test

import data.rules.sequence.glued_before_dry_fit as rule

adhesive := {"adhesive": {"id": "adhesive", "length": 42000}}

stated(dos) := {"sequence": {"id": "sequence", "stated": true, "steps": [{"do": what} | some what in dos]}}

unstated := {"sequence": {"id": "sequence", "stated": false, "steps": []}}

results(facts) := found if {
	found := rule.results with input as facts
}

test_fires if {
	results(stated(["cut", "glue", "screw"])) == {{"kind": "fail", "subject": "sequence"}}
	results(stated(["glue", "dry fit", "glue"])) == {{"kind": "fail", "subject": "sequence"}}
}

test_passes if {
	results(stated(["dry fit", "cut", "glue", "glue"])) == {{"kind": "pass", "subject": "sequence"}}
	results(stated(["dry fit", "glue", "dry fit"])) == {{"kind": "pass", "subject": "sequence"}}
}

test_open_where_unsaid if {
	results(object.union(unstated, adhesive)) == {{
		"kind": "open", "subject": "sequence",
		"missing": "in which order the work is done",
	}}
}

test_unsaid_without_adhesive_is_no_subject if results(unstated) == set()

test_no_gluing_is_no_subject if {
	results(object.union(stated(["dry fit", "screw"]), adhesive)) == set()
	results(stated([])) == set()
}
