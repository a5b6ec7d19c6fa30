# METADATA
# title: The accessories on the wall are not listed
# description: >-
#   Whether the plan lists the switches, sockets and other accessories of every wall that is clad. An empty list is an
#   answer; no list is none.
# custom:
#   subject: wall
#   level: error
#   basis: {kind: common practice}
#   matters: Cables run to every accessory. What is not listed is not cut out for, and nobody knows where not to screw.
#   says: "Nobody has listed the switches, sockets and other accessories on the wall."
#   do: Walk the wall, look on its other side too, and list every accessory with its place and size; give an empty list if there is none.
#   example: A wall of 3,640 mm with 7.1 m² of panels, and no word of the switch beside its door.
package rules.services.accessories_unlisted

import data.rules.lib

results contains lib.holds(wall, true) if {
	some wall in input.walls
	wall.covered > 0
	wall.services_stated
}

results contains lib.unsaid(wall, "which switches, sockets and other accessories are on the wall") if {
	some wall in input.walls
	wall.covered > 0
	not wall.services_stated
}
