package cutting

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"
)

// InvalidError is input that no board or blank can have.
type InvalidError struct {
	What    string // "board", "blank", "offcut", "settings"
	ID      string // of the blank or offcut
	Problem string
}

func (e *InvalidError) Error() string {
	if e.ID == "" {
		return e.What + ": " + e.Problem
	}
	return e.What + " " + e.ID + ": " + e.Problem
}

// unit is a length in millionths of a millimetre: whole numbers, so that alike
// blanks are found by comparing, and a 64th of an inch is exact.
type unit = int64

const perMM = 1e6

// near is what may lack, in a kerf or at an edge, and still fits: what rounding
// to hundredths of a millimetre leaves, far below what a saw knows.
const near unit = 5_000

// most is a bound on every length, in mm, against slips of the unit.
const most = 1e6

func units(mm float64) unit { return unit(math.Round(mm * perMM)) }
func mm(u unit) float64     { return float64(u) / perMM }

// way is one of the ways in which a part can be cut: as it goes on the wall, or turned.
type way struct {
	at          unit // from the whole panel's left edge: its place if it needs an edge, otherwise the first place on the pattern
	left, right bool // needs the factory edge of the board, as the board lies
	turned      bool
}

// spec is what makes parts interchangeable.
type spec struct {
	width, height unit
	ways          [2]way
	turns         bool // the second way is another one
	end           bool
}

// part is a blank as the planner sees it.
type part struct {
	spec
	id   string
	kind int // parts of one spec share it, and no others
}

// choices gives the ways that differ.
func (p *part) choices() []way {
	if p.turns {
		return p.ways[:]
	}
	return p.ways[:1]
}

// shape is a board or offcut as the planner sees it, in the whole panel's cover width.
type shape struct {
	left, right, height unit
	leftEdge, rightEdge bool
	bottomEnd, topEnd   bool
}

func (b *shape) ends() int {
	n := 0
	if b.bottomEnd {
		n++
	}
	if b.topEnd {
		n++
	}
	return n
}

// bin is a board or an offcut.
type bin struct {
	shape
	offcut string // ID; empty for a board
}

type job struct {
	width, height, pitch, kerf unit
	turnable                   bool
	parts                      []*part // tallest first
	offcuts                    []*bin  // smallest first
	board                      *bin
	taken                      map[string]bool // offcuts' IDs
}

