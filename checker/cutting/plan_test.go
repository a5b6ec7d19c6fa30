package cutting

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
)

var (
	// slatted has a slat every 40; turned has the same, and may be turned.
	slatted = Board{Width: 600, Height: 2400, Pitch: 40}
	turned  = Board{Width: 600, Height: 2400, Pitch: 40, Turnable: true}
	plain   = Board{Width: 600, Height: 2400}
	// sheet is 4 ft x 8 ft: 48 x 25.4 and 96 x 25.4.
	sheet = Board{Width: 1219.2, Height: 2438.4}
)

// at is a blank that may lie anywhere on the pattern.
func at(left, right, height float64) Blank { return Blank{Left: left, Right: right, Height: height} }

func leftEdge(right, height float64) Blank {
	return Blank{Right: right, Height: height, LeftEdge: true}
}

func rightEdge(left, height float64) Blank {
	return Blank{Left: left, Right: 600, Height: height, RightEdge: true}
}

func ended(b Blank) Blank { b.End = true; return b }

func times(n int, b Blank) []Blank {
	var out []Blank
	for range n {
		out = append(out, b)
	}
	return out
}

// named joins blanks and names them B1, B2, ...
func named(lists ...[]Blank) []Blank {
	var out []Blank
	for _, list := range lists {
		for _, b := range list {
			b.ID = fmt.Sprintf("B%d", len(out)+1)
			out = append(out, b)
		}
	}
	return out
}

