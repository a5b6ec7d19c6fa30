package facts

// Install is one piece in the order in which its run is fixed. Its id is the piece's name.
type Install struct {
	About
	Piece    string `json:"piece"`
	Run      string `json:"run"`
	Position int    `json:"position"` // from 1, within its run
	Stated   bool   `json:"stated"`   // the plan gives the run's order; otherwise the pieces are fixed as they are set
	// LeftMeets and RightMeets are the piece fixed earlier that its long edge meets; absent where none has been.
	LeftMeets  *Beside `json:"left_meets,omitempty"`
	RightMeets *Beside `json:"right_meets,omitempty"`
	// HooksBoth says that both those joints interlock: the piece would have to hook at both sides at once.
	HooksBoth bool `json:"hooks_both"`
	// Interlocks says that it interlocks with a neighbour on some side, fixed earlier or later.
	Interlocks bool `json:"interlocks"`
	// WholeSlats and PartSlats count the slats across the piece's width, notches left out; a slat that a cut runs
	// along, or that the panel's own edge cuts short, is there in part.
	WholeSlats int `json:"whole_slats"`
	PartSlats  int `json:"part_slats"`
	// FirstOnEnd is there for a piece that is fixed first in its run (or course) and stands against an end of the wall.
	FirstOnEnd *FirstOnEnd `json:"first_on_end,omitempty"`
	InView     bool        `json:"in_view"`
}

// Beside is a neighbour that is fixed already.
type Beside struct {
	Piece      string `json:"piece"`
	Interlocks bool   `json:"interlocks"`
}

// FirstOnEnd is the end of the wall that a run starts against.
type FirstOnEnd struct {
	End        string   `json:"end"`                    // "left", "right"
	OutOfPlumb *float64 `json:"out_of_plumb,omitempty"` // mm over the end's height, without sign; absent where unsaid
	Scribed    bool     `json:"scribed"`                // the piece is scribed to it
}
