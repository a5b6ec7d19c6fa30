package setout

import (
	"fmt"
	"math"
	"slices"

	"trysquare/checker/facts"
)

// fixedIn sees that each order of fixing that the plan gives names every piece of its run once.
func (s *setter) fixedIn() {
	for _, l := range s.runs {
		if l.run.FixedIn != nil {
			s.asStated(l)
		}
	}
}

// asStated gives a run's parts in the order that the plan gives. A panel that
// an opening divides may be named as a whole or by its parts.
func (s *setter) asStated(l *laid) []*part {
	named := map[string][]*part{}
	for _, p := range l.parts {
		named[p.id] = append(named[p.id], p)
		if p.id != p.cell.id {
			named[p.cell.id] = append(named[p.cell.id], p)
		}
	}
	var out []*part
	done := map[*part]bool{}
	at := l.run.At + "/fixed_in"
	for i, name := range l.run.FixedIn {
		if len(named[name]) == 0 {
			s.misfit(fmt.Sprintf("%s/%d", at, i), "there is no piece %q in the run %q", name, l.run.ID)
		}
		for _, p := range named[name] {
			if done[p] {
				s.misfit(fmt.Sprintf("%s/%d", at, i), "the piece %q is to be fixed a second time here", p.id)
				break
			}
			done[p] = true
			out = append(out, p)
		}
	}
	for _, p := range l.parts {
		if !done[p] {
			s.misfit(at, "the piece %q is left out of the order of fixing", p.id)
			break // one is enough to look at the list again
		}
	}
	return out
}

// asSet gives a run's parts as they are set from its start, course by course:
// from the middle or a line first those to its right, then those to its left.
func (l *laid) asSet() []*part {
	if l.run.From == "left" || l.run.From == "right" {
		return l.parts // they were laid so
	}
	rank := map[*cell]int{}
	for _, c := range l.courses {
		line := l.surface.left + l.line(c)
		// The panel whose middle lies on the line is the first to the right.
		first := slices.IndexFunc(c.cells, func(one *cell) bool { return one.origin+l.run.Panel.Width/2 >= line-near })
		if first < 0 {
			first = len(c.cells)
		}
		for _, one := range c.cells[first:] {
			rank[one] = len(rank)
		}
		for _, one := range slices.Backward(c.cells[:first]) {
			rank[one] = len(rank)
		}
	}
	out := slices.Clone(l.parts)
	slices.SortStableFunc(out, func(a, b *part) int { return rank[a.cell] - rank[b.cell] })
	return out
}

// installs gives every piece in the order in which it is fixed, with what it then meets.
func (s *setter) installs(f *facts.Facts) {
	f.Installs = []facts.Install{}
	joints := jointsOf(f)
	for _, l := range s.runs {
		var parts []*part
		if l.run.FixedIn != nil {
			parts = s.asStated(l)
		} else {
			parts = l.asSet()
		}
		fixed, begun := map[string]bool{}, map[*course]bool{}
		for i, p := range parts {
			one := facts.Install{About: p.about(p.id), Piece: p.id, Run: l.run.ID, Position: i + 1, Stated: l.run.FixedIn != nil, InView: p.inView()}
			one.LeftMeets, one.RightMeets = meets(joints[p.id].left, fixed), meets(joints[p.id].right, fixed)
			one.HooksBoth = one.LeftMeets != nil && one.LeftMeets.Interlocks && one.RightMeets != nil && one.RightMeets.Interlocks
			hooks := func(b facts.Beside) bool { return b.Interlocks }
			one.Interlocks = slices.ContainsFunc(joints[p.id].left, hooks) || slices.ContainsFunc(joints[p.id].right, hooks)
			one.WholeSlats, one.PartSlats = p.countSlats()
			if !begun[p.cell.course] {
				one.FirstOnEnd = p.onEnd()
			}
			fixed[p.id], begun[p.cell.course] = true, true
			f.Installs = append(f.Installs, one)
		}
	}
}

// besides is the neighbours on a piece's two sides.
type besides struct{ left, right []facts.Beside }

func jointsOf(f *facts.Facts) map[string]besides {
	out := map[string]besides{}
	for _, j := range f.Joints {
		a, b := out[j.Left], out[j.Right]
		a.right = append(a.right, facts.Beside{Piece: j.Right, Interlocks: j.Interlocks})
		b.left = append(b.left, facts.Beside{Piece: j.Left, Interlocks: j.Interlocks})
		out[j.Left], out[j.Right] = a, b
	}
	return out
}

// meets gives the neighbour on one side that is fixed already, one that interlocks before one that does not.
func meets(side []facts.Beside, fixed map[string]bool) *facts.Beside {
	var out *facts.Beside
	for _, b := range side {
		if fixed[b.Piece] && (out == nil || b.Interlocks && !out.Interlocks) {
			out = &b
		}
	}
	return out
}

// countSlats counts the slats that are on the part whole, and in part. A slat
// that a tapered piece's cut runs along is there in part.
func (p *part) countSlats() (whole, part int) {
	left, right := p.left, p.right
	for _, t := range p.cell.shape.Trapezoids() {
		left, right = max(left, t.BottomLeft, t.TopLeft), min(right, t.BottomRight, t.TopRight)
	}
	for _, slat := range p.slats(p.left, p.right) {
		if slat.left >= left-near && slat.right <= right+near && slat.right-slat.left >= p.panel().SlatWidth-near {
			whole++
		} else {
			part++
		}
	}
	return whole, part
}

// onEnd gives the end of the wall that a part stands against: the one that its
// run starts from, or else the one that leans more; nil where it reaches none.
func (p *part) onEnd() *facts.FirstOnEnd {
	if p.surface.leaf != nil {
		return nil
	}
	var out *facts.FirstOnEnd
	for _, side := range []string{"left", "right"} {
		if !p.reaches(side) {
			continue
		}
		one := &facts.FirstOnEnd{End: side, Scribed: p.cell.spec != nil && p.cell.spec.Scribed}
		if m := p.surface.wall.Measured; m != nil {
			lean := m.PlumbLeft
			if side == "right" {
				lean = m.PlumbRight
			}
			if lean != nil {
				out := round(math.Abs(*lean))
				one.OutOfPlumb = &out
			}
		}
		if out == nil || p.run().From == side || p.run().From != out.End && orZero(one.OutOfPlumb) > orZero(out.OutOfPlumb) {
			out = one
		}
	}
	return out
}

// reaches says whether a part stands against an end of its surface.
func (p *part) reaches(side string) bool {
	if side == "left" {
		return same(p.left, p.surface.left)
	}
	return same(p.right, p.surface.right)
}
