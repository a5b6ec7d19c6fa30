package setout

import (
	"fmt"

	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// laid is a run with its panels in place.
type laid struct {
	run         *plan.Run
	surface     *surface
	cells       []*cell
	holes       []hole
	bottom, top float64
	crosscut    bool // panels are shorter than the board: cut at their lower end
}

// cell is one panel of a run before openings are taken out of it, in the
// wall's coordinates.
type cell struct {
	id, at            string
	spec              *plan.Piece // nil where the plan does not spell it out
	left, right       float64
	origin            float64 // where the left edge of the whole panel would be: the pattern starts from it
	cutLeft, cutRight bool
	stated            *float64 // the width that the plan gives
	space             float64  // what is free for it
}

// run lays the panels of a run side by side and takes the openings out.
func (s *setter) run(r *plan.Run) error {
	l := &laid{run: r, surface: surfaceOf(r), holes: holesOf(r)}
	l.bottom = l.surface.bottom + r.Base
	height := min(l.surface.top-r.ClearTop-l.bottom, r.Panel.Height)
	if r.Height != nil {
		height = min(height, *r.Height)
	}
	l.top = l.bottom + height
	l.crosscut = height < r.Panel.Height-near
	s.lay(l)
	if len(l.cells) == 0 {
		return nil // a misfit has been noted
	}
	s.runs = append(s.runs, l)
	return s.cutOut(l)
}

// lay goes from the run's start to its far end. Distances u count from the end
// that the run starts at.
func (s *setter) lay(l *laid) {
	width := l.surface.right - l.surface.left
	panel, u := l.run.Panel, l.run.Start
	for i := 0; ; i++ {
		spec := s.spec(l.run, i)
		if spec == nil && (len(l.run.Pieces) > 0 || u >= width-near) {
			return
		}
		at, id := l.run.At, fmt.Sprintf("%s%d", l.run.ID, i+1)
		gap := l.run.Joint
		if spec != nil {
			at, id = spec.At, spec.ID
			if spec.Gap != nil {
				gap = *spec.Gap
			}
		}
		if i > 0 {
			u += gap
		}
		if u >= width-near {
			if spec != nil {
				s.misfit(at, "there is no room for the piece %q: what stands before it reaches the end", id)
			}
			return
		}
		if s.ids[id] || len(s.ids) >= Most {
			s.tooMany(at, id)
			return
		}
		s.ids[id] = true
		c := &cell{id: id, at: at, spec: spec}
		u = c.place(l, panel, i, u, width)
		if c.right-c.left <= near {
			s.misfit(at, "nothing would be left of the piece %q", id)
			return
		}
		l.cells = append(l.cells, c)
	}
}

func (s *setter) tooMany(at, id string) {
	if s.ids[id] {
		s.misfit(at, "two pieces would be called %q; name the run or the piece otherwise", id)
		return
	}
	s.misfit(at, "the plan comes to more than %d pieces; is a length in the wrong unit?", Most)
}

func (s *setter) spec(r *plan.Run, i int) *plan.Piece {
	if i < len(r.Pieces) {
		return &r.Pieces[i]
	}
	return nil
}

// place puts a panel at u and gives the u behind it. Between nearU and farU is
// what stays of the panel that would lie at whole.
func (c *cell) place(l *laid, panel *plan.Panel, i int, u, width float64) float64 {
	whole, nearU, farU := u, max(u, 0), u+panel.Width
	if c.spec != nil && c.spec.Width != nil {
		c.stated, c.space = c.spec.Width, width-nearU
		if *c.stated < farU-nearU-near && c.cutsNear(l.run, i, u) {
			whole = nearU + *c.stated - panel.Width
		}
		farU = min(nearU+*c.stated, whole+panel.Width)
	}
	farU = min(farU, width)
	cutNear, cutFar := nearU > whole+near, farU < whole+panel.Width-near
	if l.run.FromRight {
		c.left, c.right = l.surface.right-farU, l.surface.right-nearU
		c.origin = l.surface.right - whole - panel.Width
		c.cutLeft, c.cutRight = cutFar, cutNear
	} else {
		c.left, c.right = l.surface.left+nearU, l.surface.left+farU
		c.origin = l.surface.left + whole
		c.cutLeft, c.cutRight = cutNear, cutFar
	}
	return farU
}

// cutsNear says whether a piece of a stated width loses the edge towards the
// run's start: where the plan says so, and otherwise for a first piece that
// stands at the very end, whose other edge its neighbour needs.
func (c *cell) cutsNear(r *plan.Run, i int, u float64) bool {
	if c.spec.Cut != "" {
		return (c.spec.Cut == "right") == r.FromRight
	}
	return i == 0 && same(u, 0)
}

// part is a piece of panel in one piece, after openings are taken out.
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
func (p *part) rectangular() bool  { return len(p.poly.Outer) == 4 && len(p.poly.Holes) == 0 }
func (p *part) inView() bool       { return p.cell.spec == nil || p.cell.spec.HiddenBy == "" }

// contains says whether a point lies within the part's bounds and not in one of the run's holes.
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

func (s *setter) cutOut(l *laid) error {
	for _, c := range l.cells {
		var holes []planar.Polygon
		for _, h := range l.holes {
			holes = append(holes, planar.Rect(met(h.left, c.left, c.right), met(h.bottom, l.bottom, l.top), met(h.right, c.left, c.right), met(h.top, l.bottom, l.top)))
		}
		polys, err := planar.Rect(c.left, l.bottom, c.right, l.top).Minus(holes...)
		if err != nil {
			return fmt.Errorf("setting out piece %s: %w", c.id, err)
		}
		first := len(s.parts)
		for _, poly := range polys {
			p := &part{laid: l, cell: c, surface: l.surface, poly: poly}
			p.left, p.bottom, p.right, p.top = poly.Bounds()
			s.parts = append(s.parts, p)
		}
		nameParts(s.parts[first:])
		for _, p := range s.parts[first:] {
			if p.id != c.id && s.ids[p.id] {
				s.tooMany(c.at, p.id)
			}
			s.ids[p.id] = true
		}
		if len(s.parts) > Most {
			s.tooMany(c.at, "")
			return nil
		}
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

// nameParts gives a whole piece its cell's name, and the parts of a divided one
// that name with where each lies.
func nameParts(parts []*part) {
	if len(parts) == 1 {
		parts[0].id = parts[0].cell.id
		return
	}
	taken := map[string]int{}
	for _, p := range parts {
		where := p.where()
		taken[where]++
		p.id = p.cell.id + " " + where
		if taken[where] > 1 {
			p.id = fmt.Sprintf("%s %d", p.id, taken[where])
		}
	}
}

func (p *part) where() string {
	for _, h := range p.laid.holes {
		switch {
		case h.left >= p.right-near || h.right <= p.left+near:
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
