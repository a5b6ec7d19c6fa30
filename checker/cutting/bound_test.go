package cutting

import (
	"context"
	"fmt"
	"testing"
)

// widths gives a blank of each whole width, half as high as a board.
func widths(from, to int) []Blank {
	var out []Blank
	for w := from; w <= to; w++ {
		out = append(out, at(0, float64(w), 1199))
	}
	return out
}

// Without a search, what is proven comes from the bounds alone.
func TestBoundsByHand(t *testing.T) {
	half := Offcut{ID: "half", Right: 299, Height: 2400, LeftEdge: true, BottomEnd: true, TopEnd: true}
	low := Offcut{ID: "low", Right: 600, Height: 1199}
	for _, c := range []struct {
		name    string
		board   Board
		kerf    float64
		blanks  []Blank
		offcuts []Offcut
		want    int
	}{
		{"nothing", slatted, 2, nil, nil, 0},
		// Nine of 200 x 800 make 9 x 160,000 = 1,440,000 mm2, which is a board's 600 x 2400.
		{"area of a board", plain, 0, times(9, at(0, 200, 800)), nil, 1},
		{"area of a board and a little", plain, 0, times(10, at(0, 200, 800)), nil, 2},
		// Higher than half a board, so in one length: with kerfs 4 x 160 = 640 of 602; the areas, 4 x 160 x 1212 = 775,680, would do with one.
		{"widths of tall ones", plain, 2, times(4, at(0, 158, 1210)), nil, 2},
		// Three in a length, as 4 x 162 = 648 of 602, and two lengths: a seventh needs a second board. The widths, 7 x 162 = 1134 of
		// 2 x 602 = 1204, would do with one.
		{"numbers of wide ones", plain, 2, times(7, at(0, 160, 1199)), nil, 2},
		// Wider than half a board, so one above the other: 1500 + 1450 + 1000 and two kerfs are 3954; with two boards 4 x 2402 = 4804.
		// But no two go together: 1500 + 1000 + 2 = 2502, 1450 + 1000 + 2 = 2452.
		{"heights that exclude each other", plain, 2, []Blank{at(0, 600, 1500), at(0, 600, 1450), at(0, 600, 1000)}, nil, 3},
		// Beside 320 there is no room for 290: 320 + 2 + 290 = 612; so four boards, and two of 290 are a fifth.
		{"wide ones that nothing lies beside", plain, 2, named(times(4, at(0, 320, 2400)), times(2, at(0, 290, 2400))), nil, 5},
		{"left edges", slatted, 2, times(3, leftEdge(100, 2400)), nil, 3},
		{"right edges", slatted, 2, times(3, rightEdge(500, 2400)), nil, 3},
		{"left edges, turned", turned, 2, times(5, leftEdge(100, 2400)), nil, 3},
		// Two lengths of 1199 each: two edges a board.
		{"left edges of low ones", slatted, 2, times(5, leftEdge(100, 1199)), nil, 3},
		// Two lengths of each board have a factory end.
		{"ends", slatted, 2, times(5, ended(at(0, 600, 380))), nil, 3},
		// 39 + 2 takes two pitches of 40; eight begin from 0 to 560.
		{"pitches", slatted, 2, times(9, at(0, 39, 2400)), nil, 2},
		// From 0 over 300 + 2 to where the other may begin, 315 (35 and 7 pitches); 315 + 290 = 605 is over. The other way round the
		// second begins at 360 (35 + 290 + 2 = 327) and ends at 660.
		{"two places on the pattern", slatted, 2, []Blank{at(0, 300, 2400), at(35, 325, 2400)}, nil, 2},
		// 46 lengths of 50 in a board and 50 columns of 10: areas alone are looked at.
		{"small ones", plain, 2, times(40, at(0, 10, 50)), nil, 1},
		// 301 to 320 wide, so none beside another (301 + 2 + 302 = 605), and two lengths of 1199.
		{"many widths, none beside another", plain, 2, widths(301, 320), nil, 10},
		{"an offcut takes one", slatted, 2, times(3, leftEdge(299, 2400)), []Offcut{half}, 2},
		{"an offcut takes none", slatted, 2, times(3, leftEdge(300, 2400)), []Offcut{half}, 3},
		{"an offcut without the edge", slatted, 2, times(3, rightEdge(301, 2400)), []Offcut{half}, 3},
		// Two lengths from each board and one from the offcut.
		{"a low offcut", plain, 2, times(5, at(0, 600, 1199)), []Offcut{low}, 2},
		{"a low offcut without ends", plain, 2, times(5, ended(at(0, 600, 1199))), []Offcut{low}, 3},
	} {
		s := Usual(c.kerf)
		s.Nodes = 0
		l, err := Plan(context.Background(), c.board, named(c.blanks), c.offcuts, s)
		if err != nil || l.Least != c.want {
			t.Errorf("%s: at least %d, want %d, %v", c.name, l.Least, c.want, err)
		}
	}
}

