# METADATA
# title: Screws that must hold the piece miss the studs
# description: >-
#   Whether every screw finds a stud or batten, on pieces that screws alone hold to a wall with space behind its face.
# custom:
#   subject: fixing
#   level: error
#   unit: count
#   basis: {kind: common practice}
#   matters: A wood screw in bare plasterboard, or in the air between battens, holds next to nothing, and nothing else holds this piece.
#   says: "Screws alone hold this piece, and {count} of them would find no stud or batten."
#   do: >-
#     Set the screws on the studs or battens, put a noggin in where there is none, or glue the piece as well. Find the
#     studs on site, and have the wall traced for cables before any hole is made: they often run along studs.
#   example: Studs at 600 mm centres from 300 mm, and two screws 50 mm in from the edges of a panel from 0 to 600 mm.
package rules.fixing.misses_stud

import data.rules.lib

results contains lib.unsaid(fixing, "where the studs are") if {
	some fixing in input.fixings
	fixing.background.framed
	not fixing.bead
	some into in fixing.screws.into
	into.what == "studs unsaid"
}

results contains lib.saying(lib.holds(fixing, false), {"count": into.count}) if {
	some fixing in input.fixings
	fixing.background.framed
	not fixing.bead
	some into in fixing.screws.into
	into.what == "space"
}

results contains lib.holds(fixing, true) if {
	some fixing in input.fixings
	fixing.background.framed
	not fixing.bead
	fixing.screws.count > 0
	every into in fixing.screws.into {
		not into.what in {"studs unsaid", "space"}
	}
}
