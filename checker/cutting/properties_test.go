package cutting

import (
	"context"
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// order is a job drawn at random.
type order struct {
	board   Board
	kerf    float64
	blanks  []Blank
	offcuts []Offcut
}

// orders draws jobs of sizes that often just fit, and just do not.
func orders(least, most int) *rapid.Generator[order] {
	return rapid.Custom(func(t *rapid.T) order {
		o := order{board: Board{Width: 600, Height: 2400, Pitch: rapid.SampledFrom([]float64{0, 40, 50, 75}).Draw(t, "pitch"), Turnable: rapid.Bool().Draw(t, "turnable")},
			kerf: rapid.SampledFrom([]float64{0, 2, 3.2}).Draw(t, "kerf")}
		widths := []float64{38, 46, 150, 198, 280, 298, 300, 360, 400, 598, 600}
		heights := []float64{380, 398, 798, 1000, 1199, 1398, 2000, 2400}
		for range rapid.IntRange(least, most).Draw(t, "blanks") {
			wide := rapid.SampledFrom(widths).Draw(t, "wide")
			b := Blank{ID: fmt.Sprintf("B%d", len(o.blanks)+1), Height: rapid.SampledFrom(heights).Draw(t, "high"), End: rapid.IntRange(0, 3).Draw(t, "end") == 0}
			b.Left, b.LeftEdge, b.RightEdge = stretches(wide).draw(t)
			b.Right = b.Left + wide
			o.blanks = append(o.blanks, b)
		}
		for range rapid.IntRange(0, 2).Draw(t, "offcuts") {
			wide := rapid.SampledFrom(widths).Draw(t, "offcut's width")
			c := Offcut{ID: fmt.Sprintf("O%d", len(o.offcuts)+1), Height: rapid.SampledFrom(heights).Draw(t, "offcut's height"),
				BottomEnd: rapid.Bool().Draw(t, "bottom end"), TopEnd: rapid.Bool().Draw(t, "top end")}
			c.Left, c.LeftEdge, c.RightEdge = stretches(wide).draw(t)
			c.Right = c.Left + wide
			o.offcuts = append(o.offcuts, c)
		}
		return o
	})
}

// stretches draws where a width lies in 600, and which edges it has or needs.
type stretches float64

func (s stretches) draw(t *rapid.T) (left float64, leftEdge, rightEdge bool) {
	wide := float64(s)
	switch rapid.IntRange(0, 3).Draw(t, "edge") {
	case 0:
		return 0, true, wide == 600
	case 1:
		return 600 - wide, wide == 600, true
	case 2:
		return float64(rapid.IntRange(0, int(600-wide)).Draw(t, "left")), false, false
	}
	return 40 * float64(rapid.IntRange(0, int(600-wide)/40).Draw(t, "pitches")), false, false
}

func (o order) plan(t *rapid.T, s Settings) Layout {
	before := fmt.Sprintf("%+v", o)
	l, err := Plan(context.Background(), o.board, o.blanks, o.offcuts, s)
	if err != nil {
		t.Fatal(err)
	}
	if before != fmt.Sprintf("%+v", o) {
		t.Fatal("planning changed what it was given")
	}
	for _, line := range append(wrong(o.board, o.blanks, o.offcuts, o.kerf, l), sawnAsListed(l)...) {
		t.Error(line)
	}
	return l
}

func TestTheSearchFindsTheLeastNumberOfBoards(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(1, 6).Draw(t, "job")
		want := newBrute(o.board, o.blanks, o.offcuts, o.kerf).boards()
		if l := o.plan(t, Usual(o.kerf)); l.Boards != want || !l.Proven {
			t.Fatalf("%d boards, proven %v; trying everything gives %d", l.Boards, l.Proven, want)
		}
		s := Usual(o.kerf)
		s.Nodes = rapid.SampledFrom([]int{0, 5, 20}).Draw(t, "steps")
		if l := o.plan(t, s); l.Boards < want || l.Least > want {
			t.Fatalf("with %d steps %d boards, at least %d; trying everything gives %d", s.Nodes, l.Boards, l.Least, want)
		}
	})
}

func TestALargerPlanCanBeCutWhateverItsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(8, 90).Draw(t, "job")
		s := Usual(o.kerf)
		s.Nodes = 500 // a plan, not the best one, is what is looked at
		l := o.plan(t, s)
		shuffled := o
		shuffled.blanks, shuffled.offcuts = slices.Clone(o.blanks), slices.Clone(o.offcuts)
		slices.Reverse(shuffled.offcuts)
		for i := range shuffled.blanks {
			k := rapid.IntRange(i, len(shuffled.blanks)-1).Draw(t, "place")
			shuffled.blanks[i], shuffled.blanks[k] = shuffled.blanks[k], shuffled.blanks[i]
		}
		if diff := cmp.Diff(l, shuffled.plan(t, s)); diff != "" {
			t.Fatalf("another order gives another plan\n%s", diff)
		}
	})
}

// A plan that is found must pass the check of plans.
func TestAPlanFoundPassesTheCheck(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(1, 12).Draw(t, "job")
		o.offcuts = nil // the check knows boards only
		s := Usual(o.kerf)
		s.Nodes = 500
		misfits, err := Check(o.board, assigned(o.plan(t, s)), o.blanks, o.kerf)
		if err != nil || len(misfits) > 0 {
			t.Fatalf("%v, %v", misfits, err)
		}
	})
}

func assigned(l Layout) []Assignment {
	var out []Assignment
	for _, s := range l.Stocks {
		a := Assignment{Board: s.Board}
		for _, of := range s.Lengths {
			var ids []string
			for _, p := range of.Pieces {
				ids = append(ids, p.Blank)
			}
			a.Lengths = append(a.Lengths, ids)
		}
		out = append(out, a)
	}
	return out
}

// What is left of one job can be stock for the next: nothing is refused, and the pattern goes on.
func TestWhatIsLeftIsStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		o := orders(1, 6).Draw(t, "job")
		s := Usual(o.kerf)
		s.Nodes = 500
		next := orders(1, 6).Draw(t, "next job")
		next.board, next.kerf, next.offcuts = o.board, o.kerf, nil
		without := next.plan(t, Usual(o.kerf)).Boards
		for _, stock := range o.plan(t, s).Stocks {
			for _, r := range stock.Left {
				if r.Usable {
					next.offcuts = append(next.offcuts, r.Offcut)
				}
			}
		}
		if with := next.plan(t, s).Boards; with > without+1 { // fewer steps may miss one
			t.Fatalf("%d boards with offcuts, %d without", with, without)
		}
	})
}

func TestTheTreeFindsWhatGoingThroughFinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 40).Draw(t, "places")
		tree, row := newTree(n), make([]unit, n)
		for i := range row {
			row[i] = none
		}
		for range rapid.IntRange(0, 60).Draw(t, "changes") {
			i, v := rapid.IntRange(0, n-1).Draw(t, "place"), rapid.Int64Range(-5, 5).Draw(t, "value")
			tree.set(i, v)
			row[i] = v
			from, least := rapid.IntRange(0, n+2).Draw(t, "from"), rapid.Int64Range(-5, 6).Draw(t, "least")
			want := -1
			for k := from; k < n && want < 0; k++ {
				if row[k] >= least {
					want = k
				}
			}
			if got := tree.first(from, least); got != want {
				t.Fatalf("%v from %d with at least %d: %d, want %d", row, from, least, got, want)
			}
		}
	})
}
