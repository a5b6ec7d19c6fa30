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
	touch       []stretch // the heights at which they do
}

// stretch is a part of an upright or level line.
type stretch struct{ from, to float64 }

// contact is where a part meets a neighbour.
type contact struct {
	stretch
	part *part
}

// neighbours gives, for a part, what each of its two long edges meets.
type neighbours struct{ left, right map[*part][]contact }

func (n neighbours) contacts(p *part, side string) []contact {
	if side == "left" {
		return n.left[p]
	}
	return n.right[p]
}

// of gives the part that a long edge meets at a height, or nil.
func (n neighbours) of(p *part, side string, y float64) *part {
	if side != "left" && side != "right" {
		return nil
	}
	for _, c := range n.contacts(p, side) {
		if y > c.from && y < c.to {
			return c.part
		}
	}
	return nil
}

// pairUp gives the parts of neighbouring cells that share some height at the
// edges where the cells meet, in the order of each run.
func (s *setter) pairUp() []pair {
	var out []pair
	for _, l := range s.runs {
		for _, c := range l.courses {
			for i := 1; i < len(c.cells); i++ {
				a, b := c.cells[i-1], c.cells[i]
				if l.run.FromRight() {
					a, b = b, a
				}
				for _, left := range a.parts {
					for _, right := range b.parts {
						if touch := meeting(left, right); len(touch) > 0 {
							out = append(out, pair{left, right, touch[0].from, touch[len(touch)-1].to, touch})
						}
					}
				}
			}
		}
	}
	return out
}

// meeting gives the heights at which the right edge of one part stands against
// the left edge of the other, from the lowest up.
func meeting(left, right *part) []stretch {
	var out []stretch
	for _, a := range left.sides {
		if a.Faces != "right" || !onLine(a, left.cell.right) {
			continue
		}
		for _, b := range right.sides {
			if b.Faces != "left" || !onLine(b, right.cell.left) {
				continue
			}
			from := max(min(a.From.Y, a.To.Y), min(b.From.Y, b.To.Y))
			to := min(max(a.From.Y, a.To.Y), max(b.From.Y, b.To.Y))
			if to > from+near {
				out = append(out, stretch{from, to})
			}
		}
	}
	slices.SortFunc(out, func(a, b stretch) int { return cmp.Compare(a.from, b.from) })
	return out
}

func (s *setter) neighbours() neighbours {
	n := neighbours{map[*part][]contact{}, map[*part][]contact{}}
	for _, p := range s.pairs {
		for _, t := range p.touch {
			n.right[p.left] = append(n.right[p.left], contact{t, p.right})
			n.left[p.right] = append(n.left[p.right], contact{t, p.left})
		}
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
// A run that ends short of the opening does not pass it, and courses that do
// not reach it have no joint at its jamb.
func (s *setter) jambs(f *facts.Facts) {
	byCourse := map[*course][]pair{}
	for _, p := range s.pairs {
		byCourse[p.left.cell.course] = append(byCourse[p.left.cell.course], p)
	}
	for _, pairs := range byCourse {
		slices.SortStableFunc(pairs, func(a, b pair) int { return cmp.Compare(a.x(), b.x()) })
	}
	for _, l := range s.runs {
		for _, h := range l.holes {
			if h.right < l.from-near || h.left > l.to+near {
				continue
			}
			for _, side := range []string{"left", "right"} {
				if j, ok := l.nearestJoint(h, side, byCourse); ok {
					j.About = facts.About{ID: h.id() + " " + side + " jamb, run " + l.run.ID, At: l.run.At, On: l.surface.on}
					f.Jambs = append(f.Jambs, j)
				}
			}
		}
	}
}

// nearestJoint finds the joint nearest to a jamb line among a run's, which are sorted from left to right in each course.
func (l *laid) nearestJoint(h hole, side string, byCourse map[*course][]pair) (facts.Jamb, bool) {
	line := h.left
	if side == "right" {
		line = h.right
	}
	var best *pair
	distance := math.Inf(1)
	for _, c := range l.courses {
		if c.top < h.bottom-near || c.bottom > h.top+near {
			continue
		}
		pairs := byCourse[c]
		at, _ := slices.BinarySearchFunc(pairs, line, func(p pair, x float64) int { return cmp.Compare(p.x(), x) })
		for i := max(0, at-2); i < min(len(pairs), at+2); i++ {
			if d := math.Abs(pairs[i].x() - line); d < distance-near {
				best, distance = &pairs[i], d
			}
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
