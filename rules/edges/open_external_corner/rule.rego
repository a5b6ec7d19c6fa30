# METADATA
# title: A run ends at an open corner with nothing to close it
# description: Every edge in view, sawn or from the factory, that ends at an external corner, and how the plan finishes it.
# custom:
#   subject: edge
#   level: error
#   basis: {kind: common practice}
#   matters: At an external corner everybody sees the panel's build-up from the side, and bags and trolleys knock the last slat off.
#   says: "The panel ends at an open corner with the treatment \"{treatment}\"; a corner wants a trim or a return."
#   do: Put a corner trim on, or return the panel round the corner.
#   example: A board 21 mm thick stops flush with the wall's outer corner, and its edge is only to be oiled.
package rules.edges.open_external_corner

import data.rules.lib

results contains lib.unsaid(edge, "how the corner is finished") if {
	some edge in input.edges
	edge.meets == "open corner"
	edge.in_view
	not edge.treatment
}

results contains lib.saying(lib.holds(edge, closed), {"treatment": edge.treatment}) if {
	some edge in input.edges
	edge.meets == "open corner"
	edge.in_view
	closed := edge.treatment in {"trim", "return"}
}
