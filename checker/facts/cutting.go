package facts

// Stock is a board or an offcut from stock with what is sawn from it. Its id is
// the product and its number ("oak board 2") or the offcut's name. Marks are on
// the face, with the slats upright: rips from the left edge, crosscuts from the
// lower end.
type Stock struct {
	About
	Panel  string    `json:"panel"`
	Board  int       `json:"board"` // number of the fresh board, from 1; 0 for an offcut
	Width  float64   `json:"width"`
	Height float64   `json:"height"`
	Pieces []CutPart `json:"pieces"` // where each lies on it, from the lower end and from the left
	Cuts   []SawCut  `json:"cuts"`   // in the order of sawing
	Left   []Offcut  `json:"left"`   // what is left of it
}

// CutPart is a piece in its place on a board.
type CutPart struct {
	Piece  string  `json:"piece"`
	Left   float64 `json:"left"`
	Right  float64 `json:"right"`
	Bottom float64 `json:"bottom"`
	Top    float64 `json:"top"`
	Turned bool    `json:"turned"` // goes on the wall turned end for end
}

// SawCut is one cut. The piece or length ends at the mark, the blade goes beside it.
type SawCut struct {
	Number int     `json:"number"`
	Kind   string  `json:"kind"`   // "crosscut" over the whole board, "rip" along the slats, "trim" across one piece
	Length int     `json:"length"` // the length of the board that it is in, from the lower end, from 1
	Mark   float64 `json:"mark"`   // on the face: from the left edge (rip) or the lower end
	// Back is the same mark on the back, where a portable saw is guided with the face down: from the right edge,
	// which then lies at the left, or from the upper end.
	Back    float64  `json:"back"`
	Beyond  bool     `json:"beyond"` // the blade goes on the far side of the mark, as it is measured on the face
	Gives   []string `json:"gives"`  // the pieces that have their size with this cut
	Offcuts []string `json:"offcuts"`
}

// Offcut is what is left of a board, or a piece of one in stock.
type Offcut struct {
	Name   string  `json:"name"`
	Width  float64 `json:"width"`
	Height float64 `json:"height"`
	Keeps  string  `json:"keeps"`  // the long edge from the factory that it still has: "left", "right", "both", "none"
	Usable bool    `json:"usable"` // as large as is worth keeping
}

// CutMisfit is a way in which the plan's own cutting plan does not work out.
type CutMisfit struct {
	About
	Kind  string  `json:"kind"` // "too wide", "off pattern", "too high", "wrong edge", "no factory end", "twice", "missing", "unknown"
	Panel string  `json:"panel"`
	Board int     `json:"board"` // as the plan counts them, from 1; 0 where it is about none
	Piece string  `json:"piece,omitempty"`
	By    float64 `json:"by"` // how much too wide or too high
}
