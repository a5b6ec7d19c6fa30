package swing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// shapes draws triangles, rectangles, Ls and crosses, on a grid, so that much falls together, or anywhere.
var shapes = rapid.Custom(func(t *rapid.T) shape {
	w, h := float64(rapid.IntRange(1, 60).Draw(t, "width")), float64(rapid.IntRange(1, 60).Draw(t, "height"))
	v, g := w*float64(rapid.IntRange(1, 9).Draw(t, "tenths"))/10, h*float64(rapid.IntRange(1, 9).Draw(t, "tenths"))/10
	var s shape
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		s = convex(Body{{0, 0}, {w, 0}, {v, h}})
	case 1:
		s = convex(rect(0, w, 0, h))
	case 2:
		s = shape{Body{{0, 0}, {w, 0}, {w, g}, {v, g}, {v, h}, {0, h}}, []Body{rect(0, w, 0, g), rect(0, v, 0, h)}}
	case 3:
		s = shape{Body{{-w, -1}, {-1, -1}, {-1, -h}, {1, -h}, {1, -1}, {w, -1}, {w, 1}, {1, 1}, {1, h}, {-1, h}, {-1, 1}, {-w, 1}},
			[]Body{rect(-w, w, -1, 1), rect(-1, 1, -h, h)}}
		if w == 1 || h == 1 {
			s = convex(rect(-w, w, -h, h))
		}
	}
	if rapid.Bool().Draw(t, "aslant") {
		s = s.turned(rapid.Float64Range(0, 360).Draw(t, "slant"))
	}
	x, y := float64(rapid.IntRange(-90, 90).Draw(t, "x")), float64(rapid.IntRange(-90, 90).Draw(t, "y"))
	return s.moved(x, y)
})

func (s shape) moved(x, y float64) shape {
	move := func(b Body) Body {
		var out Body
		for _, p := range b {
			out = append(out, Point{p.X + x, p.Y + y})
		}
		return out
	}
	out := shape{outline: move(s.outline)}
	for _, p := range s.parts {
		out.parts = append(out.parts, move(p))
	}
	return out
}

// angles draws where a swing begins and ends.
func angles(t *rapid.T) (from, to float64) {
	from = float64(rapid.SampledFrom([]int{0, 0, 30, 200}).Draw(t, "from"))
	return from, from + float64(rapid.IntRange(1, 160).Draw(t, "by"))
}

func TestFirstContactIsThatOfASweep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moving, fixed := shapes.Draw(t, "moving"), shapes.Draw(t, "fixed")
		from, to := angles(t)
		angle, at, ok := FirstContact(moving.outline, fixed.outline, from, to)
		checkContact(t, moving, fixed, from, to, angle, at, ok)
	})
}

func TestClearanceIsThatOfASweep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moving, fixed := shapes.Draw(t, "moving"), shapes.Draw(t, "fixed")
		from, to := angles(t)
		gap, angle, _ := Clearance(moving.outline, fixed.outline, from, to)
		first, _, ok := FirstContact(moving.outline, fixed.outline, from, to)
		if ok {
			if gap != 0 || angle != first {
				t.Fatalf("a gap of %v at %v, and entered at %v", gap, angle, first)
			}
			return
		}
		checkClearance(t, moving, fixed, from, to, gap, angle)
	})
}

// In a mirror the moving body turns clockwise; to the moving body it is the other that turns, and anticlockwise again.
func TestTheMirroredBodiesMeetAtTheSameAngle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moving, fixed := shapes.Draw(t, "moving").outline, shapes.Draw(t, "fixed").outline
		to := float64(rapid.IntRange(1, 360).Draw(t, "to"))
		angle, _, ok := FirstContact(moving, fixed, 0, to)
		mirrored, _, mirroredOK := FirstContact(fixed.mirrored(), moving.mirrored(), 0, to)
		if ok != mirroredOK || math.Abs(angle-mirrored) > 1e-4 { // where a circle only just reaches in, near of it is some way round
			t.Fatalf("entered %t at %v, mirrored %t at %v", ok, angle, mirroredOK, mirrored)
		}
		gap, _, _ := Clearance(moving, fixed, 0, to)
		mirroredGap, _, _ := Clearance(fixed.mirrored(), moving.mirrored(), 0, to)
		if math.Abs(gap-mirroredGap) > 2*near {
			t.Fatalf("a gap of %v, mirrored %v", gap, mirroredGap)
		}
	})
}

