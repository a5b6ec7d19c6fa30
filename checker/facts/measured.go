package facts

// Measurement is one of a wall's sizes on the drawing and what was measured of it on site.
type Measurement struct {
	About
	What  string   `json:"what"`            // "width", "height", "plumb", "level", "flatness"
	Where string   `json:"where,omitempty"` // of a width: "floor", "middle", "ceiling"; of plumb: the "left" or "right" end
	X     *float64 `json:"x,omitempty"`     // mm; of a height: where it was taken
	// Nominal is what the drawing has, mm: 0 for the lean of an upright end. Absent where the outline does not
	// settle it (a width under a ceiling of several slopes, a height at a step or outside the wall, a shaped end)
	// and for level and flatness.
	Nominal *float64 `json:"nominal,omitempty"`
	// Measured is mm: of plumb how far the end's top lies to the right of its foot; of level the greatest difference
	// between measured heights, each taken against its nominal one, so that a raked ceiling is not out of level by
	// its rake; of flatness the worst gap under a 2 m straightedge.
	Measured float64  `json:"measured"`
	Differs  *float64 `json:"differs,omitempty"` // mm; measured less nominal
	// PerMetre is, of level, mm to a metre between the two places that differ most (the nearest two, where several
	// differ alike); absent where both lie in one place.
	PerMetre *float64 `json:"per_metre,omitempty"`
}

// Survey is what was measured of a wall that is clad. Its id is the wall's name.
type Survey struct {
	About
	Stated         bool     `json:"stated"`      // the plan says something of what was measured
	Widths         int      `json:"widths"`      // heights at which the width was taken, of three
	Heights        int      `json:"heights"`     // places at which the height was taken
	LeftPlumb      bool     `json:"left_plumb"`  // the left end's lean is stated
	RightPlumb     bool     `json:"right_plumb"` // the right end's
	FlatnessStated bool     `json:"flatness_stated"`
	Flatness       *float64 `json:"flatness,omitempty"` // mm; worst gap under a 2 m straightedge
}

// Closing is a piece that fills what is left between its neighbour's upright
// joint and an end of the wall: a run's last piece at an end that it reaches,
// and its first where it is cut or scribed to the end. An end that is not one
// upright line on the drawing has none.
//
// True widths come from what was measured:
//   - A run counts from its end (a line, from the left end): from there its pieces stand as planned, and the piece at
//     the far end is what the measured width there leaves of that. From the middle, each end takes half of
//     what a width differs.
//   - The end counts as upright that the run starts from, where its lean is unsaid; where it is stated, pieces count
//     from it at the lowest height at which a width was taken.
//   - Where this end's own lean is stated, it decides how the width changes up the wall; the lowest measured width
//     decides where it stands, and a middle width out of line with the other two the bow between them.
//   - Where no width was taken, the lean works from the nominal width, which is the wall's at its widest.
type Closing struct {
	About
	Piece         string   `json:"piece"`
	Run           string   `json:"run"`
	End           string   `json:"end"`                    // of the wall: "left", "right"
	PlannedBottom float64  `json:"planned_bottom"`         // mm; cover width at the piece's lower edge
	PlannedTop    float64  `json:"planned_top"`            // mm; at its upper edge
	TrueFloor     *float64 `json:"true_floor,omitempty"`   // mm; what is left for it at the end's foot; 0 or less: its neighbour does not fit
	TrueMiddle    *float64 `json:"true_middle,omitempty"`  // mm; half way up the end
	TrueCeiling   *float64 `json:"true_ceiling,omitempty"` // mm; at the end's top
	// TrueBottom and TrueTop are mm at the piece's own edges, in a straight line between the heights above and on
	// beyond them; absent where fewer than two are known.
	TrueBottom *float64 `json:"true_bottom,omitempty"`
	TrueTop    *float64 `json:"true_top,omitempty"`
	Narrowest  *float64 `json:"narrowest,omitempty"` // mm; the least true width over the piece's height
	Taper      *float64 `json:"taper,omitempty"`     // mm, without sign; from the true width at its lower edge to that at its upper
	Narrows    string   `json:"narrows,omitempty"`   // "upwards", "downwards", "nowhere"; absent where the taper is
	Off        *float64 `json:"off,omitempty"`       // mm, without sign; the planned width from the true one, the worse of both edges
	Parallel   bool     `json:"parallel"`            // planned without taper and not scribed
	Scribed    bool     `json:"scribed"`
	// RestsOn counts the measurements that the true widths rest on: each width taken, and this end's lean. At the
	// end that the run starts from, the start counts as one, since it is marked off the end itself. 0: no true
	// width is known.
	RestsOn int `json:"rests_on"`
	// Overlap is how far the piece's tongue lies in its neighbour, outside its cover width, mm; 0 where it has none there.
	Overlap   float64  `json:"overlap"`
	RipBottom *float64 `json:"rip_bottom,omitempty"` // mm; what to mark on the board at the lower edge: the true width and the overlap
	RipTop    *float64 `json:"rip_top,omitempty"`
	InView    bool     `json:"in_view"`
}
