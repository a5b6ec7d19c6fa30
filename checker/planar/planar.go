// Package planar is the plane geometry that setting out needs: polygons with
// holes, what is left of one when others are taken out, its sides, and its
// widths. Overlays are the library's; widths come from cutting a polygon into
// trapezoids, between whose corners a width is linear, so they are exact.
//
// Units are the caller's; setting out uses millimetres, x to the right, y up.
package planar

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"github.com/peterstace/simplefeatures/geom"
)

// grain is the step that corners are rounded to before an overlay and after it:
// far below what a saw or a tape knows, far above the noise of the arithmetic.
// Before it, or two sides that only noise holds apart would leave a sliver.
const grain = 1e-6

func rounded(v float64) float64 { return math.Round(v/grain) * grain }

// Point is a point.
type Point struct{ X, Y float64 }

// Polygon has an outer ring, anticlockwise, and holes, clockwise. Rings start at
// their lowest leftmost corner, do not repeat it, and have no corner on a
// straight line.
type Polygon struct {
	Outer []Point
	Holes [][]Point
}

// Rect is a rectangle.
func Rect(left, bottom, right, top float64) Polygon {
	return Polygon{Outer: []Point{{left, bottom}, {right, bottom}, {right, top}, {left, top}}}
}

// New makes a polygon of a ring of corners, in either sense. The error says why
// they make none.
func New(ring []Point) (Polygon, error) {
	p := Polygon{Outer: ring}
	if len(ring) < 3 || math.Abs(p.Area()) < grain {
		return Polygon{}, errors.New("they enclose nothing")
	}
	if err := geom.NewPolygonXY(flat(ring)).Validate(); err != nil {
		return Polygon{}, errors.New("its sides cross or touch each other")
	}
	if p.Area() < 0 {
		p.Outer = slices.Clone(ring)
		slices.Reverse(p.Outer)
	}
	p.Outer = tidy(p.Outer)
	return p, nil
}

// And gives what of p lies in the other, from left to right and then upwards.
func (p Polygon) And(other Polygon) ([]Polygon, error) {
	common, err := geom.Intersection(toGeom(p), toGeom(other))
	if err != nil {
		return nil, fmt.Errorf("cutting a piece to the wall's outline: %w", err)
	}
	return polygons(common), nil
}

// Shifted gives the polygon moved.
func (p Polygon) Shifted(dx, dy float64) Polygon {
	move := func(ring []Point) []Point {
		out := make([]Point, len(ring))
		for i, q := range ring {
			out[i] = Point{q.X + dx, q.Y + dy}
		}
		return out
	}
	out := Polygon{Outer: move(p.Outer)}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, move(h))
	}
	return out
}

// Bounds gives the least and the greatest x and y.
func (p Polygon) Bounds() (left, bottom, right, top float64) {
	left, bottom, right, top = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, q := range p.Outer {
		left, right = min(left, q.X), max(right, q.X)
		bottom, top = min(bottom, q.Y), max(top, q.Y)
	}
	return left, bottom, right, top
}

// rings gives the outer ring and the holes.
func (p Polygon) rings() [][]Point { return append([][]Point{p.Outer}, p.Holes...) }

// Area is the area, holes left out.
func (p Polygon) Area() float64 {
	sum := 0.0
	for _, ring := range p.rings() {
		for i, a := range ring {
			b := ring[(i+1)%len(ring)]
			sum += a.X*b.Y - b.X*a.Y
		}
	}
	return sum / 2
}

// Minus gives what is left of p when the others are taken out, from left to
// right and then upwards; nothing where they cover it.
func (p Polygon) Minus(others ...Polygon) ([]Polygon, error) {
	left, bottom, right, top := p.Bounds()
	rest := toGeom(p)
	touched := false
	for _, o := range others {
		l, b, r, t := o.Bounds()
		if l >= right || r <= left || b >= top || t <= bottom {
			continue // the overlay costs more than all the rest
		}
		var err error
		if rest, err = geom.Difference(rest, toGeom(o)); err != nil {
			return nil, fmt.Errorf("taking an opening out of a piece: %w", err)
		}
		touched = true
	}
	if !touched {
		return []Polygon{p}, nil
	}
	return polygons(rest), nil
}

