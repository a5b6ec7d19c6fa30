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
	left, bottom, right, top float64
	ripped                   bool // a long edge is sawn over the whole height
	screws                   []screw
	beads                    []column
}

func (p *part) run() *plan.Run     { return p.laid.run }
func (p *part) panel() *plan.Panel { return p.laid.run.Panel }
func (p *part) inView() bool       { return p.cell.spec == nil || p.cell.spec.HiddenBy == "" }

// straight says whether the part has four sides and no opening cut out of it.
func (p *part) straight() bool { return len(p.poly.Outer) == 4 && len(p.poly.Holes) == 0 }

// contains says whether a point lies in the part, its sides counted in.
func (p *part) contains(x, y float64) bool {
	for _, t := range p.poly.Trapezoids() {
		if y < t.Bottom || y > t.Top {
			continue
		}
		share := (y - t.Bottom) / (t.Top - t.Bottom)
		left := t.BottomLeft + share*(t.TopLeft-t.BottomLeft)
		right := t.BottomRight + share*(t.TopRight-t.BottomRight)
		if x >= left && x <= right {
			return true
		}
	}
	return false
}

// cutOut cuts each panel of a run to the wall's outline and takes the openings out of it.
func (s *setter) cutOut(l *laid) error {
	for _, c := range l.cells {
		var holes []planar.Polygon
		for _, h := range l.holesAcross(c.left, c.right) {
			holes = append(holes, planar.Rect(met(h.left, c.left, c.right), met(h.bottom, c.course.bottom, c.course.top), met(h.right, c.left, c.right), met(h.top, c.course.bottom, c.course.top)))
		}
		within := []planar.Polygon{c.shape}
		if l.field != nil {
			var err error
			if within, err = c.shape.And(*l.field); err != nil {
				return fmt.Errorf("setting out piece %s: %w", c.id, err)
			}
		}
		first := len(s.parts)
		for _, shape := range within {
			polys, err := shape.Minus(holes...)
			if err != nil {
				return fmt.Errorf("setting out piece %s: %w", c.id, err)
			}
			for _, poly := range polys {
				p := &part{laid: l, cell: c, surface: l.surface, poly: poly}
				p.left, p.bottom, p.right, p.top = poly.Bounds()
				s.parts = append(s.parts, p)
			}
		}
		s.name(c, s.parts[first:])
	}
	return nil
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
		where := p.where()
		taken[where]++
		p.id = c.id + " " + where
		if taken[where] > 1 {
			p.id = fmt.Sprintf("%s %d", p.id, taken[where])
		}
		if s.ids[p.id] {
			s.tooMany(c.at, p.id)
		}
		s.ids[p.id] = true
	}
}

func (p *part) where() string {
	for _, h := range p.laid.holesAcross(p.left, p.right) {
		switch {
		case p.bottom >= h.top-near:
			return "over"
		case p.top <= h.bottom+near:
			return "under"
		}
	}
	for _, h := range p.laid.holes {
		if same(p.right, h.left) {
			return "left"
		}
	}
	return "right"
}
