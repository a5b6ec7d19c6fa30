// Package swing turns a body about an axis, in plan view, against bodies that
// stand still: where it first runs into one, how near it comes, how far it
// opens. A vertex turns on a circle and a side is straight, so every angle at
// which anything can change is known in closed form; between two of them one
// look tells the state of the whole piece, and nothing is sampled.
//
// Lengths are in mm, angles in degrees, anticlockwise from +x. The axis is the
// origin. A body is given as it stands at 0 degrees. A body that encloses
// nothing, or that has a coordinate that is not a number or beyond 10 km,
// touches nothing. Nothing here fails, and nothing changes what it is given.
package swing

import (
	"cmp"
	"math"
	"slices"
)

const (
	// near is how deep, in mm, one body may reach into another and only touch it: above the noise of the arithmetic, below all that matters.
	near = 1e-6
	// slack is how far, in mm, a vertex may pass beside the end of a side and still be looked at: where a circle only just reaches a line, its
	// place along the line is known no better. An angle too many costs a look and changes nothing.
	slack = 1e-3
	// noise is a difference, in mm or degrees, that counts as none; a turn by so much moves a point 10 m from the axis by less than near.
	noise = 1e-9
	// largest is the largest coordinate, in mm.
	largest = 1e7
)

// Point is a point in plan, in mm from the axis.
type Point struct{ X, Y float64 }

// Body is a simple polygon, its corners in mm, anticlockwise, the first not
// repeated; it may be convex or not.
type Body []Point

// event is an angle at which a vertex of one body lies on a side of the other.
type event struct {
	angle   float64 // degrees
	vertex  Point   // at 0 degrees
	side    side    // at 0 degrees
	ofFixed bool    // the vertex is the fixed body's, the side the moving one's
	enters  bool    // the vertex is on its way in
}

// way is the way that the vertex turns, seen from the body that has the side: 1 anticlockwise, -1 clockwise.
func (e event) way() float64 {
	if e.ofFixed {
		return -1
	}
	return 1
}

// FirstContact turns moving anticlockwise from the one angle to the other
// (degrees, 0 to 360) and gives the least angle at which it enters fixed, and
// the point where it does. Bodies that touch, slide along each other or overlap
// by 1e-6 mm or less have not entered. Bodies that overlap by more at the start
// give from and a point that both have. Where nothing is entered ok is false,
// and the angle is to.
func FirstContact(moving, fixed Body, from, to float64) (angle float64, at Point, ok bool) {
	from, to = span(from, to)
	m, f := moving.clean(), fixed.clean()
	// What enters the fixed body by more than near enters the same body with near taken off all round.
	core := f.shrunk(near)
	if len(m) == 0 || len(core) == 0 {
		return to, Point{}, false
	}
	if at, ok := overlap(m.turned(from), core); ok {
		return from, at, true
	}
	events := meetings(m, f, core, from, to)
	// No vertex is on a side between two neighbouring angles, so that what is true half way is true from the one to the other.
	start := from
	for i := 0; i <= len(events); i++ {
		end := to
		if i < len(events) {
			end = events[i].angle
		}
		if end-start <= noise {
			continue
		}
		if common, ok := overlap(m.turned((start+end)/2), core); ok {
			angle, at := touch(events, start, from, common)
			return angle, at, true
		}
		start = end
	}
	return to, Point{}, false
}

// meetings gives, by angle, every event of a moving body with the core of a fixed one.
func meetings(m, f, core Body, from, to float64) []event {
	var out []event
	// p turns and passes s, both of them the core's where they are the fixed body's; e says whose they are.
	add := func(p Point, s side, e event) {
		in, outwards, ok := s.passes(p, e.way())
		if !ok {
			return
		}
		for i, pass := range []float64{in, outwards} {
			for _, e.angle = range turns(pass, from, to) {
				if along := s.along(p.turned(e.way() * e.angle)); along > -slack && along < s.length+slack {
					e.enters = i == 0
					out = append(out, e)
				}
			}
		}
	}
	sides := f.sides()
	for i, s := range core.sides() {
		for _, p := range m {
			add(p, s, event{vertex: p, side: sides[i]})
		}
	}
	for _, s := range m.sides() {
		for i, p := range core {
			add(p, s, event{vertex: f[i], side: s, ofFixed: true})
		}
	}
	slices.SortStableFunc(out, func(a, b event) int { return cmp.Compare(a.angle, b.angle) })
	return out
}

// touch gives the angle and the place of the touch that led to an overlap from
// an angle on: there it is near deep, and it began a little before, where the
// same vertex met the same side. common is a point of the overlap, for want of a better.
func touch(events []event, deep, from float64, common Point) (float64, Point) {
	angle, at, found := deep, common, false
	for _, e := range events {
		if math.Abs(e.angle-deep) > 10*noise || !e.enters {
			continue
		}
		began := deep
		if in, _, ok := e.side.passes(e.vertex, e.way()); ok {
			began = max(from, min(deep, last(in, deep+noise)))
		}
		// At a corner two sides are passed, and both must be before anything is entered.
		if !found || began > angle {
			angle, at, found = began, e.vertex, true
			if !e.ofFixed {
				at = e.vertex.turned(began)
			}
		}
	}
	return angle, at
}

// OpenAngle gives how far, in degrees, a body opens from 0 before it enters any
// of the fixed ones, at most limit (0 to 360).
func OpenAngle(moving Body, fixed []Body, limit float64) float64 {
	_, least := span(0, limit)
	for _, f := range fixed {
		if angle, _, ok := FirstContact(moving, f, 0, least); ok {
			least = min(least, angle)
		}
	}
	return least
}

// NearestApproach gives the least and the greatest x and y, in mm, that a point
// comes to as it turns anticlockwise from the one angle to the other (degrees,
// 0 to 360).
func NearestApproach(p Point, from, to float64) (minX, maxX, minY, maxY float64) {
	if !p.usable() {
		return 0, 0, 0, 0
	}
	from, to = span(from, to)
	a, b := p.turned(from), p.turned(to)
	minX, maxX = min(a.X, b.X), max(a.X, b.X)
	minY, maxY = min(a.Y, b.Y), max(a.Y, b.Y)
	// In between it comes furthest where it crosses an axis.
	radius, start := p.polar()
	for quarter, furthest := range []func(){
		func() { maxX = radius }, func() { maxY = radius }, func() { minX = -radius }, func() { minY = -radius },
	} {
		if len(turns(float64(quarter)*math.Pi/2-start, from, to)) > 0 {
			furthest()
		}
	}
	return minX, maxX, minY, maxY
}

// span puts two angles in degrees into 0 to 360 and in order; what is not a number is 0.
func span(from, to float64) (float64, float64) {
	if math.IsNaN(from) {
		from = 0
	}
	if math.IsNaN(to) {
		to = 0
	}
	from = min(max(from, 0), 360)
	return from, min(max(to, from), 360)
}

// turns gives in degrees every angle from the one to the other at which something is that is at an angle in radians.
func turns(radians, from, to float64) []float64 {
	degrees := radians * 180 / math.Pi
	var out []float64
	for angle := degrees + 360*math.Ceil((from-degrees)/360); angle <= to; angle += 360 {
		out = append(out, angle)
	}
	return out
}

// last gives in degrees the last angle up to a limit at which something is that is at an angle in radians.
func last(radians, limit float64) float64 {
	degrees := radians * 180 / math.Pi
	return degrees + 360*math.Floor((limit-degrees)/360)
}
