package planar

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// closely compares coordinates to well under the grain that overlays are rounded to.
var closely = cmpopts.EquateApprox(0, 1e-9)

func ring(xy ...float64) []Point {
	var out []Point
	for i := 0; i < len(xy); i += 2 {
		out = append(out, Point{xy[i], xy[i+1]})
	}
	return out
}

var (
	square = Rect(0, 0, 10, 10)
	// frame is the square with a hole of 4 by 4 in its middle.
	frame = Polygon{Outer: square.Outer, Holes: [][]Point{ring(3, 3, 3, 7, 7, 7, 7, 3)}}
	// raked has a top that rises by 8 over a width of 4 up to (4, 12) and is level from there: the area is 10*4 + 4*8/2 + 6*8 = 104.
	raked = Polygon{Outer: ring(0, 0, 10, 0, 10, 12, 4, 12, 0, 4)}
	// slanted narrows from 10 at the bottom to 4 at the top: both sides lean to the right.
	slanted = Polygon{Outer: ring(0, 0, 10, 0, 12, 8, 8, 8)}
)

func TestAreaLeavesHolesOut(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		want float64
	}{
		{"square", square, 100},
		{"square with a hole", frame, 100 - 16},
		{"raked", raked, 10*4 + 4*8/2 + 6*8},
		{"slanted: mean of 10 and 4 over a height of 8", slanted, 7 * 8},
		{"nothing", Polygon{}, 0},
	} {
		if got := c.p.Area(); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: area %v, want %v", c.name, got, c.want)
		}
	}
}

