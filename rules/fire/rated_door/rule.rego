# METADATA
# title: A fire door is to be clad
# description: The recorded rating of every leaf that is to be clad. A rated leaf is a question, whatever the plan says.
# custom:
#   subject: leaf
#   level: error
#   basis:
#     kind: published
#     source: EN 1634-1
#     read: reported
#     note: >-
#       A fire door's evidence holds for the assembly as tested. Pointers: NFPA 80 on changes and plates made on site, and
#       the Fire Safety (England) Regulations 2022, regulation 10, on residents' doors. Local code governs.
#   matters: Cladding adds fuel, weight and thickness that nobody tested, and people behind the door count on it in a fire.
#   says: "The leaf is recorded as {rating} and is to be clad. Its evidence is for the door as tested, and cladding changes that door."
#   do: Neither clad, drill, glue nor plane this leaf until written evidence covers it with this cladding and the responsible person has accepted it. Failing that, leave the leaf as it is.
#   asks:
#     who: The fire door's maker or the body that tested it, and the building's responsible person
#     evidence: Test evidence or a written assessment for the assembly as it will be installed
#   example: A leaf labelled FD30, 44 mm thick, is to carry panels of 21 mm fixed with glue and screws.
package rules.fire.rated_door

import data.rules.lib

results contains lib.holds(leaf, true) if {
	some leaf in input.leaves
	leaf.clad
	leaf.fire_rating == "none"
}

results contains lib.saying(lib.ask(leaf), {"rating": leaf.fire_rating}) if {
	some leaf in input.leaves
	leaf.clad
	not leaf.fire_rating in {"none", "unknown"}
}
