package setout

import (
	"fmt"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/planar"
)

// madeBy says how a side of a part came to be: from the factory where it is the
// cell's own and that was not cut, otherwise by the saw: straight across the
// part, or as the side of a notch.
func (p *part) madeBy(side planar.Side) string {
	c, x, y := p.cell, side.From.X, side.From.Y
	upright := side.From.X == side.To.X
	level := side.From.Y == side.To.Y
	long := side.Faces == "left" || side.Faces == "right"
	switch {
	case side.InHole:
		return "notch"
	case side.Faces == "left" && upright && same(x, c.left) && !c.cutLeft:
		return c.leftEdge
	case side.Faces == "right" && upright && same(x, c.right) && !c.cutRight:
		return c.rightEdge
	case side.Faces == "left" && c.cutLeft && c.along(side), side.Faces == "right" && c.cutRight && c.along(side):
		return "rip"
	case side.Faces == "up" && level && same(y, c.course.top):
		return endOr(c.course.cutUpper && p.hasLevel("down", c.course.bottom))
	case side.Faces == "down" && level && same(y, c.course.bottom):
		return endOr(c.course.cutLower && p.hasLevel("up", c.course.top))
	case long && upright && same(min(side.From.Y, side.To.Y), p.bottom) && same(max(side.From.Y, side.To.Y), p.top):
		return "rip"
	case long && !upright && p.poly.Behind(side, near):
		return "rip"
	case !long && p.poly.Behind(side, near):
		return "crosscut"
	}
	return "notch"
}

// hasLevel says whether some of the part ends at a level line. A part that is
// sawn at its other end anyway, at an opening or under a raked ceiling, keeps
// this one from the factory.
func (p *part) hasLevel(faces string, y float64) bool {
	return slices.ContainsFunc(p.sides, func(s planar.Side) bool {
		return s.Faces == faces && onLevel(s, y)
	})
}

// along says whether a side lies on the panel's own long edge, or on the sawn
// one of a tapered piece.
func (c *cell) along(side planar.Side) bool {
	for _, own := range c.shape.Sides() {
		if own.Faces == side.Faces && own.Distance(side.From.X, side.From.Y) <= near && own.Distance(side.To.X, side.To.Y) <= near {
			return true
		}
	}
	return false
}

func endOr(cut bool) string {
	if cut {
		return "crosscut"
	}
	return "end"
}

func factoryOr(cut bool, edge string) string {
	if cut {
		return "rip"
	}
	return edge
}

// edges gives every edge of every part: what made it, what it meets, what
// covers it, and what the plan does with it. A side that meets one thing and
// then another is an edge for each.
func (s *setter) edges(f *facts.Facts) {
	beside := s.neighbours()
	n := 0
	for _, p := range s.parts {
		n += len(p.sides)
	}
	f.Edges = make([]facts.Edge, 0, n)
	for _, p := range s.parts {
		count := map[string]int{}
		for _, side := range p.sides {
			for _, e := range s.edgesOf(p, side, beside) {
				count[e.ID]++
				if n := count[e.ID]; n > 1 {
					e.ID = fmt.Sprintf("%s %d", e.ID, n)
				}
				f.Edges = append(f.Edges, e)
			}
		}
	}
}

// edgesOf gives the edges along one side of a part.
func (s *setter) edgesOf(p *part, side planar.Side, beside neighbours) []facts.Edge {
	made := p.madeBy(side)
	var out []facts.Edge
	var last planar.Side
	for _, one := range s.stretches(p, side, beside) {
		e := s.edge(p, one, made, beside)
		if n := len(out); n > 0 && out[n-1].ID == e.ID && out[n-1].Meets == e.Meets && out[n-1].Other == e.Other {
			one.From = last.From // they meet the same: one edge after all
			e = s.edge(p, one, made, beside)
			out = out[:n-1]
		}
		out, last = append(out, e), one
	}
	return out
}

