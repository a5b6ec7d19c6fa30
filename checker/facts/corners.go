package facts

// Corner is where the right end of one clad wall meets the left end of another,
// as seen from the room, with the outermost pieces of both that share some height.
//
// At an internal corner one panel runs into the corner and the other butts
// against its face. The plan does not say which wall is fixed first, so the left
// wall's counts as the one that runs in: the first of the right wall, as much
// as the left panel is thick, is covered. At an external corner nothing is.
type Corner struct {
	About
	Kind          string   `json:"kind"`                     // "internal", "external"
	LeftWall      string   `json:"left_wall"`                // the wall on the left of the corner
	RightWall     string   `json:"right_wall"`               // the wall on its right
	Left          string   `json:"left"`                     // the last piece of the left wall
	Right         string   `json:"right"`                    // the first piece of the right wall
	LeftDistance  *float64 `json:"left_distance,omitempty"`  // mm from the corner to the last slat on the left; absent where that piece has none
	RightDistance *float64 `json:"right_distance,omitempty"` // mm from the corner to the first slat on the right
	Covered       float64  `json:"covered"`                  // mm of the right wall behind the left panel's edge
	// Gap is mm between the two slats across the corner: both distances less what is covered; below 0 the first
	// slat is covered in part. Absent where one of the pieces has no slat.
	Gap        *float64 `json:"gap,omitempty"`
	PatternGap float64  `json:"pattern_gap"`         // mm between two slats within the left panel
	GapError   *float64 `json:"gap_error,omitempty"` // mm, without sign; how far the first is from the second
	// Hidden is mm of the left wall's last slat that stand behind the thickness of the panel that butts; 0 at an
	// external corner. It is not taken off the gap.
	Hidden     float64 `json:"hidden"`
	Comparable bool    `json:"comparable"` // both have the same pitch and slat width
	// CarriedOffset is how far the pattern is off being carried through the corner, mm, without sign, the short way
	// round one pitch; 0 where not comparable.
	CarriedOffset float64 `json:"carried_offset"`
	InView        bool    `json:"in_view"` // both pieces are
}
