package cutting

import (
	"cmp"
	"math"
	"slices"
)

// Bounds on the number of boards. Each one takes some of the parts, gives each
// a weight, and knows the most weight that a board can hold; the weight over
// that, rounded up, is a number of boards that no plan can do without. What
// offcuts can hold is taken off first.

const (
	mostLevels = 32 // numbers of lengths one above the other that are looked at
	mostWidths = 16 // widths that are looked at as the least that may lie beside another
	mostPhases = 8  // places on the pattern whose parts are looked at by themselves
)

// counted rounds a quotient up that arithmetic may have put just above a whole number.
func counted(need, board float64) int {
	if need <= 0 {
		return 0
	}
	return int(math.Ceil(need/board - 1e-9))
}

// over gives the boards for a weight that offcuts can take some of.
func (j *job) over(need, board float64, offcut func(*shape) float64) int {
	for _, o := range j.offcuts {
		if need <= 0 {
			return 0
		}
		need -= offcut(&o.shape)
	}
	return counted(need, board)
}

// across gives the width of a board in which widths with their gaps are disjoint.
func (j *job) across(b *shape) unit { return b.right - b.left + j.gap() + 3*near }

// beside gives how many parts of at least a width a length can hold.
func (j *job) beside(b *shape, width unit) unit { return j.across(b) / (width + j.gap()) }

// above gives how many lengths of at least a height a board can hold.
func (j *job) above(b *shape, height unit) unit {
	return (b.height + j.kerf + near) / (height + j.kerf)
}

// least is a number of new boards that no plan can do without. Parts are in the job's order.
func (j *job) least(parts []*part) int {
	if len(parts) == 0 {
		return 0
	}
	best := max(j.byArea(parts), j.byHeights(parts), j.byExclusion(parts))
	best = max(best, j.byLevels(parts, func(b *shape, rows unit) unit { return rows }))
	var ends []*part
	for _, p := range parts {
		if p.end {
			ends = append(ends, p)
		}
	}
	if len(ends) > 0 { // only the lengths at its ends
		best = max(best, j.byLevels(ends, func(b *shape, rows unit) unit { return min(rows, unit(b.ends())) }))
	}
	return best
}

func (j *job) byArea(parts []*part) int {
	need := 0.0
	for _, p := range parts {
		need += float64(p.width+j.gap()) * float64(p.height+j.kerf)
	}
	area := func(b *shape) float64 { return float64(j.across(b)) * float64(b.height+j.kerf+near) }
	return j.over(need, area(&j.board.shape), area)
}

// byHeights takes the widest parts, of which only so many lie in one length: as many columns hold their heights.
func (j *job) byHeights(parts []*part) int {
	byWidth := slices.Clone(parts)
	slices.SortStableFunc(byWidth, func(a, b *part) int { return cmp.Compare(b.width, a.width) })
	best, need := 0, 0.0
	for i, p := range byWidth {
		need += float64(p.height + j.kerf)
		columns := j.beside(&j.board.shape, p.width)
		if columns > mostLevels {
			break
		}
		if i+1 < len(byWidth) && j.beside(&j.board.shape, byWidth[i+1].width) == columns {
			continue
		}
		hold := func(b *shape) float64 { return float64(j.beside(b, p.width)) * float64(b.height+j.kerf+near) }
		best = max(best, j.over(need, hold(&j.board.shape), hold))
	}
	return best
}

// byLevels takes the tallest parts, of which only so many lie one above the
// other: so many lengths hold their widths, their edges and their numbers. Of
// those lengths, only some may count.
func (j *job) byLevels(parts []*part, only func(b *shape, rows unit) unit) int {
	best := 0
	board := &j.board.shape
	for i, p := range parts {
		level := j.above(board, p.height)
		if level > mostLevels {
			break
		}
		if i+1 < len(parts) && j.above(board, parts[i+1].height) == level {
			continue
		}
		l := stack{j, parts[:i+1], func(b *shape) float64 { return float64(only(b, j.above(b, p.height))) }}
		best = max(best, l.byWidth(), l.byNumber(), l.byEdge(), l.byPattern())
	}
	return best
}

// stack is parts of which a board or offcut holds only so many lengths.
type stack struct {
	*job
	parts []*part
	rows  func(*shape) float64
}

// byWidth adds widths up; once as they are, and for each of some widths, with
// those parts left out that are narrower, and those taken for a whole length
// beside which nothing so wide can lie.
func (l stack) byWidth() int {
	row := func(b *shape) float64 { return l.rows(b) * float64(l.across(b)) }
	best := 0
	for _, least := range l.widths(func(w unit) bool { return 2*w < l.width }) {
		need := 0.0
		whole := l.across(&l.board.shape) - least - l.gap() // nothing lies beside what is wider
		for _, p := range l.parts {
			switch {
			case p.width < least:
			case p.width+l.gap() > whole:
				need += float64(l.across(&l.board.shape))
			default:
				need += float64(p.width + l.gap())
			}
		}
		best = max(best, l.over(need, row(&l.board.shape), func(b *shape) float64 {
			if l.across(b) <= whole {
				return row(b)
			}
			return l.rows(b) * float64(l.across(&l.board.shape))
		}))
	}
	return best
}

// widths gives some of the parts' widths, spread evenly, and 0.
func (l stack) widths(want func(unit) bool) []unit {
	all := []unit{0}
	for _, p := range l.parts {
		if want(p.width) {
			all = append(all, p.width)
		}
	}
	slices.Sort(all)
	all = slices.Compact(all)
	if len(all) <= mostWidths {
		return all
	}
	some := make([]unit, mostWidths)
	for i := range some {
		some[i] = all[i*(len(all)-1)/(mostWidths-1)]
	}
	return some
}

// byNumber counts parts so wide that only so many lie in a length.
func (l stack) byNumber() int {
	best := 0
	for _, least := range l.widths(func(w unit) bool { return l.beside(&l.board.shape, w) <= mostLevels }) {
		if least == 0 {
			continue // nothing is so narrow
		}
		need := 0.0
		for _, p := range l.parts {
			if p.width >= least {
				need++
			}
		}
		hold := func(b *shape) float64 { return l.rows(b) * float64(l.beside(b, least)) }
		best = max(best, l.over(need, hold(&l.board.shape), hold))
	}
	return best
}

// byEdge counts parts that need the same factory edge; turned, either edge serves.
func (l stack) byEdge() int {
	left, right := 0.0, 0.0
	for _, p := range l.parts {
		if p.ways[0].left {
			left++
		}
		if p.ways[0].right {
			right++
		}
	}
	if l.turnable {
		return l.over(left+right, 2*l.rows(&l.board.shape), func(b *shape) float64 { return l.rows(b) * (one(b.leftEdge) + one(b.rightEdge)) })
	}
	return max(l.over(left, l.rows(&l.board.shape), func(b *shape) float64 { return l.rows(b) * one(b.leftEdge) }),
		l.over(right, l.rows(&l.board.shape), func(b *shape) float64 { return l.rows(b) * one(b.rightEdge) }))
}

func one(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}