func (s *setter) edge(p *part, side planar.Side, made string, beside neighbours) facts.Edge {
	at := p.atHole(side)
	e := facts.Edge{About: p.about(p.id + " " + at.name(side)), Piece: p.id, Side: side.Faces, MadeBy: made, Cut: made == "rip" || made == "crosscut" || made == "notch",
		From: facts.Point{X: round(side.From.X), Y: round(side.From.Y)}, To: facts.Point{X: round(side.To.X), Y: round(side.To.Y)},
		Low: round(min(side.From.Y, side.To.Y)), High: round(max(side.From.Y, side.To.Y)), InView: p.inView(),
		Length: round(math.Hypot(side.To.X-side.From.X, side.To.Y-side.From.Y))}
	s.meet(p, side, at, beside, &e)
	if p.run().CutEdgesStated {
		e.Treatment = "none"
		if t, ok := p.run().CutEdges[at.place(side)]; ok {
			e.Treatment, e.TreatmentWith = t.By, t.With
		}
	}
	return e
}

// meet fills in what an edge meets and what covers it.
func (s *setter) meet(p *part, side planar.Side, at atHole, beside neighbours, e *facts.Edge) {
	if h := at.hole; h != nil {
		e.Meets, e.Other, e.Cover = "opening", h.id(), "bare"
		switch {
		case h.opening.ArchitraveStays:
			e.Meets, e.Cover, e.CoveredBy = "architrave", "covered", "architrave"
		case h.opening.Kind == "pillar":
			e.Meets, e.Cover, e.CoveredBy = "pillar", "covered", "pillar"
		}
		return
	}
	if p.surface.leaf != nil && p.atBoundary(side) {
		e.Meets, e.Cover = "leaf edge", "bare"
		return
	}
	if other := s.other(p, side, beside); other != nil {
		e.Meets, e.Other, e.Cover, e.CoveredBy = "piece", other.id, "covered", "piece "+other.id
		return
	}
	e.Meets, e.Cover, e.CoveredBy = p.meetsWall(side)
}

// other finds the part that a side meets: at a joint of the run, across the gap
// to the course above or below, or where a part of another run touches it.
func (s *setter) other(p *part, side planar.Side, beside neighbours) *part {
	x, y := middle(side)
	if q := beside.of(p, side.Faces, y); q != nil && p.atJoint(side) {
		return q
	}
	above, below := p.laid.nextTo(p.cell.course)
	gap := 0.0
	switch {
	case side.Faces == "up" && above != nil && same(y, p.cell.course.top):
		gap = above.bottom - y
	case side.Faces == "down" && below != nil && same(y, p.cell.course.bottom):
		gap = y - below.top
	case !s.on[p.surface.on].shared:
		return nil
	}
	off := outward[side.Faces]
	q := s.partAt(p.surface.on, x+off.X*inside, y+off.Y*(gap+inside))
	if q != nil && q.laid == p.laid && q.cell.course == p.cell.course {
		return nil
	}
	return q
}

var outward = map[string]planar.Point{"left": {X: -1}, "right": {X: 1}, "up": {Y: 1}, "down": {Y: -1}}

func middle(side planar.Side) (x, y float64) {
	return (side.From.X + side.To.X) / 2, (side.From.Y + side.To.Y) / 2
}

// nextTo gives the courses above and below one; nil where there is none.
func (l *laid) nextTo(c *course) (above, below *course) {
	if c.number > 0 && c.number < len(l.courses) {
		above = l.courses[c.number]
	}
	if c.number > 1 {
		below = l.courses[c.number-2]
	}
	return above, below
}

// atJoint says whether a side is the cell's own long edge, where its neighbour stands.
func (p *part) atJoint(side planar.Side) bool {
	return side.Faces == "left" && onLine(side, p.cell.left) || side.Faces == "right" && onLine(side, p.cell.right)
}
