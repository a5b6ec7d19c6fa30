package setout

import (
	"math"
	"slices"

	"trysquare/checker/planar"
)

// meetsWall says what a side meets that meets no opening and no piece, whether
// something covers it there, and what: the wall's ends, ceiling, floor,
// skirting, a nib or step of the outline, or nothing.
func (p *part) meetsWall(side planar.Side) (meets, cover, by string) {
	s, r := p.surface, p.run()
	x, y := middle(side)
	above, below := y+r.ClearTop, y-r.Base-s.wall.SkirtingHeight // where ceiling and floor would be
	switch {
	case s.leaf != nil:
		return "air", "bare", ""
	case side.Faces == "left" && s.atEnd(side, s.left, above, below):
		return corner(s.wall.LeftCorner)
	case side.Faces == "right" && s.atEnd(side, s.right, above, below):
		return corner(s.wall.RightCorner)
	case side.Faces == "up" && s.atCeiling(x, above):
		return "ceiling", "covered", "ceiling"
	case side.Faces == "down" && r.Base <= floorShadow && s.atFloor(x, below):
		if s.wall.SkirtingHeight > 0 {
			return "skirting", "covered", "skirting"
		}
		return "floor", "covered", "floor"
	case (side.Faces == "left" || side.Faces == "right") && s.atStep(side, above, below):
		return "nib", "covered", "nib"
	}
	return "air", "bare", ""
}

// nearEnd is how far an edge may lean from the wall's end and still be the one
// that stands there, in millimetres.
const nearEnd = 100

// atEnd says whether a side stands at the wall's end: upright there, or leaning
// from it, as the edge of a tapered piece does, or along an end that leans itself.
func (s *surface) atEnd(side planar.Side, end, above, below float64) bool {
	if onLine(side, end) {
		return true
	}
	a, b := math.Abs(side.From.X-end), math.Abs(side.To.X-end)
	return leans(side) && max(a, b) < nearEnd && (min(a, b) <= near || s.atStep(side, above, below))
}

// onOutline is how far a side may lie from the outline that it was cut to, in
// millimetres: its corners were moved to the panel's lines where they all but met them.
const onOutline = 3 * near

// atCeiling says whether the ceiling is at a place. Along a ceiling the outline runs to the left, along a floor to the right.
func (s *surface) atCeiling(x, y float64) bool {
	return s.ring == nil && same(y, s.top) || s.runsAt(x, y, -1)
}

func (s *surface) atFloor(x, y float64) bool {
	return s.ring == nil && same(y, s.bottom-s.wall.SkirtingHeight) || s.runsAt(x, y, 1)
}

// runsAt says whether a side of the outline that runs in the direction passes a place.
func (s *surface) runsAt(x, y, direction float64) bool {
	return slices.ContainsFunc(s.ring, func(o planar.Side) bool {
		dx := o.To.X - o.From.X
		if dx*direction <= 0 || x < min(o.From.X, o.To.X) || x > max(o.From.X, o.To.X) {
			return false
		}
		return math.Abs(o.From.Y+(o.To.Y-o.From.Y)*(x-o.From.X)/dx-y) <= onOutline
	})
}

// atStep says whether a side that faces left or right stands against a nib or a
// step of the outline, the gaps above and below it counted in, or along a side that leans.
func (s *surface) atStep(side planar.Side, above, below float64) bool {
	x, _ := middle(side)
	if leans(side) {
		return s.runsAt(x, above, -1) || s.runsAt(x, below, 1)
	}
	return slices.ContainsFunc(s.ring, func(o planar.Side) bool {
		return o.From.X == o.To.X && math.Abs(o.From.X-x) <= onOutline && above >= min(o.From.Y, o.To.Y) && below <= max(o.From.Y, o.To.Y)
	})
}

func leans(side planar.Side) bool { return side.From.X != side.To.X && side.From.Y != side.To.Y }

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

// atBoundary says whether a side runs along the leaf's edge or, leaning, from it.
func (p *part) atBoundary(side planar.Side) bool {
	s := p.surface
	switch side.Faces {
	case "left":
		return same(side.From.X, s.left) || same(side.To.X, s.left)
	case "right":
		return same(side.From.X, s.right) || same(side.To.X, s.right)
	case "up":
		return same(side.From.Y, s.top-p.run().ClearTop)
	}
	return same(side.From.Y, s.bottom+p.run().Base)
}

// atHole is the hole that an edge runs along and the word for that place:
// "jambs", "head", "sill"; none where it runs along no hole.
type atHole struct {
	hole *hole
	word string
}

// atHole finds the hole that a side runs along; of two whose architraves lie
// over each other, the one whose middle is nearer.
func (p *part) atHole(side planar.Side) atHole {
	x, y := middle(side)
	var out atHole
	nearest := math.Inf(1)
	for _, h := range p.laid.holesAcross(p.left-1, p.right+1) {
		inHeight, inWidth := y > h.bottom && y < h.top, x > h.left && x < h.right
		word := ""
		switch {
		case side.Faces == "right" && onLine(side, h.left) && inHeight, side.Faces == "left" && onLine(side, h.right) && inHeight:
			word = "jambs"
		case side.Faces == "down" && onLevel(side, h.top) && inWidth:
			word = "head"
		case side.Faces == "up" && onLevel(side, h.bottom) && inWidth:
			word = "sill"
		}
		if off := math.Hypot(x-(h.left+h.right)/2, y-(h.bottom+h.top)/2); word != "" && off < nearest-near {
			out, nearest = atHole{&h, word}, off
		}
	}
	return out
}

