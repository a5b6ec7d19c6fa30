package swing

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// post is a thin body that points to the right, at (0, 15).
var post = Body{{0, 15}, {-5, 16}, {-5, 14}}

func TestFirstContactByHand(t *testing.T) {
	block := rect(10, 20, 0, 10)
	corner := math.Sqrt(3*3 + 16*16) // of a block of 6 by 16 that stands on the axis, (3, 16): 16.2788
	block6 := rect(-3, 3, 0, 16)
	for _, c := range []struct {
		name          string
		moving, fixed Body
		from, to      float64
		angle         float64
		at            Point
		ok            bool
	}{
		// The corner (20, 10) is sqrt(500) from the axis and the only one to come as high as 20: at (10, 20), where x² + y² is 500 too.
		{"a corner runs against a face", block, rect(-100, 100, 20, 200), 0, 90,
			degrees(math.Atan2(20, 10) - math.Atan2(10, 20)), Point{10, 20}, true},
		// Turned the other way the post's tip is on the top of the block where 15 sin a = 10; x is then sqrt(125), between 10 and 20.
		{"a face runs against a corner", block, post, 0, 90, 90 - degrees(math.Asin(10.0/15)), Point{0, 15}, true},
		{"a needle's tip", block, Body{{0, 15}, {-500, 15.25}, {-500, 14.75}}, 0, 90, 90 - degrees(math.Asin(10.0/15)), Point{0, 15}, true},
		// Two needles lean away from each other; one is a mirror image of the other in the y axis, and in the end they stand tip to tip.
		{"two tips", Body{{0, 100}, {30, 125}, {25, 130}}.turned(-30), Body{{0, 100}, {-25, 130}, {-30, 125}}, 0, 90, 30, Point{0, 100}, true},
		{"and not yet", block, post, 0, 48, 48, Point{}, false},
		{"on the way from 30", block, post, 30, 90, 90 - degrees(math.Asin(10.0/15)), Point{0, 15}, true},
		// An upright and a bar: the post at (5..10, 3..4) stands in the corner between them. Its corner (10, 3), sqrt(109) from the axis, comes
		// to the bar's top at 1 first: at asin(1/sqrt(109)) instead of atan(3/10).
		{"what stands in a notch is met by the notch", Body{{0, -1}, {20, -1}, {20, 10}, {18, 10}, {18, 1}, {0, 1}}, rect(5, 10, 3, 4), 0, 90,
			degrees(math.Atan2(3, 10) - math.Asin(1/math.Sqrt(109))), Point{10, 3}, true},
		{"a leaf leaves the stop that it rests on", rect(0, 100, -40, 0), rect(90, 110, -60, -40), 0, 180, 180, Point{}, false},
		// The heel behind the axis goes the other way, into the stop.
		{"a heel goes into what it rests on", rect(-10, 100, -40, 0), rect(-20, 5, -60, -40), 0, 180, 0, Point{-10, -40}, true},
		{"the same, 30 degrees later", rect(-10, 100, -40, 0).turned(-30), rect(-20, 5, -60, -40), 30, 180, 30, Point{-10, -40}, true},
		// Both have a corner on the axis, which touches all the way: from the first quarter through the second into the third.
		{"a corner that stays on the axis", rect(0, 10, 0, 10), rect(-10, 0, -10, 0), 0, 180, 90, Point{-10, 0}, true},
		{"the same, up to there", rect(0, 10, 0, 10), rect(-10, 0, -10, 0), 0, 90, 90, Point{}, false},
		{"overlap at the start, a corner inside", block, rect(19, 30, 9, 30), 0, 90, 0, Point{20, 10}, true},
		{"one inside the other", rect(11, 12, 1, 2), block, 0, 90, 0, Point{11, 1}, true},
		{"the other inside the one", block, rect(11, 12, 1, 2), 0, 90, 0, Point{11, 1}, true},
		{"the same body", block, block, 0, 90, 0, Point{10, 0}, true},
		{"overlap at the start by less than 1e-6 mm, and away", rect(0, 100, -40, 0), rect(50, 110, -60, -40+5e-7), 0, 180, 180, Point{}, false},
		{"from what is not a number", block, post, math.NaN(), 90, 90 - degrees(math.Asin(10.0/15)), Point{0, 15}, true},
		{"overlap at a start that is the end", block, rect(15, 30, 5, 30), 0, 0, 0, Point{20, 10}, true},
		// The circle of the corner reaches x = -16.2788 and no further.
		{"a circle that only touches", block6, rect(-100, -corner, -50, 50), 0, 180, 180, Point{}, false},
		{"and enters by half a millionth", block6, rect(-100, -corner+5e-7, -50, 50), 0, 180, 180, Point{}, false},
		// The corner (-3, 16) stands 10.6 degrees past the y axis.
		{"and enters by 0.001", block6, rect(-100, -corner+0.001, -50, 50), 0, 180,
			degrees(math.Acos(-1+0.001/corner) - math.Atan2(16, -3)), Point{-corner + 0.001, corner * math.Sin(math.Acos(-1+0.001/corner))}, true},
		// x falls past the corner (3, 16)'s start by 48.5 degrees.
		{"the moving corner of a cladding", rect(3, 60, -6, 16), rect(-100, -10, -6, 16), 0, 180,
			degrees(math.Acos(-10/corner) - math.Atan2(16, 3)), Point{-10, math.Sqrt(265 - 100)}, true},
	} {
		angle, at, ok := FirstContact(c.moving, c.fixed, c.from, c.to)
		closely(t, c.name+": angle", angle, c.angle, 2e-6)
		closely(t, c.name+": x", at.X, c.at.X, 2e-6)
		closely(t, c.name+": y", at.Y, c.at.Y, 2e-6)
		if ok != c.ok {
			t.Errorf("%s: entered %t, want %t", c.name, ok, c.ok)
		}
	}
}

