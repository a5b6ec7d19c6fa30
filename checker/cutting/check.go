package cutting

import (
	"cmp"
	"fmt"
	"slices"
)

// Assignment is what a plan itself says of a board: its number, and in each
// length from the bottom end the IDs of the blanks from the left.
type Assignment struct {
	Board   int
	Lengths [][]string
}

// MisfitKind says in which way a plan's own cutting does not work out.
type MisfitKind string

const (
	TooWide    MisfitKind = "too wide"       // blanks and kerfs are wider than the board
	OffPattern MisfitKind = "off pattern"    // they are not, but where the pattern lets them begin they are
	TooHigh    MisfitKind = "too high"       // lengths and kerfs are higher than the board
	WrongEdge  MisfitKind = "wrong edge"     // a blank that needs a factory edge does not lie at it
	NoEnd      MisfitKind = "no factory end" // a blank that needs a factory end lies in a length between others
	Twice      MisfitKind = "twice"          // a blank is cut more than once
	Missing    MisfitKind = "missing"        // a blank is not cut
	Unknown    MisfitKind = "unknown"        // no blank has the ID
	BoardTwice MisfitKind = "board twice"    // two assignments have the board's number
)

// Misfit is a way in which a plan's own cutting does not work out.
type Misfit struct {
	Kind   MisfitKind
	Board  int     // 0 where it is about none
	Length int     // from the bottom, from 1; 0 where it is about no length
	Blank  string  // empty where it is about no single blank
	By     float64 // mm too wide or too high
}

// Check gives each way in which a plan's own assignment of blanks to boards
// does not work out with a kerf in mm, board by board; none if it can be cut as
// it stands. A blank may lie turned where the board allows it, whatever the
// plan means. Empty lengths count for nothing.
//
// Its errors are InvalidErrors, several joined.
func Check(board Board, assigned []Assignment, blanks []Blank, kerf float64) ([]Misfit, error) {
	j, err := newJob(board, blanks, nil, kerf)
	if err != nil {
		return nil, err
	}
	c := checking{job: j, parts: make(map[string]*part, len(blanks)), cut: map[string]bool{}}
	for _, p := range j.parts {
		c.parts[p.id] = p
	}
	boards := map[int]bool{}
	sorted := slices.Clone(assigned)
	slices.SortStableFunc(sorted, func(a, b Assignment) int { return cmp.Compare(a.Board, b.Board) })
	for _, a := range sorted {
		if boards[a.Board] {
			c.found = append(c.found, Misfit{Kind: BoardTwice, Board: a.Board})
		}
		boards[a.Board] = true
		c.board(a)
	}
	for _, b := range blanks {
		if !c.cut[b.ID] {
			c.found = append(c.found, Misfit{Kind: Missing, Blank: b.ID})
		}
	}
	return c.found, nil
}

type checking struct {
	*job
	parts map[string]*part
	cut   map[string]bool
	found []Misfit
}

func (c *checking) board(a Assignment) {
	var lengths [][]*part
	var numbers []int
	for i, ids := range a.Lengths {
		var parts []*part
		for _, id := range ids {
			p := c.parts[id]
			switch {
			case p == nil:
				c.found = append(c.found, Misfit{Kind: Unknown, Board: a.Board, Length: i + 1, Blank: id})
				continue
			case c.cut[id]:
				c.found = append(c.found, Misfit{Kind: Twice, Board: a.Board, Length: i + 1, Blank: id})
			}
			c.cut[id] = true
			parts = append(parts, p)
		}
		if len(parts) > 0 {
			lengths, numbers = append(lengths, parts), append(numbers, i+1)
		}
	}
	high := -c.kerf
	for i, parts := range lengths {
		c.length(a.Board, numbers[i], parts, i == 0 || i+1 == len(lengths))
		high += c.kerf + slices.MaxFunc(parts, func(a, b *part) int { return cmp.Compare(a.height, b.height) }).height
	}
	if high > c.height+near {
		c.found = append(c.found, Misfit{Kind: TooHigh, Board: a.Board, By: mm(high - c.height)})
	}
}

// length looks at the blanks of a length in their order.
func (c *checking) length(board, number int, parts []*part, atEnd bool) {
	placed := true
	wide := -c.kerf
	for i, p := range parts {
		wide += c.kerf + p.width
		if !slices.ContainsFunc(p.choices(), func(w way) bool { return (!w.left || i == 0) && (!w.right || i+1 == len(parts)) }) {
			placed = false
			c.found = append(c.found, Misfit{Kind: WrongEdge, Board: board, Length: number, Blank: p.id})
		}
		if p.end && !atEnd {
			c.found = append(c.found, Misfit{Kind: NoEnd, Board: board, Length: number, Blank: p.id})
		}
	}
	// On a pattern a place may be as much as near early in every gap, and nothing is over yet.
	if over := wide - c.width; over > near && (c.pitch == 0 || !c.fits(parts)) {
		c.found = append(c.found, Misfit{Kind: TooWide, Board: board, Length: number, By: mm(over)})
	} else if over <= near && placed && !c.fits(parts) {
		c.found = append(c.found, Misfit{Kind: OffPattern, Board: board, Length: number, By: mm(c.over(parts))})
	}
}

func (c *checking) fits(parts []*part) bool {
	_, ok := c.inOrder(&c.job.board.shape, parts)
	return ok
}

// over gives how far parts in their order reach over the board's width, or into one that lies at its right edge.
func (c *checking) over(parts []*part) unit {
	endless := c.job.board.shape
	endless.right = unit(len(parts)+1) * (2*c.width + c.pitch + c.kerf)
	end, most := -c.kerf, unit(0)
	for i, p := range parts {
		best, least := unit(0), unit(-1)
		for _, w := range p.choices() {
			if w.left && i > 0 || w.right && i+1 < len(parts) {
				continue
			}
			at, over := w.at, max(0, end+c.kerf-w.at)
			if !w.left && !w.right {
				at, _ = c.start(&endless, p, w, end+c.kerf)
				over = max(0, at+p.width-c.width)
			}
			if least < 0 || over < least || over == least && at < best {
				best, least = at, over
			}
		}
		end, most = best+p.width, max(most, least)
	}
	return most
}

func (m Misfit) String() string {
	s := string(m.Kind)
	if m.Blank != "" {
		s = m.Blank + ": " + s
	}
	if m.By > 0 {
		s += fmt.Sprintf(" by %v mm", m.By)
	}
	if m.Board != 0 || m.Length != 0 {
		s += fmt.Sprintf(", board %d", m.Board)
	}
	if m.Length > 0 {
		s += fmt.Sprintf(", length %d", m.Length)
	}
	return s
}
