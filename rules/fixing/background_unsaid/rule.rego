# METADATA
# title: Nobody has said what the wall is made of
# description: Whether the plan says what is behind every piece. Behind a piece on a door leaf it is the leaf.
# custom:
#   subject: fixing
#   level: error
#   basis: {kind: common practice}
#   matters: Screws, plugs, adhesive and drill bits all hang on what the wall is; guessed wrong, the panel comes down.
#   says: "The plan does not say what the wall behind this piece is made of."
#   do: >-
#     Find out what the wall is before anything is bought or drilled, and write it into the plan. If opening it up may
#     disturb asbestos, lead paint or cables, leave that to somebody competent.
#   example: Six panels on the east wall, and no word on whether it is plasterboard on studs or plaster on brick.
package rules.fixing.background_unsaid

import data.rules.lib

results contains lib.holds(fixing, true) if {
	some fixing in input.fixings
	fixing.background
}

results contains lib.unsaid(fixing, "what the wall is made of") if {
	some fixing in input.fixings
	not fixing.background
}
