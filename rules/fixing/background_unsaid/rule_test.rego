package rules.fixing.background_unsaid_test

import data.rules.fixing.background_unsaid as rule

results(fixings) := found if {
	found := rule.results with input.fixings as fixings
}

unsaid := {
	"id": "E1", "at": "/runs/0", "on": "east", "piece": "E1", "on_leaf": false,
	"piece_size": {"width": 600, "height": 2390}, "stated": false,
}

on(background) := object.union(unsaid, {"background": background})

masonry := {"kind": "bare masonry", "lining": 0, "solid_wall": true, "framed": false, "studs_stated": false}

leaf := {"kind": "leaf", "lining": 0, "solid_wall": false, "framed": false, "studs_stated": false}

open := {"kind": "open", "subject": "E1", "missing": "what the wall is made of"}

test_open_where_unsaid if results([unsaid]) == {open}

test_passes_where_said if results([on(masonry)]) == {{"kind": "pass", "subject": "E1"}}

test_passes_on_a_leaf if results([on(leaf)]) == {{"kind": "pass", "subject": "E1"}}

test_one_result_a_piece if {
	results([unsaid, object.union(on(masonry), {"id": "E2"})]) == {open, {"kind": "pass", "subject": "E2"}}
}

test_no_pieces_no_results if results([]) == set()
