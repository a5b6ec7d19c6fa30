package setout

import (
	"cmp"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// corners gives where two clad walls meet. Seen from the room, a wall's right
// end meets the left end of the next, at internal corners and external ones.
func (s *setter) corners(f *facts.Facts) {
	f.Corners = []facts.Corner{}
	for _, m := range s.meetings() {
		for _, left := range outermost(s.onSurface(m.left.Name), "right") {
			for _, right := range outermost(s.onSurface(m.right.Name), "left") {
				if min(left.top, right.top)-max(left.bottom, right.bottom) <= near {
					continue
				}
				c := roundCorner(left, right, m.kind)
				c.About = facts.About{ID: m.left.Name + " | " + m.right.Name + ": " + left.id + " | " + right.id, At: m.at, On: m.left.Name}
				c.LeftWall, c.RightWall = m.left.Name, m.right.Name
				f.Corners = append(f.Corners, c)
			}
		}
	}
}

// wallCorner is where two walls meet.
type wallCorner struct {
	left, right *plan.Wall
	kind, at    string
}

// meetings gives the corners of which the plan says which two walls they are
// of: each names the other there, or one does and the other is silent. A corner
// that two walls lay claim to, or that is internal to one wall and external to the other, is none.
func (s *setter) meetings() []wallCorner {
	byName, rightOf, leftOf := map[string]*plan.Wall{}, map[string][]*plan.Wall{}, map[string][]*plan.Wall{}
	for _, w := range s.plan.Walls {
		byName[w.Name] = w
		leftOf[w.RightWall] = append(leftOf[w.RightWall], w)
		rightOf[w.LeftWall] = append(rightOf[w.LeftWall], w)
	}
	var out []wallCorner
	for _, a := range s.plan.Walls {
		b, at := byName[a.RightWall], a.At+"/ends/right"
		if named := rightOf[a.Name]; a.RightWall == "" && len(named) == 1 {
			b, at = named[0], named[0].At+"/ends/left"
		}
		if b == nil || b == a || b.LeftWall != "" && b.LeftWall != a.Name || b.LeftWall == "" && len(leftOf[b.Name]) > 1 {
			continue
		}
		kind := cmp.Or(a.RightCorner, b.LeftCorner)
		agree := a.RightCorner == "" || b.LeftCorner == "" || a.RightCorner == b.LeftCorner
		if agree && (kind == "internal" || kind == "external") {
			out = append(out, wallCorner{a, b, kind, at})
		}
	}
	return out
}

// outermost gives the parts that have no other between them and a side of
// their surface at some height, those nearest to it first.
func outermost(parts []*part, side string) []*part {
	sorted := slices.Clone(parts)
	slices.SortStableFunc(sorted, func(a, b *part) int {
		if side == "left" {
			return cmp.Or(cmp.Compare(a.left, b.left), cmp.Compare(a.bottom, b.bottom))
		}
		return cmp.Or(cmp.Compare(b.right, a.right), cmp.Compare(a.bottom, b.bottom))
	})
	var out []*part
	var taken []span // heights, from the bottom up, none touching the next
	for _, p := range sorted {
		i, _ := slices.BinarySearchFunc(taken, p.bottom+near, func(t span, y float64) int { return cmp.Compare(t.right, y) })
		if i < len(taken) && taken[i].left <= p.bottom+near && taken[i].right >= p.top-near {
			continue
		}
		out = append(out, p)
		low, high, end := p.bottom, p.top, i
		for i > 0 && taken[i-1].right >= low-near {
			i--
			low = min(low, taken[i].left)
		}
		for end < len(taken) && taken[end].left <= high+near {
			low, high = min(low, taken[end].left), max(high, taken[end].right)
			end++
		}
		taken = slices.Replace(taken, i, end, span{low, high})
	}
	return out
}

// roundCorner compares the slats of two parts on both sides of a corner.
func roundCorner(left, right *part, kind string) facts.Corner {
	a, b := left.panel(), right.panel()
	out := facts.Corner{Kind: kind, Left: left.id, Right: right.id, PatternGap: round(a.Pitch - a.SlatWidth), InView: left.inView() && right.inView()}
	end := left.surface.right
	covered, before := 0.0, 0.0 // of the right wall, of the left wall
	if kind == "internal" {
		covered, before = a.Thickness, b.Thickness
	}
	out.Covered = round(covered)
	last, first := left.slats(left.left, left.right), right.slats(right.left, right.right)
	var toLast, toFirst float64
	if n := len(last); n > 0 {
		toLast = end - last[n-1].right
		d := round(toLast)
		out.LeftDistance = &d
		out.Hidden = round(max(0, min(before-toLast, last[n-1].right-last[n-1].left)))
	}
	if len(first) > 0 {
		toFirst = first[0].left
		d := round(toFirst)
		out.RightDistance = &d
	}
	if len(last) > 0 && len(first) > 0 {
		gap := toLast + toFirst - covered
		g, e := round(gap), round(math.Abs(gap-(a.Pitch-a.SlatWidth)))
		out.Gap, out.GapError = &g, &e
	}
	if out.Comparable = samePattern(a, b); out.Comparable {
		out.CarriedOffset = round(math.Abs(shortWay(end+right.phase()-covered-left.phase(), a.Pitch)))
	}
	return out
}

// revealLines compares what stands over an opening with the strips on its head,
// whose pattern runs from the left jamb.
func (s *setter) revealLines(f *facts.Facts) {
	f.RevealLines = []facts.LinePair{}
	for _, l := range s.runs {
		for _, h := range l.holes {
			o := h.opening
			if !o.LiningClad || o.LiningPanel == nil || o.LiningStart == nil {
				continue
			}
			lining := &part{id: h.id() + " lining", laid: &laid{run: &plan.Run{Panel: o.LiningPanel}}, surface: l.surface,
				cell: &cell{origin: o.X + *o.LiningStart, first: o.LiningPanel.First}}
			for _, p := range s.partsAcross(l.surface.on, o.X, o.Right()) {
				left, right := max(p.left, o.X), min(p.right, o.Right())
				if p.laid != l || right-left <= inside || !p.contains((left+right)/2, h.top+inside) {
					continue
				}
				line := compare(p, lining)
				line.About = facts.About{ID: p.id + " over the lining of " + o.Name, At: o.At + "/lining", On: l.surface.on}
				line.Opening, line.Where, line.Side = h.id(), "reveal", "head"
				f.RevealLines = append(f.RevealLines, line)
			}
		}
	}
}
