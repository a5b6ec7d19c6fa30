package setout_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Two panels on masonry 1200 wide; the screws of E1 at 40 and 560, of E2 at 640 and 1160, 50 from the ends at 50 and 2350.
func TestPlugsAreMeasuredAgainstEachOtherAndTheMasonrysEdges(t *testing.T) {
	v := func(n float64) *float64 { return &n }
	for _, c := range []struct {
		name, left, right, more, run string
		edges                        [2]*float64
		apart                        float64
	}{
		{"an external corner on the left: 40, and 640", "external", "none", "", "", [2]*float64{v(40), v(640)}, 80},
		{"one on the right: 1200 - 560 = 640, and 1200 - 1160 = 40", "internal", "external", "", "", [2]*float64{v(640), v(40)}, 80},
		{"no edge that the plan tells of", "internal", "none", "", "", [2]*float64{}, 80},
		// E1's 560 is 40 from the jamb at 600. The leg of E2 from 1000 on has 1040 and 1160: 40 from the other jamb.
		{"a door", "internal", "internal", `, "openings": {"d": {"kind": "door", "x": 600, "width": 400, "head": 2000}}`, "", [2]*float64{v(40), v(40)}, 80},
		{"a pillar, which stands in front", "internal", "internal", `, "openings": {"d": {"kind": "pillar", "x": 600, "width": 400, "head": 2000}}`, "", [2]*float64{}, 80},
		// From 40, 2350 and from 560, 2350 to a sill from 100 to 500 at 2370: 60 across and 20 up, 63.2456; from 640: 140 and 20, 141.4214.
		{"a window above", "internal", "internal", `, "openings": {"o": {"kind": "window", "x": 100, "width": 400, "sill": 2370, "head": 2400}}`, "", [2]*float64{v(63.25), v(141.42)}, 80},
		// The panel over the door hangs down to 2000 - 100 = 1900, its lower row at 1900 + 50 = 1950 in the opening.
		{"a row below the head", "internal", "internal", `, "openings": {"d": {"kind": "door", "x": 600, "width": 600, "head": 2000}}`, `, "head_drop": 100`, [2]*float64{v(40), v(0)}, 80},
		// 30 between the panels: 670 - 560 = 110.
		{"panels apart", "internal", "none", "", `, "joint": 30`, [2]*float64{}, 110},
	} {
		f := setOut(t, planOf(`"width": 1230, "height": 2400, "background": {"kind": "bare masonry"}, "ends": {"left": {"corner": "`+c.left+`"}, "right": {"corner": "`+c.right+`"}}`+c.more,
			`{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1"}, {"id": "E2"}]`+c.run+`, "fix": {"screws": {"per_end": 2, "length": 60, "plug": {}}}}`))
		for i, want := range c.edges {
			got := f.Fixings[i].Screws
			if want != nil && c.right == "external" {
				want = v(*want + 30) // the wall goes on for 30 behind the panels
			}
			if diff := cmp.Diff(want, got.PlugEdge); diff != "" {
				t.Errorf("%s, %s: edge want - got +\n%s", c.name, f.Fixings[i].ID, diff)
			}
			if *got.PlugApart != c.apart {
				t.Errorf("%s, %s: %v apart, want %v", c.name, f.Fixings[i].ID, *got.PlugApart, c.apart)
			}
		}
	}
}

// A plug that the plan states and the wall does not take is none; where the wall is unsaid there is one, and no edge.
func TestPlugsAreThereWhereTheWallMayTakeThem(t *testing.T) {
	for _, c := range []struct {
		background, plug string
		plugs            int
		edge             bool
	}{
		{`, "background": {"kind": "bare masonry"}`, `, "plug": {}`, 4, true},
		{`, "background": {"kind": "bare masonry"}`, ``, 0, false},
		{`, "background": {"kind": "solid timber"}`, `, "plug": {}`, 0, false},
		{`, "background": {"kind": "plasterboard on studs"}`, `, "plug": {}`, 0, false},
		{``, `, "plug": {}`, 4, false},
	} {
		f := setOut(t, planOf(`"width": 600, "height": 2400, "ends": {"left": {"corner": "external"}}`+c.background,
			`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 2`+c.plug+`}}}`))
		got := f.Fixings[0].Screws
		if f.Counts.PlugsInAll != c.plugs || (got.PlugEdge != nil) != c.edge || (got.PlugApart != nil) != (c.plugs > 0) {
			t.Errorf("%s%s: %d plugs, %v from the edge, %v apart; want %d, an edge %t", c.background, c.plug, f.Counts.PlugsInAll, got.PlugEdge, got.PlugApart, c.plugs, c.edge)
		}
	}
}

// Against every plug measured with every other.
func TestPlugsApartOnRandomPlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		text := strings.NewReplacer(`"plasterboard on studs"`, `"bare masonry"`, `"length":45`, `"length":45,"plug":{}`).Replace(s.text(t, "mm", 1))
		f := setOut(t, text)
		for _, fix := range f.Fixings {
			if fix.Screws == nil {
				continue
			}
			least := math.Inf(1)
			for i, a := range f.Screws {
				for j, b := range f.Screws {
					if i != j && a.Piece == fix.Piece {
						least = min(least, math.Hypot(a.X-b.X, a.Y-b.Y))
					}
				}
			}
			got := fix.Screws.PlugApart
			if (got == nil) != math.IsInf(least, 1) || got != nil && math.Abs(*got-least) > 0.03 {
				t.Fatalf("%s: %v, want %v", fix.ID, got, least)
			}
		}
	})
}