// newJob takes the input over, sorted so that its order does not matter.
func newJob(board Board, blanks []Blank, offcuts []Offcut, kerf float64) (*job, error) {
	if err := board.check(kerf); err != nil {
		return nil, err
	}
	j := &job{width: units(board.Width), height: units(board.Height), pitch: units(board.Pitch), kerf: units(kerf),
		turnable: board.Turnable, taken: map[string]bool{}}
	j.board = &bin{shape: shape{0, j.width, j.height, true, true, true, true}}
	var errs []error
	ids := make(map[string]bool, len(blanks))
	for _, b := range blanks {
		p, problem := j.part(b)
		switch {
		case b.ID == "":
			problem = "has no ID"
		case ids[b.ID]:
			problem = "is there twice"
		}
		if problem != "" {
			errs = append(errs, &InvalidError{"blank", b.ID, problem})
		}
		ids[b.ID] = true
		j.parts = append(j.parts, p)
	}
	for _, o := range offcuts {
		b, problem := j.bin(o)
		switch {
		case o.ID == "":
			problem = "has no ID"
		case j.taken[o.ID]:
			problem = "is there twice"
		}
		if problem != "" {
			errs = append(errs, &InvalidError{"offcut", o.ID, problem})
		}
		j.taken[o.ID] = true
		j.offcuts = append(j.offcuts, b)
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	slices.SortFunc(j.parts, func(a, b *part) int { return cmp.Or(a.compare(b.spec), cmp.Compare(a.id, b.id)) })
	for i, p := range j.parts {
		if i > 0 {
			p.kind = j.parts[i-1].kind
			if p.spec != j.parts[i-1].spec {
				p.kind++
			}
		}
	}
	slices.SortFunc(j.offcuts, func(a, b *bin) int {
		return cmp.Or(cmp.Compare(a.area(), b.area()), cmp.Compare(a.left, b.left), cmp.Compare(a.height, b.height), cmp.Compare(a.offcut, b.offcut))
	})
	return j, nil
}

func (b *shape) area() float64 { return float64(b.right-b.left) * float64(b.height) }

// compare puts the tallest first, then those that need an edge, then the widest.
func (s spec) compare(t spec) int {
	return cmp.Or(cmp.Compare(t.height, s.height), yes(t.edges(), s.edges()), cmp.Compare(t.width, s.width), yes(t.end, s.end),
		cmp.Compare(s.ways[0].at, t.ways[0].at), yes(s.ways[0].right, t.ways[0].right), yes(s.ways[0].left, t.ways[0].left))
}

func (s spec) edges() bool { return s.ways[0].left || s.ways[0].right }

// yes compares like cmp.Compare, false before true.
func yes(a, b bool) int {
	switch {
	case a == b:
		return 0
	case b:
		return -1
	}
	return 1
}

// isLength says whether a number is a length at all: more than rounding can make or hide, and up to the bound.
func isLength(mm float64) bool { return mm >= 0.0199 && mm <= most } // 521.02 - 521 is a hair less than 0.02

func (b Board) check(kerf float64) error {
	switch {
	case !isLength(b.Width) || !isLength(b.Height):
		return &InvalidError{"board", "", fmt.Sprintf("no board is %v mm x %v mm", b.Width, b.Height)}
	case b.Pitch != 0 && !(b.Pitch >= 1 && b.Pitch <= most):
		return &InvalidError{"board", "", fmt.Sprintf("no slats have a pitch of %v mm", b.Pitch)}
	case !(kerf >= 0 && kerf <= most):
		return &InvalidError{"settings", "", fmt.Sprintf("no saw has a kerf of %v mm", kerf)}
	}
	return nil
}

func (s Settings) check() error {
	if !(s.LeastWidth >= 0) || !(s.LeastHeight >= 0) || s.Nodes < 0 {
		return &InvalidError{"settings", "", "no least size and no number of steps is less than 0"}
	}
	return nil
}

// stretch takes over a stretch of the cover width and a height.
func (j *job) stretch(left, right, height float64, leftEdge, rightEdge bool) (l, r, h unit, problem string) {
	if !isLength(height) || !(left >= -1 && left <= most) || !(right <= most) || !isLength(right-left) {
		return 0, 0, 0, fmt.Sprintf("nothing has a width from %v mm to %v mm and a height of %v mm", left, right, height)
	}
	l, r, h = units(left), units(right), units(height)
	switch {
	case l < -near || r > j.width+near:
		problem = fmt.Sprintf("from %v mm to %v mm is not within the board's width of %v mm", left, right, mm(j.width))
	case h > j.height+near:
		problem = fmt.Sprintf("%v mm is higher than the board's %v mm", height, mm(j.height))
	case leftEdge && l > near:
		problem = fmt.Sprintf("has the left factory edge and starts at %v mm", left)
	case rightEdge && r < j.width-near:
		problem = fmt.Sprintf("has the right factory edge and ends at %v mm of %v mm", right, mm(j.width))
	}
	return max(l, 0), min(r, j.width), min(h, j.height), problem
}

func (j *job) part(b Blank) (*part, string) {
	l, r, h, problem := j.stretch(b.Left, b.Right, b.Height, b.LeftEdge, b.RightEdge)
	p := &part{id: b.ID, spec: spec{width: r - l, height: h, end: b.End}}
	p.ways[0] = way{at: j.place(l, r-l, b.LeftEdge, b.RightEdge), left: b.LeftEdge, right: b.RightEdge}
	if j.turnable {
		p.ways[1] = way{at: j.place(j.width-r, r-l, b.RightEdge, b.LeftEdge), left: b.RightEdge, right: b.LeftEdge, turned: true}
		a, c := p.ways[0], p.ways[1]
		p.turns = a.at != c.at || a.left != c.left || a.right != c.right
	}
	return p, problem
}

// place gives the way's at: the place of a part that needs an edge, the first place on the pattern of one that needs none.
func (j *job) place(left, width unit, leftEdge, rightEdge bool) unit {
	switch {
	case leftEdge:
		return 0
	case rightEdge:
		return j.width - width
	case j.pitch == 0:
		return 0
	}
	return (left+near)%j.pitch - near // just before a pitch is that pitch
}

func (j *job) bin(o Offcut) (*bin, string) {
	l, r, h, problem := j.stretch(o.Left, o.Right, o.Height, o.LeftEdge, o.RightEdge)
	return &bin{shape{l, r, h, o.LeftEdge, o.RightEdge, o.BottomEnd, o.TopEnd}, o.ID}, problem
}

// start gives the first place for a part in a board or offcut that is not before a place, and whether there is one.
func (j *job) start(b *shape, p *part, w way, after unit) (unit, bool) {
	at := w.at
	switch {
	case w.left && !b.leftEdge || w.right && !b.rightEdge:
		return 0, false
	case w.left || w.right:
	case j.pitch == 0:
		at = after
	case at < after-near:
		at += (after - near - at + j.pitch - 1) / j.pitch * j.pitch
	}
	return at, at >= after-near && at+p.width <= b.right+near
}
