package facts

// Door is a leaf in its opening, clad or not, with all that hangs on it and
// what that comes to. Its id is the leaf's path ("east/door/leaf"). Lengths are
// in mm, masses in kg, angles in degrees from closed, left and right as seen
// from this wall face.
//
// A run on the leaf is on this wall's face: the pull side of a leaf that opens
// towards it, the push side of one that opens away. What a fact is worked out
// from stands beside it; it is absent where the plan leaves some of that unsaid.
type Door struct {
	About
	Opening    string   `json:"opening"`
	Width      float64  `json:"width"`
	Height     float64  `json:"height"`
	Thickness  float64  `json:"thickness"`             // before it is clad
	Core       string   `json:"core,omitempty"`        // "solid", "hollow", "panelled", "unknown"
	Opens      string   `json:"opens,omitempty"`       // "towards", "away"
	FrameDepth *float64 `json:"frame_depth,omitempty"` // from this wall face through the wall
	Stop       *float64 `json:"stop,omitempty"`        // how far it stands into the opening
	SideWall   *float64 `json:"side_wall,omitempty"`   // as stated, from the hinge jamb's face
	// Lining is absent where the plan says nothing of it.
	Lining *DoorLining `json:"lining,omitempty"`
	Hinges *DoorHinges `json:"hinges,omitempty"` // absent: unsaid
	Closer *DoorCloser `json:"closer,omitempty"` // absent: none

	Cladding      *DoorCladding `json:"cladding,omitempty"` // on this face; absent: bare
	OtherCladding float64       `json:"other_cladding"`     // thickness on the other face, 0 where that is bare
	PullCladding  *float64      `json:"pull_cladding,omitempty"`
	PushCladding  *float64      `json:"push_cladding,omitempty"` // thickness on each side, 0 where bare; of a clad leaf they need opens
	// BesideLeft and BesideRight are the wall's own cladding on this face; absent: none within a leaf's width.
	BesideLeft  *DoorBeside `json:"beside_left,omitempty"`
	BesideRight *DoorBeside `json:"beside_right,omitempty"`

	Gaps       []DoorGap `json:"gaps"`                  // left, right, head, floor
	HingeGap   *float64  `json:"hinge_gap,omitempty"`   // both need the hinges' side, unless left and right are the same
	LatchGap   *float64  `json:"latch_gap,omitempty"`   // leading-edge gap: opening less leaf less the other gap
	LapsStop   *float64  `json:"laps_stop,omitempty"`   // the greatest of the gaps'
	LiningGap  *float64  `json:"lining_gap,omitempty"`  // the least of the gaps'; below 0 leaf and strips would overlap
	UnderHead  *float64  `json:"under_head,omitempty"`  // from the top of leaf and cladding up to the lowest cladding over it on this face; below 0 that hangs in front; absent: none
	FloorCover float64   `json:"floor_cover"`           // thickness of the floor covering to come
	FloorClear float64   `json:"floor_clear"`           // from it to the lowest of leaf and cladding
	HangsLower float64   `json:"hangs_lower"`           // by how much the cladding hangs below the leaf, at least 0
	RidgedTo   *float64  `json:"ridged_to,omitempty"`   // from the floor covering up to the lowest slats on the push side; needs opens and a run on that side
	MassBefore *float64  `json:"mass_before,omitempty"` // leaf and hardware; needs the leaf's mass
	// MassAfter adds the cladding's, adhesive left out: the plan has no density of it. Needs the cladding's mass, and no
	// cladding on the other face, whose mass the plan cannot say.
	MassAfter *float64 `json:"mass_after,omitempty"`
	// AdjustedMass is MassAfter with what a closer adds in wear: 20 %, 75 % where it has a backcheck.
	AdjustedMass *float64 `json:"adjusted_mass,omitempty"`
	// CloserNeeded is the least power size by EN 1154 for width and mass after; absent where mass after is, and where even the largest is too small.
	CloserNeeded *int `json:"closer_needed,omitempty"`
	BeyondCloser bool `json:"beyond_closer"` // even the largest is too small

	ThicknessAfter  float64  `json:"thickness_after"`            // cladding of both faces included
	Fits            *float64 `json:"fits,omitempty"`             // greatest thickness that the furniture takes
	FitsSpare       *float64 `json:"fits_spare,omitempty"`       // what that leaves over thickness after; below 0 it is too thick
	Handle          *float64 `json:"handle,omitempty"`           // grip from the bare face
	HandleClearance *float64 `json:"handle_clearance,omitempty"` // grip from the face of the cladding on this side

	StandsOut float64 `json:"stands_out"` // what furniture takes of the way through
	// ClearWidth is Approved Document M's: leaf and leading-edge gap, less stop, less the greater of the leaf's thickness
	// with its push-side cladding and the stop, less furniture. Lining strips that stand out further count as the stop.
	// Needs the stop, the push side's cladding, the latch gap and the thickness of lining strips.
	ClearWidth *float64 `json:"clear_width,omitempty"`
	// FaceToStop is ADA 404.2.3's: from the face of the door at 90 degrees to the stop, furniture left out. Needs the
	// same, and where the hinges' axis is.
	FaceToStop *float64 `json:"face_to_stop,omitempty"`

	Swing *DoorSwing `json:"swing,omitempty"`
	// SwingUnsaid names what the swing needs and the plan leaves unsaid, below the opening ("leaf/hinges/proud").
	SwingUnsaid []string `json:"swing_unsaid"`
}

