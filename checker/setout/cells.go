package setout

import (
	"fmt"
	"math"

	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// laid is a run with its panels in place.
type laid struct {
	run     *plan.Run
	surface *surface
	number  int              // among the runs
	field   []planar.Polygon // what the run may cover where that is no rectangle; nil where it is one
	courses []*course
	cells   []*cell // course by course, each as it is set
	parts   []*part // what openings and the outline leave of them
	from    float64 // left end of the parts
	to      float64 // right end of the parts
	holes   []hole  // by their left sides
	widest  float64 // of the holes
}

// course is one row of panels.
type course struct {
	bottom, top        float64
	cutLower, cutUpper bool // the boards are longer: which end is sawn off
	start              float64
	number             int // from 1; 0 where the run has one course only
	cells              []*cell
}

// cell is one panel of a run before openings are taken out of it, in the
// wall's coordinates.
type cell struct {
	id, at              string
	spec                *plan.Piece // nil where the plan does not spell it out
	course              *course
	left, right         float64 // at its widest
	origin              float64 // where the left edge of the whole panel would be: the pattern starts from it
	first               float64 // from there to the first slat; below 0 where the panel's edge cuts that one off
	noSlat              float64 // from there to where no further slat begins
	leftEdge, rightEdge string  // as they stand: a turned panel's have changed places
	cutLeft, cutRight   bool
	shape               planar.Polygon
	parts               []*part  // what openings and the outline leave of it
	stated              *float64 // the width that the plan gives
	space               float64  // what is free for it
}

// run lays the panels of a run and takes the openings out.
func (s *setter) run(r *plan.Run) error {
	l := &laid{run: r, surface: surfaceOf(r), holes: holesOf(r), number: len(s.runs), from: math.Inf(1), to: math.Inf(-1)}
	for _, h := range l.holes {
		l.widest = max(l.widest, h.right-h.left)
	}
	var err error
	if l.field, err = s.field(l); err != nil {
		return &Misfit{r.At, fmt.Sprintf("the run %q cannot be kept clear of floor and ceiling: %v", r.ID, err)}
	}
	known := len(s.misfits)
	s.stack(l)
	for _, c := range l.courses {
		s.lay(l, c)
		l.cells = append(l.cells, c.cells...)
	}
	s.runs = append(s.runs, l)
	if err := s.cutOut(l); err != nil {
		return err
	}
	if len(l.parts) == 0 && len(s.misfits) == known {
		s.misfit(r.At, "nothing is left of the run %q: openings or the wall's outline take all of it", r.ID)
	}
	return nil
}

// lay goes from a course's start to its far end. Distances u count from the end
// that the run starts at.
func (s *setter) lay(l *laid, c *course) {
	width := l.surface.right - l.surface.left
	panel, u := l.run.Panel, l.startOf(c)
	for i := 0; ; i++ {
		spec := s.spec(l.run, i)
		if spec == nil && (len(l.run.Pieces) > 0 || u >= width-near) {
			return
		}
		at, id := l.run.At, l.name(c, i)
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
		if s.cells++; s.cells > Most {
			s.tooMany(at)
			return
		}
		if !s.named(at, id) {
			return
		}
		one := newCell(panel, spec, c, id, at)
		u = one.place(l, i, u, width)
		if one.right-one.left <= near {
			s.misfit(at, "nothing would be left of the piece %q", id)
			return
		}
		if one.spec != nil && one.spec.WidthTop != nil {
			s.taper(l, one, i)
		}
		c.cells = append(c.cells, one)
	}
}

// name names the panels of a run by number, and in courses by course and number.
func (l *laid) name(c *course, i int) string {
	if c.number > 0 {
		return fmt.Sprintf("%s%d.%d", l.run.ID, c.number, i+1)
	}
	return fmt.Sprintf("%s%d", l.run.ID, i+1)
}

// startOf gives where a course's first panel begins. From the middle or from a
// line that is worked back from what lies there: a joint or the middle of a panel.
func (l *laid) startOf(c *course) float64 {
	if l.run.From == "left" || l.run.From == "right" {
		return c.start
	}
	line := l.line(c)
	step := l.run.Panel.Width + l.run.Joint
	first := line + l.run.Joint/2 // the left edge of the panel to the right of a joint on the line
	if l.run.Centre == "panel" {
		first = line - l.run.Panel.Width/2
	}
	u := first - math.Ceil(first/step)*step
	if u+l.run.Panel.Width <= near { // only the gap before it would lie on the surface
		u += step
	}
	return u
}

// line gives the line that a course is set out from both ways, from the surface's left end.
func (l *laid) line(c *course) float64 {
	if l.run.From == "middle" {
		return c.start + (l.surface.right-l.surface.left)/2
	}
	return c.start
}

// tooMany says once that the bound is passed; nothing more is laid then.
func (s *setter) tooMany(at string) {
	if s.full {
		return
	}
	s.full = true
	s.misfit(at, "the plan comes to more than %d pieces; is a length in the wrong unit?", Most)
}

// named takes a name for a piece; false where another has it already.
func (s *setter) named(at, id string) bool {
	if s.ids[id] {
		s.misfit(at, "two pieces would be called %q; name the run or the piece otherwise", id)
		return false
	}
	s.ids[id] = true
	return true
}

func (s *setter) spec(r *plan.Run, i int) *plan.Piece {
	if i < len(r.Pieces) {
		return &r.Pieces[i]
	}
	return nil
}

// newCell makes a panel as it stands: turned end for end its slats lie mirrored
// and its long edges have changed places.
func newCell(p *plan.Panel, spec *plan.Piece, c *course, id, at string) *cell {
	out := &cell{id: id, at: at, spec: spec, course: c, first: p.First, noSlat: p.Width, leftEdge: p.LeftEdge, rightEdge: p.RightEdge}
	if spec != nil && spec.Turned {
		out.leftEdge, out.rightEdge = p.RightEdge, p.LeftEdge
		last := p.First + math.Floor((p.Width-near-p.First)/p.Pitch)*p.Pitch // where the last slat begins
		out.first, out.noSlat = p.Width-last-p.SlatWidth, p.Width-p.First
	}
	return out
}

// place puts a panel at u and gives the u behind it. Between nearU and farU is
// what stays of the panel that would lie at whole.
func (c *cell) place(l *laid, i int, u, width float64) float64 {
	panel := l.run.Panel
	whole, nearU, farU := u, max(u, 0), u+panel.Width
	if c.spec != nil && c.spec.Width != nil {
		widest := max(*c.spec.Width, orZero(c.spec.WidthTop))
		c.stated, c.space = &widest, width-nearU
		if u < 0 { // the start has cut some of the panel off already
			c.space = min(width, farU)
		}
		if widest < farU-nearU-near && c.cutsNear(l.run, i, u) {
			whole = nearU + widest - panel.Width
		}
		farU = min(nearU+widest, whole+panel.Width)
	}
	farU = min(farU, width)
	cutNear, cutFar := nearU > whole+near, farU < whole+panel.Width-near
	if l.run.FromRight() {
		c.left, c.right = l.surface.right-farU, l.surface.right-nearU
		c.origin = l.surface.right - whole - panel.Width
		c.cutLeft, c.cutRight = cutFar, cutNear
	} else {
		c.left, c.right = l.surface.left+nearU, l.surface.left+farU
		c.origin = l.surface.left + whole
		c.cutLeft, c.cutRight = cutNear, cutFar
	}
	c.shape = planar.Rect(c.left, c.course.bottom, c.right, c.course.top)
	return farU
}

// cutsNear says whether a piece of a stated width loses the edge towards the
// run's start: where the plan says so, and otherwise for a first piece that
// stands at the very end, whose other edge its neighbour needs.
func (c *cell) cutsNear(r *plan.Run, i int, u float64) bool {
	if c.spec.Cut != "" {
		return (c.spec.Cut == "right") == r.FromRight()
	}
	return i == 0 && u <= near
}

func orZero(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}