// polygons gives the polygons of an overlay's result, from left to right and then upwards.
func polygons(of geom.Geometry) []Polygon {
	var out []Polygon
	for _, g := range of.Dump() {
		if poly, ok := g.AsPolygon(); ok && !poly.IsEmpty() {
			if q := fromGeom(poly); len(q.Outer) > 0 { // thinner than the grain: nothing is left
				out = append(out, q)
			}
		}
	}
	slices.SortFunc(out, func(a, b Polygon) int {
		al, ab, _, _ := a.Bounds()
		bl, bb, _, _ := b.Bounds()
		return cmp.Or(cmp.Compare(al, bl), cmp.Compare(ab, bb))
	})
	return out
}

func toGeom(p Polygon) geom.Geometry {
	var rings [][]float64
	for _, ring := range p.rings() {
		rings = append(rings, flat(ring))
	}
	return geom.NewPolygonXY(rings...).AsGeometry()
}

// flat gives a ring as the library wants it: coordinates in a row, the first corner again at the end.
func flat(ring []Point) []float64 {
	out := make([]float64, 0, 2*len(ring)+2)
	for _, q := range ring {
		out = append(out, rounded(q.X), rounded(q.Y))
	}
	return append(out, out[0], out[1])
}

func fromGeom(g geom.Polygon) Polygon {
	g = g.ForceCCW()
	p := Polygon{Outer: ringOf(g.ExteriorRing())}
	for i := range g.NumInteriorRings() {
		if hole := ringOf(g.InteriorRingN(i)); len(hole) > 0 {
			p.Holes = append(p.Holes, hole)
		}
	}
	slices.SortFunc(p.Holes, func(a, b []Point) int { return cmp.Or(cmp.Compare(a[0].X, b[0].X), cmp.Compare(a[0].Y, b[0].Y)) })
	return p
}

// ringOf rounds a ring, drops corners on straight lines and turns it to start at its lowest leftmost corner. A ring
// that encloses nothing after that has no corners.
func ringOf(ls geom.LineString) []Point {
	seq := ls.Coordinates()
	var ring []Point
	for i := range seq.Length() - 1 {
		xy := seq.GetXY(i)
		q := Point{rounded(xy.X), rounded(xy.Y)}
		if len(ring) == 0 || ring[len(ring)-1] != q {
			ring = append(ring, q)
		}
	}
	return tidy(ring)
}

// tidy drops corners on straight lines and turns a ring to start at its lowest leftmost corner.
func tidy(ring []Point) []Point {
	var out []Point
	for i, q := range ring {
		a, b := ring[(i+len(ring)-1)%len(ring)], ring[(i+1)%len(ring)]
		cross := (q.X-a.X)*(b.Y-q.Y) - (q.Y-a.Y)*(b.X-q.X)
		if math.Abs(cross) > grain*math.Hypot(b.X-a.X, b.Y-a.Y) {
			out = append(out, q)
		}
	}
	if len(out) < 3 {
		return nil
	}
	first := 0
	for i, q := range out {
		if cmp.Or(cmp.Compare(q.Y, out[first].Y), cmp.Compare(q.X, out[first].X)) < 0 {
			first = i
		}
	}
	return append(out[first:len(out):len(out)], out[:first]...)
}

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
	var out []Side
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
	var heights []float64
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
		out = append(out, level(sides, heights[i-1], heights[i])...)
	}
	return out
}

// level gives the trapezoids between two neighbouring heights. No side ends
// between them, so the sides that cross keep their order.
func level(sides []Side, bottom, top float64) []Trapezoid {
	type crossing struct{ low, high float64 }
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
		xs = append(xs, crossing{at(bottom), at(top)})
	}
	slices.SortFunc(xs, func(a, b crossing) int { return cmp.Compare(a.low+a.high, b.low+b.high) })
	var out []Trapezoid
	for i := 0; i+1 < len(xs); i += 2 {
		out = append(out, Trapezoid{bottom, top, xs[i].low, xs[i+1].low, xs[i].high, xs[i+1].high})
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
// leftmost where several are alike.
func (p Polygon) Narrowest() Width {
	best := Width{Width: math.Inf(1)}
	for _, t := range p.Trapezoids() {
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
