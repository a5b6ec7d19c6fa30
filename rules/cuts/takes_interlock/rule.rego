# METADATA
# title: A cut takes away the edge that the next panel hooks into
# description: >-
#   Every joint of a panel whose long edges hook into each other, and whether either of the two edges was sawn off.
# custom:
#   subject: joint
#   level: error
#   basis: {kind: common practice}
#   matters: The hooked edge keeps two panels flush and at the right distance. Without it the joint opens, steps or drifts as the run goes on.
#   says: "{pieces} lost the edge that belongs in this joint to the saw; the two panels do not hook into each other."
#   do: Let two factory edges meet here, and take the width off where no panel follows, at a corner or a jamb.
#   example: A panel in the middle of a run is ripped from 600 mm to 400 mm on the side where the next one follows.
package rules.cuts.takes_interlock

import data.rules.lib

results contains object.union(result, {"related": ripped}) if {
	some joint in input.joints
	joint.has_interlock
	edges := [[joint.left, joint.left_made_by], [joint.right, joint.right_made_by]]
	ripped := [piece | some [piece, "rip"] in edges]
	result := lib.saying(lib.holds(joint, ripped == []), {"pieces": ripped})
}
