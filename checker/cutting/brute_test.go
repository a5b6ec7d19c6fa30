package cutting

import "math"

// brute finds the least number of boards by trying everything, on few blanks:
// every way to share them out among offcuts, boards and lengths, and in a length
// every place on the pattern, or every order where there is no pattern.
type brute struct {
	board   Board
	blanks  []Blank
	offcuts []Offcut
	kerf    float64
	rows    map[[2]int]bool // stock, set
	stacks  map[[2]int]bool
}

// boards gives the least number. Stock 0 is a board, 1 and on are the offcuts.
func newBrute(board Board, blanks []Blank, offcuts []Offcut, kerf float64) *brute {
	return &brute{board, blanks, offcuts, kerf, map[[2]int]bool{}, map[[2]int]bool{}}
}

func (b *brute) boards() int {
	all := 1<<len(b.blanks) - 1
	least := make([]int, all+1) // of each set, with no offcut left
	for set := 1; set <= all; set++ {
		least[set] = len(b.blanks) + 1
		for one := set; one > 0; one = (one - 1) & set {
			if least[set&^one]+1 < least[set] && b.stack(0, one) {
				least[set] = least[set&^one] + 1
			}
		}
	}
	return b.with(len(b.offcuts), all, least)
}

// with lets an offcut and those before it take any part of a set.
func (b *brute) with(offcuts, set int, least []int) int {
	if offcuts == 0 {
		return least[set]
	}
	best := b.with(offcuts-1, set, least)
	for one := set; one > 0; one = (one - 1) & set {
		if b.stack(offcuts, one) {
			best = min(best, b.with(offcuts-1, set&^one, least))
		}
	}
	return best
}

func (b *brute) stock(i int) Offcut {
	if i == 0 {
		return Offcut{Right: b.board.Width, Height: b.board.Height, LeftEdge: true, RightEdge: true, BottomEnd: true, TopEnd: true}
	}
	return b.offcuts[i-1]
}

// stack says whether a stock gives a set.
func (b *brute) stack(stock, set int) bool {
	key := [2]int{stock, set}
	ok, known := b.stacks[key]
	if !known {
		ok = b.divided(stock, set, nil)
		b.stacks[key] = ok
	}
	return ok
}

// divided tries every way to divide a set into lengths.
func (b *brute) divided(stock, set int, lengths []int) bool {
	if set == 0 {
		return b.stacked(stock, lengths)
	}
	first := set & -set
	for one := set; one > 0; one = (one - 1) & set {
		if one&first > 0 && b.row(stock, one) && b.divided(stock, set&^one, append(lengths, one)) {
			return true
		}
	}
	return false
}

// stacked tries which length lies at the bottom and which at the top; the others must need no end.
func (b *brute) stacked(stock int, lengths []int) bool {
	s := b.stock(stock)
	high := -b.kerf
	for _, set := range lengths {
		high += b.kerf + b.high(set)
	}
	if high > s.Height+0.005 {
		return false
	}
	for bottom := range lengths {
		for top := range lengths {
			ok := true
			for i, set := range lengths {
				if len(lengths) > 1 && top == bottom {
					ok = false // they are two
				}
				if b.ended(set) && !(i == bottom && s.BottomEnd) && !(i == top && s.TopEnd) {
					ok = false
				}
			}
			if ok {
				return true
			}
		}
	}
	return false
}

func (b *brute) high(set int) float64 {
	h := 0.0
	for i, blank := range b.blanks {
		if set>>i&1 == 1 {
			h = max(h, blank.Height)
		}
	}
	return h
}

func (b *brute) ended(set int) bool {
	for i, blank := range b.blanks {
		if set>>i&1 == 1 && blank.End {
			return true
		}
	}
	return false
}

// row says whether a length of a stock gives a set.
func (b *brute) row(stock, set int) bool {
	key := [2]int{stock, set}
	ok, known := b.rows[key]
	if !known {
		if b.board.Pitch > 0 {
			ok = b.scattered(b.stock(stock), set, nil)
		} else {
			ok = b.ordered(b.stock(stock), set, b.stock(stock).Left-b.kerf)
		}
		b.rows[key] = ok
	}
	return ok
}

// seat is one place that a blank may take: fixed at an edge, or the first on the pattern.
type seat struct {
	at    float64
	fixed bool
}

func (b *brute) seats(s Offcut, blank Blank) []seat {
	var out []seat
	for _, turn := range []bool{false, true} {
		left, right, at := blank.LeftEdge, blank.RightEdge, blank.Left
		if turn {
			left, right, at = right, left, b.board.Width-blank.Right
		}
		if turn && !b.board.Turnable || left && !s.LeftEdge || right && !s.RightEdge {
			continue
		}
		if left || right {
			out = append(out, seat{at, true})
		} else {
			out = append(out, seat{at, false})
		}
	}
	return out
}

// scattered tries every place on the pattern for the first blank of a set, then for the others.
func (b *brute) scattered(s Offcut, set int, taken []rect) bool {
	for i, blank := range b.blanks {
		if set>>i&1 == 0 {
			continue
		}
		wide := blank.Right - blank.Left
		for _, seat := range b.seats(s, blank) {
			for n := -20; n <= 20; n++ {
				at := seat.at + float64(n)*b.board.Pitch
				free := at >= s.Left-0.005 && at+wide <= s.Right+0.005 && (n == 0 || !seat.fixed)
				for _, t := range taken {
					free = free && (at >= t.right+b.kerf-0.005 || at+wide <= t.left-b.kerf+0.005)
				}
				if free && b.scattered(s, set&^(1<<i), append(taken, rect{left: at, right: at + wide})) {
					return true
				}
			}
		}
		return false
	}
	return true
}

// ordered tries every order from the left, without a pattern.
func (b *brute) ordered(s Offcut, set int, behind float64) bool {
	for i, blank := range b.blanks {
		if set>>i&1 == 0 {
			continue
		}
		wide := blank.Right - blank.Left
		for _, seat := range b.seats(s, blank) {
			at := behind + b.kerf
			if seat.fixed && at <= seat.at+0.005 {
				at = seat.at
			} else if seat.fixed {
				at = math.Inf(1)
			}
			if at+wide <= s.Right+0.005 && b.ordered(s, set&^(1<<i), at+wide) {
				return true
			}
		}
	}
	return set == 0
}
