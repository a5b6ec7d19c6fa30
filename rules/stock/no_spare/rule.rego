# METADATA
# title: The order has no spare board
# description: Whether a larger order that covers the cutting plan has at least one board on top of it.
# custom:
#   subject: boards
#   level: note
#   limits: [stock.spare_from]
#   unit: count
#   basis: {kind: common practice}
#   matters: On a larger job one board arrives damaged or is cut wrong, and a later batch may not match in colour.
#   says: "The order has exactly the {needed} boards that the cutting plan takes, and none to spare."
#   do: Put one more board of the same batch on the order.
#   example: Fourteen boards are needed and fourteen are ordered; one knocked corner stops the job.
package rules.stock.no_spare

import data.rules.lib

results contains lib.saying(lib.holds(boards, boards.ordered > boards.needed), {"needed": boards.needed}) if {
	some boards in input.boards
	boards.needed > data.limits["stock.spare_from"]
	boards.ordered >= boards.needed
}
