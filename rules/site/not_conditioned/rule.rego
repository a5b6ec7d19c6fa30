# METADATA
# title: The panels have too little time to get used to the room
# description: >-
#   The hours of conditioning that the steps have before the first cutting, dry fit, gluing or screwing. Several such
#   steps add up; what comes later does not count.
# custom:
#   subject: sequence
#   level: warning
#   limits: [site.conditioning]
#   unit: h
#   basis: {kind: common practice, read: memory, note: "48 h is usual for faced boards; solid boards want 7 to 10 days"}
#   matters: Boards from a cold van shrink, swell or bow in a warm room, and they do it on the wall once they are fixed.
#   says: "The panels stand in the room for {measured} before work on them starts; {limit} is the least."
#   do: Unpack the panels in the room at its usual warmth and damp, let air between them, and start to cut and fix later.
#   example: The panels come in the morning, stand for 4 h and are cut the same afternoon.
package rules.site.not_conditioned

import data.rules.lib

results contains lib.unsaid(input.sequence, "how long the panels stand in the room before they are fixed") if {
	not input.sequence.stated
}

results contains lib.unsaid(input.sequence, "how long the panels are conditioned") if {
	input.sequence.stated
	some i in conditioning
	not input.sequence.steps[i].hours
}

results contains lib.at_least(input.sequence, sum(hours), "site.conditioning") if {
	input.sequence.stated
	hours := [input.sequence.steps[i].hours | some i in conditioning]
	count(hours) == count(conditioning)
}

# conditioning is the places of the steps that count, start that of the first work on the panels.
conditioning := {i | some i, step in input.sequence.steps; step.do == "condition"; i < start}

start := min({i | some i, step in input.sequence.steps; step.do in {"cut", "dry fit", "glue", "screw"}} | {count(input.sequence.steps)})
