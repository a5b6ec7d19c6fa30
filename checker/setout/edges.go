package setout

import (
	"fmt"

	"trysquare/checker/facts"
	"trysquare/checker/planar"
)

// madeBy says how a side of a part came to be: from the factory where it is the
// cell's own and that was not cut, otherwise by the saw.
func (p *part) madeBy(side planar.Side) string {
	c, x, y := p.cell, side.From.X, side.From.Y
	upright := side.Faces == "left" || side.Faces == "right"
	switch {
	case side.InHole:
		return "notch"
	case side.Faces == "left" && same(x, c.left):
		return factoryOr(c.cutLeft, p.panel().LeftEdge)
	case side.Faces == "right" && same(x, c.right):
		return factoryOr(c.cutRight, p.panel().RightEdge)
	case side.Faces == "up" && same(y, p.laid.top):
		return "end" // a board is shortened at its lower end
	case side.Faces == "down" && same(y, p.laid.bottom):
		if p.laid.crosscut {
			return "crosscut"
		}
		return "end"
	case !p.rectangular():
		return "notch"
	case upright:
		return "rip"
	}
	return "crosscut"
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
			count[side.Faces]++
			id := p.id + " " + sideName[side.Faces]
			if n := count[side.Faces]; n > 1 {
				id = fmt.Sprintf("%s %d", id, n)
			}
			made := p.madeBy(side)
			e := facts.Edge{About: p.about(id), Piece: p.id, Side: side.Faces, MadeBy: made, Cut: made == "rip" || made == "crosscut" || made == "notch",
				From: facts.Point{X: round(side.From.X), Y: round(side.From.Y)}, To: facts.Point{X: round(side.To.X), Y: round(side.To.Y)},
				Low: round(min(side.From.Y, side.To.Y)), High: round(max(side.From.Y, side.To.Y)), InView: p.inView()}
			e.Length = round(abs(side.To.X-side.From.X) + abs(side.To.Y-side.From.Y)) // sides are upright or level
			where := p.meet(side, &e, beside)
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

var sideName = map[string]string{"left": "left edge", "right": "right edge", "up": "upper edge", "down": "lower edge"}

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}

// meet fills in what the edge meets and what covers it, and gives the word
// under which the plan treats such edges.
func (p *part) meet(side planar.Side, e *facts.Edge, beside neighbours) (where string) {
	where = map[string]string{"left": "left", "right": "right", "up": "top", "down": "bottom"}[side.Faces]
	if h, at, ok := p.atHole(side); ok {
		e.Meets, e.Other, e.Cover = "opening", h.id(), "bare"
		if h.opening.ArchitraveStays {
			e.Meets, e.Cover, e.CoveredBy = "architrave", "covered", "architrave"
		}
		return at
	}
	if p.surface.leaf != nil && p.atBoundary(side) {
		e.Meets, e.Cover = "leaf edge", "bare"
		return where
	}
	if other, ok := beside.of(p, side.Faces); ok {
		e.Meets, e.Other, e.Cover, e.CoveredBy = "piece", other.id, "covered", "piece "+other.id
		return where
	}
	p.meetWall(side, e)
	return where
}

// meetWall is meet for what is left: the wall's ends, ceiling, floor, skirting, or nothing.
func (p *part) meetWall(side planar.Side, e *facts.Edge) {
	cover := func(meets, cover, by string) { e.Meets, e.Cover, e.CoveredBy = meets, cover, by }
	s := p.surface
	switch {
	case side.Faces == "left" && same(side.From.X, s.left):
		cover(corner(s.wall.LeftCorner))
	case side.Faces == "right" && same(side.From.X, s.right):
		cover(corner(s.wall.RightCorner))
	case side.Faces == "up" && same(side.From.Y, s.top-p.run().ClearTop):
		cover("ceiling", "covered", "ceiling")
	case side.Faces == "down" && p.run().Base <= floorShadow && same(side.From.Y, s.bottom+p.run().Base):
		if s.wall.SkirtingHeight > 0 {
			cover("skirting", "covered", "skirting")
		} else {
			cover("floor", "covered", "floor")
		}
	default:
		cover("air", "bare", "")
	}
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
	for _, h := range p.laid.holes {
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
