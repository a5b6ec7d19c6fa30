package rules.fixing.bead_too_close_test

import data.rules.fixing.bead_too_close as rule

results(fixing) := found if {
	found := rule.results with input.fixings as [fixing]
		with data.limits as {"fixing.bead_closest": 150}
}

zigzag(pitch) := {"id": "E1", "bead": {"zigzag": pitch, "from_edge": 50, "around": "top and sides", "centre": false}}

expected(kind, pitch) := {{"kind": kind, "subject": "E1", "measured": pitch, "limit": "fixing.bead_closest"}}

test_fires if results(zigzag(100)) == expected("fail", 100)

test_passes if results(zigzag(300)) == expected("pass", 300)

test_boundary if {
	results(zigzag(150)) == expected("pass", 150)
	results(zigzag(149.99)) == expected("fail", 149.99)
}

test_unsaid_zigzag_is_no_subject if results({"id": "E1", "bead": {"around": "all four edges", "centre": true}}) == set()

test_piece_without_glue_is_no_subject if results({"id": "E1"}) == set()
