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
	if len(tidy(ring)) == 0 { // on one line
		return Polygon{}, errNothing
	}
	if err := geom.NewPolygonXY(flat(ring)).Validate(); err != nil {
		return Polygon{}, errors.New("its sides cross or touch each other")
	}
	ring = slices.Clone(ring)
	if (Polygon{Outer: ring}).Area() < 0 {
		slices.Reverse(ring)
	}
	return Polygon{Outer: tidy(ring)}, nil
}

var errNothing = errors.New("it encloses nothing")

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