func TestMinusLeavesWhatIsNotTakenOut(t *testing.T) {
	for _, c := range []struct {
		name string
		from Polygon
		take []Polygon
		want []Polygon
	}{
		{"nothing taken", square, nil, []Polygon{square}},
		{"elsewhere", square, []Polygon{Rect(20, 0, 30, 10)}, []Polygon{square}},
		{"touching along a side", square, []Polygon{Rect(10, 0, 20, 10), Rect(0, 10, 10, 20)}, []Polygon{square}},
		{"touching at a corner", square, []Polygon{Rect(10, 10, 20, 20)}, []Polygon{square}},
		{"an upper corner leaves an L", square, []Polygon{Rect(6, 6, 12, 12)},
			[]Polygon{{Outer: ring(0, 0, 10, 0, 10, 6, 6, 6, 6, 10, 0, 10)}}},
		{"the lower left corner leaves an L that starts lowest, not leftmost", square, []Polygon{Rect(-1, -1, 4, 4)},
			[]Polygon{{Outer: ring(4, 0, 10, 0, 10, 10, 0, 10, 0, 4, 4, 4)}}},
		{"the middle of the top leaves a U", square, []Polygon{Rect(3, 4, 7, 12)},
			[]Polygon{{Outer: ring(0, 0, 10, 0, 10, 10, 7, 10, 7, 4, 3, 4, 3, 10, 0, 10)}}},
		{"the inside leaves a hole", square, []Polygon{Rect(3, 3, 7, 7)}, []Polygon{frame}},
		{"an upright strip leaves two, the left one first", square, []Polygon{Rect(4, -1, 6, 11)},
			[]Polygon{Rect(0, 0, 4, 10), Rect(6, 0, 10, 10)}},
		{"a level strip leaves two, the lower one first", square, []Polygon{Rect(-1, 4, 11, 6)},
			[]Polygon{Rect(0, 0, 10, 4), Rect(0, 6, 10, 10)}},
		{"itself", square, []Polygon{square}, nil},
		{"more than all", square, []Polygon{Rect(-1, -1, 11, 11)}, nil},
		{"all, in two halves", square, []Polygon{Rect(0, 0, 5, 10), Rect(5, 0, 10, 10)}, nil},
		{"the same twice", square, []Polygon{Rect(3, 3, 7, 7), Rect(3, 3, 7, 7)}, []Polygon{frame}},
		{"two that overlap", square, []Polygon{Rect(3, 3, 6, 7), Rect(4, 3, 7, 7)}, []Polygon{frame}},
		{"two opposite corners that touch leave two", square, []Polygon{Rect(0, 0, 5, 5), Rect(5, 5, 10, 10)},
			[]Polygon{Rect(0, 5, 5, 10), Rect(5, 0, 10, 5)}},
		{"two holes, the left one first", square, []Polygon{Rect(6, 2, 8, 4), Rect(2, 2, 4, 4)},
			[]Polygon{{Outer: square.Outer, Holes: [][]Point{ring(2, 2, 2, 4, 4, 4, 4, 2), ring(6, 2, 6, 4, 8, 4, 8, 2)}}}},
		{"a corner of a piece with a hole", frame, []Polygon{Rect(8, 8, 10, 10)},
			[]Polygon{{Outer: ring(0, 0, 10, 0, 10, 8, 8, 8, 8, 10, 0, 10), Holes: frame.Holes}}},
		{"a strip through the hole", frame, []Polygon{Rect(4, -1, 6, 11)},
			[]Polygon{{Outer: ring(0, 0, 4, 0, 4, 3, 3, 3, 3, 7, 4, 7, 4, 10, 0, 10)}, {Outer: ring(6, 0, 10, 0, 10, 10, 6, 10, 6, 7, 7, 7, 7, 3, 6, 3)}}},
	} {
		got, err := c.from.Minus(c.take...)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(c.want, got, closely, cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// What converting inches leaves behind the comma must not become a piece of its own, nor a polygon without corners.
func TestMinusLeavesNoSliverThatIsThinnerThanItsGrain(t *testing.T) {
	noise := 0.1 + 0.2 - 0.3 // 5.6e-17 over 1, and more where the numbers are larger
	for _, c := range []struct {
		name string
		take Polygon
		want []Polygon
	}{
		{"at the left", Rect(1e-10, -1, 11, 11), nil},
		{"at the right", Rect(-1, -1, 10-1e-10, 11), nil},
		{"at the bottom", Rect(-1, 1e-10, 11, 11), nil},
		{"of the size of rounding errors", Rect(noise, noise, 10-noise, 10), nil},
		{"as a hole of no width", Rect(5, 2, 5+1e-10, 8), []Polygon{square}},
		{"as a thread between two pieces", Rect(1e-10, 4, 11, 6), []Polygon{Rect(0, 0, 10, 4), Rect(0, 6, 10, 10)}},
		{"beside something that stays", Rect(-1, 1e-10, 4, 11), []Polygon{Rect(4, 0, 10, 10)}},
	} {
		got, err := square.Minus(c.take)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(c.want, got, cmpopts.EquateApprox(0, grain), cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

func TestMinusLeavesItsOperandsAlone(t *testing.T) {
	from, take := Rect(0, 0, 10, 10), Rect(3, 3, 7, 7)
	if _, err := from.Minus(take); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff([]Polygon{Rect(0, 0, 10, 10), Rect(3, 3, 7, 7)}, []Polygon{from, take}); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

func TestBoundsReachRoundTheOuterRing(t *testing.T) {
	l, b, r, top := slanted.Bounds()
	if diff := cmp.Diff([]float64{0, 0, 12, 8}, []float64{l, b, r, top}); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

func TestSidesFaceAwayFromTheMaterial(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		want []Side
	}{
		{"a square", square, []Side{
			{Point{0, 0}, Point{10, 0}, "down", false}, {Point{10, 0}, Point{10, 10}, "right", false},
			{Point{10, 10}, Point{0, 10}, "up", false}, {Point{0, 10}, Point{0, 0}, "left", false}}},
		{"a hole's sides face into the hole", Polygon{Outer: square.Outer, Holes: frame.Holes}, []Side{
			{Point{0, 0}, Point{10, 0}, "down", false}, {Point{10, 0}, Point{10, 10}, "right", false},
			{Point{10, 10}, Point{0, 10}, "up", false}, {Point{0, 10}, Point{0, 0}, "left", false},
			{Point{3, 3}, Point{3, 7}, "right", true}, {Point{3, 7}, Point{7, 7}, "down", true},
			{Point{7, 7}, Point{7, 3}, "left", true}, {Point{7, 3}, Point{3, 3}, "up", true}}},
		// The rake rises 8 over 4, so it faces left more than up.
		{"a steep rake", raked, []Side{
			{Point{0, 0}, Point{10, 0}, "down", false}, {Point{10, 0}, Point{10, 12}, "right", false},
			{Point{10, 12}, Point{4, 12}, "up", false}, {Point{4, 12}, Point{0, 4}, "left", false}, {Point{0, 4}, Point{0, 0}, "left", false}}},
		{"a flat rake", Polygon{Outer: ring(0, 0, 10, 0, 10, 9, 0, 6)}, []Side{
			{Point{0, 0}, Point{10, 0}, "down", false}, {Point{10, 0}, Point{10, 9}, "right", false},
			{Point{10, 9}, Point{0, 6}, "up", false}, {Point{0, 6}, Point{0, 0}, "left", false}}},
	} {
		if diff := cmp.Diff(c.want, c.p.Sides()); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

func TestTrapezoidsGoUpLevelByLevel(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		want []Trapezoid
	}{
		{"a square is one", square, []Trapezoid{{0, 10, 0, 10, 0, 10}}},
		{"a hole makes a level of two", frame, []Trapezoid{
			{0, 3, 0, 10, 0, 10}, {3, 7, 0, 3, 0, 3}, {3, 7, 7, 10, 7, 10}, {7, 10, 0, 10, 0, 10}}},
		// Up to the rake's foot the left side is upright; from (0, 4) to (4, 12) it moves in by 4.
		{"a rake", raked, []Trapezoid{{0, 4, 0, 10, 0, 10}, {4, 12, 0, 10, 4, 10}}},
		{"slanting sides", slanted, []Trapezoid{{0, 8, 0, 10, 8, 12}}},
		// The left side is (0,0)-(2,8): 1 at a height of 4. The right foot ends at 4.
		{"a slanting side is cut where another corner lies", Polygon{Outer: ring(0, 0, 10, 0, 10, 4, 6, 4, 6, 8, 2, 8)}, []Trapezoid{
			{0, 4, 0, 10, 1, 10}, {4, 8, 1, 6, 2, 6}}},
	} {
		if diff := cmp.Diff(c.want, c.p.Trapezoids(), closely); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// A corner cut off below 45 degrees is an end, a steeper one a long edge.
func TestUprightsLeaveSlantingEndsOut(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		want []Trapezoid
	}{
		{"a flat rake", Polygon{Outer: ring(0, 0, 10, 0, 10, 9, 0, 6)}, []Trapezoid{{0, 6, 0, 10, 0, 10}}},
		{"a steep one", raked, []Trapezoid{{0, 4, 0, 10, 0, 10}, {4, 12, 0, 10, 4, 10}}},
		// From (10, 9) to (10, 6) the right side is upright; left of it the rake comes in from (0, 3).
		{"two ends", Polygon{Outer: ring(0, 0, 10, 2, 10, 9, 0, 3)}, []Trapezoid{{2, 3, 0, 10, 0, 10}}},
		{"nothing", Polygon{Outer: ring(0, 0, 10, 0, 0, 6)}, nil},
	} {
		if diff := cmp.Diff(c.want, c.p.Uprights(), closely); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

func TestNarrowestIsTheLowestAndLeftmostOfTheLeastWidths(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		want Width
	}{
		{"a square is as wide everywhere, so at its foot", square, Width{0, 0, 10}},
		{"beside a hole, on the left where both sides are alike", frame, Width{0, 3, 3}},
		{"the narrower side of a hole", Polygon{Outer: square.Outer, Holes: [][]Point{ring(4, 3, 4, 7, 8, 7, 8, 3)}}, Width{8, 3, 2}},
		{"a raked piece at its top: 10 - 4", raked, Width{4, 12, 6}},
		{"a slanted piece at its top: 12 - 8", slanted, Width{8, 8, 4}},
		{"a slanted piece upside down at its foot", Polygon{Outer: ring(2, 0, 6, 0, 10, 8, 0, 8)}, Width{2, 0, 4}},
		// Leaning sides in parallel: 5 wide at every height.
		{"a piece that only leans", Polygon{Outer: ring(0, 0, 5, 0, 8, 9, 3, 9)}, Width{0, 0, 5}},
		{"a point at the top", Polygon{Outer: ring(0, 0, 10, 0, 4, 9)}, Width{4, 9, 0}},
		// The rake from 6 to 9 is an end, not a long edge: below it the piece is 10 wide from its foot.
		{"under a rake", Polygon{Outer: ring(0, 0, 10, 0, 10, 9, 0, 6)}, Width{0, 0, 10}},
		// All of it lies under the rake, which is flatter than it is steep: there is only the tip.
		{"nothing but the tip of a rake", Polygon{Outer: ring(0, 0, 10, 0, 0, 6)}, Width{0, 6, 0}},
		{"beside a notch under a rake: 7 - 0 up to 3", Polygon{Outer: ring(0, 0, 7, 0, 7, 3, 10, 3, 10, 9, 0, 6)}, Width{0, 0, 7}},
		{"legs of a U", Polygon{Outer: ring(0, 0, 10, 0, 10, 10, 8, 10, 8, 4, 3, 4, 3, 10, 0, 10)}, Width{8, 4, 2}},
	} {
		if diff := cmp.Diff(c.want, c.p.Narrowest(), closely); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// A height asked for as a width: the piece under a ceiling that rises from 6 to 9 is 6 high at its left end, read at x = 0.
func TestTransposedAsksForHeightsAsWidths(t *testing.T) {
	if diff := cmp.Diff(Width{0, 0, 6}, Polygon{Outer: ring(0, 0, 10, 0, 10, 9, 0, 6)}.Transposed().Narrowest(), closely); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
	// The hole's ring (3,3) (3,7) (7,7) (7,3) from behind, x and y swapped.
	if diff := cmp.Diff(ring(3, 7, 7, 7, 7, 3, 3, 3), frame.Transposed().Holes[0]); diff != "" {
		t.Errorf("a hole keeps its sense: want - got +\n%s", diff)
	}
}
