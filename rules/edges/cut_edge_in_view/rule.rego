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
	some edge in seen
	edge.cover == "covered"
}

results contains lib.unsaid(edge, "what stands at this end of the wall") if {
	some edge in seen
	edge.cover == "unsaid"
}

results contains lib.unsaid(edge, "what is done with cut edges") if {
	some edge in seen
	edge.cover == "bare"
	not edge.treatment
}

results contains lib.saying(lib.holds(edge, edge.treatment != "none"), values) if {
	some edge in seen
	edge.cover == "bare"
	values := {"made_by": edge.made_by}
}

seen contains edge if {
	some edge in sawn
	edge.side in {"left", "right"}
}

seen contains edge if {
	some edge in sawn
	edge.side == "up"
	edge.low < data.limits["edges.eye_height"]
}

seen contains edge if {
	some edge in sawn
	edge.side == "down"
	edge.high > data.limits["edges.eye_height"]
}

sawn contains edge if {
	some edge in input.edges
	edge.cut
	edge.in_view
	edge.meets != "open corner"
}
