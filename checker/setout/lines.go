package setout

import (
	"math"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// inside is how far into a part a point is taken to ask which part lies there.
const inside = 0.5

// lines compares the slat lines of parts that should carry each other on: over
// and under an opening against both sides of it, and a closed leaf against
// what is above.
func (s *setter) lines(f *facts.Facts) {
	holes := s.cladHoles()
	for _, h := range holes {
		height := (max(h.bottom, h.opening.Sill) + h.top) / 2
		for _, where := range []string{"over", "under"} {
			y := h.top + inside
			if where == "under" {
				y = h.bottom - inside
			}
			for _, side := range []string{"left", "right"} {
				x, out := h.left, -inside
				if side == "right" {
					x, out = h.right, inside
				}
				a, b := s.partAt(h.opening.Wall.Name, x-out, y), s.partAt(h.opening.Wall.Name, x+out, height)
				if a != nil && b != nil {
					l := compare(a, b)
					l.About = a.about(h.id() + " " + where + " " + side)
					l.Opening, l.Where, l.Side = h.id(), where, side
					f.Lines = append(f.Lines, l)
				}
			}
		}
	}
	s.leafLines(f, holes)
}

// cladHoles gives each opening once, with the largest hole that a run makes of it.
func (s *setter) cladHoles() []hole {
	var out []hole
	at := map[string]int{}
	for _, l := range s.runs {
		for _, h := range l.holes {
			i, ok := at[h.id()]
			if !ok {
				at[h.id()] = len(out)
				out = append(out, h)
				continue
			}
			o := &out[i]
			o.left, o.right, o.bottom, o.top = min(o.left, h.left), max(o.right, h.right), min(o.bottom, h.bottom), max(o.top, h.top)
		}
	}
	return out
}

// leafLines compares each part of a clad leaf with every part over its opening that it stands under.
func (s *setter) leafLines(f *facts.Facts, holes []hole) {
	for _, h := range holes {
		leaf := h.opening.Leaf
		if leaf == nil {
			continue
		}
		for _, p := range s.onSurface(leaf.Path()) {
			for _, above := range s.partsAcross(h.opening.Wall.Name, p.left, p.right) {
				left, right := max(p.left, above.left), min(p.right, above.right)
				if right-left <= inside || !above.contains((left+right)/2, h.top+inside) {
					continue
				}
				l := compare(p, above)
				l.About = p.about(p.id + " under " + above.id)
				l.Opening, l.Where, l.Side = h.id(), "leaf", "above"
				f.Lines = append(f.Lines, l)
			}
		}
	}
}

// compare gives how far the pattern of a lies beside that of b, the short way
// round one pitch.
func compare(a, b *part) facts.LinePair {
	out := facts.LinePair{Piece: a.id, Other: b.id, Direction: "none", InView: a.inView() && b.inView()}
	pa, pb := a.panel(), b.panel()
	out.Comparable = samePattern(pa, pb)
	if !out.Comparable {
		return out
	}
	shift := shortWay(a.phase()-b.phase(), pa.Pitch)
	out.Offset = round(math.Abs(shift))
	switch {
	case out.Offset == 0:
	case shift > 0:
		out.Direction = "right"
	default:
		out.Direction = "left"
	}
	return out
}

func samePattern(a, b *plan.Panel) bool {
	return same(a.Pitch, b.Pitch) && same(a.SlatWidth, b.SlatWidth)
}

// shortWay gives a shift of one pattern against another the short way round one
// pitch; half a pitch is to the right.
func shortWay(shift, pitch float64) float64 {
	shift = math.Mod(shift, pitch)
	switch {
	case shift > pitch/2:
		return shift - pitch
	case shift <= -pitch/2:
		return shift + pitch
	}
	return shift
}

// headers gives each head that a run passes over.
func (s *setter) headers(f *facts.Facts) {
	for _, l := range s.runs {
		for _, h := range l.holes {
			if h.opening.Kind == "pillar" || !s.passesOver(l, h) {
				continue
			}
			o := h.opening
			header := facts.Header{About: facts.About{ID: h.id() + " head, run " + l.run.ID, At: l.run.At + "/head_drop", On: l.surface.on}, Opening: h.id(), Run: l.run.ID,
				Drop: rounded(l.run.HeadDrop), LiningStated: o.LiningStated, LiningClad: o.LiningClad,
				LiningThickness: rounded(o.LiningThickness), ArchitraveStays: o.ArchitraveStays}
			f.Headers = append(f.Headers, header)
		}
	}
}

func (s *setter) passesOver(l *laid, h hole) bool {
	for _, p := range s.partsAcross(l.surface.on, h.left+near, h.right-near) {
		if p.laid == l && p.top > h.top+near && p.contains((max(h.left, p.left)+min(h.right, p.right))/2, h.top+inside) {
			return true
		}
	}
	return false
}

// finite gives nil for what is infinite: nothing was found.
func finite(v float64) *float64 {
	if math.IsInf(v, 0) {
		return nil
	}
	return rounded(&v)
}

// rounded keeps what is unsaid unsaid.
func rounded(v *float64) *float64 {
	if v == nil {
		return nil
	}
	r := round(*v)
	return &r
}
