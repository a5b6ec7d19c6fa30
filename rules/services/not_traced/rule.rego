# METADATA
# title: Holes are made before anybody has traced the cables
# description: Whether a step of tracing cables comes before the first step that makes holes in a wall.
# custom:
#   subject: sequence
#   level: error
#   basis: {kind: common practice}
#   matters: Nobody sees a cable in a wall. Whoever drills first and traces afterwards finds it with the bit.
#   says: "The work makes holes in a wall, and no step of tracing cables comes before the first of them."
#   do: Put "trace cables" ahead of the first drilling or screwing, and have somebody competent do it; local code governs who may.
#   example: The steps are "mark out", "drill", "screw", and tracing cables is not among them.
package rules.services.not_traced

import data.rules.lib

results contains lib.unsaid(input.sequence, "in which order the work is done") if {
	input.sequence.holes
	not input.sequence.stated
}

results contains lib.holds(input.sequence, input.sequence.traced) if {
	input.sequence.holes
	input.sequence.stated
}
