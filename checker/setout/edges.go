package setout

import (
	"fmt"
	"math"

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
	switch {
	case side.InHole:
		return "notch"
	case side.Faces == "left" && upright && same(x, c.left) && !c.cutLeft:
		return c.leftEdge
	case side.Faces == "right" && upright && same(x, c.right) && !c.cutRight:
		return c.rightEdge
	case side.Faces == "left" && c.cutLeft && p.along(side, c.left), side.Faces == "right" && c.cutRight && p.along(side, c.right):
		return "rip"
	case side.Faces == "up" && level && same(y, c.course.top):
		return endOr(c.course.cutUpper)
	case side.Faces == "down" && level && same(y, c.course.bottom):
		return endOr(c.course.cutLower)
	case (side.Faces == "left" || side.Faces == "right") && p.spans(side.From.Y, side.To.Y, p.bottom, p.top):
		return "rip"
	case (side.Faces == "up" || side.Faces == "down") && p.spans(side.From.X, side.To.X, p.left, p.right):
		return "crosscut"
	}
	return "notch"
}

// along says whether a side lies on the cell's sawn long edge: upright at x, or
// leaning where the piece is tapered.
func (p *part) along(side planar.Side, x float64) bool {
	return side.From.X == side.To.X && same(side.From.X, x) || side.From.X != side.To.X && p.cell.spec != nil && p.cell.spec.WidthTop != nil
}

