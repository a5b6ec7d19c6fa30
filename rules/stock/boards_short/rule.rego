# METADATA
# title: Fewer boards are ordered than the cutting plan takes
# description: The boards ordered of each product, against those of a cutting plan that works. A better plan may exist.
# custom:
#   subject: boards
#   level: error
#   unit: count
#   basis: {kind: worked out}
#   matters: One board short stops the job, and the next batch may not match in colour.
#   says: "Ordered of {panel}: {measured}. The cutting plan takes {needed}, and no plan takes fewer than {least}."
#   do: Order what the cutting plan takes, or work out a plan that takes fewer before the saw comes out.
#   example: Six boards are ordered for a wall and door whose cutting plan takes eight.
package rules.stock.boards_short

import data.rules.lib

results contains lib.unsaid(boards, "how many boards are ordered") if {
	some boards in input.boards
	not boards.ordered
}

results contains result if {
	some boards in input.boards
	result := {
		"kind": lib.kind(boards.ordered >= boards.needed),
		"subject": boards.id,
		"measured": boards.ordered,
		"values": {"needed": boards.needed, "least": boards.least, "panel": boards.panel},
	}
}
