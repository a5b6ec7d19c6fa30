# METADATA
# title: Rows of screws are too far apart
# description: >-
#   The widest gap between two rows of screws on every piece that screws alone hold, against the most that suits
#   a solid wall, or else framing, solid timber or a door leaf.
# custom:
#   subject: fixing
#   level: warning
#   limits: [fixing.rows_on_solid, fixing.rows_on_framing]
#   basis: {kind: published, source: NAVEDTRA 14044, clause: chapter 5, read: read}
#   matters: Between rows that are too far apart the panel bows off the wall, rattles, and opens its joints as the room dries.
#   says: "Screws alone hold this piece, and two of its rows are {measured} apart; {limit} is the most on this background."
#   do: >-
#     Put rows of screws in between, or glue the piece as well. Have the wall traced for cables, or the leaf's
#     fire rating established, before any hole is made.
#   example: A panel of 2,400 mm on studs with a row of screws 50 mm from each end and one in the middle, 1,150 mm apart.
package rules.fixing.rows_too_far_apart

import data.rules.lib

results contains lib.at_most(fixing, fixing.screws.row_gap, "fixing.rows_on_solid") if {
	some fixing in input.fixings
	fixing.screws.count > 0
	not fixing.bead
	fixing.background.solid_wall
}

results contains lib.at_most(fixing, fixing.screws.row_gap, "fixing.rows_on_framing") if {
	some fixing in input.fixings
	fixing.screws.count > 0
	not fixing.bead
	fixing.background.solid_wall == false
}

results contains lib.unsaid(fixing, "what the wall is made of") if {
	some fixing in input.fixings
	fixing.screws.count > 0
	not fixing.bead
	not fixing.background
}
