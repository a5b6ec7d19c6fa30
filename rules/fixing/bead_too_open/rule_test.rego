package rules.fixing.bead_too_open_test

import data.rules.fixing.bead_too_open as rule

results(fixing) := found if {
	found := rule.results with input.fixings as [fixing]
		with data.limits as {"fixing.bead_widest": 400, "fixing.small_piece": 600}
}

glued(height, bead) := {"id": "E1", "piece_size": {"width": 600, "height": height}, "bead": bead}

zigzag(pitch) := glued(2390, {"zigzag": pitch, "from_edge": 50, "around": "top and sides", "centre": false})

expected(kind, pitch) := {{"kind": kind, "subject": "E1", "measured": pitch, "limit": "fixing.bead_widest"}}

open := {{"kind": "open", "subject": "E1", "missing": "how far the zigzag goes down between two turns"}}

test_fires if results(zigzag(600)) == expected("fail", 600)

test_passes if results(zigzag(300)) == expected("pass", 300)

test_boundary if {
	results(zigzag(400)) == expected("pass", 400)
	results(zigzag(400.01)) == expected("fail", 400.01)
}

test_open_where_unsaid if {
	results(glued(2390, {"around": "all four edges", "centre": true})) == open
	results(glued(2390, {"centre": false})) == open
}

test_small_piece_needs_no_zigzag if results(glued(358, {"around": "all four edges", "centre": true})) == set()

test_small_piece_boundary if {
	results(glued(599.99, {"around": "all four edges", "centre": true})) == set()
	results(glued(600, {"around": "all four edges", "centre": true})) == open
}

test_small_piece_without_its_lines_is_open if {
	results(glued(358, {"around": "all four edges", "centre": false})) == open
	results(glued(358, {"around": "top and sides", "centre": true})) == open
	results(glued(358, {"centre": true})) == open
}

test_zigzag_on_a_small_piece_is_measured if {
	results(glued(358, {"zigzag": 500, "around": "all four edges", "centre": true})) == expected("fail", 500)
}

test_piece_without_glue_is_no_subject if results({"id": "E1", "piece_size": {"width": 600, "height": 2390}}) == set()
