# METADATA
# title: Screws go into a solid wall without a proper plug
# description: >-
#   Whether the screws of every piece that reach masonry have plugs, in holes drilled with a masonry bit.
# custom:
#   subject: fixing
#   level: error
#   basis: {kind: common practice}
#   matters: A screw driven straight into masonry, or into a hole that another bit has burnt out, turns without biting and the panel comes down.
#   says: >-
#     Screws into a solid wall want plugs, in holes drilled with a masonry bit. For {count} of them here the plan
#     says: {bit}.
#   do: >-
#     Plan a plug for every screw and a masonry bit to suit the plug. Have the wall traced for cables before any
#     hole is drilled.
#   example: Four screws in a plastered brick wall, with plugs, and the holes drilled with a wood bit.
package rules.fixing.unplugged_solid_wall

import data.rules.lib

results contains lib.saying(lib.holds(fixing, false), {"count": into.count, "bit": "no plug"}) if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "masonry"
	not fixing.screws.plug_stated
}

results contains lib.unsaid(fixing, "which bit the holes are drilled with") if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "masonry"
	fixing.screws.plug_stated
	not fixing.screws.plug_bit
}

results contains lib.saying(lib.holds(fixing, bit == "masonry"), {"count": into.count, "bit": bit}) if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "masonry"
	fixing.screws.plug_stated
	bit := fixing.screws.plug_bit
}

results contains lib.unsaid(fixing, "what the wall is made of") if {
	some fixing in input.fixings
	some into in fixing.screws.into
	into.what == "unsaid"
}
