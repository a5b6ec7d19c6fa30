# METADATA
# title: The zigzag bead is closer than it need be
# description: How far the zigzag goes down between two turns, wherever the plan says it, against the least that makes sense.
# custom:
#   subject: fixing
#   level: note
#   limits: [fixing.bead_closest]
#   basis: {kind: common practice}
#   matters: A zigzag this tight eats cartridges, squeezes out between the slats and takes longer to dry behind the board.
#   says: "The zigzag goes down only {measured} between two turns; under {limit} it wastes adhesive."
#   do: Open the zigzag up, unless the adhesive's maker asks for one as tight as this.
#   example: A zigzag of 100 mm on a panel of 2,400 mm crosses it 24 times.
package rules.fixing.bead_too_close

import data.rules.lib

results contains lib.at_least(fixing, fixing.bead.zigzag, "fixing.bead_closest") if {
	some fixing in input.fixings
	fixing.bead.zigzag
}
