package setout

import (
	"math"
	"math/bits"
	"testing"

	"pgregory.net/rapid"

	"trysquare/checker/plan"
)

// board600 is a product of 600 x 2400 with a slat every 40.
var board600 = &plan.Panel{Name: "oak", Width: 600, Height: 2400, Pitch: 40, SlatWidth: 28, First: 6}

func times(n int, b blank) []blank {
	var out []blank
	for range n {
		out = append(out, b)
	}
	return out
}

func TestBoardsNeededForBlanksCountedByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		blanks []blank
		want   int
	}{
		{"nothing", nil, 0},
		{"a whole board", []blank{{0, 600, 2400, true}}, 1},
		{"both halves, a saw cut of 2 between 299 and 301", []blank{{0, 299, 2400, true}, {301, 600, 2400, true}}, 1},
		{"both halves with nothing for the saw", []blank{{0, 300, 2400, true}, {300, 600, 2400, true}}, 2},
		{"two left edges", []blank{{0, 200, 2400, true}, {0, 200, 2400, true}}, 2},
		{"one above the other: 1000 + 2 + 1398 = 2400", []blank{{0, 600, 1000, true}, {0, 600, 1398, true}}, 1},
		{"one above the other and 1 too high", []blank{{0, 600, 1000, true}, {0, 600, 1399, true}}, 2},
		// 38 and a saw cut of 2 take one pitch: 15 pitches of 40 in 600.
		{"fifteen strips side by side", times(15, blank{80, 118, 2400, false}), 1},
		{"sixteen strips", times(16, blank{80, 118, 2400, false}), 2},
		// 39 and 2 take two pitches: from 0, 80, ..., 560, where 560 + 39 = 599: 8.
		{"eight strips that keep the pattern", times(8, blank{0, 39, 2400, false}), 1},
		{"nine of them", times(9, blank{0, 39, 2400, false}), 2},
		// 1199 + 2 + 1199 = 2400: two lengths of 15.
		{"thirty half as high", times(30, blank{80, 118, 1199, false}), 1},
		{"thirty-one", times(31, blank{80, 118, 1199, false}), 2},
		{"thirty with nothing for the saw", times(30, blank{80, 118, 1200, false}), 2},
		// The low one keeps its place in the pattern, 10 behind a pitch: 10, 50, ... are taken up to 202, 210 to 510 is free.
		{"a low one beside a tall one", []blank{{0, 200, 2000, true}, {10, 310, 500, false}}, 1},
		{"a low one that has no room beside the tall one, nor above", []blank{{0, 200, 2000, true}, {10, 410, 500, false}}, 2},
		{"the same, low enough to lie above: 2000 + 2 + 398 = 2400", []blank{{0, 200, 2000, true}, {10, 410, 398, false}}, 1},
		{"a place that noise puts just before a pitch is that pitch", times(15, blank{80 - 1e-10, 118 - 1e-10, 2400, false}), 1},
	} {
		boards := cutFrom(board600, append([]blank(nil), c.blanks...), 2)
		if len(boards) != c.want {
			t.Errorf("%s: %d boards, want %d", c.name, len(boards), c.want)
		}
		check(t, board600, c.blanks, boards, 2)
	}
}

// check holds a cutting plan against what a saw can do.
func check(t interface{ Errorf(string, ...any) }, panel *plan.Panel, blanks []blank, boards []board, kerf float64) {
	const slack = 0.02 // far under a kerf, over the package's own tolerance
	cut, wide := 0, 0.0
	for _, b := range boards {
		high := -kerf
		for _, h := range b.shelves {
			high += kerf + h.height
			for i, a := range h.taken {
				cut, wide = cut+1, wide+a.right-a.left
				if a.left < -slack || a.right > panel.Width+slack {
					t.Errorf("%v reaches outside a board", a)
				}
				for _, o := range h.taken[:i] {
					if a.left < o.right+kerf-slack && o.left < a.right+kerf-slack {
						t.Errorf("%v and %v leave the saw no room", a, o)
					}
				}
			}
		}
		if high > panel.Height+slack {
			t.Errorf("%v come out of a height of %v", b.shelves, panel.Height)
		}
	}
	for _, b := range blanks {
		wide -= b.right - b.left
	}
	if cut != len(blanks) || math.Abs(wide) > slack*float64(len(blanks)) {
		t.Errorf("%d of %d blanks are cut, %v too wide in all", cut, len(blanks), wide)
	}
}

// best tries everything: every way to share the blanks out among boards and
// lengths, and every order within a length.
type best struct {
	panel   *plan.Panel
	blanks  []blank
	kerf    float64
	lengths map[int]bool // sets of blanks that one length gives
}