func TestBoardsNeededByHand(t *testing.T) {
	half := Offcut{ID: "half", Left: 0, Right: 299, Height: 2400, LeftEdge: true, BottomEnd: true, TopEnd: true}
	bare := Offcut{ID: "bare", Left: 10, Right: 310, Height: 2400}
	cases := []struct {
		name    string
		board   Board
		kerf    float64
		blanks  []Blank
		offcuts []Offcut
		want    int
	}{
		{"nothing", slatted, 2, nil, nil, 0},
		{"a whole board", slatted, 2, []Blank{{Right: 600, Height: 2400, LeftEdge: true, RightEdge: true, End: true}}, nil, 1},
		{"both halves: 299 + 2 + 299 = 600", slatted, 2, []Blank{leftEdge(299, 2400), rightEdge(301, 2400)}, nil, 1},
		{"both halves with nothing for the saw: 300 + 2 + 300 = 602", slatted, 2, []Blank{leftEdge(300, 2400), rightEdge(300, 2400)}, nil, 2},
		{"a saw that takes nothing", slatted, 0, []Blank{leftEdge(300, 2400), rightEdge(300, 2400)}, nil, 1},
		{"two left edges", slatted, 2, times(2, leftEdge(200, 2400)), nil, 2},
		{"two left edges, one turned", turned, 2, times(2, leftEdge(200, 2400)), nil, 1},
		{"three left edges, two of them turned", turned, 2, times(3, leftEdge(100, 2400)), nil, 2},
		{"a left and a right edge that change places", turned, 2, []Blank{leftEdge(299, 2400), rightEdge(301, 2400)}, nil, 1},

		// On the pattern 46 takes 80: 46 + 2 reaches beyond one pitch. Beside 280 they begin at 320, 400 and 480 (560 + 46 = 606 is over);
		// beside 360 at the right edge, which begins at 240, at 0, 80 and 160 (160 + 46 = 206). That is three each.
		{"280, 360 and six of 46", slatted, 2, named([]Blank{leftEdge(280, 2400), rightEdge(240, 2400)}, times(6, at(0, 46, 2400))), nil, 2},
		{"280, 360 and seven of 46", slatted, 2, named([]Blank{leftEdge(280, 2400), rightEdge(240, 2400)}, times(7, at(0, 46, 2400))), nil, 3},
		// Without a pattern: 280 + 6 x 48 = 568, and 360 + 5 x 48 = 600.
		{"280, 360 and eleven of 46, no pattern", plain, 2, named([]Blank{leftEdge(280, 2400), rightEdge(240, 2400)}, times(11, at(0, 46, 2400))), nil, 2},
		{"280, 360 and twelve of 46, no pattern", plain, 2, named([]Blank{leftEdge(280, 2400), rightEdge(240, 2400)}, times(12, at(0, 46, 2400))), nil, 3},
		// 38 and a kerf of 2 take one pitch: 15 pitches of 40 in 600.
		{"fifteen strips", slatted, 2, times(15, at(80, 118, 2400)), nil, 1},
		{"sixteen strips", slatted, 2, times(16, at(80, 118, 2400)), nil, 2},
		{"fifteen strips that noise puts before their pitch", slatted, 2, times(15, at(80-1e-10, 118-1e-10, 2400)), nil, 1},
		// 39 + 2 takes two: 0, 80, ..., 560, where 560 + 39 = 599: eight.
		{"eight strips that keep the pattern", slatted, 2, times(8, at(0, 39, 2400)), nil, 1},
		{"nine of them", slatted, 2, times(9, at(0, 39, 2400)), nil, 2},

		{"six headers: 6 x 380 + 5 x 2 = 2290", slatted, 2, times(6, Blank{Right: 600, Height: 380, LeftEdge: true, RightEdge: true}), nil, 1},
		{"seven headers", slatted, 2, times(7, Blank{Right: 600, Height: 380, LeftEdge: true, RightEdge: true}), nil, 2},
		// 1000 + 2 + 1398 = 2400.
		{"one above the other", slatted, 2, []Blank{at(0, 600, 1000), at(0, 600, 1398)}, nil, 1},
		{"one above the other and 1 too high", slatted, 2, []Blank{at(0, 600, 1000), at(0, 600, 1399)}, nil, 2},
		// 3 x 798 + 2 x 2 = 2398, but the middle one has no factory end.
		{"three lengths", slatted, 2, times(3, at(0, 600, 798)), nil, 1},
		{"three lengths that all need an end", slatted, 2, times(3, ended(at(0, 600, 798))), nil, 2},
		{"three lengths of which two need an end", slatted, 2, named(times(2, ended(at(0, 600, 798))), times(1, at(0, 600, 798))), nil, 1},
		// Lengths of 4 x 299-wide parts with an end: two halves in each of the two lengths at the ends.
		{"four halves that need an end and one between", slatted, 2,
			named(times(2, ended(leftEdge(299, 798))), times(2, ended(rightEdge(301, 798))), times(1, at(0, 600, 798))), nil, 1},

		// Strips of one foot, 304.8: four are 1219.2 with nothing for the saw; with 1/8 in, 3.175, three: 3 x 304.8 + 2 x 3.175 = 920.75.
		{"four strips of a foot, no kerf", sheet, 0, times(4, at(0, 304.8, 2438.4)), nil, 1},
		{"four strips of a foot", sheet, 3.175, times(4, at(0, 304.8, 2438.4)), nil, 2},
		// 11 7/8 in is 301.625: 4 x 301.625 + 3 x 3.175 = 1216.025.
		{"four strips of 11 7/8 in", sheet, 3.175, times(4, at(0, 301.625, 2438.4)), nil, 1},
		{"five strips of 11 7/8 in", sheet, 3.175, times(5, at(0, 301.625, 2438.4)), nil, 2},
		// Squares of 2 ft, 609.6: two across only without a kerf; four up.
		{"eight squares of 2 ft, no kerf", sheet, 0, times(8, at(0, 609.6, 609.6)), nil, 1},
		{"nine squares of 2 ft, no kerf", sheet, 0, times(9, at(0, 609.6, 609.6)), nil, 2},
		// With a kerf one across, and 3 up: 3 x 609.6 + 2 x 3.175 = 1835.15; a fourth would need 2447.925.
		{"four squares of 2 ft", sheet, 3.175, times(4, at(0, 609.6, 609.6)), nil, 2},

		{"a left half from stock, one from a board", slatted, 2, times(2, leftEdge(299, 2400)), []Offcut{half}, 1},
		{"all from stock", slatted, 2, []Blank{ended(leftEdge(299, 1000))}, []Offcut{half}, 0},
		{"stock that has no edge", slatted, 2, []Blank{leftEdge(200, 2400)}, []Offcut{bare}, 1},
		{"stock that has the other edge", slatted, 2, []Blank{rightEdge(400, 2400)}, []Offcut{half}, 1},
		{"stock that has the other edge, turned", turned, 2, []Blank{rightEdge(400, 2400)}, []Offcut{half}, 0},
		{"stock that has no end", slatted, 2, []Blank{ended(at(0, 200, 2000))}, []Offcut{bare}, 1},
		// On an offcut from 10 to 310 the pattern's first place is 40: 40 + 270 = 310.
		{"stock where the pattern begins 30 later", slatted, 2, []Blank{at(0, 270, 2400)}, []Offcut{bare}, 0},
		{"stock where the pattern begins too late", slatted, 2, []Blank{at(0, 271, 2400)}, []Offcut{bare}, 1},
		{"three offcuts", slatted, 2, times(4, at(0, 270, 2400)), []Offcut{bare, {ID: "b", Left: 40, Right: 310, Height: 2400}, {ID: "c", Right: 280, Height: 2400}}, 1},

		// 958 + 2 + 719 + 2 + 719 = 2400, twice. The tallest first would put 958 on 958, where 719 has no room left.
		{"what only a search finds", slatted, 2, named(times(2, at(0, 600, 958)), times(4, at(0, 600, 719))), nil, 2},
	}
	for _, c := range cases {
		blanks := named(c.blanks)
		l, err := Plan(context.Background(), c.board, blanks, c.offcuts, Usual(c.kerf))
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if l.Boards != c.want || !l.Proven || l.Least != c.want {
			t.Errorf("%s: %d boards, at least %d, proven %v; want %d", c.name, l.Boards, l.Least, l.Proven, c.want)
		}
		for _, line := range append(wrong(c.board, blanks, c.offcuts, c.kerf, l), sawnAsListed(l)...) {
			t.Errorf("%s: %s", c.name, line)
		}
	}
}

