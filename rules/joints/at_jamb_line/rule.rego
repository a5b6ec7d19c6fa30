# METADATA
# title: A joint falls close to a jamb line and nothing holds what lies between
# description: >-
#   The distance from every side of an opening to the nearest joint of a run that passes it, and whether a screw or an
#   upright bead holds the strip between the two.
# custom:
#   subject: jamb
#   level: warning
#   limits: [joints.jamb_band]
#   basis: {kind: common practice}
#   matters: A loose sliver at a jamb rattles with the door, lifts at its edge and is the first thing to break off.
#   says: "Joint {joint} stands {measured} from the {side} jamb line of {opening} ({where}), under {limit}, and no screw or bead lies between."
#   do: Shift the run until the joint is {limit} or more from the jamb line, or set a bead or screws between the two where there is room.
#   example: A joint stands 30 mm over the opening, and the nearest bead keeps 50 mm from the panel's edge.
package rules.joints.at_jamb_line

import data.rules.lib

results contains lib.saying(result, values(jamb)) if {
	some jamb in input.jambs
	jamb.fixing_stated
	jamb.held_by == 0
	result := lib.at_least(jamb, jamb.distance, "joints.jamb_band")
}

results contains lib.saying(object.union(result, {"kind": "pass"}), values(jamb)) if {
	some jamb in input.jambs
	jamb.held_by > 0
	result := lib.at_least(jamb, jamb.distance, "joints.jamb_band")
}

results contains lib.unsaid(jamb, "what holds the pieces beside this jamb") if {
	some jamb in input.jambs
	not jamb.fixing_stated
	jamb.held_by == 0
	jamb.distance < data.limits["joints.jamb_band"]
}

results contains lib.saying(result, values(jamb)) if {
	some jamb in input.jambs
	not jamb.fixing_stated
	jamb.held_by == 0
	result := lib.at_least(jamb, jamb.distance, "joints.jamb_band")
	result.kind == "pass"
}

values(jamb) := {"joint": jamb.joint, "where": jamb.where, "side": jamb.side, "opening": jamb.opening}
