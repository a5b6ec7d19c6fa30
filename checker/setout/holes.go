package setout

import (
	"fmt"
	"math"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// holes gives the holes that accessories need in the panels, and the land left round each.
func (s *setter) holes(f *facts.Facts) error {
	f.Holes = []facts.Hole{}
	for _, w := range s.plan.Walls {
		for _, a := range w.Services {
			h, ok, err := s.hole(w, a)
			if err != nil {
				return fmt.Errorf("cutting the hole for %s: %w", a.ID, err)
			}
			if ok {
				f.Holes = append(f.Holes, h)
			}
		}
	}
	return nil
}

func (s *setter) hole(w *plan.Wall, a plan.Service) (facts.Hole, bool, error) {
	rect := planar.Rect(a.X, a.Y, a.X+a.Width, a.Y+a.Height)
	out := facts.Hole{About: facts.About{ID: a.ID, At: a.At, On: w.Name}, Kind: a.Kind, Pieces: []string{},
		Left: round(a.X), Right: round(a.X + a.Width), Bottom: round(a.Y), Top: round(a.Y + a.Height), Land: math.Inf(1)}
	covered := 0.0
	for _, p := range s.partsAcross(w.Name, a.X+near, a.X+a.Width-near) {
		common, err := p.poly.And(rect)
		if err != nil {
			return out, false, err
		}
		area := 0.0
		for _, c := range common {
			area += c.Area()
		}
		if area <= near {
			continue
		}
		covered += area
		out.Pieces = append(out.Pieces, p.id)
		out.InView = out.InView || p.inView()
		if land, faces := landRound(rect, p.poly); land < out.Land {
			out.Land, out.LandEdge = land, faces
		}
	}
	if len(out.Pieces) == 0 {
		return out, false, nil
	}
	out.OverJoint = len(out.Pieces) > 1
	out.Partly = covered < rect.Area()-1
	out.Land = round(out.Land)
	return out, true, nil
}

// landRound gives the least distance between a hole and the sides of a piece,
// 0 where a side passes through it, and the way that side faces.
func landRound(hole, piece planar.Polygon) (float64, string) {
	least, faces := math.Inf(1), ""
	left, bottom, right, top := hole.Bounds()
	for _, side := range piece.Sides() {
		d := math.Inf(1)
		for _, c := range hole.Outer {
			d = min(d, side.Distance(c.X, c.Y))
		}
		for _, q := range []planar.Point{side.From, side.To} {
			d = min(d, math.Hypot(max(left-q.X, 0, q.X-right), max(bottom-q.Y, 0, q.Y-top)))
		}
		if crosses(side, left, bottom, right, top) {
			d = 0
		}
		if d < least-near {
			least, faces = d, side.Faces
		}
	}
	return least, faces
}

// crosses says whether a side passes through the inside of a rectangle: what is
// left of it after it is cut off at the four lines has a length.
func crosses(s planar.Side, left, bottom, right, top float64) bool {
	from, to := 0.0, 1.0
	clip := func(start, step, least, most float64) {
		switch {
		case step > 0:
			from, to = max(from, (least-start)/step), min(to, (most-start)/step)
		case step < 0:
			from, to = max(from, (most-start)/step), min(to, (least-start)/step)
		case start <= least || start >= most:
			to = -1
		}
	}
	clip(s.From.X, s.To.X-s.From.X, left, right)
	clip(s.From.Y, s.To.Y-s.From.Y, bottom, top)
	return to > from
}

// pattern gives the slats of a part.
func (p *part) pattern() facts.Pattern {
	out := facts.Pattern{Pitch: round(p.panel().Pitch), Width: round(p.panel().SlatWidth)}
	slats := p.slats(p.left, p.right)
	if out.Count = len(slats); out.Count == 0 {
		return out
	}
	out.Start, out.End = round(slats[0].left), round(slats[out.Count-1].right)
	first := p.cell.origin + p.cell.first
	out.First = round(first + math.Floor((slats[0].left+near-first)/p.panel().Pitch)*p.panel().Pitch)
	return out
}
