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
	field   *planar.Polygon // what the run may cover where that is no rectangle
	courses []*course
	cells   []*cell // course by course, each as it is set
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
	first               float64 // from there to the first slat
	leftEdge, rightEdge string  // as they stand: a turned panel's have changed places
	cutLeft, cutRight   bool
	shape               planar.Polygon
	stated              *float64 // the width that the plan gives
	space               float64  // what is free for it
}

// run lays the panels of a run and takes the openings out.
func (s *setter) run(r *plan.Run) error {
	l := &laid{run: r, surface: surfaceOf(r), holes: holesOf(r)}
	for _, h := range l.holes {
		l.widest = max(l.widest, h.right-h.left)
	}
	var err error
	if l.field, err = l.surface.field(r); err != nil {
		return fmt.Errorf("setting out run %s: %w", r.ID, err)
	}
	s.stack(l)
	for _, c := range l.courses {
		s.lay(l, c)
		l.cells = append(l.cells, c.cells...)
	}
	if len(l.cells) == 0 {
		return nil // a misfit has been noted
	}
	s.runs = append(s.runs, l)
	return s.cutOut(l)
}

// stack gives a run's courses their heights, from the bottom up. The lowest is
// shortened at its lower end, where the floor hides the cut; the others at the
// upper one, so that ends from the factory meet.
func (s *setter) stack(l *laid) {
	bottom, ceiling := l.surface.bottom+l.run.Base, l.surface.top-l.run.ClearTop
	board := l.run.Panel.Height
	for i, spec := range l.run.Courses {
		if i > 0 {
			bottom += spec.Gap
		}
		height := min(board, ceiling-bottom)
		if spec.Height != nil {
			if *spec.Height > board+near && spec.At != l.run.At {
				s.misfit(spec.At+"/height", "a course cannot be higher than a board, which is %s", s.write(board))
			}
			height = min(height, *spec.Height)
		}
		if height <= near {
			s.misfit(spec.At, "there is no room for this course: those below reach the top")
			return
		}
		c := &course{bottom: bottom, top: bottom + height, start: spec.Start}
		if height < board-near {
			c.cutLower, c.cutUpper = i == 0, i > 0
		}
		if len(l.run.Courses) > 1 {
			c.number = i + 1
		}
		l.courses = append(l.courses, c)
		bottom = c.top
	}
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
		if s.ids[id] || len(s.ids) >= Most {
			s.tooMany(at, id)
			return
		}
		s.ids[id] = true
		one := newCell(panel, spec, c, id, at)
		u = one.place(l, i, u, width)
		if one.right-one.left <= near {
			s.misfit(at, "nothing would be left of the piece %q", id)
			return
		}
		s.taper(l, one, i)
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
	line := c.start // from the left end
	if l.run.From == "middle" {
		line += (l.surface.right - l.surface.left) / 2
	}
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

// newCell makes a panel as it stands: turned end for end its slats lie mirrored
// and its long edges have changed places.
func newCell(p *plan.Panel, spec *plan.Piece, c *course, id, at string) *cell {
	out := &cell{id: id, at: at, spec: spec, course: c, first: p.First, leftEdge: p.LeftEdge, rightEdge: p.RightEdge}
	if spec != nil && spec.Turned {
		out.leftEdge, out.rightEdge = p.RightEdge, p.LeftEdge
		last := p.First + math.Floor((p.Width-near-p.First)/p.Pitch)*p.Pitch // where the last slat begins
		out.first = p.Width - last - p.SlatWidth
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
	return i == 0 && same(u, 0)
}

// taper gives a tapered piece its shape: the sawn long edge leans. Only a
// run's first piece can taper at its start, and only its last at its far end,
// or the next would have to lean too.
func (s *setter) taper(l *laid, c *cell, i int) {
	if c.spec == nil || c.spec.WidthTop == nil || same(*c.spec.WidthTop, *c.spec.Width) {
		return
	}
	first, last := i == 0, i == len(l.run.Pieces)-1
	leansLeft := c.cutLeft && !c.cutRight || c.cutLeft && (c.spec.Cut == "left" || c.spec.Cut == "" && first == !l.run.FromRight())
	outer := last
	if leansLeft != l.run.FromRight() {
		outer = first
	}
	if !outer {
		s.misfit(c.at+"/width_top", "only a piece at the end of its run can taper, on the side of that end")
		return
	}
	short := c.right - c.left - (c.widest() - *c.spec.Width)
	shortTop := c.right - c.left - (c.widest() - *c.spec.WidthTop)
	if short <= near || shortTop <= near {
		s.misfit(c.at, "nothing would be left of the piece %q at its narrow end", c.id)
		return
	}
	b, t := c.course.bottom, c.course.top
	if leansLeft {
		c.shape = planar.Polygon{Outer: []planar.Point{{X: c.right - short, Y: b}, {X: c.right, Y: b}, {X: c.right, Y: t}, {X: c.right - shortTop, Y: t}}}
		c.cutLeft = true
		return
	}
	c.shape = planar.Polygon{Outer: []planar.Point{{X: c.left, Y: b}, {X: c.left + short, Y: b}, {X: c.left + shortTop, Y: t}, {X: c.left, Y: t}}}
	c.cutRight = true
}

func (c *cell) widest() float64 { return max(*c.spec.Width, *c.spec.WidthTop) }

func orZero(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}
