package setout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
)

// told writes down what an edge meets, from where to where.
func told(e facts.Edge) string {
	return fmt.Sprintf("%s: %s, %v,%v to %v,%v, %s %s", e.ID, e.MadeBy, e.From.X, e.From.Y, e.To.X, e.To.Y, e.Meets, e.Cover)
}

func edgesOf(f *facts.Facts, piece string) []string {
	var out []string
	for _, e := range f.Edges {
		if e.Piece == piece {
			out = append(out, told(e))
		}
	}
	return out
}

func TestEdgesMeetWhatTheOutlineIsThere(t *testing.T) {
	const ends = `, "ends": {"left": {"corner": "internal"}, "right": {"corner": "external"}}`
	for _, c := range []struct {
		name, wall, run, piece string
		want                   []string
	}{
		// Base 10: 10 above the floor and 10 above the box, whose side the panel passes from 10 to 910 and beyond.
		{"beside a box at the left, with gaps", `"width": 600, "height": 2400, "outline": [{"x": 40, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 2400}, {"x": 0, "y": 2400}, {"x": 0, "y": 900}, {"x": 40, "y": 900}]` + ends,
			`, "base": 10, "clear_top": 5`, "E1", []string{
				"E1 lower edge: crosscut, 40,10 to 600,10, floor covered", // 2400 - 15 is less than a board
				"E1 right edge: tongue, 600,10 to 600,2395, open corner bare",
				"E1 upper edge: end, 600,2395 to 0,2395, ceiling covered",
				"E1 left edge: recess, 0,2395 to 0,910, corner covered",
				"E1 lower edge 2: notch, 0,910 to 40,910, floor covered",
				"E1 left edge 2: notch, 40,910 to 40,10, nib covered",
			}},
		// The left end leans out by 20 over 2000; the right one is upright.
		{"at an end that leans", `"width": 600, "height": 2000, "outline": [{"x": 20, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 2000}, {"x": 0, "y": 2000}]` + ends,
			``, "E1", []string{
				"E1 lower edge: crosscut, 20,0 to 600,0, floor covered",
				"E1 right edge: tongue, 600,0 to 600,2000, open corner bare",
				"E1 upper edge: end, 600,2000 to 0,2000, ceiling covered",
				"E1 left edge: rip, 0,2000 to 20,0, corner covered",
			}},
		// The ceiling goes up from 2200 to 2700 at 300; a board reaches 2400.
		{"under a step, as far as a board reaches", `"width": 600, "height": 2700, "outline": [{"x": 0, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 2700}, {"x": 300, "y": 2700}, {"x": 300, "y": 2200}, {"x": 0, "y": 2200}]`,
			``, "E1", []string{
				"E1 lower edge: end, 0,0 to 600,0, floor covered",
				"E1 right edge: tongue, 600,0 to 600,2400, wall end unsaid",
				"E1 upper edge: end, 600,2400 to 300,2400, air bare",
				"E1 left edge: notch, 300,2400 to 300,2200, nib covered",
				"E1 upper edge 2: notch, 300,2200 to 0,2200, ceiling covered",
				"E1 left edge 2: recess, 0,2200 to 0,0, wall end unsaid",
			}},
		// From 2500 at the left the ceiling falls by 500 over 600: at 120 it is as high as a board.
		{"a corner sawn off under a rake", `"width": 600, "height": 2500, "outline": [{"x": 0, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 2000}, {"x": 0, "y": 2500}]`,
			``, "E1", []string{
				"E1 lower edge: end, 0,0 to 600,0, floor covered",
				"E1 right edge: tongue, 600,0 to 600,2000, wall end unsaid",
				"E1 upper edge: crosscut, 600,2000 to 120,2400, ceiling covered",
				"E1 upper edge 2: end, 120,2400 to 0,2400, air bare",
				"E1 left edge: recess, 0,2400 to 0,0, wall end unsaid",
			}},
		// A ceiling steeper than 45 degrees is a long edge of what stands under it.
		{"under a steep slope", `"width": 600, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 1400}, {"x": 200, "y": 2400}, {"x": 0, "y": 2400}]`,
			``, "E1", []string{
				"E1 lower edge: end, 0,0 to 600,0, floor covered",
				"E1 right edge: tongue, 600,0 to 600,1400, wall end unsaid",
				"E1 right edge 2: rip, 600,1400 to 200,2400, nib covered",
				"E1 upper edge: end, 200,2400 to 0,2400, ceiling covered",
				"E1 left edge: recess, 0,2400 to 0,0, wall end unsaid",
			}},
		// What is narrower than the box takes of it is no piece; the next one stands beside it.
		{"a nib as high as the wall", `"width": 1200, "height": 2400, "outline": [{"x": 600, "y": 0}, {"x": 1200, "y": 0}, {"x": 1200, "y": 2400}, {"x": 0, "y": 2400}, {"x": 0, "y": 2390}, {"x": 600, "y": 2390}]`,
			``, "E2", []string{
				"E2 lower edge: end, 600,0 to 1200,0, floor covered",
				"E2 right edge: tongue, 1200,0 to 1200,2400, wall end unsaid",
				"E2 upper edge: end, 1200,2400 to 600,2400, ceiling covered",
				"E2 left edge: recess, 600,2400 to 600,2390, piece covered",
				"E2 left edge 2: recess, 600,2390 to 600,0, nib covered",
			}},
	} {
		f := setOut(t, planOf(c.wall, `{"id": "E", "on": "w", "panel": "oak"`+c.run+`}`))
		if diff := cmp.Diff(c.want, edgesOf(f, c.piece)); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// A leaf is a rectangle whatever the wall is.
func TestALeafHasNothingOfItsWallsOutline(t *testing.T) {
	const door = `, "openings": {"d": {"kind": "door", "x": 100, "width": 806, "head": 2000, "leaf": {"width": 800, "height": 1990, "thickness": 40}}}`
	const run = `{"id": "L", "on": "w/d/leaf", "panel": "oak", "height": 1500, "base": 100}`
	plain := setOut(t, planOf(`"width": 2000, "height": 2400`+door, run))
	raked := setOut(t, planOf(`"width": 2000, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 2000, "y": 0}, {"x": 2000, "y": 1200}, {"x": 1000, "y": 2400}, {"x": 0, "y": 2400}]`+door, run))
	if diff := cmp.Diff(plain.Edges, raked.Edges); diff != "" {
		t.Errorf("edges on a plain wall's leaf - on a raked wall's +\n%s", diff)
	}
	// Side gap 3, gap at the head 3: the foot at 7, so the panel from 107 to 1607.
	want := []string{"L1 lower edge: crosscut, 103,107 to 703,107, leaf edge bare", "L1 right edge: tongue, 703,107 to 703,1607, piece covered",
		"L1 upper edge: end, 703,1607 to 103,1607, air bare", "L1 left edge: recess, 103,1607 to 103,107, leaf edge bare"}
	if diff := cmp.Diff(want, edgesOf(raked, "L1")); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

// A gap is kept from the floor and the ceiling wherever they lie, a thin ledge included.
func TestGapsAreKeptFromEveryFloorAndCeilingOfTheOutline(t *testing.T) {
	// A shelf of 30 at 1000 sticks out of the left end by 100: 120 above it and 60 below it stay free.
	f := setOut(t, planOf(`"width": 600, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 2400}, {"x": 0, "y": 2400}, {"x": 0, "y": 1030},
		{"x": 100, "y": 1030}, {"x": 100, "y": 1000}, {"x": 0, "y": 1000}]`, `{"id": "E", "on": "w", "panel": "oak", "base": 120, "clear_top": 60}`))
	if len(f.Pieces) != 1 {
		t.Fatalf("pieces %q", idsOf(f.Pieces))
	}
	want := []facts.Point{{X: 0, Y: 120}, {X: 600, Y: 120}, {X: 600, Y: 2340}, {X: 0, Y: 2340}, {X: 0, Y: 1150}, {X: 100, Y: 1150}, {X: 100, Y: 940}, {X: 0, Y: 940}}
	if diff := cmp.Diff(want, f.Pieces[0].Outline); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

// A wall that a beam all but divides: what stands on either side of it belongs to the run.
func TestAFieldInTwoPartsIsCoveredInBoth(t *testing.T) {
	// Between 600 and 1200 the wall is 200 high: a base of 120 and a clear top of 100 leave nothing there.
	f := setOut(t, planOf(`"width": 1800, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 1800, "y": 0}, {"x": 1800, "y": 2400}, {"x": 1200, "y": 2400}, {"x": 1200, "y": 200},
		{"x": 600, "y": 200}, {"x": 600, "y": 2400}, {"x": 0, "y": 2400}]`, `{"id": "E", "on": "w", "panel": "oak", "base": 120, "clear_top": 100}`))
	if want := []string{"E1", "E3"}; !slices.Equal(idsOf(f.Pieces), want) {
		t.Errorf("pieces %q, want %q", idsOf(f.Pieces), want)
	}
}

func TestPartsOfAPanelThatTheOutlineDividesAreCalledAfterWhereTheyLie(t *testing.T) {
	for name, c := range map[string]struct {
		outline string
		want    []string
	}{
		// A beam of 200 through the panel's middle, from one side to past the other.
		"one above the other": {`{"x": 0, "y": 0}, {"x": 1200, "y": 0}, {"x": 1200, "y": 2400}, {"x": 0, "y": 2400}, {"x": 0, "y": 1300}, {"x": 700, "y": 1300}, {"x": 700, "y": 1100}, {"x": 0, "y": 1100}`,
			[]string{"E1 above", "E1 below", "E2"}},
		// A post that stands up from the floor as high as a board reaches.
		"side by side": {`{"x": 0, "y": 0}, {"x": 200, "y": 0}, {"x": 200, "y": 2450}, {"x": 300, "y": 2450}, {"x": 300, "y": 0}, {"x": 1200, "y": 0}, {"x": 1200, "y": 2500}, {"x": 0, "y": 2500}`,
			[]string{"E1 left", "E1 right", "E2"}},
	} {
		height := 2400
		if strings.Contains(c.outline, "2500") {
			height = 2500
		}
		f := setOut(t, planOf(fmt.Sprintf(`"width": 1200, "height": %d, "outline": [%s]`, height, c.outline), plainRun))
		got := idsOf(f.Pieces)
		slices.Sort(got)
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}

// 23.622 in is 599.9988 mm: a step that all but falls on a joint leaves neither sliver nor notch.
func TestAStepThatAllButMeetsAJointLeavesNoSliver(t *testing.T) {
	for _, off := range []float64{-0.004, -0.0012, 0, 0.0012, 0.004} {
		f := setOut(t, planOf(fmt.Sprintf(`"width": 1200, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 1200, "y": 0}, {"x": 1200, "y": 2400}, {"x": %[1]v, "y": 2400}, {"x": %[1]v, "y": 2100}, {"x": 0, "y": 2100}]`, 600+off), plainRun))
		for _, p := range f.Pieces {
			if len(p.Outline) != 4 || p.Notched {
				t.Errorf("off by %v: %s has the corners %v", off, p.ID, p.Outline)
			}
		}
		if len(f.Pieces) != 2 || len(f.Rips) != 0 {
			t.Errorf("off by %v: pieces %q, cuts %q", off, idsOf(f.Pieces), idsOf(f.Rips))
		}
	}
}

func TestARakedPieceIsNoNotchedOne(t *testing.T) {
	// Falls from 2400 to 2000 between 200 and 600: five corners, none of them inwards.
	f := setOut(t, planOf(`"width": 600, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 600, "y": 0}, {"x": 600, "y": 2000}, {"x": 200, "y": 2400}, {"x": 0, "y": 2400}]`, plainRun))
	// The slope is as steep as it is flat, which counts as an end: the piece is 600 wide up to its foot at 2000.
	if p := f.Pieces[0]; p.Notched || len(p.Outline) != 5 || p.Narrowest.Width != 600 || p.Narrowest.Y != 0 {
		t.Errorf("notched %t, %d corners, %v wide at %v", p.Notched, len(p.Outline), p.Narrowest.Width, p.Narrowest.Y)
	}
}
