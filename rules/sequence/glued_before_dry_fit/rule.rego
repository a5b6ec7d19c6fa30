# METADATA
# title: Panels are glued before they have been fitted dry
# description: Whether a dry fit comes before the first gluing.
# custom:
#   subject: sequence
#   level: error
#   basis: {kind: common practice}
#   matters: Once the panel is in wet adhesive there are minutes to find out that a cut is wrong, and it comes off in pieces.
#   says: "Panels are glued, and no dry fit comes before the first of it."
#   do: Put a "dry fit" ahead of the first "glue" and offer up every piece of the run before a cartridge is opened.
#   example: The steps are "cut", "glue", "dry fit"; the last piece turns out 3 mm too wide with six already glued.
package rules.sequence.glued_before_dry_fit

import data.rules.lib

results contains lib.unsaid(input.sequence, "in which order the work is done") if {
	input.adhesive
	not input.sequence.stated
}

results contains lib.holds(input.sequence, min(places("dry fit") | {glued}) < glued) if {
	input.sequence.stated
	glued := min(places("glue"))
}

places(what) := {i | some i, step in input.sequence.steps; step.do == what}
