package cutting

import (
	"fmt"
	"math"
	"slices"
)

// slack is far under a kerf and over the hundredths that places are rounded to.
const slack = 0.02

func about(a, b float64) bool { return math.Abs(a-b) <= slack }

// same takes only the last places of adding up for nothing.
func same(a, b float64) bool { return math.Abs(a-b) <= 1e-6 }

// rect is a rectangle on a board, in mm.
type rect struct{ left, bottom, right, top float64 }

// apartBy says whether a saw can part two rectangles: a kerf lies between them, one way or the other.
func (r rect) apartBy(kerf float64, o rect) bool {
	return r.right+kerf <= o.left+slack || o.right+kerf <= r.left+slack || r.top+kerf <= o.bottom+slack || o.top+kerf <= r.bottom+slack
}

func (r rect) like(o rect) bool {
	return about(r.left, o.left) && about(r.right, o.right) && about(r.bottom, o.bottom) && about(r.top, o.top)
}

// wrong holds a layout against what a saw can do, without any of the package's
// own arithmetic, and gives a line for each thing that is wrong.
func wrong(board Board, blanks []Blank, offcuts []Offcut, kerf float64, l Layout) []string {
	w := &judge{board: board, kerf: kerf, blanks: map[string]Blank{}, cut: map[string]int{}}
	for _, b := range blanks {
		w.blanks[b.ID] = b
	}
	number := 0
	names := map[string]bool{}
	for _, s := range l.Stocks {
		from := Offcut{Left: 0, Right: board.Width, Height: board.Height, LeftEdge: true, RightEdge: true, BottomEnd: true, TopEnd: true}
		w.place = "board " + fmt.Sprint(s.Board)
		if s.Board == 0 {
			w.place = "offcut " + s.Offcut
			i := slices.IndexFunc(offcuts, func(o Offcut) bool { return o.ID == s.Offcut })
			w.must(i >= 0 && !names[s.Offcut], "is not in stock, or used twice")
			if i < 0 {
				continue
			}
			from = offcuts[i]
			names[s.Offcut] = true
		} else {
			number++
			w.must(s.Board == number && s.Offcut == "", "is not numbered %d", number)
		}
		w.must(about(s.Width, from.Right-from.Left) && about(s.Height, from.Height), "is %v x %v", s.Width, s.Height)
		w.stock(from, s)
		for _, r := range s.Left {
			w.must(!names[r.ID], "%s is there twice", r.ID)
			names[r.ID] = true
		}
	}
	w.place = "in all"
	w.must(number == l.Boards && l.Least <= l.Boards && l.Proven == (l.Least == l.Boards), "%d boards, at least %d of %d, proven %v", number, l.Least, l.Boards, l.Proven)
	for _, b := range blanks {
		w.must(w.cut[b.ID] == 1, "%s is cut %d times", b.ID, w.cut[b.ID])
	}
	w.must(len(w.cut) == len(blanks), "%d blanks are cut of %d", len(w.cut), len(blanks))
	return w.lines
}

type judge struct {
	board  Board
	kerf   float64
	blanks map[string]Blank
	cut    map[string]int
	place  string
	lines  []string
}

func (w *judge) must(ok bool, format string, args ...any) {
	if !ok {
		w.lines = append(w.lines, w.place+": "+fmt.Sprintf(format, args...))
	}
}

