package swing

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func degrees(radians float64) float64 { return radians * 180 / math.Pi }

// closely compares lengths in mm and angles in degrees.
func closely(t *testing.T, what string, got, want, within float64) {
	t.Helper()
	if !(math.Abs(got-want) <= within) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// The sweep below knows nothing of circles: it turns bodies step by step and compares their shadows on lines (of which one shows a gap wherever
// two convex bodies are apart) and the distances of their corners from their sides.

// step is the sweep's, in degrees.
const step = 0.01

// shape is a body with the convex bodies that it is made of.
type shape struct {
	outline Body
	parts   []Body
}

func (s shape) turned(degrees float64) shape {
	out := shape{outline: s.outline.turned(degrees)}
	for _, p := range s.parts {
		out.parts = append(out.parts, p.turned(degrees))
	}
	return out
}

func convex(b Body) shape { return shape{b, []Body{b}} }

// shadows gives the least overlap of two convex bodies' shadows on the normals of their sides: how deep they are in each other, or, below 0, how
// far they are apart at least.
func shadows(a, b Body) float64 {
	least := math.Inf(1)
	for _, of := range []Body{a, b} {
		for i, p := range of {
			q := of[(i+1)%len(of)]
			length := math.Hypot(q.X-p.X, q.Y-p.Y)
			nx, ny := (q.Y-p.Y)/length, (p.X-q.X)/length
			span := func(c Body) (float64, float64) {
				low, high := math.Inf(1), math.Inf(-1)
				for _, r := range c {
					low, high = min(low, r.X*nx+r.Y*ny), max(high, r.X*nx+r.Y*ny)
				}
				return low, high
			}
			al, ah := span(a)
			bl, bh := span(b)
			least = min(least, ah-bl, bh-al)
		}
	}
	return least
}

// deep is how deep two shapes are in each other, or, below 0, how far they are apart at least.
func deep(a, b shape) float64 {
	most := math.Inf(-1)
	for _, p := range a.parts {
		for _, q := range b.parts {
			most = max(most, shadows(p, q))
		}
	}
	return most
}

// distance is that of two shapes that do not overlap.
func distance(a, b shape) float64 {
	least := math.Inf(1)
	for _, pair := range [][2]Body{{a.outline, b.outline}, {b.outline, a.outline}} {
		for _, p := range pair[0] {
			for i, q := range pair[1] {
				r := pair[1][(i+1)%len(pair[1])]
				dx, dy := r.X-q.X, r.Y-q.Y
				share := max(0, min(1, ((p.X-q.X)*dx+(p.Y-q.Y)*dy)/(dx*dx+dy*dy)))
				least = min(least, math.Hypot(p.X-q.X-share*dx, p.Y-q.Y-share*dy))
			}
		}
	}
	return least
}

// perStep is how far the moving shape's furthest corner moves in a step, in mm: no distance changes by more.
func perStep(moving shape) float64 {
	furthest := 0.0
	for _, p := range moving.outline {
		furthest = max(furthest, math.Hypot(p.X, p.Y))
	}
	return furthest * step * math.Pi / 180
}

// sweepContact gives the first step at which two shapes overlap by more than 2 near; it leaves out steps that cannot be such.
func sweepContact(moving, fixed shape, from, to float64) (float64, bool) {
	reach := perStep(moving)
	for n := 0.0; from+n*step <= to; {
		d := deep(moving.turned(from+n*step), fixed)
		if d > 2*near {
			return from + n*step, true
		}
		n += max(1, math.Floor(-d/reach))
	}
	return 0, false
}

// sweepDistance gives the least distance at any step, leaving out steps that cannot have it.
func sweepDistance(moving, fixed shape, from, to float64) float64 {
	least, reach := math.Inf(1), perStep(moving)
	for n := 0.0; from+n*step <= to; {
		d := distance(moving.turned(from+n*step), fixed)
		least = min(least, d)
		n += max(1, math.Floor((d-least)/reach))
	}
	return least
}

// entered says whether the shapes, in touch at an angle, stay so until they overlap by a good part of near. It looks densely at the beginning,
// since a circle may reach in for less than a step, and goes on for as long as they stay in touch, since a tip may take several steps.
func entered(moving, fixed shape, angle, to float64) bool {
	for n := 0.0; n <= 1e4; n++ {
		at := angle + step*min(n/64, n*n/64/64)
		if at > to {
			return deep(moving.turned(to), fixed) >= 0.2*near
		}
		switch d := deep(moving.turned(at), fixed); {
		case d >= 0.2*near:
			return true
		case d < -0.2*near:
			return false
		}
	}
	return false
}

// checkContact holds what FirstContact says against the sweep and against the shadows at it and after it.
func checkContact(t *rapid.T, moving, fixed shape, from, to, angle float64, at Point, ok bool) {
	swept, found := sweepContact(moving, fixed, from, to)
	if !ok {
		if found || angle != to {
			t.Fatalf("nothing entered, angle %v; by the sweep at %v", angle, swept)
		}
		return
	}
	if angle < from || angle > to || found && swept < angle-1e-9 {
		t.Fatalf("entered at %v, by the sweep at %v", angle, swept)
	}
	if !entered(moving, fixed, angle, to) {
		t.Fatalf("nothing is entered at %v; by the sweep at %v", angle, swept)
	}
	if angle == from {
		return
	}
	if d := deep(moving.turned(angle), fixed); d > 2*near {
		t.Fatalf("%v deep at the first contact at %v", d, angle)
	}
	point := Body{at, at, at}
	if a, b := distance(convex(point[:1]), moving.turned(angle)), distance(convex(point[:1]), fixed); a > 3*near || b > 3*near {
		t.Fatalf("at %v the point %v is %v from the one and %v from the other", angle, at, a, b)
	}
}

// checkClearance holds what Clearance says against the sweep.
func checkClearance(t *rapid.T, moving, fixed shape, from, to, gap, angle float64) {
	if gap < 0 || angle < from || angle > to {
		t.Fatalf("a gap of %v at %v", gap, angle)
	}
	if least := sweepDistance(moving, fixed, from, to); gap > least+near || least > gap+perStep(moving) {
		t.Fatalf("a gap of %v at %v, by the sweep %v", gap, angle, least)
	}
	if there := distance(moving.turned(angle), fixed); math.Abs(there-gap) > 2*near {
		t.Fatalf("a gap of %v said to be at %v, where it is %v", gap, angle, there)
	}
}

// mirrored is the body seen in a mirror.
func (b Body) mirrored() Body {
	var out Body
	for i := range b {
		p := b[len(b)-1-i]
		out = append(out, Point{-p.X, p.Y})
	}
	return out
}
