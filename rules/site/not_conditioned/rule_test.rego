package rules.site.not_conditioned_test

import data.rules.site.not_conditioned as rule

results(stated, steps) := found if {
	found := rule.results with input.sequence as {"id": "sequence", "stated": stated, "steps": steps}
		with data.limits as {"site.conditioning": 48}
}

result(kind, hours) := {{"kind": kind, "subject": "sequence", "measured": hours, "limit": "site.conditioning"}}

stand(hours) := {"do": "condition", "hours": hours}

cut := {"do": "cut"}

test_fires if {
	results(true, [{"do": "survey"}, stand(4), cut]) == {{
		"kind": "fail", "subject": "sequence",
		"measured": 4, "limit": "site.conditioning",
	}}
}

test_fires_without_such_a_step if {
	results(true, [cut, {"do": "glue"}]) == result("fail", 0)
	results(true, []) == result("fail", 0)
}

test_what_comes_later_does_not_count if {
	every what in ["cut", "dry fit", "glue", "screw"] {
		results(true, [{"do": what}, stand(72)]) == result("fail", 0)
	}
	results(true, [cut, {"do": "condition"}]) == result("fail", 0)
}

test_passes if {
	results(true, [stand(72), cut]) == result("pass", 72)
	results(true, [{"do": "order"}, stand(72)]) == result("pass", 72)
}

test_steps_add_up if results(true, [stand(24), {"do": "mark out"}, stand(24), cut]) == result("pass", 48)

test_boundary if {
	results(true, [stand(48), cut]) == result("pass", 48)
	results(true, [stand(47.99), cut]) == result("fail", 47.99)
}

test_open_where_the_order_is_unsaid if {
	results(false, []) == {{
		"kind": "open", "subject": "sequence",
		"missing": "how long the panels stand in the room before they are fixed",
	}}
}

test_open_where_the_hours_are_unsaid if {
	every steps in [[{"do": "condition"}, cut], [stand(48), {"do": "condition"}, cut]] {
		results(true, steps) == {{
			"kind": "open", "subject": "sequence",
			"missing": "how long the panels are conditioned",
		}}
	}
}