// The whole plan turned round the axis is the same plan, and a swing may begin anywhere.
func TestTurningThePlanChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moving, fixed := shapes.Draw(t, "moving").outline, shapes.Draw(t, "fixed").outline
		by, to := float64(rapid.IntRange(1, 359).Draw(t, "by")), float64(rapid.IntRange(1, 360).Draw(t, "to"))
		angle, at, ok := FirstContact(moving, fixed, 0, to)
		turned, turnedAt, turnedOK := FirstContact(moving.turned(by), fixed.turned(by), 0, to)
		if ok != turnedOK || math.Abs(angle-turned) > 1e-4 {
			t.Fatalf("entered %t at %v, turned %t at %v", ok, angle, turnedOK, turned)
		}
		// Where two places are met at once either may be given, but both bodies have it.
		if ok && angle > 0 {
			a, b := at.turned(by), turnedAt
			if d := distance(convex(Body{a, a, a}), convex(fixed.turned(by))); d > 3*near {
				t.Fatalf("%v turned is %v from the fixed body; got %v", at, d, b)
			}
		}
		gap, _, _ := Clearance(moving, fixed, 0, to)
		turnedGap, _, _ := Clearance(moving.turned(by), fixed.turned(by), 0, to)
		if math.Abs(gap-turnedGap) > 2*near {
			t.Fatalf("a gap of %v, turned %v", gap, turnedGap)
		}
		start := min(by, to)
		if later, _, laterOK := FirstContact(moving.turned(-start), fixed, start, to); start < to {
			sooner, _, soonerOK := FirstContact(moving, fixed, 0, to-start)
			if laterOK != soonerOK || math.Abs(later-start-sooner) > 1e-4 {
				t.Fatalf("from %v on entered %t at %v, from 0 on %t at %v", start, laterOK, later, soonerOK, sooner)
			}
		}
	})
}

// What two swings one after the other meet is what one over both meets.
func TestASwingIsTheSameInTwoParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		moving, fixed := shapes.Draw(t, "moving").outline, shapes.Draw(t, "fixed").outline
		half, to := rapid.Float64Range(1, 100).Draw(t, "half"), rapid.Float64Range(101, 360).Draw(t, "to")
		whole, _, ok := FirstContact(moving, fixed, 0, to)
		first, _, firstOK := FirstContact(moving, fixed, 0, half)
		second, _, secondOK := FirstContact(moving, fixed, half, to)
		want, wantOK := second, secondOK
		if firstOK {
			want, wantOK = first, true
		}
		if ok != wantOK || math.Abs(whole-want) > 1e-4 {
			t.Fatalf("entered %t at %v; in two parts %t at %v", ok, whole, wantOK, want)
		}
		gap, _, _ := Clearance(moving, fixed, 0, to)
		a, _, _ := Clearance(moving, fixed, 0, half)
		b, _, _ := Clearance(moving, fixed, half, to)
		if math.Abs(gap-min(a, b)) > 2*near {
			t.Fatalf("a gap of %v; in two parts %v and %v", gap, a, b)
		}
	})
}

func TestNearestApproachHoldsAllPlacesOfASweep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Point{rapid.Float64Range(-900, 900).Draw(t, "x"), rapid.Float64Range(-900, 900).Draw(t, "y")}
		from, to := angles(t)
		minX, maxX, minY, maxY := NearestApproach(p, from, to)
		sweptMinX, sweptMaxX, sweptMinY, sweptMaxY := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
		for n := 0.0; from+n*step <= to; n++ {
			q := p.turned(from + n*step)
			sweptMinX, sweptMaxX = min(sweptMinX, q.X), max(sweptMaxX, q.X)
			sweptMinY, sweptMaxY = min(sweptMinY, q.Y), max(sweptMaxY, q.Y)
		}
		within := perStep(convex(Body{p}))
		for i, d := range []float64{sweptMinX - minX, maxX - sweptMaxX, sweptMinY - minY, maxY - sweptMaxY} {
			if d < -1e-9 || d > within {
				t.Fatalf("extreme %d is %v beyond the sweep's", i, d)
			}
		}
	})
}
