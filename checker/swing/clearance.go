package swing

import "math"

// approach is how near two bodies come, and where.
type approach struct {
	gap, angle float64 // mm, degrees
	at         Point
}

// take keeps the nearer of two approaches, and of two alike the one at the smaller angle.
func (a *approach) take(b approach) {
	if b.gap <= near {
		b.gap = 0
	}
	// A difference that is noise must not decide.
	if b.gap < a.gap-noise || b.gap < a.gap+noise && b.angle < a.angle {
		*a = b
	}
}

// Clearance turns moving anticlockwise from the one angle to the other (degrees,
// 0 to 360) and gives the least distance between the two bodies in mm, the first
// angle at which they are so near, and the point of fixed that is nearest then.
// Bodies no more than 1e-6 mm apart touch: the distance is 0. Where moving
// enters fixed it is 0 too, at the angle and the point of FirstContact. A body
// that encloses nothing is infinitely far.
func Clearance(moving, fixed Body, from, to float64) (gap float64, angle float64, at Point) {
	from, to = span(from, to)
	if angle, at, ok := FirstContact(moving, fixed, from, to); ok {
		return 0, angle, at
	}
	m, f := moving.clean(), fixed.clean()
	best := approach{gap: math.Inf(1), angle: from}
	if len(m) == 0 || len(f) == 0 {
		return best.gap, best.angle, best.at
	}
	// Apart, two bodies are nearest at a vertex of one of them.
	for _, s := range f.sides() {
		for _, p := range m {
			for _, angle := range s.turningPoints(p, 1, from, to) {
				gap, at := s.nearest(p.turned(angle))
				best.take(approach{gap, angle, at})
			}
		}
	}
	for _, s := range m.sides() {
		for _, p := range f {
			for _, angle := range s.turningPoints(p, -1, from, to) {
				gap, _ := s.nearest(p.turned(-angle))
				best.take(approach{gap, angle, p})
			}
		}
	}
	return best.gap, best.angle, best.at
}

// turningPoints gives in degrees every angle at which the distance between a side and a point outside its body may be least, as the point turns
// anticlockwise (way 1) or clockwise (-1): at the ends, where it stands square in front of the line, where it is on the line, and where it is on a
// ray with the side's first vertex. (The other vertex is the next side's first.) From the side to beyond its end the distance goes on smoothly, so
// that it is least nowhere else.
func (s side) turningPoints(p Point, way, from, to float64) []float64 {
	_, start := p.polar()
	_, end := s.from.polar()
	angles := []float64{way * s.square(p), way * (end - start)}
	if in, out, ok := s.passes(p, way); ok {
		angles = append(angles, in, out)
	}
	out := []float64{from, to}
	for _, angle := range angles {
		out = append(out, turns(angle, from, to)...)
	}
	return out
}