func TestWithoutStepsNoMoreIsClaimedThanIsKnown(t *testing.T) {
	// The areas come to 2 x 958 + 4 x 719 = 4792 of 4800, so two boards; the first fit needs three (see above).
	blanks := named(times(2, at(0, 600, 958)), times(4, at(0, 600, 719)))
	for _, steps := range []int{0, 1} {
		s := Usual(2)
		s.Nodes = steps
		l, err := Plan(context.Background(), slatted, blanks, nil, s)
		if err != nil || l.Boards != 3 || l.Least != 2 || l.Proven {
			t.Errorf("%d steps: %d boards, at least %d, proven %v, %v", steps, l.Boards, l.Least, l.Proven, err)
		}
	}
}

func TestWhatIsLeftHasANameOfItsOwn(t *testing.T) {
	// The board's first remainder would be 1/1, which is in stock already; too low for the blank, it is not cut.
	stock := []Offcut{{ID: "1/1", Right: 600, Height: 100}}
	l, err := Plan(context.Background(), slatted, named([]Blank{at(0, 600, 2000)}), stock, Usual(2))
	if err != nil || len(l.Stocks) != 1 || len(l.Stocks[0].Left) != 1 || l.Stocks[0].Left[0].ID != "1/2" {
		t.Errorf("%+v, %v", l.Stocks, err)
	}
}

