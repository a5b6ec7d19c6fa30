# METADATA
# title: Panels are cut before the wall has been measured
# description: Whether a survey comes before the first cutting.
# custom:
#   subject: sequence
#   level: error
#   basis: {kind: common practice}
#   matters: Walls differ from their drawings, and a board that is cut too short stays too short.
#   says: "Panels are cut, and no survey of the wall comes before the first cut."
#   do: Put a "survey" ahead of the first "cut" and cut to what was measured on site, not to the drawing.
#   example: The steps are "order", "cut", "survey"; the wall is 3,636 mm at the ceiling where the drawing has 3,640 mm.
package rules.sequence.cut_before_measured

import data.rules.lib

results contains lib.unsaid(input.sequence, "in which order the work is done") if not input.sequence.stated

results contains lib.holds(input.sequence, min(places("survey") | {sawn}) < sawn) if {
	input.sequence.stated
	sawn := min(places("cut"))
}

places(what) := {i | some i, step in input.sequence.steps; step.do == what}
