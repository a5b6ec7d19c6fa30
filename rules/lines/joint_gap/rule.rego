# METADATA
# title: The space between slats jumps at a joint
# description: >-
#   How far the space between the last slat before a joint in view and the first after it differs from the space
#   within a panel.
# custom:
#   subject: joint
#   level: warning
#   limits: [lines.joint_gap]
#   basis: {kind: common practice}
#   matters: The joint shows as a light or dark stripe, and whatever it is off is carried into every panel that follows.
#   says: "The slats of {left} and {right} are {gap:mm} apart at the joint, where the pattern has {pattern_gap:mm}: {measured} off, {limit} is the most."
#   do: Set the two panels so that the space comes to {pattern_gap:mm}; where an edge is sawn, saw it to suit.
#   example: Two panels stand with 15 mm between their slats at the joint, where the pattern has 12 mm.
package rules.lines.joint_gap

import data.rules.lib

results contains lib.saying(result, values) if {
	some joint in input.joints
	joint.in_view
	result := lib.at_most(joint, joint.gap_error, "lines.joint_gap")
	values := {"gap": joint.gap, "pattern_gap": joint.pattern_gap, "left": joint.left, "right": joint.right}
}
