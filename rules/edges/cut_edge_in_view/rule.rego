# METADATA
# title: A sawn edge is left raw where it is seen
# description: >-
#   Every sawn edge of a piece in view that a standing viewer sees or may see: upright edges, edges facing up below
#   eye height and edges facing down above it. Open corners have a rule of their own.
# custom:
#   subject: edge
#   level: error
#   limits: [edges.eye_height]
#   basis: {kind: common practice}
#   matters: A raw saw cut shows pale board, felt and chipped veneer, and it is the first thing the client sees.
#   says: "This sawn edge ({made_by}) is left raw in plain sight."
#   do: Give the edge a trim, a return, a scribe or a matching finish, or shift the setting-out so that a factory edge lands here.
#   example: A piece is ripped at 240 mm on an open wall, and the plan gives its right end no treatment.
package rules.edges.cut_edge_in_view

import data.rules.lib

results contains lib.holds(edge, true) if {
	some edge in input.edges
	edge.cut
	edge.cover == "covered"
	edge.in_view
	edge.meets != "open corner"
	seen(edge.side, edge.low, edge.high)
}

results contains lib.unsaid(edge, "what stands at this end of the wall") if {
	some edge in input.edges
	edge.cut
	edge.cover == "unsaid"
	edge.in_view
	seen(edge.side, edge.low, edge.high)
}

results contains lib.unsaid(edge, "what is done with cut edges") if {
	some edge in input.edges
	edge.cut
	edge.cover == "bare"
	not edge.treatment
	edge.in_view
	edge.meets != "open corner"
	seen(edge.side, edge.low, edge.high)
}

results contains lib.saying(lib.holds(edge, edge.treatment != "none"), {"made_by": edge.made_by}) if {
	some edge in input.edges
	edge.cut
	edge.cover == "bare"
	edge.in_view
	edge.meets != "open corner"
	seen(edge.side, edge.low, edge.high)
}

seen(side, _, _) if side in {"left", "right"}

seen("up", low, _) if low < data.limits["edges.eye_height"]

seen("down", _, high) if high > data.limits["edges.eye_height"]