// DoorLining is the lining of the reveal.
type DoorLining struct {
	Clad      bool     `json:"clad"`
	Thickness *float64 `json:"thickness,omitempty"` // of the strips
}

// DoorHinges is what the leaf turns on.
type DoorHinges struct {
	Side      string   `json:"side"`
	Proud     *float64 `json:"proud,omitempty"` // axis in front of the leaf's pull face
	FromEdge  float64  `json:"from_edge"`       // from the leaf's hinge edge to the axis, towards the jamb
	Grade     *int     `json:"grade,omitempty"`
	Count     *int     `json:"count,omitempty"`
	MassGrade *int     `json:"mass_grade,omitempty"` // door mass grade, EN 1935: 1 to 7
	// GradeMass is the door's mass in kg that EN 1935 gives its door mass grade. The hinge grade, 1 to 14, is another
	// scale and tells none.
	GradeMass *float64 `json:"grade_mass,omitempty"`
}

// DoorCloser is the closer that the plan states.
type DoorCloser struct {
	Size      *int `json:"size,omitempty"` // power size by EN 1154
	Backcheck bool `json:"backcheck"`
}

// DoorCladding is what the runs on a leaf come to, as seen along the closed
// leaf: the greatest thickness and the outermost edges where they differ.
type DoorCladding struct {
	Runs         []string `json:"runs"`
	Thickness    float64  `json:"thickness"`
	Left         float64  `json:"left"` // from the leaf's left edge in to the cladding's
	Right        float64  `json:"right"`
	HingeSetback *float64 `json:"hinge_setback,omitempty"` // the same by the hinges' side
	LatchSetback *float64 `json:"latch_setback,omitempty"`
	Bottom       float64  `json:"bottom"` // above the floor
	Top          float64  `json:"top"`
	Area         float64  `json:"area"`           // m²
	Mass         *float64 `json:"mass,omitempty"` // area by the panel's mass over its width and height; needs the panel's mass
}

// DoorBeside is the wall's cladding nearest to a jamb, at the leaf's heights.
type DoorBeside struct {
	Thickness float64 `json:"thickness"`
	FromJamb  float64 `json:"from_jamb"` // from the jamb's face to its edge
}

// DoorGap is the gap at one edge of the closed leaf.
type DoorGap struct {
	Side string  `json:"side"`           // "left", "right", "head", "floor" (or the sill)
	Edge string  `json:"edge,omitempty"` // "hinge", "latch"; absent at head and floor and where the hinges are unsaid
	Gap  float64 `json:"gap"`
	// LapsStop is by how much the push side's cladding overlaps the stop, at least 0; absent at the floor. Needs opens,
	// the stop, and the edges of cladding there, which the plan says of a run only.
	LapsStop *float64 `json:"laps_stop,omitempty"`
	// LiningGap is from the strips on the reveal to a run on the push side; absent where there are none of either.
	LiningGap *float64 `json:"lining_gap,omitempty"`
}

// DoorSwing is how the leaf turns, as seen from above (what hangs from the head
// is UnderHead's). Needs opens, the hinges' side and axis, the edges of all
// cladding on the leaf, and the stop where something of the leaf can meet it.
// Edges are followed through 90 degrees, whatever else binds before.
//
// The closed leaf's pull face is taken to be flush with the wall's, and the
// stop at least as deep as the cladding before it, so that lining strips lie
// beyond that. A wall at an internal corner counts as a side wall. What is on
// the other face of the wall is in no plan, nor how thick an architrave is.
type DoorSwing struct {
	HingeEdge DoorEdge `json:"hinge_edge"`
	LatchEdge DoorEdge `json:"latch_edge"`
	// LatchNeeded is the least latch gap at which leaf and cladding pass the jamb and the cladding beside it.
	LatchNeeded    float64  `json:"latch_needed"`
	OpeningAngle   float64  `json:"opening_angle"` // up to the first contact, at most 180
	FirstContact   *float64 `json:"first_contact,omitempty"`
	FirstContactOn string   `json:"first_contact_on,omitempty"` // as DoorEdge.To; absent where it opens by 180
}

// DoorEdge is how near a side of the leaf comes to what stands still.
type DoorEdge struct {
	Clearance float64  `json:"clearance"`          // the least, 0 where it binds
	Angle     float64  `json:"angle"`              // at which it is first so small
	To        string   `json:"to"`                 // "jamb", "stop", "fixed cladding", "side wall"
	BindsAt   *float64 `json:"binds_at,omitempty"` // angle of the first contact; absent where there is none
}
