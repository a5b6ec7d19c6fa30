# METADATA
# title: Slat lines do not carry on over or under an opening
# description: >-
#   The least sideways shift between the slats over or under an opening in view and those beside it, where both have
#   the same pattern.
# custom:
#   subject: line
#   level: error
#   limits: [lines.at_opening]
#   basis: {kind: common practice}
#   matters: The upright lines are what one sees of a slatted wall. A step at the head of a door shows from across the room.
#   says: "{piece} {where} {opening}: its slats stand {measured} to the {direction} of those of {other} on the {side}; {limit} is the most."
#   do: Set out both sides and the strip from one line, as if the opening were not there, and cut {piece} to suit.
#   example: The panel over a door starts afresh at the jamb, and its slats stand 7 mm to the right of those beside the door.
package rules.lines.broken_at_opening

import data.rules.lib

results contains object.union(lib.saying(result, values), {"related": [line.piece, line.other]}) if {
	some line in input.lines
	line.where != "leaf"
	line.in_view
	line.comparable
	result := lib.at_most(line, line.offset, "lines.at_opening")
	values := {
		"piece": line.piece, "other": line.other, "where": line.where, "side": line.side,
		"direction": line.direction, "opening": line.opening,
	}
}