func onLine(side planar.Side, x float64) bool {
	return same(side.From.X, x) && same(side.To.X, x)
}

func onLevel(side planar.Side, y float64) bool {
	return same(side.From.Y, y) && same(side.To.Y, y)
}

// name says in a fitter's words which edge it is.
func (a atHole) name(side planar.Side) string {
	switch {
	case a.hole == nil:
		return map[string]string{"left": "left edge", "right": "right edge", "up": "upper edge", "down": "lower edge"}[side.Faces]
	case a.word != "jambs":
		return "edge at the " + a.word + " of " + a.hole.opening.Name
	}
	of, at := "left", "jamb"
	if side.Faces == "left" {
		of = "right"
	}
	if a.hole.opening.Kind == "pillar" {
		at = "side"
	}
	return "edge at the " + of + " " + at + " of " + a.hole.opening.Name
}

// place is the word under which the plan treats such edges.
func (a atHole) place(side planar.Side) string {
	if a.hole != nil {
		return a.word
	}
	return map[string]string{"left": "left", "right": "right", "up": "top", "down": "bottom"}[side.Faces]
}

// stretches cuts a side where what it may meet begins or ends: openings,
// neighbours, courses, other runs and corners of the outline.
func (s *setter) stretches(p *part, side planar.Side, beside neighbours) []planar.Side {
	upright := side.From.X == side.To.X
	if leans(side) {
		return []planar.Side{side}
	}
	from, to := side.From.X, side.To.X
	var at []float64
	if upright {
		from, to = side.From.Y, side.To.Y
		at = s.upBreaks(p, side, beside)
	} else {
		at = s.acrossBreaks(p, side)
	}
	slices.Sort(at)
	if from > to {
		slices.Reverse(at)
	}
	point := func(v float64) planar.Point {
		if upright {
			return planar.Point{X: side.From.X, Y: v}
		}
		return planar.Point{X: v, Y: side.From.Y}
	}
	out := []planar.Side{side}
	for _, v := range at {
		last := &out[len(out)-1]
		begun := last.From.X
		if upright {
			begun = last.From.Y
		}
		if v <= min(from, to)+near || v >= max(from, to)-near || same(v, begun) {
			continue
		}
		last.To = point(v)
		out = append(out, planar.Side{From: point(v), To: side.To, Faces: side.Faces, InHole: side.InHole})
	}
	return out
}

// upBreaks gives where along an upright side something else may begin.
func (s *setter) upBreaks(p *part, side planar.Side, beside neighbours) []float64 {
	var out []float64
	x := side.From.X
	for _, h := range p.laid.holesAcross(p.left-1, p.right+1) {
		if side.Faces == "right" && same(x, h.left) || side.Faces == "left" && same(x, h.right) {
			out = append(out, h.bottom, h.top)
		}
	}
	if p.atJoint(side) {
		for _, c := range beside.contacts(p, side.Faces) {
			out = append(out, c.from, c.to)
		}
	}
	if s.on[p.surface.on].shared {
		for _, q := range s.partsAcross(p.surface.on, x-inside, x+inside) {
			if q.laid != p.laid {
				out = append(out, q.bottom, q.top)
			}
		}
	}
	for _, q := range p.laid.corners() {
		out = append(out, q.Y)
	}
	return out
}

// acrossBreaks gives where along a level side something else may begin.
func (s *setter) acrossBreaks(p *part, side planar.Side) []float64 {
	var out []float64
	y := side.From.Y
	for _, h := range p.laid.holesAcross(p.left-1, p.right+1) {
		if side.Faces == "down" && same(y, h.top) || side.Faces == "up" && same(y, h.bottom) {
			out = append(out, h.left, h.right)
		}
	}
	if len(p.laid.courses) > 1 || s.on[p.surface.on].shared {
		above, below := p.laid.nextTo(p.cell.course)
		for _, q := range s.partsAcross(p.surface.on, min(side.From.X, side.To.X), max(side.From.X, side.To.X)) {
			nextCourse := q.laid == p.laid && (q.cell.course == above || q.cell.course == below)
			if nextCourse || q.laid != p.laid && min(math.Abs(q.bottom-y), math.Abs(q.top-y)) <= inside {
				out = append(out, q.left, q.right)
			}
		}
	}
	for _, q := range p.laid.corners() {
		out = append(out, q.X)
	}
	return out
}

// corners gives those of what the run may cover, where that is no rectangle.
func (l *laid) corners() []planar.Point {
	var out []planar.Point
	for _, f := range l.field {
		out = append(out, f.Outer...)
	}
	return out
}
