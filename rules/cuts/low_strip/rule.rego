# METADATA
# title: A strip over or under an opening is too low
# description: >-
#   The height of every strip in view over a head or under a sill.
# custom:
#   subject: strip
#   level: warning
#   limits: [cuts.lowest_strip]
#   basis: {kind: common practice}
#   matters: A low strip breaks at the corner of the notch, leaves little room for beads or screws and looks like a filler.
#   says: "The strip {where} {opening} is {measured} high; at least {limit} belongs there."
#   do: Change where the run ends so that the strip grows, or stop the panels at the opening and close the rest with a plain board.
#   example: A head at 2,332 mm under a ceiling at 2,390 mm leaves a strip of 58 mm.
package rules.cuts.low_strip

import data.rules.lib

results contains lib.saying(result, {"where": strip.where, "opening": strip.opening}) if {
	some strip in input.strips
	strip.in_view
	result := lib.at_least(strip, strip.height, "cuts.lowest_strip")
}
