package facts

// CrossJoint is where a part of a course meets one of the course above. Its id
// is "LOWER / UPPER".
type CrossJoint struct {
	About
	Lower       string  `json:"lower"`         // the piece below
	Upper       string  `json:"upper"`         // the piece above
	Y           float64 `json:"y"`             // middle of the space between the two
	Left        float64 `json:"left"`          // mm from the wall's left end, as Right
	Right       float64 `json:"right"`         // so far they meet
	Gap         float64 `json:"gap"`           // space between the two
	LowerMadeBy string  `json:"lower_made_by"` // the upper edge of the piece below: "end" (from the factory) or "crosscut"
	UpperMadeBy string  `json:"upper_made_by"` // the lower edge of the piece above
	InView      bool    `json:"in_view"`       // one of the two is
	// Trimmed says that the run treats its upper or its lower edges; absent where the run says nothing of its cut edges.
	Trimmed *bool `json:"trimmed,omitempty"`
	// NearestUpright is the least distance sideways from an upright joint of the piece below to one of the piece above,
	// of those that reach this line: 0 where one runs through. Absent where one of the two has none.
	NearestUpright *float64 `json:"nearest_upright,omitempty"`
	// NextTo is the cross joint that follows directly on the right, within one pitch; absent where there is none.
	NextTo *CrossNext `json:"next_to,omitempty"`
}

// CrossNext is a cross joint beside another.
type CrossNext struct {
	Joint string  `json:"joint"`
	Step  float64 `json:"step"` // difference in height between the two, without sign; 0 along one course
}
