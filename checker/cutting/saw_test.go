package cutting

import (
	"context"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// sawnAsListed carries a saw list out on whole stocks, with a saw that knows only
// rectangles and kerfs, and gives a line for each blank or offcut that does not
// come off as the layout says.
func sawnAsListed(l Layout) []string {
	var lines []string
	cuts := Cuts(l)
	for _, s := range l.Stocks {
		left := []rect{{0, 0, s.Width, s.Height}}
		off := map[string]int{}
		rank := map[CutKind]int{Crosscut: 0, Rip: 1, Trim: 2}
		last := 0
		for len(cuts) > 0 && cuts[0].Board == s.Board && cuts[0].Offcut == s.Offcut {
			c := cuts[0]
			cuts = cuts[1:]
			if rank[c.Kind] < last {
				lines = append(lines, fmt.Sprintf("%v after a later step", c))
			}
			last = rank[c.Kind]
			for _, id := range append(c.Blanks, c.Offcuts...) {
				off[id]++
			}
			left = split(left, c, s, l.Kerf)
		}
		for _, of := range s.Lengths {
			for _, p := range of.Pieces {
				left = take(left, rect{p.Left, p.Bottom, p.Right, p.Top}, p.Blank, &lines)
				if whole := p.Right-p.Left >= s.Width-slack && p.Top-p.Bottom >= s.Height-slack; !whole && off[p.Blank] != 1 {
					lines = append(lines, fmt.Sprintf("%s falls off %d times", p.Blank, off[p.Blank]))
				}
				delete(off, p.Blank)
			}
		}
		for _, r := range s.Left {
			left = take(left, rect{r.X, r.Y, r.X + r.Right - r.Left, r.Y + r.Height}, r.ID, &lines)
			if off[r.ID] != 1 {
				lines = append(lines, fmt.Sprintf("%s falls off %d times", r.ID, off[r.ID]))
			}
			delete(off, r.ID)
		}
		if len(left)+len(off) > 0 {
			lines = append(lines, fmt.Sprintf("left over: %v and %v", left, off))
		}
	}
	if len(cuts) > 0 {
		lines = append(lines, fmt.Sprintf("cuts after the last stock: %v", cuts))
	}
	return lines
}

// split cuts those rectangles that a cut runs through, from edge to edge.
func split(left []rect, c Cut, s Stock, kerf float64) []rect {
	var out []rect
	near, far := c.Mark, c.Mark+kerf
	if !c.Beyond {
		near, far = c.Mark-kerf, c.Mark
	}
	of := s.Lengths[c.Length-1]
	if c.Kind == Trim {
		near, far = near+of.Bottom, far+of.Bottom
	}
	for _, r := range left {
		var a, b rect
		switch inLength := about(r.bottom, of.Bottom) && about(r.top, of.Top); {
		case c.Kind == Crosscut:
			a, b = rect{r.left, r.bottom, r.right, min(r.top, near)}, rect{r.left, max(r.bottom, far), r.right, r.top}
		case c.Kind == Rip && inLength:
			a, b = rect{r.left, r.bottom, min(r.right, near), r.top}, rect{max(r.left, far), r.bottom, r.right, r.top}
		case c.Kind == Trim && inLength && isOf(of, r, c.Blanks):
			a, b = rect{r.left, r.bottom, r.right, min(r.top, near)}, rect{r.left, max(r.bottom, far), r.right, r.top}
		default:
			a = r
		}
		for _, x := range []rect{a, b} {
			if x.right-x.left > slack && x.top-x.bottom > slack {
				out = append(out, x)
			}
		}
	}
	return out
}

// isOf says whether a rectangle is what a blank is trimmed from.
func isOf(of Length, r rect, blanks []string) bool {
	for _, p := range of.Pieces {
		if len(blanks) == 1 && p.Blank == blanks[0] {
			return about(p.Left, r.left) && about(p.Right, r.right)
		}
	}
	return false
}

func take(left []rect, want rect, id string, lines *[]string) []rect {
	for i, r := range left {
		if r.like(want) {
			return append(left[:i:i], left[i+1:]...)
		}
	}
	*lines = append(*lines, fmt.Sprintf("%s, %v, does not come off", id, want))
	return left
}

func TestTheSawListIsWhatAFitterCuts(t *testing.T) {
	// Kerf 2, a slat every 40. A has the left edge. B is 100 wide and begins on a pitch: 200 + 2 = 202, so at 240.
	// Rips: A up to 200, the blade beyond it. From 202 to 240 - 2 = 238 a strip of 36 falls off. B ends at 340; from
	// 342 to 600 are 258. B is trimmed from 2000 to 1000; from 1002 to 2000 are 998. All of it comes from the length of
	// 2000; C and its kerf would need 2000 + 2 + 398 = 2400, and that is what there is.
	blanks := []Blank{
		{ID: "A", Left: 0, Right: 200, Height: 2000, LeftEdge: true},
		{ID: "B", Left: 80, Right: 180, Height: 1000},
		{ID: "C", Left: 0, Right: 600, Height: 398, LeftEdge: true, RightEdge: true},
	}
	l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
	if err != nil {
		t.Fatal(err)
	}
	want := []Stock{{Board: 1, Width: 600, Height: 2400,
		Lengths: []Length{
			{Bottom: 0, Top: 2000, Pieces: []Piece{{Blank: "A", Left: 0, Right: 200, Bottom: 0, Top: 2000}, {Blank: "B", Left: 240, Right: 340, Bottom: 0, Top: 1000}}},
			{Bottom: 2002, Top: 2400, Pieces: []Piece{{Blank: "C", Left: 0, Right: 600, Bottom: 2002, Top: 2400}}},
		},
		Left: []Remainder{
			{Offcut: Offcut{ID: "1/1", Left: 202, Right: 238, Height: 2000, BottomEnd: true}, X: 202, Y: 0},
			{Offcut: Offcut{ID: "1/2", Left: 240, Right: 340, Height: 998}, X: 240, Y: 1002, Usable: true},
			{Offcut: Offcut{ID: "1/3", Left: 342, Right: 600, Height: 2000, RightEdge: true, BottomEnd: true}, X: 342, Y: 0, Usable: true},
		}}}
	if diff := cmp.Diff(want, l.Stocks); diff != "" {
		t.Errorf("layout, want - got +\n%s", diff)
	}
	cuts := []Cut{
		{Board: 1, Kind: Crosscut, Length: 1, Mark: 2000, Back: 400, Beyond: true, Blanks: []string{"C"}},
		{Board: 1, Kind: Rip, Length: 1, Mark: 200, Back: 400, Beyond: true, Blanks: []string{"A"}},
		{Board: 1, Kind: Rip, Length: 1, Mark: 240, Back: 360, Offcuts: []string{"1/1"}},
		{Board: 1, Kind: Rip, Length: 1, Mark: 340, Back: 260, Beyond: true, Offcuts: []string{"1/3"}},
		{Board: 1, Kind: Trim, Length: 1, Mark: 1000, Back: 1000, Beyond: true, Blanks: []string{"B"}, Offcuts: []string{"1/2"}},
	}
	if diff := cmp.Diff(cuts, Cuts(l)); diff != "" {
		t.Errorf("saw list, want - got +\n%s", diff)
	}
}

func TestAFactoryEndAtTheTopIsKeptByATrim(t *testing.T) {
	// All need an end. A and B, side by side, have the bottom one; C and D, 900 high, the top one: 2400 - 900 = 1500.
	// D is trimmed to 700 at its lower end: 1700 is 200 above the length's bottom, and 198 fall off below the kerf.
	// The rest lies between: from 1000 + 2 to 1500 - 2, 496 high.
	blanks := []Blank{
		{ID: "A", Left: 0, Right: 299, Height: 1000, LeftEdge: true, End: true},
		{ID: "B", Left: 301, Right: 600, Height: 1000, RightEdge: true, End: true},
		{ID: "C", Left: 0, Right: 299, Height: 900, LeftEdge: true, End: true},
		{ID: "D", Left: 301, Right: 600, Height: 700, RightEdge: true, End: true},
	}
	l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
	if err != nil {
		t.Fatal(err)
	}
	cuts := []Cut{
		{Board: 1, Kind: Crosscut, Length: 1, Mark: 1000, Back: 1400, Beyond: true},
		{Board: 1, Kind: Crosscut, Length: 2, Mark: 1500, Back: 900, Offcuts: []string{"1/1"}},
		{Board: 1, Kind: Rip, Length: 1, Mark: 299, Back: 301, Beyond: true, Blanks: []string{"A", "B"}},
		{Board: 1, Kind: Rip, Length: 2, Mark: 299, Back: 301, Beyond: true, Blanks: []string{"C"}},
		{Board: 1, Kind: Trim, Length: 2, Mark: 200, Back: 700, Blanks: []string{"D"}, Offcuts: []string{"1/2"}},
	}
	if diff := cmp.Diff(cuts, Cuts(l)); diff != "" {
		t.Errorf("saw list, want - got +\n%s", diff)
	}
	left := []Remainder{
		{Offcut: Offcut{ID: "1/1", Left: 0, Right: 600, Height: 496, LeftEdge: true, RightEdge: true}, X: 0, Y: 1002, Usable: true},
		{Offcut: Offcut{ID: "1/2", Left: 301, Right: 600, Height: 198, RightEdge: true}, X: 301, Y: 1500},
	}
	if diff := cmp.Diff(left, l.Stocks[0].Left); diff != "" {
		t.Errorf("what is left, want - got +\n%s", diff)
	}
}

func TestAWholeBoardNeedsNoCut(t *testing.T) {
	l, err := Plan(context.Background(), slatted, []Blank{{ID: "A", Right: 600, Height: 2400, LeftEdge: true, RightEdge: true, End: true}}, nil, Usual(2))
	if err != nil || len(Cuts(l)) != 0 || l.Boards != 1 {
		t.Errorf("%d boards, cuts %v, %v", l.Boards, Cuts(l), err)
	}
}

// A gap of 3 between two blanks is more than one kerf of 2 and less than two: the second pass takes a millimetre, and nothing falls off.
func TestAGapOfLessThanTwoKerfsIsSawnTwice(t *testing.T) {
	blanks := []Blank{{ID: "A", Left: 0, Right: 297, Height: 2400, LeftEdge: true}, {ID: "B", Left: 300, Right: 600, Height: 2400, RightEdge: true}}
	l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
	if err != nil {
		t.Fatal(err)
	}
	want := []Cut{
		{Board: 1, Kind: Rip, Length: 1, Mark: 297, Back: 303, Beyond: true, Blanks: []string{"A"}},
		{Board: 1, Kind: Rip, Length: 1, Mark: 300, Back: 300, Blanks: []string{"B"}},
	}
	if diff := cmp.Diff(want, Cuts(l)); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}
