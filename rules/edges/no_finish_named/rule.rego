# METADATA
# title: A sawn edge is to be finished and nobody says with what
# description: Every sawn edge in view that is to get a trim or a finish, and whether the plan names the product.
# custom:
#   subject: edge
#   level: note
#   basis: {kind: common practice}
#   matters: Unless it is named it is not on the van, and the edge gets whatever stain or trim is at hand.
#   says: "This sawn edge is to get a {treatment}, and the plan does not name the product."
#   do: Name the product and its colour in the plan, and try it on an offcut first.
#   example: The left end is ripped at 310 mm with treatment "finish", and neither oil nor colour is named.
package rules.edges.no_finish_named

import data.rules.lib

results contains lib.holds(edge, true) if {
	some edge in finished
	edge.treatment_with
}

results contains lib.saying(lib.holds(edge, false), {"treatment": edge.treatment}) if {
	some edge in finished
	not edge.treatment_with
}

finished contains edge if {
	some edge in input.edges
	edge.cut
	edge.in_view
	edge.cover == "bare"
	edge.treatment in {"finish", "trim"}
}
