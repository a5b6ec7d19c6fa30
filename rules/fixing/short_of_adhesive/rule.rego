# METADATA
# title: Not enough adhesive is ordered
# description: >-
#   The adhesive ordered against what all the beads take, and on top of it the share that stays in nozzles and cartridges.
# custom:
#   subject: adhesive
#   level: error
#   unit: ml
#   limits: [fixing.adhesive_waste]
#   basis: {kind: worked out}
#   matters: Adhesive that runs out halfway leaves beads skinning over on a panel that cannot go up, or thin beads on the last ones.
#   says: >-
#     The beads and what is lost on the way take {need:ml}, and {measured} is ordered. It takes {cartridges_needed}
#     cartridges; the order has {cartridges}.
#   do: Order the cartridges that are short, or set out thinner or fewer beads if the adhesive's maker allows them.
#   example: Beads of 2,250 ml and a tenth lost take 2,475 ml, which is 9 cartridges of 290 ml; 8 are ordered.
package rules.fixing.short_of_adhesive

import data.rules.lib

results contains lib.unsaid(input.adhesive, "how thick the bead is") if {
	input.adhesive
	not input.adhesive.volume
}

results contains lib.unsaid(input.adhesive, "what one cartridge holds, the same for all runs") if {
	input.adhesive.volume
	not input.adhesive.cartridge
}

results contains lib.unsaid(input.adhesive, "how many cartridges are ordered") if {
	input.adhesive.volume
	input.adhesive.cartridge
	not input.adhesive.ordered
}

results contains lib.saying(result, values) if {
	need := input.adhesive.volume * (1 + data.limits["fixing.adhesive_waste"])
	result := {
		"kind": lib.kind(input.adhesive.ordered >= need),
		"subject": input.adhesive.id,
		"measured": input.adhesive.ordered,
		"limit": "fixing.adhesive_waste",
	}
	values := {
		"need": round(need),
		"cartridges_needed": ceil(need / input.adhesive.cartridge),
		"cartridges": input.adhesive.cartridges,
	}
}
