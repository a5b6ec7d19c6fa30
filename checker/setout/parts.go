package setout

import (
	"fmt"

	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// part is a piece of panel in one piece, after openings are taken out and it is
// cut to the wall's outline.
type part struct {
	id                       string
	laid                     *laid
	cell                     *cell
	surface                  *surface
	poly                     planar.Polygon
	sides                    []planar.Side      // of poly, kept as they are asked for again and again
	levels                   []planar.Trapezoid // of poly
	left, bottom, right, top float64
	ripped                   bool // a long edge is sawn over the whole height
	screws                   []screw
	beads                    []column
}

func (p *part) run() *plan.Run     { return p.laid.run }
func (p *part) panel() *plan.Panel { return p.laid.run.Panel }
func (p *part) inView() bool       { return p.cell.spec == nil || p.cell.spec.HiddenBy == "" }

// straight says whether nothing is notched into the part or cut out of it: a
// straight cut a side makes it.
func (p *part) straight() bool { return p.poly.Convex() }

// contains says whether a point lies in the part, its sides counted in.
func (p *part) contains(x, y float64) bool {
	for _, t := range p.levels {
		if y < t.Bottom || y > t.Top {
			continue
		}
		if left, right := t.At(y); x >= left && x <= right {
			return true
		}
	}
	return false
}

// cutOut cuts each panel of a run to the wall's outline and takes the openings
// out of it. A panel of which nothing is left is no piece.
func (s *setter) cutOut(l *laid) error {
	for _, c := range l.cells {
		polys, err := l.rest(c)
		if err != nil {
			return &Misfit{c.at, fmt.Sprintf("the piece %q cannot be cut out: %v", c.id, err)}
		}
		first := len(l.parts)
		for _, poly := range polys {
			p := &part{laid: l, cell: c, surface: l.surface, poly: poly, sides: poly.Sides(), levels: poly.Trapezoids()}
			p.left, p.bottom, p.right, p.top = poly.Bounds()
			if min(p.right-p.left, p.top-p.bottom) > sliver {
				l.parts = append(l.parts, p)
				l.from, l.to = min(l.from, p.left), max(l.to, p.right)
			}
		}
		c.parts = l.parts[first:len(l.parts):len(l.parts)]
		s.name(c, c.parts)
		if len(s.parts)+len(l.parts) > Most {
			s.tooMany(c.at)
			break
		}
	}
	s.parts = append(s.parts, l.parts...)
	return nil
}

// sliver is what is too thin to be a piece, in millimetres: the tip that a rake
// leaves of a panel, or what rounding the plan's lengths does.
const sliver = 0.025

// rest gives what outline and openings leave of a panel.
func (l *laid) rest(c *cell) ([]planar.Polygon, error) {
	within := []planar.Polygon{c.shape}
	if l.field != nil {
		within = nil
		for _, field := range l.field {
			common, err := c.shape.And(c.onLines(field))
			if err != nil { // where the outline is narrower than its corners were moved
				common, err = c.shape.And(field)
			}
			if err != nil {
				return nil, err
			}
			within = append(within, common...)
		}
	}
	var holes []planar.Polygon
	for _, h := range l.holesAcross(c.left, c.right) {
		holes = append(holes, c.onLines(planar.Rect(h.left, h.bottom, h.right, h.top)))
	}
	var out []planar.Polygon
	for _, shape := range within {
		rest, err := shape.Minus(holes...)
		if err != nil {
			return nil, err
		}
		out = append(out, rest...)
	}
	return out, nil
}

// onLines gives a polygon whose corners lie on the panel's lines where they all
// but do.
func (c *cell) onLines(p planar.Polygon) planar.Polygon {
	moved := func(ring []planar.Point) []planar.Point {
		out := make([]planar.Point, len(ring))
		for i, q := range ring {
			out[i] = planar.Point{X: met(q.X, c.left, c.right), Y: met(q.Y, c.course.bottom, c.course.top)}
		}
		return out
	}
	out := planar.Polygon{Outer: moved(p.Outer)}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, moved(h))
	}
	return out
}

// met gives the one of two lines that v all but meets, or v: a sliver between them would be no piece.
func met(v, a, b float64) float64 {
	switch {
	case same(v, a):
		return a
	case same(v, b):
		return b
	}
	return v
}

// name gives a whole piece its cell's name, and the parts of a divided one that
// name with where each lies.
func (s *setter) name(c *cell, parts []*part) {
	if len(parts) == 1 {
		parts[0].id = c.id
		return
	}
	taken := map[string]int{}
	for _, p := range parts {
		where := p.where(parts)
		taken[where]++
		p.id = c.id + " " + where
		if taken[where] > 1 {
			p.id = fmt.Sprintf("%s %d", p.id, taken[where])
		}
		s.named(c.at, p.id)
	}
}

// where says where a part of a divided panel lies: at an opening, or against the other parts.
func (p *part) where(parts []*part) string {
	for _, h := range p.laid.holesAcross(p.left, p.right) {
		switch {
		case p.bottom >= h.top-near:
			return "over"
		case p.top <= h.bottom+near:
			return "under"
		}
	}
	for _, h := range p.laid.holesAcross(p.left-1, p.right+1) {
		switch {
		case same(p.right, h.left):
			return "left"
		case same(p.left, h.right):
			return "right"
		}
	}
	for _, q := range parts {
		switch {
		case p.bottom >= q.top-near:
			return "above"
		case p.top <= q.bottom+near:
			return "below"
		case p.right <= q.left+near:
			return "left"
		}
	}
	return "right"
}
