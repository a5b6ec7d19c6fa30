package setout

import (
	"cmp"
	"math"
	"slices"

	"trysquare/checker/facts"
)

// pair is two parts that meet side by side, the first on the left.
type pair struct {
	left, right *part
	bottom, top float64
}

// neighbours gives, for a part, the part that each of its two sides meets.
type neighbours struct{ left, right map[*part]*part }

func (n neighbours) of(p *part, side string) (*part, bool) {
	var other *part
	switch side {
	case "left":
		other = n.left[p]
	case "right":
		other = n.right[p]
	}
	return other, other != nil
}

// pairUp gives the parts of neighbouring cells that share some height at the
// edges where the cells meet, in the order of each run.
func (s *setter) pairUp() []pair {
	byCell := map[*cell][]*part{}
	for _, p := range s.parts {
		byCell[p.cell] = append(byCell[p.cell], p)
	}
	var out []pair
	for _, l := range s.runs {
		for _, c := range l.courses {
			for i := 1; i < len(c.cells); i++ {
				a, b := c.cells[i-1], c.cells[i]
				if l.run.FromRight() {
					a, b = b, a
				}
				for _, left := range byCell[a] {
					for _, right := range byCell[b] {
						if low, high, ok := meeting(left, right); ok {
							out = append(out, pair{left, right, low, high})
						}
					}
				}
			}
		}
	}
	return out
}

// meeting gives the heights from the lowest to the highest place where the
// right edge of one part stands against the left edge of the other.
func meeting(left, right *part) (low, high float64, ok bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, a := range left.poly.Sides() {
		if a.Faces != "right" || !same(a.From.X, left.cell.right) {
			continue
		}
		for _, b := range right.poly.Sides() {
			if b.Faces != "left" || !same(b.From.X, right.cell.left) {
				continue
			}
			from := max(min(a.From.Y, a.To.Y), min(b.From.Y, b.To.Y))
			to := min(max(a.From.Y, a.To.Y), max(b.From.Y, b.To.Y))
			if to > from+near {
				low, high = min(low, from), max(high, to)
			}
		}
	}
	return low, high, high > low
}

func (s *setter) neighbours() neighbours {
	n := neighbours{map[*part]*part{}, map[*part]*part{}}
	for _, p := range s.pairs {
		n.right[p.left], n.left[p.right] = p.right, p.left
	}
	return n
}

// joints gives the facts of every joint.
func (s *setter) joints(f *facts.Facts) {
	for _, p := range s.pairs {
		panel := p.left.panel()
		a, b := factoryOr(p.left.cell.cutRight, p.left.cell.rightEdge), factoryOr(p.right.cell.cutLeft, p.right.cell.leftEdge)
		apart := p.right.cell.left - p.left.cell.right
		gap := p.gap()
		pattern := panel.Pitch - panel.SlatWidth
		f.Joints = append(f.Joints, facts.Joint{About: p.right.about(p.left.id + " | " + p.right.id), Left: p.left.id, Right: p.right.id,
			X: round((p.left.cell.right + p.right.cell.left) / 2), Bottom: round(p.bottom), Top: round(p.top), LeftMadeBy: a, RightMadeBy: b,
			HasInterlock: panel.Interlocks(), Interlocks: a == "tongue" && b == "recess" || a == "recess" && b == "tongue",
			Apart: round(apart), Gap: round(gap), PatternGap: round(pattern), GapError: round(math.Abs(gap - pattern)),
			InView: p.left.inView() || p.right.inView()})
	}
}

// gap is the space between the last slat on the left of a joint and the first on its right.
func (p pair) gap() float64 {
	left, right := p.left.cell.left, p.right.cell.right
	if slats := p.left.slats(p.left.cell.left, p.left.cell.right); len(slats) > 0 {
		left = slats[len(slats)-1].right
	}
	if slats := p.right.slats(p.right.cell.left, p.right.cell.right); len(slats) > 0 {
		right = slats[0].left
	}
	return right - left
}

// jambs gives, for each side of each opening and each run that passes it, the
// joint nearest to the jamb line, and what holds the strip between the two.
func (s *setter) jambs(f *facts.Facts) {
	for _, l := range s.runs {
		var pairs []pair
		for _, p := range s.pairs {
			if p.left.laid == l {
				pairs = append(pairs, p)
			}
		}
		slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(a.x(), b.x()) })
		for _, h := range l.holes {
			for _, side := range []string{"left", "right"} {
				if j, ok := nearestJoint(h, side, pairs); ok {
					j.About = facts.About{ID: h.id() + " " + side + " jamb, run " + l.run.ID, At: l.run.At, On: l.surface.on}
					f.Jambs = append(f.Jambs, j)
				}
			}
		}
	}
}

// nearestJoint finds the joint nearest to a jamb line among a run's, sorted from left to right.
func nearestJoint(h hole, side string, pairs []pair) (facts.Jamb, bool) {
	line := h.left
	if side == "right" {
		line = h.right
	}
	var best *pair
	distance := math.Inf(1)
	at, _ := slices.BinarySearchFunc(pairs, line, func(p pair, x float64) int { return cmp.Compare(p.x(), x) })
	for i := max(0, at-2); i < min(len(pairs), at+2); i++ {
		if d := math.Abs(pairs[i].x() - line); d < distance-near {
			best, distance = &pairs[i], d
		}
	}
	if best == nil {
		return facts.Jamb{}, false
	}
	j := facts.Jamb{Opening: h.id(), Side: side, X: round(line), Joint: best.left.id + " | " + best.right.id, Distance: round(distance)}
	left, right := min(line, best.x()), max(line, best.x())
	over := best.x() > h.left+near && best.x() < h.right-near
	switch {
	case distance <= near:
		j.Where = "on the line"
	case over:
		j.Where = "over the opening"
	default:
		j.Where = "beside it"
	}
	j.FixingStated = best.left.fix() != nil && best.right.fix() != nil
	for _, p := range []*part{best.left, best.right} {
		j.HeldBy += p.holdsBetween(left, right)
	}
	return j, true
}

func (p pair) x() float64 { return (p.left.cell.right + p.right.cell.left) / 2 }
