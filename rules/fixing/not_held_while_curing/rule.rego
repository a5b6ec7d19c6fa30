# METADATA
# title: Nothing holds a glued piece while the glue dries
# description: >-
#   The screws in the top row and in the bottom row of every glued piece, the fewer of the two, against the
#   least that keeps it in place until the glue has gone off.
# custom:
#   subject: fixing
#   level: warning
#   unit: count
#   limits: [fixing.screws_while_curing]
#   basis: {kind: common practice}
#   matters: A panel on wet glue creeps down and its ends spring off the wall; by morning the lines are out and the glue has set.
#   says: "Screws in the top or the bottom row of this glued piece, whichever has fewer: {measured}. It wants {limit} in each until the glue has gone off."
#   do: >-
#     Put more screws in the spaces between slats, at the top and at the bottom. Have the wall traced for cables,
#     or the leaf's fire rating established, before any hole is made.
#   example: A panel of 600 x 2,400 mm, glued, with one screw at the top and two at the bottom.
package rules.fixing.not_held_while_curing

import data.rules.lib

results contains lib.at_least(fixing, fewer, "fixing.screws_while_curing") if {
	some fixing in input.fixings
	fixing.bead
	fewer := min([fixing.screws.per_top, fixing.screws.per_bottom])
}

results contains lib.at_least(fixing, 0, "fixing.screws_while_curing") if {
	some fixing in input.fixings
	fixing.bead
	not fixing.screws
}