func (b best) boards() int {
	all := 1<<len(b.blanks) - 1
	least := make([]int, all+1)
	for set := 1; set <= all; set++ {
		least[set] = len(b.blanks) + 1
		for one := set; one > 0; one = (one - 1) & set {
			if least[set&^one]+1 < least[set] && b.high(one) <= b.panel.Height+near {
				least[set] = least[set&^one] + 1
			}
		}
	}
	return least[all]
}

// high gives the least that the lengths for a set of blanks come to.
func (b best) high(set int) float64 {
	if set == 0 {
		return -b.kerf
	}
	first, least := set&-set, math.Inf(1)
	for one := set; one > 0; one = (one - 1) & set {
		if one&first == 0 || !b.fits(one) {
			continue
		}
		height := 0.0
		for i, blank := range b.blanks {
			if one>>i&1 == 1 {
				height = max(height, blank.height)
			}
		}
		least = min(least, height+b.kerf+b.high(set&^one))
	}
	return least
}

// fits says whether one length gives a set of blanks: from left to right in some order, each as far to the left as it goes.
func (b best) fits(set int) bool {
	if ok, known := b.lengths[set]; known {
		return ok
	}
	b.lengths[set] = b.inOrder(set, -b.kerf)
	return b.lengths[set]
}

func (b best) inOrder(set int, behind float64) bool {
	for rest := set; rest > 0; rest &= rest - 1 {
		i := bits.TrailingZeros(uint(rest))
		blank := b.blanks[i]
		at := blank.left
		if !blank.fixed {
			at = math.Mod(blank.left, b.panel.Pitch)
			at += max(0, math.Ceil((behind+b.kerf-at-near)/b.panel.Pitch)) * b.panel.Pitch
		}
		end := at + blank.right - blank.left
		if at >= behind+b.kerf-near && end <= b.panel.Width+near && b.inOrder(set&^(1<<i), end) {
			return true
		}
	}
	return set == 0
}

func TestTheSearchForTheBestFindsWhatIsKnown(t *testing.T) {
	for _, c := range []struct {
		blanks []blank
		want   int
	}{
		{[]blank{{0, 299, 2400, true}, {301, 600, 2400, true}}, 1},
		{[]blank{{0, 300, 2400, true}, {300, 600, 2400, true}}, 2},
		// 398 + 2 + 198 = 598 twice: over a whole board, and beside 1199 of the other, whose rest is the last one: 1199 + 2 + 1199.
		{[]blank{{0, 398, 2400, true}, {0, 198, 2400, false}, {0, 198, 1199, false}, {0, 398, 1199, true}, {0, 600, 1199, true}}, 2},
		{[]blank{{0, 600, 1400, true}, {0, 600, 998, true}, {0, 600, 1200, true}, {0, 600, 1198, true}}, 2},
	} {
		if got := (best{board600, c.blanks, 2, map[int]bool{}}).boards(); got != c.want {
			t.Errorf("%v: %d, want %d", c.blanks, got, c.want)
		}
	}
}

func TestACuttingPlanWorksAndIsNoBetterThanTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kerf := rapid.SampledFrom([]float64{0, 2, 3.2}).Draw(t, "kerf")
		n := rapid.IntRange(1, 5).Draw(t, "blanks")
		var blanks []blank
		area := 0.0
		for range n {
			wide := float64(rapid.SampledFrom([]int{36, 38, 76, 150, 198, 298, 300, 400, 598, 600}).Draw(t, "wide"))
			b := blank{height: float64(rapid.SampledFrom([]int{200, 398, 798, 1000, 1199, 1398, 2000, 2400}).Draw(t, "high")), fixed: rapid.Bool().Draw(t, "fixed")}
			switch {
			case !b.fixed:
				b.left = float64(rapid.IntRange(0, 600-int(wide)).Draw(t, "left"))
			case rapid.Bool().Draw(t, "right edge"):
				b.left = 600 - wide
			}
			b.right = b.left + wide
			area += wide * b.height
			blanks = append(blanks, b)
		}
		boards := cutFrom(board600, append([]blank(nil), blanks...), kerf)
		check(t, board600, blanks, boards, kerf)
		least := (best{board600, blanks, kerf, map[int]bool{}}).boards()
		if len(boards) < least || len(boards) > n {
			t.Fatalf("%d boards for %d blanks, the best is %d", len(boards), n, least)
		}
		if float64(least)*600*2400 < area {
			t.Fatalf("the best, %d, is less than the blanks' area", least)
		}
	})
}
