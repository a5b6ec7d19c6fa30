# METADATA
# title: The screws are too short for the wood that they hold in
# description: >-
#   How far the screws go into the wood, behind any lining, on every piece that screws alone hold, against the
#   least that bites.
# custom:
#   subject: fixing
#   level: error
#   limits: [fixing.wood_depth]
#   basis: {kind: published, source: NAVEDTRA 14044, clause: chapter 5, read: read}
#   matters: Nothing but the screws holds this piece; with too little thread in the wood it works loose and comes down.
#   says: "Screws alone hold this piece, and they go only {measured} into the wood; they want at least {limit}."
#   do: >-
#     Take longer screws, enough for the backing, the lining and the bite in the wood, or glue the piece as well.
#     Longer screws are likelier to meet a cable, so have the wall traced first.
#   example: A screw of 35 mm through 9 mm of backing and 12.5 mm of plasterboard goes 13.5 mm into the stud.
package rules.fixing.too_short

import data.rules.lib

results contains lib.at_least(fixing, into.depth, "fixing.wood_depth") if {
	some fixing in input.fixings
	not fixing.bead
	some into in fixing.screws.into
	into.what == "wood"
}

results contains lib.unsaid(fixing, "how long the screws are") if {
	some fixing in input.fixings
	not fixing.bead
	some into in fixing.screws.into
	into.what == "wood"
	not into.depth
}
