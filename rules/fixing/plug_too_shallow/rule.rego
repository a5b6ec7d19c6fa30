# METADATA
# title: Screws and plugs do not reach far enough into the solid wall
# description: >-
#   How far the screws of every piece go into masonry, behind its plaster, against the least embedment.
# custom:
#   subject: fixing
#   level: warning
#   limits: [fixing.plug_depth]
#   basis: {kind: common practice, read: memory, note: the anchor's own assessment document governs}
#   matters: Plaster holds nothing; a plug that sits mostly in it pulls out, and brings the plaster with it.
#   says: "The screws go only {measured} into the masonry, behind any plaster; they want {limit} there."
#   do: >-
#     Take longer screws, with plugs to match, by the plug maker's own figures. A deeper hole is likelier to meet a
#     cable or a pipe, so have the wall traced before any is drilled.
#   example: A screw of 45 mm through 9 mm of backing and 13 mm of plaster goes 23 mm into the brick.
package rules.fixing.plug_too_shallow

import data.rules.lib

results contains lib.at_least(fixing, into.depth, "fixing.plug_depth") if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "masonry"
}

results contains lib.unsaid(fixing, "how long the screws are") if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "masonry"
	not into.depth
}
