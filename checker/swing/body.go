package swing

import (
	"math"
	"slices"
)

func (p Point) usable() bool { return math.Abs(p.X) <= largest && math.Abs(p.Y) <= largest }

// polar gives a point's distance from the axis in mm and its direction in radians.
func (p Point) polar() (radius, direction float64) {
	return math.Hypot(p.X, p.Y), math.Atan2(p.Y, p.X)
}

// turned gives the point turned anticlockwise by an angle in degrees.
func (p Point) turned(degrees float64) Point {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Point{p.X*cos - p.Y*sin, p.X*sin + p.Y*cos}
}

// turned gives the body turned anticlockwise by an angle in degrees.
func (b Body) turned(degrees float64) Body {
	out := make(Body, len(b))
	for i, p := range b {
		out[i] = p.turned(degrees)
	}
	return out
}

// area is positive where the corners go anticlockwise.
func (b Body) area() float64 {
	sum := 0.0
	for i, p := range b {
		q := b[(i+1)%len(b)]
		sum += p.X*q.Y - q.X*p.Y
	}
	return sum / 2
}

// clean gives the body without sides of no length and anticlockwise, or nothing where it cannot be worked with.
func (b Body) clean() Body {
	var out Body
	for _, p := range b {
		if !p.usable() {
			return nil
		}
		if len(out) == 0 || math.Hypot(p.X-out[len(out)-1].X, p.Y-out[len(out)-1].Y) > noise {
			out = append(out, p)
		}
	}
	for len(out) > 1 && math.Hypot(out[0].X-out[len(out)-1].X, out[0].Y-out[len(out)-1].Y) <= noise {
		out = out[:len(out)-1]
	}
	area := out.area()
	if len(out) < 3 || area == 0 {
		return nil
	}
	if area < 0 {
		slices.Reverse(out)
	}
	return out
}

// shrunk gives the body with so much taken off all round, its corners in the same order, or nothing where nothing stays.
func (b Body) shrunk(by float64) Body {
	if len(b) == 0 {
		return nil
	}
	out := make(Body, len(b))
	sides := b.sides()
	for i, p := range b {
		before, after := sides[(i+len(b)-1)%len(b)], sides[i]
		// The corner moves to where both sides' lines have moved to: along the sum of their normals, and far in at a spike.
		x, y := -before.uy-after.uy, before.ux+after.ux
		scale := by / max(1+before.ux*after.ux+before.uy*after.uy, 1e-15)
		out[i] = Point{p.X + x*scale, p.Y + y*scale}
	}
	longest := 0
	for i, s := range sides {
		if s.length > sides[longest].length {
			longest = i
		}
	}
	// A body thinner than twice what is taken off is turned inside out: its area is negative, or, the other way round in both directions, its sides are.
	if s := sides[longest]; out.area() <= 0 || s.along(out[longest]) >= s.along(out[(longest+1)%len(out)]) {
		return nil
	}
	return out
}

// has says whether a point lies inside the body.
func (b Body) has(p Point) bool {
	in := false
	for i, a := range b {
		c := b[(i+1)%len(b)]
		if (a.Y > p.Y) != (c.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(c.Y-a.Y)*(c.X-a.X) {
			in = !in
		}
	}
	return in
}

// side is a straight side of a body, its material on the left.
type side struct {
	from, to Point
	ux, uy   float64 // its direction, of length 1
	length   float64 // mm
}

// sides gives the sides of a clean body, each from the corner of its number.
func (b Body) sides() []side {
	out := make([]side, len(b))
	for i, p := range b {
		q := b[(i+1)%len(b)]
		length := math.Hypot(q.X-p.X, q.Y-p.Y)
		out[i] = side{p, q, (q.X - p.X) / length, (q.Y - p.Y) / length, length}
	}
	return out
}

// inside is how far a point lies on the material's side of the side's line, in mm.
func (s side) inside(p Point) float64 { return s.ux*(p.Y-s.from.Y) - s.uy*(p.X-s.from.X) }

// along is how far a point lies along the side's line from the side's start, in mm.
func (s side) along(p Point) float64 { return s.ux*(p.X-s.from.X) + s.uy*(p.Y-s.from.Y) }

// nearest gives the point of the side nearest to a point, and how far it is, in mm.
func (s side) nearest(p Point) (float64, Point) {
	along := s.along(p)
	switch {
	case along <= 0:
		return math.Hypot(p.X-s.from.X, p.Y-s.from.Y), s.from
	case along >= s.length:
		return math.Hypot(p.X-s.to.X, p.Y-s.to.Y), s.to
	}
	return math.Abs(s.inside(p)), Point{s.from.X + s.ux*along, s.from.Y + s.uy*along}
}

// square gives the angle in radians by which a point has to turn anticlockwise to stand square in front of the side's line, furthest on the
// material's side.
func (s side) square(p Point) float64 {
	_, direction := p.polar()
	return math.Atan2(s.ux, -s.uy) - direction
}

// passes gives the angles in radians at which a point that turns anticlockwise (way 1) or clockwise (-1) passes the side's line, on its way in
// and on its way out. On its circle of radius r it lies r cos(angle - square) along the normal, and the line lies at a distance from the axis.
func (s side) passes(p Point, way float64) (in, out float64, ok bool) {
	radius, _ := p.polar()
	distance := s.ux*s.from.Y - s.uy*s.from.X
	if math.Abs(distance) > radius || radius == 0 {
		return 0, 0, false
	}
	square, half := way*s.square(p), math.Acos(distance/radius)
	return square - half, square + half, true
}

// overlap says whether the insides of two bodies have a point in common, and gives one near it. No vertex of one may lie on a side of the other.
func overlap(a, b Body) (Point, bool) {
	for _, p := range a {
		if b.has(p) {
			return p, true
		}
	}
	for _, p := range b {
		if a.has(p) {
			return p, true
		}
	}
	sides := b.sides()
	for _, s := range a.sides() {
		for _, t := range sides {
			from, to := s.inside(t.from), s.inside(t.to)
			if (from > 0) == (to > 0) || (t.inside(s.from) > 0) == (t.inside(s.to) > 0) {
				continue
			}
			share := from / (from - to)
			return Point{t.from.X + share*(t.to.X-t.from.X), t.from.Y + share*(t.to.Y-t.from.Y)}, true
		}
	}
	return Point{}, false
}
