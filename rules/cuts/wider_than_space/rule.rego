# METADATA
# title: A panel is wider than the space for it
# description: >-
#   How far the width that the plan states for a piece exceeds the space that is free for it.
# custom:
#   subject: piece
#   level: error
#   limits: [cuts.fit]
#   basis: {kind: common practice}
#   matters: A piece cut too wide is forced in and bows or damages the corner, or goes back to the saw with the adhesive already on.
#   says: "The plan cuts this piece {stated:mm} wide and {space:mm} is free: {measured} too much, where {limit} can be eased in."
#   do: Measure the space at the top, in the middle and at the foot, and cut to the least of them; or move what stands beside it.
#   example: A last piece stated as 245 mm stands in a space of 240 mm.
package rules.cuts.wider_than_space

import data.rules.lib

results contains lib.saying(result, {"stated": piece.stated_width, "space": piece.space}) if {
	some piece in input.pieces
	result := lib.at_most(piece, piece.excess, "cuts.fit")
}