// No corner of either is inside the other; the point given is one of the square that both have.
func TestACrossOverlapsAtTheStart(t *testing.T) {
	angle, at, ok := FirstContact(rect(-10, 10, -1, 1), rect(-1, 1, -10, 10), 0, 90)
	if !ok || angle != 0 || math.Abs(at.X) > 1 || math.Abs(at.Y) > 1 {
		t.Errorf("entered %t at %v, %v", ok, angle, at)
	}
}

func TestBodiesThatEncloseNothingTouchNothing(t *testing.T) {
	block := rect(10, 20, 0, 10)
	for name, b := range map[string]Body{
		"none": nil, "a point": {{15, 5}}, "a line": {{15, 5}, {25, 5}}, "a line there and back": {{15, 5}, {25, 5}, {20, 5}},
		"the same point four times": {{15, 5}, {15, 5}, {15, 5}, {15, 5}},
		"not a number":              {{15, 5}, {math.NaN(), 5}, {20, 8}}, "without end": {{15, 5}, {math.Inf(1), 5}, {20, 8}},
		"too far": {{15, 5}, {1e8, 5}, {20, 8}},
	} {
		if angle, _, ok := FirstContact(block, b, 0, 90); ok || angle != 90 {
			t.Errorf("%s, fixed: entered at %v", name, angle)
		}
		if angle, _, ok := FirstContact(b, block, 0, 90); ok || angle != 90 {
			t.Errorf("%s, moving: entered at %v", name, angle)
		}
		for _, pair := range [][2]Body{{block, b}, {b, block}} {
			if gap, angle, at := Clearance(pair[0], pair[1], 0, 90); !math.IsInf(gap, 1) || angle != 0 || at != (Point{}) {
				t.Errorf("%s: a gap of %v at %v, %v", name, gap, angle, at)
			}
		}
	}
}

