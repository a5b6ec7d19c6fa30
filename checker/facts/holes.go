package facts

// Hole is where an accessory comes through the panels. Its id is the accessory's.
type Hole struct {
	About
	Kind   string   `json:"kind"` // of the accessory
	Pieces []string `json:"pieces"`
	Left   float64  `json:"left"`
	Right  float64  `json:"right"`
	Bottom float64  `json:"bottom"`
	Top    float64  `json:"top"`
	// OverJoint says that the hole takes in a joint between two pieces or more; Partly that it is not wholly under panels.
	OverJoint bool `json:"over_joint"`
	Partly    bool `json:"partly"`
	// Land is the least that is left between the hole and an edge of its piece; 0 where it reaches one.
	Land     float64 `json:"land"`
	LandEdge string  `json:"land_edge"` // the way that edge faces: "left", "right", "up", "down"
	InView   bool    `json:"in_view"`
}

// Pattern is the slats of a piece: each lies one pitch behind the one before.
type Pattern struct {
	Start float64 `json:"start"` // left edge of the first slat, or of what is left of it
	First float64 `json:"first"` // where that slat's left edge would be were it whole
	Pitch float64 `json:"pitch"`
	Width float64 `json:"width"` // of a whole slat
	Count int     `json:"count"` // slats that the piece has at least a part of
	End   float64 `json:"end"`   // right edge of the last slat, or of what is left of it
}
