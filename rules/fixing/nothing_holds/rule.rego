# METADATA
# title: Nothing holds a piece
# description: >-
#   Whether every piece has adhesive or at least one screw.
# custom:
#   subject: fixing
#   level: error
#   basis: {kind: common practice}
#   matters: A panel that only leans on its neighbours comes down on somebody, at the latest when the room dries out.
#   says: "The plan gives this piece neither adhesive nor a single screw."
#   do: Give the piece beads or screws that suit what is behind it.
#   example: A strip of 358 mm over a door has a fixing of its own with 0 screws to a row and no adhesive.
package rules.fixing.nothing_holds

import data.rules.lib

results contains lib.holds(fixing, held(fixing)) if {
	some fixing in input.fixings
	fixing.stated
	not gap(fixing)
}

results contains lib.unsaid(fixing, gap(fixing)) if {
	some fixing in input.fixings
	fixing.stated
}

results contains lib.unsaid(fixing, "what holds the piece") if {
	some fixing in input.fixings
	not fixing.stated
}

default held(_) := false

held(fixing) if fixing.bead.length > 0

held(fixing) if fixing.screws.count > 0

# gap names what must be known before anyone can say whether the piece is held.
gap(fixing) := "where the studs are" if {
	not held(fixing)
	fixing.screws.on_studs
	not fixing.background.studs_stated
}

gap(fixing) := "how the adhesive is laid" if {
	not held(fixing)
	fixing.bead
	not fixing.screws.on_studs
}