// stock looks at one board or offcut: crosscuts part the lengths, rips part what lies in one.
func (w *judge) stock(from Offcut, s Stock) {
	whole := rect{0, 0, from.Right - from.Left, from.Height}
	var parts []rect // blanks and remainders
	before := math.Inf(-1)
	for _, l := range s.Lengths {
		w.must(l.Bottom >= -slack && l.Top <= from.Height+slack && l.Bottom >= before+w.kerf-slack, "length from %v to %v follows on %v", l.Bottom, l.Top, before)
		before = l.Top
		w.must(len(l.Pieces) > 0, "nothing is cut from a length")
		highest, behind := 0.0, math.Inf(-1)
		for _, p := range l.Pieces {
			w.must(p.Left >= behind+w.kerf-slack, "%s at %v follows on %v", p.Blank, p.Left, behind)
			behind = p.Right
			highest = max(highest, p.Top-p.Bottom)
			w.must(about(p.Bottom, l.Bottom) && p.Top <= l.Top+slack || about(p.Top, l.Top) && p.Bottom >= l.Bottom-slack, "%s lies in the middle of its length", p.Blank)
			w.cut[p.Blank]++
			w.piece(from, p)
			parts = append(parts, rect{p.Left, p.Bottom, p.Right, p.Top})
		}
		w.must(about(highest, l.Top-l.Bottom), "length of %v for a blank of %v", l.Top-l.Bottom, highest)
	}
	for _, r := range s.Left {
		at := rect{r.X, r.Y, r.X + r.Right - r.Left, r.Y + r.Height}
		parts = append(parts, at)
		w.must(about(r.Left-r.X, from.Left), "%s lies at %v and is from %v", r.ID, r.X, r.Left)
		w.must(r.LeftEdge == (from.LeftEdge && same(r.X, 0)) && r.RightEdge == (from.RightEdge && same(at.right, whole.right)), "%s has other side edges: %+v", r.ID, r)
		w.must(r.BottomEnd == (from.BottomEnd && same(r.Y, 0)) && r.TopEnd == (from.TopEnd && same(at.top, whole.top)), "%s has other ends: %+v", r.ID, r)
		w.must(r.Usable == (at.right-at.left >= 50-slack && at.top-at.bottom >= 300-slack), "%s usable: %v", r.ID, r.Usable)
	}
	for i, r := range parts {
		w.must(r.left >= -slack && r.bottom >= -slack && r.right <= whole.right+slack && r.top <= whole.top+slack, "%v reaches outside", r)
		for _, o := range parts[:i] {
			w.must(r.apartBy(w.kerf, o), "no kerf parts %v and %v", r, o)
		}
	}
	w.must(w.covered(whole, parts) || w.kerf == 0, "more is lost than kerfs and slivers")
}

// covered says whether what is neither blank nor remainder is no wider than two kerfs, at a grid of places.
func (w *judge) covered(whole rect, parts []rect) bool {
	const side = 24
	reach := 2*w.kerf + slack
	for i := range side {
		for k := range side {
			x, y := whole.right*(float64(i)+0.5)/side, whole.top*(float64(k)+0.5)/side
			if !slices.ContainsFunc(parts, func(r rect) bool {
				return x >= r.left-reach && x <= r.right+reach && y >= r.bottom-reach && y <= r.top+reach
			}) {
				return false
			}
		}
	}
	return true
}

// piece looks at one blank in its place: size, edges, end, and where it lies on the pattern.
func (w *judge) piece(from Offcut, p Piece) {
	b, known := w.blanks[p.Blank]
	w.must(known, "%s was not asked for", p.Blank)
	w.must(about(p.Right-p.Left, b.Right-b.Left) && about(p.Top-p.Bottom, b.Height), "%s is cut %v x %v", b.ID, p.Right-p.Left, p.Top-p.Bottom)
	left, right, at := b.LeftEdge, b.RightEdge, b.Left
	if p.Turned {
		w.must(w.board.Turnable, "%s is turned", b.ID)
		left, right, at = right, left, w.board.Width-b.Right
	}
	w.must(!left || from.LeftEdge && about(p.Left, 0), "%s has no left edge", b.ID)
	w.must(!right || from.RightEdge && about(p.Right, from.Right-from.Left), "%s has no right edge", b.ID)
	w.must(!b.End || from.BottomEnd && about(p.Bottom, 0) || from.TopEnd && about(p.Top, from.Height), "%s has no factory end", b.ID)
	if w.board.Pitch > 0 {
		pitches := (from.Left + p.Left - at) / w.board.Pitch
		w.must(about(pitches*w.board.Pitch, math.Round(pitches)*w.board.Pitch), "%s is off the pattern by %v pitches", b.ID, pitches)
	}
}