// spans says whether a side goes all the way across a part; then one cut makes it.
func (p *part) spans(a, b, least, most float64) bool {
	return same(min(a, b), least) && same(max(a, b), most)
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
// covers it, and what the plan does with it.
func (s *setter) edges(f *facts.Facts) {
	beside := s.neighbours()
	for _, p := range s.parts {
		count := map[string]int{}
		for _, side := range p.poly.Sides() {
			id := p.id + " " + p.edgeName(side)
			count[id]++
			if n := count[id]; n > 1 {
				id = fmt.Sprintf("%s %d", id, n)
			}
			made := p.madeBy(side)
			e := facts.Edge{About: p.about(id), Piece: p.id, Side: side.Faces, MadeBy: made, Cut: made == "rip" || made == "crosscut" || made == "notch",
				From: facts.Point{X: round(side.From.X), Y: round(side.From.Y)}, To: facts.Point{X: round(side.To.X), Y: round(side.To.Y)},
				Low: round(min(side.From.Y, side.To.Y)), High: round(max(side.From.Y, side.To.Y)), InView: p.inView()}
			e.Length = round(math.Hypot(side.To.X-side.From.X, side.To.Y-side.From.Y))
			where := s.meet(p, side, &e, beside)
			if p.run().CutEdgesStated {
				e.Treatment = "none"
				if t, ok := p.run().CutEdges[where]; ok {
					e.Treatment, e.TreatmentWith = t.By, t.With
				}
			}
			f.Edges = append(f.Edges, e)
		}
	}
}

// edgeName says in a fitter's words which edge it is.
func (p *part) edgeName(side planar.Side) string {
	if h, at, ok := p.atHole(side); ok {
		switch {
		case at != "jambs":
			return "edge at the " + at + " of " + h.opening.Name
		case side.Faces == "right":
			return "edge at the left jamb of " + h.opening.Name
		}
		return "edge at the right jamb of " + h.opening.Name
	}
	return sideName[side.Faces]
}

var sideName = map[string]string{"left": "left edge", "right": "right edge", "up": "upper edge", "down": "lower edge"}

// meet fills in what the edge meets and what covers it, and gives the word
// under which the plan treats such edges.
func (s *setter) meet(p *part, side planar.Side, e *facts.Edge, beside neighbours) (where string) {
	where = map[string]string{"left": "left", "right": "right", "up": "top", "down": "bottom"}[side.Faces]
	if h, at, ok := p.atHole(side); ok {
		e.Meets, e.Other, e.Cover = "opening", h.id(), "bare"
		switch {
		case h.opening.ArchitraveStays:
			e.Meets, e.Cover, e.CoveredBy = "architrave", "covered", "architrave"
		case h.opening.Kind == "pillar":
			e.Meets, e.Cover, e.CoveredBy = "pillar", "covered", "pillar"
		}
		return at
	}
	if p.surface.leaf != nil && p.atBoundary(side) {
		e.Meets, e.Cover = "leaf edge", "bare"
		return where
	}
	if other, ok := beside.of(p, side.Faces); ok && p.atJoint(side) {
		e.Meets, e.Other, e.Cover, e.CoveredBy = "piece", other.id, "covered", "piece "+other.id
		return where
	}
	if other := s.across(p, side); other != nil {
		e.Meets, e.Other, e.Cover, e.CoveredBy = "piece", other.id, "covered", "piece "+other.id
		return where
	}
	p.meetWall(side, e)
	return where
}

// atJoint says whether a side is the cell's own long edge, where its neighbour stands.
func (p *part) atJoint(side planar.Side) bool {
	return side.Faces == "left" && same(side.From.X, p.cell.left) || side.Faces == "right" && same(side.From.X, p.cell.right)
}

// across finds the part of the course above or below that a side meets, across
// the gap between the courses.
func (s *setter) across(p *part, side planar.Side) *part {
	if len(p.laid.courses) == 1 || side.Faces != "up" && side.Faces != "down" {
		return nil
	}
	x, y := (side.From.X+side.To.X)/2, (side.From.Y+side.To.Y)/2
	i := p.cell.course.number - 1
	if side.Faces == "up" && i+1 < len(p.laid.courses) && same(y, p.cell.course.top) {
		return s.partAt(p.surface.on, x, p.laid.courses[i+1].bottom+inside)
	}
	if side.Faces == "down" && i > 0 && same(y, p.cell.course.bottom) {
		return s.partAt(p.surface.on, x, p.laid.courses[i-1].top-inside)
	}
	return nil
}

// meetWall is meet for what is left: the wall's ends, ceiling, floor, skirting,
// a nib or step of the outline, or nothing.
func (p *part) meetWall(side planar.Side, e *facts.Edge) {
	cover := func(meets, cover, by string) { e.Meets, e.Cover, e.CoveredBy = meets, cover, by }
	s := p.surface
	x, y := (side.From.X+side.To.X)/2, (side.From.Y+side.To.Y)/2
	switch {
	case side.Faces == "left" && same(p.left, s.left) && x-p.left < nearEnd:
		cover(corner(s.wall.LeftCorner))
	case side.Faces == "right" && same(p.right, s.right) && p.right-x < nearEnd:
		cover(corner(s.wall.RightCorner))
	case side.Faces == "up" && p.ends(x, y+p.run().ClearTop):
		cover("ceiling", "covered", "ceiling")
	case side.Faces == "down" && p.run().Base <= floorShadow && p.ends(x, y-p.run().Base-s.wall.SkirtingHeight):
		if s.wall.SkirtingHeight > 0 {
			cover("skirting", "covered", "skirting")
		} else {
			cover("floor", "covered", "floor")
		}
	case s.wall.Outline != nil && (side.Faces == "left" && p.ends(x, y) || side.Faces == "right" && p.ends(x, y)):
		cover("nib", "covered", "nib")
	default:
		cover("air", "bare", "")
	}
}

// nearEnd is how far a tapered edge may lean from the wall's end and still be
// the one that stands there.
const nearEnd = 100

// ends says whether the wall's outline passes through a place.
func (p *part) ends(x, y float64) bool {
	s := p.surface
	if s.wall.Outline == nil {
		return same(y, s.top) || same(y, s.bottom-s.wall.SkirtingHeight)
	}
	for _, side := range s.outline().Sides() {
		if side.Distance(x, y) <= 10*near {
			return true
		}
	}
	return false
}

// floorShadow is the gap under a panel up to which its lower edge still counts
// as standing on the floor: it is the edge's place, not a judgement of the gap.
const floorShadow = 50

func corner(kind string) (meets, cover, by string) {
	switch kind {
	case "internal":
		return "corner", "covered", "adjoining wall"
	case "external":
		return "open corner", "bare", ""
	case "none":
		return "open wall", "bare", ""
	}
	return "wall end", "unsaid", ""
}

func (p *part) atBoundary(side planar.Side) bool {
	s := p.surface
	switch side.Faces {
	case "left":
		return same(side.From.X, s.left)
	case "right":
		return same(side.From.X, s.right)
	case "up":
		return same(side.From.Y, s.top-p.run().ClearTop)
	}
	return same(side.From.Y, s.bottom+p.run().Base)
}

// atHole finds the hole that a side runs along and the word for that place.
func (p *part) atHole(side planar.Side) (hole, string, bool) {
	low, high := min(side.From.Y, side.To.Y), max(side.From.Y, side.To.Y)
	left, right := min(side.From.X, side.To.X), max(side.From.X, side.To.X)
	for _, h := range p.laid.holesAcross(p.left-1, p.right+1) {
		inHeight := low < h.top-near && high > h.bottom+near
		inWidth := left < h.right-near && right > h.left+near
		switch {
		case side.Faces == "right" && same(side.From.X, h.left) && inHeight, side.Faces == "left" && same(side.From.X, h.right) && inHeight:
			return h, "jambs", true
		case side.Faces == "down" && same(side.From.Y, h.top) && inWidth:
			return h, "head", true
		case side.Faces == "up" && same(side.From.Y, h.bottom) && inWidth:
			return h, "sill", true
		}
	}
	return hole{}, "", false
}
