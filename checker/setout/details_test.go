package setout_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
)

// A piece of a stated width keeps the edge that its neighbour needs, unless the plan says which one goes.
func TestAPieceOfAStatedWidthIsSawnWhereTheSchemaSays(t *testing.T) {
	for _, c := range []struct {
		name, run, piece string
		rips             []string
		left, right      float64
		excess           float64
	}{
		{"the first one at the wall's end", `"from": "left", "pieces": [{"id": "A", "width": 400}, {"id": "B"}]`, "A", []string{"A left rip"}, 0, 400, 0},
		{"the same from the right", `"from": "right", "pieces": [{"id": "A", "width": 400}, {"id": "B"}]`, "A", []string{"A right rip"}, 1300, 1700, 0},
		{"the first one with the other edge named", `"pieces": [{"id": "A", "width": 400, "cut": "right"}]`, "A", []string{"A right rip"}, 0, 400, 0},
		{"the first one away from the wall's end", `"start": 100, "pieces": [{"id": "A", "width": 400}]`, "A", []string{"A right rip"}, 100, 500, 0},
		{"one in the middle", `"pieces": [{"id": "A"}, {"id": "B", "width": 400}, {"id": "C"}]`, "B", []string{"B right rip"}, 600, 1000, 0},
		{"one in the middle with the edge at the start named", `"pieces": [{"id": "A"}, {"id": "B", "width": 400, "cut": "left"}, {"id": "C"}]`, "B", []string{"B left rip"}, 600, 1000, 0},
		{"one in the middle from the right", `"from": "right", "pieces": [{"id": "A"}, {"id": "B", "width": 400}, {"id": "C"}]`, "B", []string{"B left rip"}, 700, 1100, 0},
		// 1700 - 2 x 600 = 500 are free, 520 are stated: 20 too many, and the wall's end takes them off.
		{"the last one, wider than what is free", `"pieces": [{"id": "A"}, {"id": "B"}, {"id": "C", "width": 520}]`, "C", []string{"C right rip"}, 1200, 1700, 20},
		// 3 behind A and 5 behind B: C from 600 + 3 + 600 + 5 = 1208; 1700 - 1208 = 492 free, 500 stated.
		{"behind gaps", `"joint": 3, "pieces": [{"id": "A"}, {"id": "B"}, {"id": "C", "width": 500, "gap": 5}]`, "C", []string{"C right rip"}, 1208, 1700, 8},
	} {
		f := setOut(t, planOf(`"width": 1700, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", `+c.run+`}`))
		p := find(t, f.Pieces, c.piece)
		if p.Left != c.left || p.Right != c.right || !p.Ripped || *p.Excess != c.excess {
			t.Errorf("%s: %v to %v, ripped %t, %v too wide; want %v to %v, ripped, %v", c.name, p.Left, p.Right, p.Ripped, *p.Excess, c.left, c.right, c.excess)
		}
		var rips []string
		for _, r := range f.Rips {
			if r.Piece == c.piece {
				rips = append(rips, r.ID)
			}
		}
		if diff := cmp.Diff(c.rips, rips); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

func TestTheLowerEdgeMeetsWhatIsThere(t *testing.T) {
	for _, c := range []struct {
		wall, run, meets string
		bottom           float64
	}{
		{"", "", "floor", 0},
		{"", `, "base": 50`, "floor", 50},
		{"", `, "base": 50.1`, "air", 50.1},
		{`, "skirting": {"height": 120}`, "", "skirting", 120},
		{`, "skirting": {"height": 120}`, `, "base": 3`, "skirting", 123},
	} {
		f := setOut(t, planOf(`"width": 600, "height": 2400`+c.wall, `{"id": "E", "on": "w", "panel": "oak", "height": 2000`+c.run+`}`))
		e := find(t, f.Edges, "E1 lower edge")
		if e.Meets != c.meets || e.Low != c.bottom {
			t.Errorf("wall%s, run%s: at %v it meets %q; want %v, %q", c.wall, c.run, e.Low, e.Meets, c.bottom, c.meets)
		}
	}
}

// Past the backing of 9; a leaf of 40.
func TestScrewsReachWhatIsBehindThem(t *testing.T) {
	door := `, "openings": {"d": {"kind": "door", "x": 600, "width": 606, "head": 2000, "leaf": {"width": 600, "height": 1990, "thickness": 40}}}`
	v := func(n float64) *float64 { return &n }
	for _, c := range []struct {
		name, wall, on, length string
		want                   facts.Into
	}{
		{"a leaf, 30 - 9 deep, 40 - 21 left", door, "w/d/leaf", `, "length": 30`, facts.Into{What: "leaf", Count: 2, Depth: v(21), Spare: v(19)}},
		{"a leaf that they come through, 55 - 9 = 46 deep", door, "w/d/leaf", `, "length": 55`, facts.Into{What: "leaf", Count: 2, Depth: v(46), Spare: v(-6)}},
		{"a leaf, the length unsaid", door, "w/d/leaf", ``, facts.Into{What: "leaf", Count: 2}},
		{"solid timber", `, "background": {"kind": "solid timber"}`, "w", `, "length": 30`, facts.Into{What: "wood", Count: 2, Depth: v(21)}},
		{"bare masonry, where plaster does not count", `, "background": {"kind": "bare masonry", "plaster": 10}`, "w", `, "length": 50`, facts.Into{What: "masonry", Count: 2, Depth: v(41)}},
		{"masonry behind the usual plaster of 13", `, "background": {"kind": "plaster on masonry"}`, "w", `, "length": 50`, facts.Into{What: "masonry", Count: 2, Depth: v(28)}},
		{"masonry that they do not reach", `, "background": {"kind": "plaster on masonry"}`, "w", `, "length": 20`, facts.Into{What: "masonry", Count: 2, Depth: v(0)}},
		{"studs that the plan does not place", `, "background": {"kind": "plasterboard on studs", "stud_centres": 600}`, "w", `, "length": 50`, facts.Into{What: "studs unsaid", Count: 2}},
		// The screw goes to 280 (the middle of 600 is in a slat): 19 off is still the stud, 20 is not.
		{"a stud's edge", `, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 261}`, "w", `, "length": 50`, facts.Into{What: "wood", Count: 2, Depth: v(28.5)}},
		{"just beside a stud", `, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 260}`, "w", `, "length": 50`, facts.Into{What: "space", Count: 2}},
		{"battens, where nothing lies in front", `, "background": {"kind": "battens on masonry", "stud_centres": 400, "first_stud": -120}`, "w", `, "length": 30`, facts.Into{What: "wood", Count: 2, Depth: v(21)}},
		{"an unsaid background", "", "w", `, "length": 50`, facts.Into{What: "unsaid", Count: 2}},
	} {
		// 561 wide: the middle, 280.5, is nearest to the space at 280.
		f := setOut(t, planOf(`"width": 1800, "height": 2400`+c.wall, `{"id": "E", "on": "`+c.on+`", "panel": "oak", "pieces": [{"id": "E1", "width": 561, "cut": "right"}], "fix": {"screws": {"per_end": 1`+c.length+`}}}`))
		if diff := cmp.Diff([]facts.Into{c.want}, f.Fixings[0].Screws.Into); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// The leg from 600 to 660 has one space, at 640, for both of its screws; the other leg and the top have two each.
func TestTheRowAtTheBottomIsThatOfThePoorestLeg(t *testing.T) {
	f := setOut(t, planOf(`"width": 1200, "height": 2400, "openings": {"d": {"kind": "door", "x": 660, "width": 200, "head": 2000}}`,
		`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 2}}}`))
	got := f.Fixings[1].Screws
	if got.PerTop != 2 || got.PerBottom != 1 || got.Count != 5 {
		t.Errorf("%d at the top, %d at the bottom, %d in all; want 2, 1, 5", got.PerTop, got.PerBottom, got.Count)
	}
}

// What holds the strip between a joint at 600 and a jamb behind it.
func TestAJambCountsWhatHoldsTheStripBesideIt(t *testing.T) {
	for _, c := range []struct {
		name string
		jamb int
		fix  string
		want int
	}{
		{"nothing", 750, `"adhesive": {"around": "none"}`, 0},
		// Beads at 600 + 50 and 750 - 50, one at 675 between them.
		{"beads round a leg of 150 and up its middle", 750, `"adhesive": {"from_edge": 50, "around": "all four edges", "centre_line": true}`, 3},
		{"and a zigzag", 750, `"adhesive": {"from_edge": 50, "zigzag": 300, "around": "all four edges", "centre_line": true}`, 4},
		// 90 is too narrow for two beads 50 from its edges: one at 645.
		{"one bead up a leg of 90", 690, `"adhesive": {"from_edge": 50, "around": "all four edges"}`, 1},
		// At the foot wanted at 600 + 150/4 = 637.5 and 712.5, so at 640 and 720; at the top at 640 and far from here.
		{"screws of a leg", 750, `"screws": {"per_end": 2}`, 3},
	} {
		f := setOut(t, planOf(fmt.Sprintf(`"width": 1800, "height": 2400, "openings": {"d": {"kind": "door", "x": %d, "width": 700, "head": 2000}}`, c.jamb),
			`{"id": "E", "on": "w", "panel": "oak", "fix": {`+c.fix+`}}`))
		j := find(t, f.Jambs, "w/d left jamb, run E")
		if j.HeldBy != c.want || j.Joint != "E1 | E2" || !j.FixingStated {
			t.Errorf("%s: held by %d at %s, want %d", c.name, j.HeldBy, j.Joint, c.want)
		}
	}
}

func TestBeadsOfAStripTooLowForTwo(t *testing.T) {
	// The panel over the door is 80 high, 50 from both edges leave nothing: one bead of 600 - 2 x 50 along it.
	f := setOut(t, planOf(`"width": 600, "height": 2080, "openings": {"d": {"kind": "door", "x": 0, "width": 600, "head": 2000}}`,
		`{"id": "E", "on": "w", "panel": "oak", "fix": {"adhesive": {"from_edge": 50, "around": "all four edges"}}}`))
	if got := f.Fixings[0].Bead.Length; got != 500 {
		t.Errorf("%v of bead, want 500", got)
	}
}

func TestCartridgesOfTwoSizesAreNotAddedUp(t *testing.T) {
	run := `{"id": "E", "on": "w", "panel": "oak", "height": 1000, "fix": {"adhesive": {"around": "all four edges", "cartridge": 290}}},
		{"id": "F", "on": "w", "panel": "oak", "base": 1000, "fix": {"adhesive": {"around": "all four edges", "cartridge": %d}}}], "order": {"cartridges": 4}, "sequence": [{"do": "cut"}`
	for other, want := range map[int]*float64{290: func() *float64 { v := 4 * 290.0; return &v }(), 310: nil} {
		got := setOut(t, planOf(`"width": 600, "height": 2000`, fmt.Sprintf(run, other))).Adhesive.Ordered
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("290 and %d: want - got +\n%s", other, diff)
		}
	}
}

func TestTheSequenceSaysWhetherCablesAreTracedBeforeHolesAreMade(t *testing.T) {
	for _, c := range []struct {
		steps         string
		screws        bool
		traced, holes bool
	}{
		{"trace cables, drill", false, true, true},
		{"drill, trace cables", false, false, true},
		{"screw, trace cables, drill", false, false, true},
		{"trace cables, screw, trace cables", false, true, true},
		{"trace cables, glue", false, true, false},
		{"glue", true, false, true},
	} {
		fix := ""
		if c.screws {
			fix = `, "fix": {"screws": {"per_end": 1}}`
		}
		steps := `{"do": "` + strings.ReplaceAll(c.steps, ", ", `"}, {"do": "`) + `"}`
		got := setOut(t, planOf(`"width": 600, "height": 2000`, `{"id": "E", "on": "w", "panel": "oak"`+fix+`}], "sequence": [`+steps)).Sequence
		if got.Traced != c.traced || got.Holes != c.holes || !got.Stated {
			t.Errorf("%s: traced %t, holes %t; want %t, %t", c.steps, got.Traced, got.Holes, c.traced, c.holes)
		}
	}
}
