package setout

import (
	"cmp"
	"slices"
)

// shelfOf keeps the parts on one wall or leaf by where they begin, so that what
// lies at a place is found without looking at all of them.
type shelfOf struct {
	parts  []*part // by their left sides
	inTurn []*part // as they were set out
	widest float64
	shared bool // two runs or more stand here
}

// index sorts the parts by surface.
func (s *setter) index() {
	s.on = map[string]*shelfOf{}
	for _, p := range s.parts {
		sh := s.on[p.surface.on]
		if sh == nil {
			sh = &shelfOf{}
			s.on[p.surface.on] = sh
		}
		sh.shared = sh.shared || len(sh.inTurn) > 0 && sh.inTurn[0].laid != p.laid
		sh.inTurn = append(sh.inTurn, p)
		sh.widest = max(sh.widest, p.right-p.left)
	}
	for _, sh := range s.on {
		sh.parts = slices.Clone(sh.inTurn)
		slices.SortStableFunc(sh.parts, func(a, b *part) int { return cmp.Compare(a.left, b.left) })
	}
}

// onSurface gives the parts on a wall or leaf, as they were set out.
func (s *setter) onSurface(on string) []*part {
	if sh := s.on[on]; sh != nil {
		return sh.inTurn
	}
	return nil
}

// partsAcross gives the parts on a wall or leaf that share some width with a stretch, from left to right.
func (s *setter) partsAcross(on string, left, right float64) []*part {
	sh := s.on[on]
	if sh == nil {
		return nil
	}
	begins := func(p *part, x float64) int { return cmp.Compare(p.left, x) }
	first, _ := slices.BinarySearchFunc(sh.parts, left-sh.widest, begins)
	end, _ := slices.BinarySearchFunc(sh.parts, right, begins)
	var out []*part
	for _, p := range sh.parts[first:max(first, end)] {
		if p.right > left {
			out = append(out, p)
		}
	}
	return out
}

// partAt gives the part that lies at a place, or nil.
func (s *setter) partAt(on string, x, y float64) *part {
	for _, p := range s.partsAcross(on, x-near, x+near) {
		if x > p.left && x < p.right && p.contains(x, y) {
			return p
		}
	}
	return nil
}
