# METADATA
# title: A cut panel is too narrow
# description: >-
#   The cover width of every piece in view that has a long edge sawn off, against the least width.
# custom:
#   subject: piece
#   level: error
#   limits: [cuts.narrowest]
#   basis: {kind: common practice}
#   matters: A strip this narrow looks like a mistake, has little to glue and breaks in the saw.
#   says: "The piece is cut to {measured}; nothing under {limit} is to be seen."
#   do: Move the run's start so that the cut at this end grows, or split the cut between both ends.
#   example: A wall of 3,640 mm in panels of 600 mm from one end leaves a last piece of 40 mm.
package rules.cuts.narrow_piece

import data.rules.lib

results contains lib.at_least(piece, piece.cover_width, "cuts.narrowest") if {
	some piece in input.pieces
	piece.ripped
	piece.in_view
}
