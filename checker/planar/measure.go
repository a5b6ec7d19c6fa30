package planar

import (
	"cmp"
	"math"
	"slices"
)

// Side is one straight side with the way it faces, away from the material.
type Side struct {
	From, To Point
	Faces    string // "left", "right", "up", "down"; a slanting side faces the way it faces most
	InHole   bool
}

// Distance gives how far a point lies from the side.
func (s Side) Distance(x, y float64) float64 {
	dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
	along := max(0, min(1, ((x-s.From.X)*dx+(y-s.From.Y)*dy)/(dx*dx+dy*dy)))
	return math.Hypot(x-s.From.X-along*dx, y-s.From.Y-along*dy)
}

// Sides gives the sides in the order of the rings.
func (p Polygon) Sides() []Side {
	out := make([]Side, 0, len(p.Outer)+4*len(p.Holes))
	for n, ring := range p.rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			out = append(out, Side{From: a, To: b, Faces: facing(b.X-a.X, b.Y-a.Y), InHole: n > 0})
		}
	}
	return out
}

// facing gives the outward direction of a side that runs along (dx, dy) with the material on its left.
func facing(dx, dy float64) string {
	nx, ny := dy, -dx
	switch {
	case math.Abs(nx) > math.Abs(ny) && nx > 0:
		return "right"
	case math.Abs(nx) > math.Abs(ny):
		return "left"
	case ny > 0:
		return "up"
	}
	return "down"
}

// Trapezoid is a part of a polygon between two heights with straight sides: a
// level in which nothing begins and nothing ends.
type Trapezoid struct {
	Bottom, Top                                float64
	BottomLeft, BottomRight, TopLeft, TopRight float64
}

// Trapezoids cuts a polygon at the height of every corner, from the bottom up
// and from left to right within a level.
func (p Polygon) Trapezoids() []Trapezoid {
	return p.levels(func(a, b Side) bool { return true })
}

// At gives the trapezoid's two ends at a height; above and below it those of its top and bottom.
func (t Trapezoid) At(y float64) (left, right float64) {
	share := max(0, min(1, (y-t.Bottom)/(t.Top-t.Bottom)))
	return t.BottomLeft + share*(t.TopLeft-t.BottomLeft), t.BottomRight + share*(t.TopRight-t.BottomRight)
}

// Uprights gives the trapezoids that stand between two sides of which neither
// faces up or down more than sideways: what a slanting end takes off is left out.
func (p Polygon) Uprights() []Trapezoid {
	long := func(s Side) bool { return s.Faces == "left" || s.Faces == "right" }
	return p.levels(func(a, b Side) bool { return long(a) && long(b) })
}

// levels cuts the polygon at the height of every corner and gives the trapezoids between sides that are wanted.
func (p Polygon) levels(wanted func(left, right Side) bool) []Trapezoid {
	heights := make([]float64, 0, len(p.Outer)+4*len(p.Holes))
	for _, ring := range p.rings() {
		for _, q := range ring {
			heights = append(heights, q.Y)
		}
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	sides := p.Sides()
	var out []Trapezoid
	for i := 1; i < len(heights); i++ {
		out = append(out, level(sides, heights[i-1], heights[i], wanted)...)
	}
	return out
}

// level gives the trapezoids between two neighbouring heights. No side ends
// between them, so the sides that cross keep their order.
func level(sides []Side, bottom, top float64, wanted func(left, right Side) bool) []Trapezoid {
	type crossing struct {
		low, high float64
		side      Side
	}
	var xs []crossing
	for _, s := range sides {
		a, b := s.From, s.To
		if a.Y > b.Y {
			a, b = b, a
		}
		if a.Y > bottom || b.Y < top || a.Y == b.Y {
			continue
		}
		at := func(y float64) float64 { return a.X + (b.X-a.X)*(y-a.Y)/(b.Y-a.Y) }
		xs = append(xs, crossing{at(bottom), at(top), s})
	}
	slices.SortFunc(xs, func(a, b crossing) int { return cmp.Compare(a.low+a.high, b.low+b.high) })
	var out []Trapezoid
	for i := 0; i+1 < len(xs); i += 2 {
		if wanted(xs[i].side, xs[i+1].side) {
			out = append(out, Trapezoid{bottom, top, xs[i].low, xs[i+1].low, xs[i].high, xs[i+1].high})
		}
	}
	return out
}

// Width is a horizontal width of a polygon: where, and how much.
type Width struct{ X, Y, Width float64 }

// Narrowest gives the least width of the trapezoid and the lowest height at which it has it.
func (t Trapezoid) Narrowest() Width {
	low, high := t.BottomRight-t.BottomLeft, t.TopRight-t.TopLeft
	if high < low {
		return Width{t.TopLeft, t.Top, high}
	}
	return Width{t.BottomLeft, t.Bottom, low}
}

// Narrowest gives the least horizontal width of the polygon, the lowest and
// leftmost where several are alike. The tip that a slanting end makes does not
// count, unless the polygon is nothing else.
func (p Polygon) Narrowest() Width {
	best := Width{Width: math.Inf(1)}
	between := p.Uprights()
	if len(between) == 0 {
		between = p.Trapezoids()
	}
	for _, t := range between {
		if w := t.Narrowest(); w.Width < best.Width-grain {
			best = w
		}
	}
	return best
}

// Transposed swaps x and y, so that heights can be asked for as widths. The
// rings are turned round to keep their sense.
func (p Polygon) Transposed() Polygon {
	turn := func(ring []Point) []Point {
		out := make([]Point, len(ring))
		for i, q := range ring {
			out[len(ring)-1-i] = Point{q.Y, q.X}
		}
		return out
	}
	t := Polygon{Outer: turn(p.Outer)}
	for _, h := range p.Holes {
		t.Holes = append(t.Holes, turn(h))
	}
	return t
}

// Convex says whether the polygon has neither a hole nor a corner that points
// inwards: one straight cut a side makes it.
func (p Polygon) Convex() bool {
	for i, q := range p.Outer {
		a, b := p.Outer[(i+len(p.Outer)-1)%len(p.Outer)], p.Outer[(i+1)%len(p.Outer)]
		if (q.X-a.X)*(b.Y-q.Y) < (q.Y-a.Y)*(b.X-q.X) {
			return false
		}
	}
	return len(p.Holes) == 0
}

// Behind says whether no corner of the polygon lies in front of the side, by
// more than near: one straight cut along the side then makes it.
func (p Polygon) Behind(s Side, near float64) bool {
	dx, dy := s.To.X-s.From.X, s.To.Y-s.From.Y
	most := near * math.Hypot(dx, dy)
	for _, q := range p.Outer {
		if (q.X-s.From.X)*dy-(q.Y-s.From.Y)*dx > most {
			return false
		}
	}
	return true
}
