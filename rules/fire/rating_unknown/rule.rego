# METADATA
# title: Nobody has established whether the door is a fire door
# description: >-
#   The fire rating recorded for every leaf that is to be clad. Unknown is a question, not an answer.
# custom:
#   subject: leaf
#   level: error
#   basis:
#     kind: published
#     source: EN 1634-1
#     read: reported
#     note: A fire door's evidence holds for the assembly as tested; cladding changes the assembly.
#   matters: Cladding, drilling or gluing to a fire door can destroy its rating, and somebody's way out with it.
#   says: "The leaf is to be clad, and nobody has established whether it is a fire door."
#   do: Stop work on this leaf until its label, plug or record has been read by somebody competent, and write the answer into the plan.
#   asks:
#     who: The building's responsible person or fire-door inspector
#     evidence: The leaf's label or plug, its certificate, or the building's fire-door register
#   example: A leaf recorded as "unknown" with a run on it.
package rules.fire.rating_unknown

import data.rules.lib

results contains lib.ask(leaf) if {
	some leaf in input.leaves
	leaf.clad
	leaf.fire_rating == "unknown"
}

results contains lib.holds(leaf, true) if {
	some leaf in input.leaves
	leaf.clad
	leaf.fire_rating != "unknown"
}

results contains lib.unsaid(leaf, "whether the leaf is a fire door") if {
	some leaf in input.leaves
	leaf.clad
	not leaf.fire_rating
}