func TestWhatDoesNotSuitIsPassedOver(t *testing.T) {
	var narrow []Offcut
	for i := range 40 {
		narrow = append(narrow, Offcut{ID: fmt.Sprint(i), Right: 100, Height: 2400})
	}
	for _, c := range []struct {
		name    string
		blanks  []Blank
		offcuts []Offcut
		want    int
	}{
		// 1000 + 2 + 1000, past forty offcuts that are high enough and too narrow.
		{"offcuts", times(2, at(0, 600, 1000)), narrow, 1},
		// Beside 302, from 304 to 600, 296 are left for 295, which may begin at 310 and would end at 605; and two of
		// either kind are too wide. Forty boards with a gap that is wide enough, and forty more.
		{"gaps", named(times(40, at(0, 302, 2400)), times(40, at(30, 325, 2390))), nil, 80},
		// The last, 250 wide, ends at 310 + 250 = 560 in the first of the gaps.
		{"gaps, and one that suits", named(times(40, at(0, 302, 2400)), times(40, at(30, 325, 2390)), times(1, at(30, 280, 2380))), nil, 80},
	} {
		blanks := named(c.blanks)
		l, err := Plan(context.Background(), slatted, blanks, c.offcuts, Usual(2))
		if err != nil || l.Boards != c.want {
			t.Errorf("%s: %d boards, want %d, %v", c.name, l.Boards, c.want, err)
		}
		for _, line := range append(wrong(slatted, blanks, c.offcuts, 2, l), sawnAsListed(l)...) {
			t.Errorf("%s: %s", c.name, line)
		}
	}
}

func TestALargeJobStaysNearItsBound(t *testing.T) {
	// Of 6,000: 1,000 whole boards, and 1,000 headers of 380, six to a board of 6 x 380 + 5 x 2 = 2290: at least 167 boards.
	blanks := mixed(6_000)
	l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
	if err != nil {
		t.Fatal(err)
	}
	if l.Least < 1_167 || l.Boards < l.Least || float64(l.Boards) > 1.1*float64(l.Least) {
		t.Errorf("%d boards, at least %d", l.Boards, l.Least)
	}
	for _, line := range append(wrong(slatted, blanks, nil, 2, l), sawnAsListed(l)...) {
		t.Error(line)
	}
}

// Sixteen kinds side by side are more than are looked through: they are laid out as they come, and nothing is claimed of them.
func TestManyKindsInALengthAreLaidOutAsTheyCome(t *testing.T) {
	var blanks []Blank
	for i := range 45 { // heights all differ
		b := at(float64(7*i%40), float64(7*i%40)+30, 2400-float64(i))
		b.ID = fmt.Sprint(i)
		blanks = append(blanks, b)
	}
	l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
	// 15 x 40 = 600: at most 18 of 32 fit a length, (600 + 2) / 32, so three boards at least.
	if err != nil || l.Least < 3 || l.Boards > 6 {
		t.Errorf("%d boards, at least %d, %v", l.Boards, l.Least, err)
	}
	for _, line := range append(wrong(slatted, blanks, nil, 2, l), sawnAsListed(l)...) {
		t.Error(line)
	}
}
