# METADATA
# title: A panel beside an opening is too narrow
# description: >-
#   The least width of what stands directly beside every opening in view. What is narrower still is left to the
#   rules on narrow legs of notched panels and on narrow cut panels.
# custom:
#   subject: leg
#   level: warning
#   limits: [cuts.beside_opening, cuts.narrowest, cuts.narrowest_leg]
#   basis: {kind: common practice}
#   matters: A narrow piece beside a jamb draws the eye, takes the knocks of everybody who passes, and leaves little room for beads or screws.
#   says: "On the {side} of {opening}, {piece} is only {measured} wide; at least {limit} belongs there."
#   do: Shift the run so that the joint stands further from this jamb.
#   example: With a jamb at 1,410 mm and a joint at 1,290 mm, only 120 mm of panel stands beside the door.
package rules.cuts.narrow_beside_opening

import data.rules.lib

results contains lib.saying(result, {"opening": leg.opening, "side": leg.side, "piece": leg.piece}) if {
	some leg in input.legs
	leg.in_view
	not left_to_another(leg)
	result := lib.at_least(leg, leg.width, "cuts.beside_opening")
}

# left_to_others is the width under which another rule reports a leg, by whether it is notched.
# A leg or a rip under its own least width has a finding already.
left_to_another(leg) if {
	leg.notched
	leg.width < data.limits["cuts.narrowest_leg"]
}

left_to_another(leg) if {
	not leg.notched
	leg.ripped
	leg.width < data.limits["cuts.narrowest"]
}
