package setout_test

import (
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
)

// Two panels of 600, 2300 high, on a wall of masonry 2400 high, a window in the first.
func TestCountsAddUpWhatThePlanComesTo(t *testing.T) {
	v := func(n float64) *float64 { return &n }
	whole := func(n int) *int { return &n }
	f := setOut(t, planOf(`"width": 1200, "height": 2400, "background": {"kind": "bare masonry"}, "ends": {"left": {"corner": "internal"}, "right": {"corner": "none"}},
			"openings": {"o": {"kind": "window", "x": 200, "width": 150, "sill": 800, "head": 1600}}`,
		`{"id": "E", "on": "w", "panel": "oak", "height": 2300, "fix": {"screws": {"per_end": 2, "length": 60, "colour": "black", "plug": {"length": 40}}},
			"pieces": [{"id": "E1"}, {"id": "E2", "fix": {"screws": {"per_end": 1, "colour": "brass", "plug": {}}}}],
			"cut_edges": {"top": {"by": "trim", "with": "bead, oak"}, "right": {"by": "trim", "with": "angle, black"}, "left": {"by": "trim", "with": "angle, black"}, "bottom": {"by": "trim"},
				"jambs": {"by": "return"}, "head": {"by": "finish", "with": "oil"}, "sill": {"by": "finish", "with": "oil"}}}],
		"order": {"screws": 100, "plugs": 50, "trim": "4 m"}, "sequence": [{"do": "cut"}`))
	want := facts.Counts{About: facts.About{ID: "counts", At: "/order"},
		// E1: 2 at the top and 2 at the bottom. E2: 1 and 1, of which the plan says neither the length nor the plug's.
		Screws: []facts.ScrewCount{{Colour: "brass", Count: 2}, {Length: v(60), Colour: "black", Count: 4}}, ScrewsInAll: 6, ScrewsOrdered: whole(100),
		Plugs: []facts.PlugCount{{Count: 2}, {Length: v(40), Count: 4}}, PlugsInAll: 6, PlugsOrdered: whole(50),
		// On the right 2300; the left edge is covered by the corner, the lower ones by the floor, those at the joint by each
		// other. On top 2 x 600 = 1200. 2300 + 1200 = 3500.
		Trims: []facts.TrimCount{{With: "angle, black", Length: 2300}, {With: "bead, oak", Length: 1200}}, TrimInAll: 3500, TrimOrdered: v(4000),
		// Two jambs of 1600 - 800 = 800; head and sill 2 x 150 = 300, 300 x 21 = 6300 mm2 = 0.0063 m2.
		ReturnLength: 1600, FinishLength: 300, FinishArea: 0.0063}
	if diff := cmp.Diff(want, f.Counts); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

func TestCountsOfAPlanThatSaysNothingOfThem(t *testing.T) {
	f := setOut(t, planOf(`"width": 1200, "height": 2400`, plainRun))
	want := facts.Counts{About: facts.About{ID: "counts", At: "/order"}, Screws: []facts.ScrewCount{}, Plugs: []facts.PlugCount{}, Trims: []facts.TrimCount{}}
	if diff := cmp.Diff(want, f.Counts); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

// A fitted cupboard in front of a piece hides its edges: 600 of 1200 on top.
func TestEdgesOutOfViewTakeNoTrim(t *testing.T) {
	f := setOut(t, planOf(`"width": 1200, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "height": 2300, "pieces": [{"id": "E1"}, {"id": "E2", "hidden_by": "cupboard"}], "cut_edges": {"top": {"by": "trim"}}}`))
	if got := f.Counts.TrimInAll; got != 600 {
		t.Errorf("%v of trim, want 600", got)
	}
}

// One panel of 600 in courses of 2400 and 400 on a wall of 2800: the joint between them is 600 long, the ceiling covers the
// edge on top and the floor the one at the bottom.
func TestATrimBetweenCoursesCountsOnce(t *testing.T) {
	for edges, want := range map[string]float64{
		`"top": {"by": "trim"}`:                               600,
		`"bottom": {"by": "trim"}`:                            600,
		`"top": {"by": "trim"}, "bottom": {"by": "trim"}`:     600,
		`"top": {"by": "finish"}, "bottom": {"by": "trim"}`:   600,
		`"top": {"by": "finish"}, "bottom": {"by": "scribe"}`: 0,
	} {
		f := setOut(t, planOf(`"width": 600, "height": 2800`, `{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 2400}, {}], "cut_edges": {`+edges+`}}`))
		if got := f.Counts; got.TrimInAll != want || got.FinishLength != 0 {
			t.Errorf("%s: %v of trim, %v finished; want %v, 0", edges, got.TrimInAll, got.FinishLength, want)
		}
	}
}

// Beads 50 from the edges of 600 x 2400: 2 x 500 + 2 x 2300 = 5600. At 6 mm: pi x 36 / 4 x 5600 / 1000 = 158.3 ml.
func TestCartridgesAreWholeOnesOfTheStatedSize(t *testing.T) {
	for glue, want := range map[string]int{
		`, "bead": 6, "cartridge": 290`: 1,
		`, "bead": 6, "cartridge": 158`: 2,
		`, "bead": 6, "cartridge": 159`: 1,
		`, "bead": 6`:                   -1,
		`, "cartridge": 290`:            -1,
	} {
		f := setOut(t, planOf(`"width": 600, "height": 2400`, fmt.Sprintf(`{"id": "E", "on": "w", "panel": "oak", "fix": {"adhesive": {"from_edge": 50, "around": "all four edges"%s}}}`, glue)))
		got := f.Counts
		if got.BeadLength != 5600 || (got.Cartridges == nil) != (want < 0) || want >= 0 && *got.Cartridges != want {
			t.Errorf("%s: %v of bead, cartridges %v; want 5600, %d", glue, got.BeadLength, got.Cartridges, want)
		}
	}
}
