# METADATA
# title: Screws go into a strip of wall where cables are likely
# description: >-
#   The screws that fall in each strip in which cables are likely and that reach into the wall, or may because their
#   depth is not said. A strip without screws proves nothing of the wall beside it.
# custom:
#   subject: zone
#   level: error
#   basis:
#     kind: published
#     source: BS 7671:2018
#     clause: regulation 522.6.202
#     read: quoted
#     country: [GB-ENG, GB-WLS, GB-SCT, GB-NIR]
#     note: Elsewhere it is common practice to expect cables in these strips; local code governs.
#   matters: A screw through a live cable can kill, at once or when somebody touches the screw years later, and can start a fire in the wall.
#   says: "Cables are likely in this strip ({why}), and {screws} of the screws go into it or may. Being outside such a strip proves nothing either."
#   do: Neither drill nor screw here until a competent electrician has established where the cables run; move the screws, or glue these pieces. Trace the rest of the wall too.
#   asks:
#     who: A licensed or otherwise competent electrician; local code governs
#     evidence: Cable tracing with a detector and the records, or proof that the circuit is isolated and dead and where it runs
#   example: Two screws of 45 mm at 2,320 mm on a wall 2,390 mm high, 70 mm below the ceiling, go 36 mm into the wall past a backing of 9 mm.
package rules.services.screw_in_cable_zone

import data.rules.lib

results contains object.union(asked, {"related": zone.pieces}) if {
	some zone in input.zones
	not none_enters(zone)
	asked := lib.saying(lib.ask(zone), object.filter(zone, {"screws", "pieces", "why", "deepest"}))
}

results contains lib.holds(zone, true) if {
	some zone in input.zones
	none_enters(zone)
}

none_enters(zone) if zone.screws == 0

none_enters(zone) if {
	zone.depth_said
	zone.deepest <= 0
}
