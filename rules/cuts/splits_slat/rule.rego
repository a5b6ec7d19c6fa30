# METADATA
# title: A cut runs inside a slat
# description: >-
#   How far every upright cut in view, a rip or the side of a notch, runs inside a slat from the slat's nearest edge.
# custom:
#   subject: rip
#   level: warning
#   limits: [cuts.slat_edge]
#   basis: {kind: common practice}
#   matters: A slat sawn along its length splinters and shows its raw core, and the eye finds one odd slat at once.
#   says: "The cut at {x:mm} runs {measured} inside a slat and leaves {slat_left:mm} of its {slat_width:mm}; {limit} is the most."
#   do: Shift the run so that this cut falls in the space between two slats or along a slat's edge.
#   example: A notch at 1,410 mm runs 4 mm inside a slat and leaves 4 mm of its 28 mm.
package rules.cuts.splits_slat

import data.rules.lib

results contains lib.saying(result, {"x": rip.x, "slat_left": rip.slat_left, "slat_width": rip.slat_width}) if {
	some rip in input.rips
	rip.in_view
	result := lib.at_most(rip, rip.into_slat, "cuts.slat_edge")
}