// Nothing can be more than 1e-6 mm deep in a body that is no more than 2e-6 mm thick.
func TestNothingEntersABodyThatIsTooThin(t *testing.T) {
	for name, b := range map[string]Body{
		"a strip": rect(0, 100, 15, 15+1e-6), "a wedge": {{0, 15}, {100, 15}, {50, 15 + 1e-6}}, "a crumb": rect(15, 15+1e-6, 15, 15+1e-6),
	} {
		if angle, _, ok := FirstContact(rect(10, 20, 0, 10), b, 0, 90); ok || angle != 90 {
			t.Errorf("%s: entered at %v", name, angle)
		}
		if gap, _, _ := Clearance(rect(10, 20, 0, 10), b, 0, 90); gap != 0 {
			t.Errorf("%s: a gap of %v where the block passes over it", name, gap)
		}
	}
}

// Clockwise, with corners twice and on straight sides: the same body, and still as it was afterwards.
func TestTheWayABodyIsWrittenDoesNotMatter(t *testing.T) {
	written := Body{{10, 0}, {10, 0}, {10, 10}, {15, 10}, {20, 10}, {20, 0}, {10, 0}}
	before := append(Body(nil), written...)
	angle, at, ok := FirstContact(written, post, 0, 90)
	wantAngle, wantAt, wantOK := FirstContact(rect(10, 20, 0, 10), post, 0, 90)
	closely(t, "angle", angle, wantAngle, 1e-9)
	if at != wantAt || !ok || !wantOK {
		t.Errorf("entered %t at %v, want %t at %v", ok, at, wantOK, wantAt)
	}
	gap, _, _ := Clearance(written, post, 0, 45)
	closely(t, "gap", gap, 15/math.Sqrt2-10, 1e-9) // as below
	if diff := cmp.Diff(before, written); diff != "" {
		t.Errorf("the body was changed: want - got +\n%s", diff)
	}
}

func TestClearanceByHand(t *testing.T) {
	corner := math.Sqrt(3*3 + 16*16)
	leaf := rect(0, 762, -40, 0)
	block6 := rect(-3, 3, 0, 16)
	for _, c := range []struct {
		name          string
		moving, fixed Body
		from, to      float64
		gap, angle    float64
		at            Point
	}{
		// The corner (762, -40) comes level with the jamb's corner after atan(40/762) and stands at sqrt(762² + 40²) = 763.049 then.
		{"corner to corner", leaf, rect(765, 900, -100, 0), 0, 90, 765 - math.Sqrt(762*762+40*40), degrees(math.Atan2(40, 762)), Point{765, 0}},
		// The corner (-3, 16) points along -x after atan(16/3), 79.4 degrees; (3, 16) after 180 less that, 100.6.
		{"corner to face", block6, rect(-30, -20, -50, 50), 0, 180, 20 - corner, degrees(math.Atan2(16, 3)), Point{-20, 0}},
		{"corner to face, the second corner", block6, rect(-30, -20, -50, 50), 90, 180, 20 - corner, 180 - degrees(math.Atan2(16, 3)), Point{-20, 0}},
		// At 90 degrees (3, 16) is at (-16, 3).
		{"not as far as the corner would go", Body{{3, 0}, {6, 0}, {6, 15}, {3, 16}}, rect(-30, -20, -50, 50), 0, 90, 4, 90, Point{-20, 3}},
		// At 45 degrees the post's tip, turned back, stands at (10.6, 10.6) above the block's top at 10.
		{"face to corner", rect(10, 20, 0, 10), post, 0, 45, 15/math.Sqrt2 - 10, 45, Point{0, 15}},
		// The tip is 2 in front of the face x = 20. Turned back it moves away from that line, up to 22.56 at y = 0, and then from the corner (20, 0).
		{"nearest at the start", rect(10, 20, 0, 10), Body{{22, 5}, {30, 0}, {30, 10}}, 0, 90, 2, 0, Point{22, 5}},
		{"touching at the start, and away", rect(0, 100, -40, 0), Body{{90, -40}, {85, -60}, {95, -60}}, 0, 180, 0, 0, Point{90, -40}},
		{"touching on the way", block6, rect(-30, -corner, -50, 50), 0, 180, 0, degrees(math.Atan2(16, 3)), Point{-corner, 0}},
		{"running into it", rect(10, 20, 0, 10), post, 0, 90, 0, 90 - degrees(math.Asin(10.0/15)), Point{0, 15}},
		{"overlapping at the start", rect(10, 20, 0, 10), rect(19, 30, 9, 30), 0, 90, 0, 0, Point{20, 10}},
		// A tip on the axis keeps its distance, and all else is further (the upper side, at 81.9 degrees in the end, 5 sin(143.1 - 81.9) = 4.4 from
		// the corner (-4, 3)): the first angle counts.
		{"always the same", Body{{0, 0}, {30, -1}, {30, 1}}, rect(-9, -4, -3, 3), 0, 80, 4, 0, Point{-4, 0}},
	} {
		gap, angle, at := Clearance(c.moving, c.fixed, c.from, c.to)
		closely(t, c.name+": gap", gap, c.gap, 1e-6)
		closely(t, c.name+": angle", angle, c.angle, 1e-4)
		closely(t, c.name+": x", at.X, c.at.X, 1e-5)
		closely(t, c.name+": y", at.Y, c.at.Y, 1e-3)
	}
}