func TestInputThatNothingCanHaveIsRefused(t *testing.T) {
	nan := math.NaN()
	good := Blank{ID: "A", Right: 200, Height: 2000}
	for _, c := range []struct {
		name    string
		board   Board
		blanks  []Blank
		offcuts []Offcut
		s       Settings
		want    string
	}{
		{"no width", Board{Height: 2400}, nil, nil, Usual(2), "board: no board is 0 mm x 2400 mm"},
		{"no number", Board{Width: nan, Height: 2400}, nil, nil, Usual(2), "board: no board is NaN"},
		{"endless", Board{Width: 600, Height: math.Inf(1)}, nil, nil, Usual(2), "board: no board is 600 mm x +Inf mm"},
		{"tiny pitch", Board{Width: 600, Height: 2400, Pitch: 0.1}, nil, nil, Usual(2), "pitch of 0.1 mm"},
		{"kerf", slatted, nil, nil, Usual(-1), "settings: no saw has a kerf of -1 mm"},
		{"kerf that is no number", slatted, nil, nil, Usual(nan), "kerf of NaN mm"},
		{"steps", slatted, nil, nil, Settings{Nodes: -1}, "settings: no least size"},
		{"least width", slatted, nil, nil, Settings{LeastWidth: nan}, "settings: no least size"},
		{"no ID", slatted, []Blank{{Right: 200, Height: 100}}, nil, Usual(2), "blank: has no ID"},
		{"twice", slatted, []Blank{good, good}, nil, Usual(2), "blank A: is there twice"},
		{"too wide", slatted, []Blank{{ID: "A", Right: 601, Height: 100}}, nil, Usual(2), "blank A: from 0 mm to 601 mm is not within the board's width of 600 mm"},
		{"too high", slatted, []Blank{{ID: "A", Right: 200, Height: 2401}}, nil, Usual(2), "blank A: 2401 mm is higher than the board's 2400 mm"},
		{"turned inside out", slatted, []Blank{{ID: "A", Left: 200, Right: 100, Height: 100}}, nil, Usual(2), "blank A: nothing has a width from 200 mm to 100 mm"},
		{"height that is no number", slatted, []Blank{{ID: "A", Right: 100, Height: nan}}, nil, Usual(2), "a height of NaN mm"},
		{"left edge", slatted, []Blank{{ID: "A", Left: 1, Right: 100, Height: 100, LeftEdge: true}}, nil, Usual(2), "blank A: has the left factory edge and starts at 1 mm"},
		{"right edge", slatted, []Blank{{ID: "A", Right: 599, Height: 100, RightEdge: true}}, nil, Usual(2), "blank A: has the right factory edge and ends at 599 mm of 600 mm"},
		{"offcut without ID", slatted, nil, []Offcut{{Right: 200, Height: 100}}, Usual(2), "offcut: has no ID"},
		{"offcut twice", slatted, nil, []Offcut{{ID: "O", Right: 200, Height: 100}, {ID: "O", Right: 300, Height: 100}}, Usual(2), "offcut O: is there twice"},
		{"offcut's edge", slatted, nil, []Offcut{{ID: "O", Right: 200, Height: 100, RightEdge: true}}, Usual(2), "offcut O: has the right factory edge and ends at 200 mm"},
		{"offcut too high", slatted, nil, []Offcut{{ID: "O", Right: 200, Height: 2401}}, Usual(2), "offcut O: 2401 mm is higher"},
	} {
		_, err := Plan(context.Background(), c.board, c.blanks, c.offcuts, c.s)
		var invalid *InvalidError
		if !errors.As(err, &invalid) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", c.name, err, c.want)
		}
	}
	_, err := Plan(context.Background(), slatted, []Blank{{ID: "A", Right: 601, Height: 100}, {ID: "B", Right: 600, Height: 2500}}, nil, Usual(2))
	if lines := strings.Split(fmt.Sprint(err), "\n"); len(lines) != 2 {
		t.Errorf("%q, want both", lines)
	}
}

// lapsing is a context that is cancelled after it was asked a number of times.
type lapsing struct {
	context.Context
	asked, after int
}

func (l *lapsing) Err() error {
	if l.asked++; l.asked > l.after {
		return context.Canceled
	}
	return nil
}

func TestACancelledPlanIsNone(t *testing.T) {
	// Twelve boards of 958 + 2 x 719 and two kerfs, less a few low ones: enough for a search of thousands of steps.
	blanks := named(times(12, at(0, 600, 958)), times(20, at(0, 600, 719)), times(12, at(0, 200, 600)), times(12, at(0, 310, 500)))
	all := &lapsing{Context: context.Background(), after: math.MaxInt}
	if _, err := Plan(all, slatted, blanks, nil, Usual(2)); err != nil || all.asked < 3 {
		t.Fatalf("asked %d times, %v", all.asked, err)
	}
	for after := range 3 { // in the first fit, in the other, in the search
		l, err := Plan(&lapsing{Context: context.Background(), after: after}, slatted, blanks, nil, Usual(2))
		if !errors.Is(err, context.Canceled) || len(l.Stocks) != 0 {
			t.Errorf("after %d: %+v, %v", after, l, err)
		}
	}
}
