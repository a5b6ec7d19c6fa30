package cutting

import (
	"errors"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestMisfitsByHand(t *testing.T) {
	left, right := leftEdge(299, 2400), rightEdge(301, 2400)
	board := func(n int, lengths ...[]string) Assignment { return Assignment{n, lengths} }
	header := Blank{Right: 600, Height: 380, LeftEdge: true, RightEdge: true}
	for _, c := range []struct {
		name     string
		board    Board
		kerf     float64
		blanks   []Blank // B1, B2, ...
		assigned []Assignment
		want     []Misfit
	}{
		{"both halves: 299 + 2 + 299", slatted, 2, []Blank{left, right}, []Assignment{board(1, []string{"B1", "B2"})}, nil},
		{"a thicker saw: 299 + 3 + 299 = 601", slatted, 3, []Blank{left, right}, []Assignment{board(1, []string{"B1", "B2"})},
			[]Misfit{{Kind: TooWide, Board: 1, Length: 1, By: 1}}},
		{"without a pattern", plain, 2, []Blank{at(0, 300, 100), at(0, 300, 100)}, []Assignment{board(7, []string{"B1", "B2"})},
			[]Misfit{{Kind: TooWide, Board: 7, Length: 1, By: 2}}},
		// 280, then at 320, 400, 480 and 560: 560 + 46 = 606. The widths alone are 280 + 4 x 48 = 472.
		{"strips where the pattern lets them begin", slatted, 2, named([]Blank{leftEdge(280, 2400)}, times(4, at(0, 46, 2400))),
			[]Assignment{board(1, []string{"B1", "B2", "B3", "B4", "B5"})}, []Misfit{{Kind: OffPattern, Board: 1, Length: 1, By: 6}}},
		// At 0, 80, 160 and 240, up to 286; with a kerf 288, and the last begins at 240.
		{"strips that reach into the right one", slatted, 2, named(times(4, at(0, 46, 2400)), []Blank{rightEdge(240, 2400)}),
			[]Assignment{board(1, []string{"B1", "B2", "B3", "B4", "B5"})}, []Misfit{{Kind: OffPattern, Board: 1, Length: 1, By: 48}}},
		// Turned, 46 lies 600 - 46 = 554 from the left, so it may begin at 34 too, and does: at 314, 394 and 474, up to 520. With a
		// kerf 522; the second left edge, turned to the right, begins at 600 - 80 = 520.
		{"strips between two left edges", turned, 2, named([]Blank{leftEdge(280, 2400)}, times(3, at(0, 46, 2400)), []Blank{leftEdge(80, 2400)}),
			[]Assignment{board(1, []string{"B1", "B2", "B3", "B4", "B5"})}, []Misfit{{Kind: OffPattern, Board: 1, Length: 1, By: 2}}},
		// 7 x 380 + 6 x 2 = 2672.
		{"seven headers", slatted, 2, times(7, header), []Assignment{board(1, []string{"B1"}, []string{"B2"}, []string{"B3"}, []string{"B4"}, []string{"B5"}, []string{"B6"}, []string{"B7"})},
			[]Misfit{{Kind: TooHigh, Board: 1, By: 272}}},
		// A length is as high as the highest in it: 1500 + 2 + 900 = 2402.
		{"a low one beside a high one", slatted, 2, []Blank{leftEdge(200, 1500), at(0, 100, 400), at(0, 100, 900)},
			[]Assignment{board(1, []string{"B1", "B2"}, []string{"B3"})}, []Misfit{{Kind: TooHigh, Board: 1, By: 2}}},
		{"the wrong order", slatted, 2, []Blank{left, right}, []Assignment{board(1, []string{"B2", "B1"})},
			[]Misfit{{Kind: WrongEdge, Board: 1, Length: 1, Blank: "B2"}, {Kind: WrongEdge, Board: 1, Length: 1, Blank: "B1"}}},
		{"the other order, turned", turned, 2, []Blank{left, right}, []Assignment{board(1, []string{"B2", "B1"})}, nil},
		{"an edge in the middle, turned", turned, 2, times(3, leftEdge(100, 2400)), []Assignment{board(1, []string{"B1", "B2", "B3"})},
			[]Misfit{{Kind: WrongEdge, Board: 1, Length: 1, Blank: "B2"}}},
		{"both edges and company", slatted, 2, []Blank{header, at(0, 100, 380)}, []Assignment{board(1, []string{"B1", "B2"})},
			[]Misfit{{Kind: WrongEdge, Board: 1, Length: 1, Blank: "B1"}, {Kind: TooWide, Board: 1, Length: 1, By: 102}}},
		{"an end in the middle", slatted, 2, times(3, ended(at(0, 600, 380))), []Assignment{board(1, []string{"B1"}, []string{"B2"}, []string{"B3"})},
			[]Misfit{{Kind: NoEnd, Board: 1, Length: 2, Blank: "B2"}}},
		{"empty lengths are none", slatted, 2, times(2, ended(at(0, 600, 380))), []Assignment{board(1, nil, []string{"B1"}, nil, []string{"B2"}, nil)}, nil},
		{"twice, and another not at all", slatted, 2, times(3, at(0, 100, 1000)), []Assignment{board(2, []string{"B1"}), board(1, []string{"B1", "B2"})},
			[]Misfit{{Kind: Twice, Board: 2, Length: 1, Blank: "B1"}, {Kind: Missing, Blank: "B3"}}},
		{"unknown", slatted, 2, times(1, at(0, 100, 1000)), []Assignment{board(1, []string{"B9", "B1"})},
			[]Misfit{{Kind: Unknown, Board: 1, Length: 1, Blank: "B9"}}},
		{"a board twice", slatted, 2, times(2, at(0, 100, 1000)), []Assignment{board(1, []string{"B1"}), board(1, []string{"B2"})},
			[]Misfit{{Kind: BoardTwice, Board: 1}}},
		{"nothing is assigned", slatted, 2, times(1, at(0, 100, 1000)), nil, []Misfit{{Kind: Missing, Blank: "B1"}}},
	} {
		got, err := Check(c.board, c.assigned, named(c.blanks), c.kerf)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

func TestACheckOfWhatNothingCanBeIsRefused(t *testing.T) {
	_, err := Check(Board{}, nil, nil, 2)
	var invalid *InvalidError
	if !errors.As(err, &invalid) {
		t.Errorf("%v", err)
	}
}

func TestAMisfitSaysWhereAndByHowMuch(t *testing.T) {
	for want, m := range map[string]Misfit{
		"too wide by 1.5 mm, board 2, length 1": {Kind: TooWide, Board: 2, Length: 1, By: 1.5},
		"E7: missing":                           {Kind: Missing, Blank: "E7"},
		"E7: wrong edge, board 3, length 2":     {Kind: WrongEdge, Board: 3, Length: 2, Blank: "E7"},
	} {
		if m.String() != want {
			t.Errorf("%q, want %q", m, want)
		}
	}
}
