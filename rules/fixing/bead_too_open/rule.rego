# METADATA
# title: The zigzag bead is too open
# description: >-
#   How far the zigzag goes down between two turns on every glued piece, against the most. A small piece with a
#   bead along all four edges and one up the middle needs no zigzag.
# custom:
#   subject: fixing
#   level: warning
#   limits: [fixing.bead_widest, fixing.small_piece]
#   basis: {kind: common practice}
#   matters: Where the bead leaves big bare patches the panel sounds hollow, bows between the lines of glue and can let go.
#   says: "The zigzag goes down {measured} between two turns; {limit} is the most."
#   do: Draw the zigzag closer, and see that there is adhesive enough for it.
#   example: A zigzag of 600 mm on a panel of 2,400 mm crosses it only four times.
package rules.fixing.bead_too_open

import data.rules.lib

results contains lib.at_most(fixing, fixing.bead.zigzag, "fixing.bead_widest") if {
	some fixing in input.fixings
	fixing.bead
}

results contains lib.unsaid(fixing, "how far the zigzag goes down between two turns") if {
	some fixing in input.fixings
	fixing.bead
	not fixing.bead.zigzag
	small_and_lined := [fixing |
		fixing.piece_size.height < data.limits["fixing.small_piece"]
		fixing.bead.around == "all four edges"
		fixing.bead.centre
	]
	small_and_lined == []
}
