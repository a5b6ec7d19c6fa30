package rules.fixing.bead_outline_test

import data.rules.fixing.bead_outline as rule

results(height, bead) := found if {
	found := rule.results with input.fixings as [{"id": "E1", "piece_size": {"width": 600, "height": height}, "bead": bead}]
		with data.limits as {"fixing.small_piece": 600, "fixing.bead_from_edge": 50}
}

bead(around, centre, from_edge) := {"around": around, "centre": centre, "from_edge": from_edge, "zigzag": 300}

small := "all four edges and the middle"

tall := "the top and sides, or all four edges"

wrong(around, wanted, distance) := {{
	"kind": "fail", "subject": "E1",
	"values": {"around": around, "wanted": wanted, "within": 50, "distance": distance},
}}

expected(kind, measured, around, wanted) := {{
	"kind": kind, "subject": "E1", "measured": measured, "limit": "fixing.bead_from_edge",
	"values": {"around": around, "wanted": wanted, "within": 50, "distance": measured},
}}

open(missing) := {{"kind": "open", "subject": "E1", "missing": missing}}

test_fires_on_a_small_piece if {
	results(358, bead("top and sides", true, 50)) == wrong("top and sides", small, 50)
	results(358, bead("all four edges", false, 50)) == wrong("all four edges", small, 50)
	results(358, bead("none", true, 50)) == wrong("none", small, 50)
}

test_fires_on_a_tall_piece if results(2390, bead("none", true, 50)) == wrong("none", tall, 50)

test_fires_whatever_the_distance if results(2390, {"around": "none", "centre": false}) == wrong("none", tall, "unsaid")

test_fires_too_far_in if {
	results(2390, bead("top and sides", false, 80)) == expected("fail", 80, "top and sides", tall)
	results(358, bead("all four edges", true, 80)) == expected("fail", 80, "all four edges", small)
}

test_passes if {
	results(2390, bead("all four edges", false, 40)) == expected("pass", 40, "all four edges", tall)
	results(358, bead("all four edges", true, 40)) == expected("pass", 40, "all four edges", small)
}

test_boundary if {
	results(2390, bead("top and sides", true, 50)) == expected("pass", 50, "top and sides", tall)
	results(2390, bead("top and sides", true, 50.01)) == expected("fail", 50.01, "top and sides", tall)
}

test_small_piece_boundary if {
	results(600, bead("top and sides", false, 50)) == expected("pass", 50, "top and sides", tall)
	results(599.99, bead("top and sides", false, 50)) == wrong("top and sides", small, 50)
}

test_open_where_edges_unsaid if results(2390, {"centre": true, "from_edge": 50}) == open("which edges a bead follows")

test_open_where_distance_unsaid if {
	results(2390, {"around": "top and sides", "centre": false}) == open("how far from the edge the bead runs")
	results(358, {"around": "all four edges", "centre": true}) == open("how far from the edge the bead runs")
}

test_piece_without_glue_is_no_subject if {
	found := rule.results with input.fixings as [{"id": "E1", "piece_size": {"width": 600, "height": 2390}}]
		with data.limits as {"fixing.small_piece": 600, "fixing.bead_from_edge": 50}
	found == set()
}
