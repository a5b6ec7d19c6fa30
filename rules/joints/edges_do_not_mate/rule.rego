# METADATA
# title: Two edges meet that do not go into each other
# description: >-
#   Every joint of two factory edges, and whether they hook into each other or are both square. Sawn edges are left to
#   the rule on cuts that take the edge away.
# custom:
#   subject: joint
#   level: error
#   basis: {kind: common practice}
#   matters: Tongue against tongue keeps the panels apart, recess against recess leaves a hollow behind the joint. Nothing keeps the faces flush.
#   says: "The left panel brings a {left_edge} edge to this joint and the right one a {right_edge} edge; the two do not go into each other."
#   do: See that all panels stand the same way up and that the plan has the product's edges right.
#   example: A panel that was turned end for end meets its neighbour tongue against tongue.
package rules.joints.edges_do_not_mate

import data.rules.lib

results contains lib.saying(result, {"left_edge": joint.left_made_by, "right_edge": joint.right_made_by}) if {
	some joint in input.joints
	edges := {joint.left_made_by, joint.right_made_by}
	not "rip" in edges
	result := lib.holds(joint, true in {joint.interlocks, edges == {"square"}})
}
