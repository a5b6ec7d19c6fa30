package rules.fixing.not_held_while_curing_test

import data.rules.fixing.not_held_while_curing as rule

results(fixing) := found if {
	found := rule.results with input.fixings as [fixing]
		with data.limits as {"fixing.screws_while_curing": 2}
}

glued(top, bottom) := {"id": "E1", "bead": {"zigzag": 300}, "screws": {"per_top": top, "per_bottom": bottom}}

expected(kind, measured) := {{
	"kind": kind, "subject": "E1", "measured": measured,
	"limit": "fixing.screws_while_curing",
}}

test_fires_at_the_top if results(glued(1, 2)) == expected("fail", 1)

test_fires_at_the_bottom if results(glued(3, 0)) == expected("fail", 0)

test_fires_without_screws if results(object.remove(glued(2, 2), {"screws"})) == expected("fail", 0)

test_boundary_passes if results(glued(2, 2)) == expected("pass", 2)

test_passes if results(glued(4, 3)) == expected("pass", 3)

test_piece_without_glue_is_no_subject if {
	results(object.remove(glued(1, 1), {"bead"})) == set()
	results({"id": "E1"}) == set()
}
