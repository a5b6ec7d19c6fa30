# METADATA
# title: The header does not cover the cut ends of the lining
# description: >-
#   How far the pieces over an opening pass below its head, against what it takes to cover the ends of a clad lining.
#   Where the architrave stays, it does the covering.
# custom:
#   subject: header
#   level: error
#   limits: [edges.head_drop]
#   basis: {kind: common practice, note: "20 to 30 mm is usual, and at least the lining's thickness"}
#   matters: Where the header stops short, the sawn ends of the lining grin out under it over the whole width of the door.
#   says: "The header passes {measured} below the head; with a lining of {thickness:mm} it wants {need:mm}."
#   do: Let the pieces over the opening pass further below the head, or use a thinner lining, and check that the leaf still clears.
#   example: The lining is 24 mm thick and the header passes 20 mm below the head; 4 mm of sawn end shows.
package rules.edges.short_head_drop

import data.rules.lib

results contains lib.unsaid(header, "whether the lining is clad") if {
	some header in input.headers
	not header.architrave_stays
	not header.lining_stated
}

results contains lib.unsaid(header, "how thick the lining is") if {
	some header in clad
	not header.lining_thickness
}

results contains lib.unsaid(header, "how far the header passes below the head") if {
	some header in clad
	header.lining_thickness
	not header.drop
}

results contains result if {
	some header in clad
	need := max([data.limits["edges.head_drop"], header.lining_thickness])
	result := {
		"kind": lib.kind(header.drop >= need),
		"subject": header.id,
		"measured": header.drop,
		"limit": "edges.head_drop",
		"values": {"need": need, "thickness": header.lining_thickness},
	}
}

clad contains header if {
	some header in input.headers
	not header.architrave_stays
	header.lining_stated
	header.lining_clad
}
