package planar

import (
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

func TestNewPutsARingInOrder(t *testing.T) {
	raked := ring(0, 0, 10, 0, 10, 6, 0, 9)
	for _, c := range []struct {
		name string
		ring []Point
		want []Point
	}{
		{"as it should be", raked, raked},
		{"clockwise", ring(0, 9, 10, 6, 10, 0, 0, 0), raked},
		{"from another corner", ring(10, 6, 0, 9, 0, 0, 10, 0), raked},
		{"a corner on a straight line", ring(0, 0, 4, 0, 10, 0, 10, 6, 5, 7.5, 0, 9), raked},
		{"a triangle", ring(5, 5, 0, 0, 10, 0), ring(0, 0, 10, 0, 5, 5)},
	} {
		before := slices.Clone(c.ring)
		got, err := New(c.ring)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(Polygon{Outer: c.want}, got, closely); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
		if !slices.Equal(before, c.ring) {
			t.Errorf("%s: the ring that was given is now %v", c.name, c.ring)
		}
	}
}

func TestNewRefusesWhatIsNoPolygon(t *testing.T) {
	const nothing, crossing = "it encloses nothing", "its sides cross or touch each other"
	for _, c := range []struct {
		name string
		ring []Point
		want string
	}{
		{"no corner", nil, nothing},
		{"two corners", ring(0, 0, 10, 0), nothing},
		{"three on a line", ring(0, 0, 5, 0, 10, 0), nothing},
		{"there and back", ring(0, 0, 10, 0, 10, 5, 10, 0), nothing},
		{"so flat that it is on a line", ring(0, 0, 10, 0, 5, 1e-9), nothing},
		{"a bow", ring(0, 0, 10, 10, 10, 0, 0, 10), crossing},
		{"a bow of two unlike halves", ring(0, 0, 10, 10, 10, 0, 0, 3), crossing},
		{"a corner that touches a side", ring(0, 0, 10, 0, 10, 10, 5, 0, 0, 10), crossing},
		{"two corners that touch", ring(0, 0, 5, 5, 10, 0, 10, 10, 5, 5, 0, 10), crossing},
	} {
		if _, err := New(c.ring); err == nil || err.Error() != c.want {
			t.Errorf("%s: error %v, want %s", c.name, err, c.want)
		}
	}
}

func TestAndGivesWhatTwoShare(t *testing.T) {
	comb := Polygon{Outer: ring(0, 0, 10, 0, 10, 10, 8, 10, 8, 4, 2, 4, 2, 10, 0, 10)}
	for _, c := range []struct {
		name        string
		one, other  Polygon
		wantOverlay []Polygon
	}{
		{"nothing", square, Rect(20, 0, 30, 10), nil},
		{"a side", square, Rect(10, 0, 20, 10), nil},
		{"a corner", square, Rect(10, 10, 20, 20), nil},
		{"all", square, Rect(-1, -1, 11, 11), []Polygon{square}},
		{"a quarter", square, Rect(5, 5, 20, 20), []Polygon{Rect(5, 5, 10, 10)}},
		{"under a rake: at 4 and at 8 its height is 4 + 0.4 x", Rect(4, 0, 8, 10), Polygon{Outer: ring(0, 0, 10, 0, 10, 8, 0, 4)}, []Polygon{{Outer: ring(4, 0, 8, 0, 8, 7.2, 4, 5.6)}}},
		{"the two teeth of a comb, the left one first", comb, Rect(-1, 5, 11, 9), []Polygon{Rect(0, 5, 2, 9), Rect(8, 5, 10, 9)}},
		{"round a hole", frame, Rect(0, 0, 10, 5), []Polygon{{Outer: ring(0, 0, 10, 0, 10, 5, 7, 5, 7, 3, 3, 3, 3, 5, 0, 5)}}},
	} {
		got, err := c.one.And(c.other)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(c.wantOverlay, got, closely, cmpopts.EquateEmpty()); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// What two share and what is left of the first when the second is taken out make up the first; both ways round they share the same.
func TestAndAndMinusMakeUpTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := boxes.Draw(t, "a")
		b := boxes.Draw(t, "b")
		rake := func(b box) Polygon { // its top falls by half its height
			return Polygon{Outer: ring(b.left, b.bottom, b.right, b.bottom, b.right, (b.bottom+b.top)/2, b.left, b.top)}
		}
		p, q := rake(a), rake(b)
		common, err := p.And(q)
		if err != nil {
			t.Fatal(err)
		}
		back, err := q.And(p)
		if err != nil {
			t.Fatal(err)
		}
		rest, err := p.Minus(q)
		if err != nil {
			t.Fatal(err)
		}
		if diff := sum(common) + sum(rest) - p.Area(); math.Abs(diff) > 0.05 {
			t.Fatalf("%v shared and %v left of %v", sum(common), sum(rest), p.Area())
		}
		if math.Abs(sum(common)-sum(back)) > 0.05 {
			t.Fatalf("%v shared, the other way round %v", sum(common), sum(back))
		}
	})
}

func TestShiftedMovesEveryRing(t *testing.T) {
	want := Polygon{Outer: ring(2, -1, 12, -1, 12, 9, 2, 9), Holes: [][]Point{ring(5, 2, 5, 6, 9, 6, 9, 2)}}
	if diff := cmp.Diff(want, frame.Shifted(2, -1)); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
	if frame.Outer[0] != (Point{0, 0}) {
		t.Error("the polygon itself has moved")
	}
}

func TestDistanceFromASide(t *testing.T) {
	s := Side{From: Point{0, 0}, To: Point{8, 6}} // 10 long
	for _, c := range []struct {
		name       string
		x, y, want float64
	}{
		{"on it", 4, 3, 0},
		{"beside its middle: (4, 3) and 5 at right angles, (-3, 4)", 1, 7, 5},
		{"beyond its end, 3-4-5", 11, 10, 5},
		{"before its beginning, 5-12-13", -5, -12, 13},
		{"at its end", 8, 6, 0},
	} {
		if got := s.Distance(c.x, c.y); math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
}

func TestConvexHasNoCornerInwardsAndNoHole(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Polygon
		want bool
	}{
		{"a square", square, true}, {"a rake", raked, true}, {"with a hole", frame, false},
		{"an L", Polygon{Outer: ring(0, 0, 10, 0, 10, 6, 6, 6, 6, 10, 0, 10)}, false},
		{"a corner cut off", Polygon{Outer: ring(0, 0, 10, 0, 10, 6, 6, 10, 0, 10)}, true},
		{"a triangle", Polygon{Outer: ring(0, 0, 10, 0, 5, 5)}, true},
	} {
		if got := c.p.Convex(); got != c.want {
			t.Errorf("%s: %t", c.name, got)
		}
	}
}

func TestBehindASideLiesAllThatOneCutLeaves(t *testing.T) {
	l := Polygon{Outer: ring(0, 0, 10, 0, 10, 6, 6, 6, 6, 10, 0, 10)}
	for i, want := range []bool{true, true, false, false, true, true} { // the two sides of the notch have the other leg in front of them
		if got := l.Behind(l.Sides()[i], 0.005); got != want {
			t.Errorf("side %d of an L: %t, want %t", i, got, want)
		}
	}
	for i, s := range raked.Sides() {
		if !raked.Behind(s, 0.005) {
			t.Errorf("side %d of a rake has something in front of it", i)
		}
	}
}
