package setout

import "trysquare/checker/planar"

// overMost is how far pieces of two runs may lie over each other, in
// millimetres: what rounding the plan's lengths comes to.
const overMost = 0.01

// overlaps sees that no two runs lie over each other. A run that does is told
// once, with the first that it lies over: what else it hits follows from that.
func (s *setter) overlaps() {
	told := map[*laid]bool{}
	for _, p := range s.parts { // run by run
		if told[p.laid] || !s.on[p.surface.on].shared {
			continue
		}
		for _, q := range s.partsAcross(p.surface.on, p.left+overMost, p.right-overMost) {
			if q.laid.number >= p.laid.number || min(p.top, q.top)-max(p.bottom, q.bottom) <= overMost {
				continue
			}
			switch over, err := p.over(q); {
			case err != nil:
				s.misfit(p.cell.at, "whether %q lies over %q cannot be told: %v", p.id, q.id, err)
			case over:
				s.misfit(p.run().At, "the runs %q and %q overlap: %q lies over %q", q.run().ID, p.run().ID, p.id, q.id)
			default:
				continue
			}
			told[p.laid] = true
			break
		}
	}
}

// over says whether two parts whose bounds overlap do so themselves.
func (p *part) over(q *part) (bool, error) {
	if p.rectangle() && q.rectangle() {
		return min(p.right, q.right)-max(p.left, q.left) > overMost, nil
	}
	common, err := p.poly.And(q.poly)
	if err != nil {
		return false, err
	}
	for _, c := range common {
		if thickness(c) > overMost {
			return true, nil
		}
	}
	return false, nil
}

// rectangle says whether the part fills its bounds.
func (p *part) rectangle() bool {
	return len(p.poly.Holes) == 0 && same(p.poly.Area(), (p.right-p.left)*(p.top-p.bottom))
}

// thickness is that of a strip as long as the polygon's bounds and of its area:
// what two sides that all but meet leave between them is long and has none.
func thickness(p planar.Polygon) float64 {
	left, bottom, right, top := p.Bounds()
	return p.Area() / max(right-left, top-bottom)
}
