package facts

// Layer is something that a screw passes, or ends in.
type Layer struct {
	// What is, from the room inwards: "slat", "backing", "plasterboard" or "plaster", then "stud", "batten", "timber",
	// "masonry", "leaf" or "space" (a cavity, or the air behind a leaf or a wall that the screw comes through),
	// "other cladding" behind a leaf, and "unsaid" where the plan does not say what is there.
	What  string  `json:"what"`
	Depth float64 `json:"depth"` // mm of the screw's length in it
}

// ScrewPath is one screw with what it passes. It stands in the same order as in its piece's fixing.
type ScrewPath struct {
	About
	Piece  string   `json:"piece"`
	X      float64  `json:"x"`
	Y      float64  `json:"y"`
	Into   string   `json:"into"`              // as in Screws
	InWall *float64 `json:"in_wall,omitempty"` // mm from the wall's or leaf's face to the point
	// Layers add up to the screw's length; there are none where it is unsaid. What lies past the lining counts as one
	// thing up to the wall's stated thickness: the plan does not say how deep a stud is.
	Layers []Layer `json:"layers"`
	// OnSlat says that the screw stands on a slat's face: its piece has no space between two slats at that height.
	OnSlat bool `json:"on_slat"`
	// Edge is the distance to the nearest edge of the piece, notches and cut-outs counted in, mm. FromUpright is that to
	// the nearest one that faces left or right, FromLevel to the nearest that faces up or down; absent where there is none.
	Edge        float64  `json:"edge"`
	FromUpright *float64 `json:"from_upright,omitempty"`
	FromLevel   *float64 `json:"from_level,omitempty"`
	// Stud is the nearest stud or upright batten; absent on a leaf, on a wall without, and where the plan does not place them.
	Stud *StudAt `json:"stud,omitempty"`
}

// StudAt is where a screw stands against the nearest stud or upright batten, without sign, mm.
type StudAt struct {
	Hit        bool    `json:"hit"`
	FromMiddle float64 `json:"from_middle"`
	FromEdge   float64 `json:"from_edge"` // how far within its nearest edge where it is hit, otherwise by how much it is missed
}

// ZoneScrew is a screw in a zone, for drawings.
type ZoneScrew struct {
	Piece  string   `json:"piece"`
	X      float64  `json:"x"`
	Y      float64  `json:"y"`
	InWall *float64 `json:"in_wall,omitempty"` // mm from the wall's face to the point
}

// Counts is what the plan comes to in screws, plugs, trim, finish and adhesive, without waste, and what is on the
// order of it. Its id is "counts".
type Counts struct {
	About
	Screws        []ScrewCount `json:"screws"` // by length, then by colour
	ScrewsInAll   int          `json:"screws_in_all"`
	ScrewsOrdered *int         `json:"screws_ordered,omitempty"`
	// Plugs are for the screws of a fixing that states one, except where the plan says that no masonry is behind them.
	Plugs        []PlugCount `json:"plugs"` // by length
	PlugsInAll   int         `json:"plugs_in_all"`
	PlugsOrdered *int        `json:"plugs_ordered,omitempty"`
	// Trims is edges treated by trim: those in view that nothing stands in front of, and between two courses of a run
	// whose upper or lower edges are trimmed each joint once.
	Trims        []TrimCount `json:"trims"` // by product
	TrimInAll    float64     `json:"trim_in_all"`
	TrimOrdered  *float64    `json:"trim_ordered,omitempty"` // mm
	ReturnLength float64     `json:"return_length"`          // mm of edges treated by a return
	FinishLength float64     `json:"finish_length"`          // mm of edges treated by a finish
	FinishArea   float64     `json:"finish_area"`            // m², those edges over their panels' thickness
	BeadLength   float64     `json:"bead_length"`            // mm of adhesive
	// Cartridges is what the beads' volume takes of the stated size; absent where nothing is glued, a bead's diameter
	// or the size is unsaid, or runs use different ones.
	Cartridges *int `json:"cartridges,omitempty"`
}

// ScrewCount is screws of one kind.
type ScrewCount struct {
	Length *float64 `json:"length,omitempty"` // mm
	Colour string   `json:"colour,omitempty"`
	Count  int      `json:"count"`
}

// PlugCount is plugs of one length.
type PlugCount struct {
	Length *float64 `json:"length,omitempty"` // mm
	Count  int      `json:"count"`
}

// TrimCount is one trim.
type TrimCount struct {
	With   string  `json:"with,omitempty"` // product and colour
	Length float64 `json:"length"`         // mm
}
