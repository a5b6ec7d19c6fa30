# METADATA
# title: The bead does not follow the edges as it should
# description: >-
#   Which edges of every glued piece a bead follows, and how far from the edge it keeps. A small piece wants all
#   four edges and a line up the middle, any other at least its top and sides.
# custom:
#   subject: fixing
#   level: warning
#   limits: [fixing.small_piece, fixing.bead_from_edge]
#   basis: {kind: common practice}
#   matters: An edge with no glue near it lifts first, and it is the edge that everybody sees and leans on.
#   says: >-
#     Edges that a bead follows: {around}; how far in from them: {distance:mm}. This piece wants {wanted},
#     {within:mm} in at the most.
#   do: Lay the bead along the edges first and keep it close to them, then fill the inside.
#   example: A piece of 358 mm over a door with a bead along its top and sides only.
package rules.fixing.bead_outline

import data.rules.lib

results contains lib.unsaid(fixing, "which edges a bead follows") if {
	some fixing in input.fixings
	fixing.bead
	not fixing.bead.around
}

results contains outlined(lib.holds(fixing, false), fixing.piece_size.height, around, distance) if {
	some fixing in input.fixings
	around := fixing.bead.around
	not follows(fixing.piece_size.height, around, fixing.bead.centre)
	distance := object.get(fixing.bead, "from_edge", "unsaid")
}

results contains lib.unsaid(fixing, "how far from the edge the bead runs") if {
	some fixing in input.fixings
	follows(fixing.piece_size.height, fixing.bead.around, fixing.bead.centre)
	not fixing.bead.from_edge
}

results contains outlined(result, fixing.piece_size.height, fixing.bead.around, result.measured) if {
	some fixing in input.fixings
	follows(fixing.piece_size.height, fixing.bead.around, fixing.bead.centre)
	result := lib.at_most(fixing, fixing.bead.from_edge, "fixing.bead_from_edge")
}

# follows is so where the beads are those that a piece of this height wants.
follows(_, "all four edges", true)

follows(height, around, _) if {
	height >= data.limits["fixing.small_piece"]
	around in {"top and sides", "all four edges"}
}

# wanted names those beads.
wanted(height) := "all four edges and the middle" if height < data.limits["fixing.small_piece"]

wanted(height) := "the top and sides, or all four edges" if height >= data.limits["fixing.small_piece"]

outlined(result, height, around, distance) := lib.saying(result, {
	"around": around,
	"distance": distance,
	"wanted": wanted(height),
	"within": data.limits["fixing.bead_from_edge"],
})
