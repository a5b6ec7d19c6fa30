# METADATA
# title: Slat lines on a closed leaf are off those above it
# description: >-
#   The least sideways shift between the slats on a closed leaf in view and those over its head, where both have the
#   same pattern.
# custom:
#   subject: line
#   level: error
#   limits: [lines.on_leaf]
#   basis: {kind: common practice}
#   matters: A door that is to vanish in the wall shows by its lines first. Panels glued to a leaf do not come off whole.
#   says: "On the closed leaf the slats stand {measured} to the {direction} of those above; {limit} is the most."
#   do: Hang and adjust the leaf first, then mark the lines above on it with the door shut, and start the leaf's run from them.
#   example: The run on a leaf starts at the leaf's edge, and its slats stand 5 mm to the left of those above the head.
package rules.lines.broken_on_leaf

import data.rules.lib

results contains object.union(lib.saying(result, {"direction": line.direction}), {"related": [line.piece, line.other]}) if {
	some line in input.lines
	line.where == "leaf"
	line.in_view
	line.comparable
	result := lib.at_most(line, line.offset, "lines.on_leaf")
}
