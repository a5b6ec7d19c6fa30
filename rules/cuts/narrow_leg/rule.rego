# METADATA
# title: A leg of a notched panel is too narrow
# description: >-
#   The least width of every leg in view that a notched panel has beside an opening.
# custom:
#   subject: leg
#   level: error
#   limits: [cuts.narrowest_leg]
#   basis: {kind: common practice}
#   matters: A notched panel is carried by what is left of it. A thin leg breaks off at the corner of the notch before it is on the wall.
#   says: "The leg of {piece} on the {side} of {opening} is {measured} wide at {y:mm} above the floor; under {limit} it will not stay whole."
#   do: Shift the run until the joint stands well clear of this jamb, on one side of it or the other.
#   example: A joint at 1,365 mm and a jamb at 1,410 mm leave a notched panel with a leg of 45 mm.
package rules.cuts.narrow_leg

import data.rules.lib

results contains lib.saying(result, {"piece": leg.piece, "y": leg.y, "opening": leg.opening, "side": leg.side}) if {
	some leg in input.legs
	leg.notched
	leg.in_view
	result := lib.at_least(leg, leg.width, "cuts.narrowest_leg")
}