func TestOpenAngleEndsAtTheFirstOfSeveral(t *testing.T) {
	block := rect(10, 20, 0, 10)
	ceiling := rect(-100, 100, 20, 200) // met after atan(20/10) - atan(10/20), 36.9 degrees
	tip := 90 - degrees(math.Asin(10.0/15))
	for _, c := range []struct {
		name  string
		fixed []Body
		limit float64
		want  float64
	}{
		{"nothing there", nil, 120, 120},
		{"the post", []Body{post}, 120, tip},
		{"the ceiling before the post", []Body{post, ceiling}, 120, degrees(math.Atan2(20, 10) - math.Atan2(10, 20))},
		{"in the other order", []Body{ceiling, post}, 120, degrees(math.Atan2(20, 10) - math.Atan2(10, 20))},
		{"not so far", []Body{post, ceiling}, 30, 30},
		{"all round", nil, 400, 360},
		{"backwards", nil, -10, 0},
		{"not a number", nil, math.NaN(), 0},
	} {
		closely(t, c.name, OpenAngle(block, c.fixed, c.limit), c.want, 1e-6)
	}
}

func TestNearestApproachByHand(t *testing.T) {
	r := math.Sqrt(265)
	for _, c := range []struct {
		name                   string
		p                      Point
		from, to               float64
		minX, maxX, minY, maxY float64
	}{
		// (3, 16) ends at (-16, 3), past the y axis: clear of a swing of 90 degrees from 16.0.
		{"a quarter", Point{3, 16}, 0, 90, -16, 3, 3, r},
		// Past -x, at (-3, -16): clear of any swing from 16.3.
		{"a half", Point{3, 16}, 0, 180, -r, 3, -16, r},
		{"all round", Point{3, 16}, 0, 360, -r, r, -r, r},
		{"the second quarter", Point{3, 16}, 90, 180, -r, -3, -16, 3},
		{"not at all", Point{3, 16}, 0, 0, 3, 3, 16, 16},
		{"the axis", Point{}, 0, 360, 0, 0, 0, 0},
		{"no point", Point{math.NaN(), 1}, 0, 90, 0, 0, 0, 0},
	} {
		minX, maxX, minY, maxY := NearestApproach(c.p, c.from, c.to)
		for i, pair := range [][2]float64{{minX, c.minX}, {maxX, c.maxX}, {minY, c.minY}, {maxY, c.maxY}} {
			closely(t, c.name+" "+[]string{"min x", "max x", "min y", "max y"}[i], pair[0], pair[1], 1e-9)
		}
	}
	if minX, _, _, _ := NearestApproach(Point{3, 16}, 0, 180); math.Ceil(-minX*10)/10 != 16.3 {
		t.Errorf("any swing is clear from %v mm, want 16.3", -minX)
	}
}
