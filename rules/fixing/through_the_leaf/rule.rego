# METADATA
# title: Screws come too near the far face of the door leaf
# description: >-
#   How much of the leaf's thickness is left behind the points of the screws in it, on every piece that is screwed
#   to a leaf, against the least.
# custom:
#   subject: fixing
#   level: error
#   limits: [fixing.leaf_left]
#   basis: {kind: worked out}
#   matters: A point this near the far face bulges or splits it; one that comes through rips hands and clothes on the other side.
#   says: "The leaf has {measured} left behind the screws' points, and a minus means that they come through; at least {limit} has to be left."
#   do: >-
#     Take shorter screws. Put none in a leaf that is, or may be, a fire door until the door's maker and the
#     building's responsible person have answered.
#   example: A screw of 50 mm through 9 mm of backing goes 41 mm into a leaf of 40 mm and comes out by 1 mm.
package rules.fixing.through_the_leaf

import data.rules.lib

results contains lib.at_least(fixing, into.spare, "fixing.leaf_left") if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "leaf"
}

results contains lib.unsaid(fixing, "how long the screws are") if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "leaf"
	not into.spare
}
