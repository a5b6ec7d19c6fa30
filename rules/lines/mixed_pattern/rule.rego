# METADATA
# title: Two slat patterns meet whose lines should carry on
# description: >-
#   Whether pieces in view whose slats should line up, round an opening or on a leaf and above it, have the same pitch
#   and slat width.
# custom:
#   subject: line
#   level: error
#   basis: {kind: common practice}
#   matters: Slats of another pitch or width cannot line up, however carefully they are set out; the step grows from slat to slat.
#   says: "{piece} and {other} differ in slat pitch or slat width, so their lines cannot carry on from one to the other."
#   do: Use one pattern on this face and its leaf, or change the pattern at a corner where no line carries on.
#   example: A wall has slats 40 mm apart from centre to centre, and the leaf in it has slats 36 mm apart.
package rules.lines.mixed_pattern

import data.rules.lib

results contains object.union(lib.saying(result, values), {"related": [line.piece, line.other]}) if {
	some line in input.lines
	line.in_view
	result := lib.holds(line, line.comparable)
	values := {"piece": line.piece, "other": line.other}
}
