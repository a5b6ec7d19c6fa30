package setout_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

// BS 7671 522.6.202: the reverse counts where the wall is 100 mm thick or less.
func TestAccessoriesOnTheReverseOfAThinWallMakeZones(t *testing.T) {
	const reverse = `, "reverse": [{"id": "R1", "kind": "socket", "x": 1730, "y": 300, "width": 60, "height": 80}]`
	yes, no := true, false
	onReverse := []string{"w above and below R1 on the reverse", "w level with R1 on the reverse"}
	for _, c := range []struct {
		wall   string
		thin   *bool
		stated bool
		zones  []string
	}{
		{`, "thickness": 100` + reverse, &yes, true, onReverse},
		{`, "thickness": 75` + reverse, &yes, true, onReverse},
		{`, "thickness": 100.1` + reverse, &no, true, nil},
		{`, "thickness": "4 in"` + reverse, &no, true, nil}, // 101.6 mm
		{reverse, nil, true, nil},
		{`, "thickness": 100`, &yes, false, nil},
		{`, "thickness": 100, "reverse": []`, &yes, true, nil},
		{``, nil, false, nil},
	} {
		f := setOut(t, planOf(`"width": 2000, "height": 2400, "ends": {"left": {"corner": "none"}, "right": {"corner": "none"}}, "services": [{"id": "S1", "kind": "switch", "x": 620, "y": 1100, "width": 86, "height": 90}]`+c.wall, plainRun))
		w := f.Walls[0]
		if diff := cmp.Diff(c.thin, w.Thin); diff != "" || w.ReverseStated != c.stated || (w.Thickness == nil) != (c.thin == nil) {
			t.Errorf("wall%s: the reverse stated %t, want %t; thin: want - got +\n%s", c.wall, w.ReverseStated, c.stated, diff)
		}
		if diff := cmp.Diff(append([]string{"w below the ceiling", "w above and below S1", "w level with S1"}, c.zones...), idsOf(f.Zones)); diff != "" {
			t.Errorf("wall%s: want - got +\n%s", c.wall, diff)
		}
	}
}

// Panels from 0, 600, 1200 and 1800, the last cut to 200. E3's screws are at 1240 and 1760, the others' not from 1730 to 1790.
// Past the backing they go 45 - 9 = 36 into the wall. The row at 2350 is 50 below the ceiling; the strip there is 150 wide.
func TestAZoneNamesTheScrewsInIt(t *testing.T) {
	in := 36.0
	f := setOut(t, planOf(`"width": 2000, "height": 2400, "thickness": 100, "ends": {"left": {"corner": "none"}, "right": {"corner": "none"}}, "reverse": [{"id": "R1", "kind": "socket", "x": 1730, "y": 300, "width": 60, "height": 80}]`,
		`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 2, "length": 45}}}`))
	want := facts.Zone{About: facts.About{ID: "w above and below R1 on the reverse", At: "/walls/w/reverse/0", On: "w"}, Why: "socket R1 on the reverse",
		Left: 1730, Right: 1790, Bottom: 0, Top: 2400, Screws: 2, Pieces: []string{"E3"}, Deepest: &in, DepthSaid: true,
		Places: []facts.ZoneScrew{{Piece: "E3", X: 1760, Y: 50, InWall: &in}, {Piece: "E3", X: 1760, Y: 2350, InWall: &in}}}
	if diff := cmp.Diff(want, find(t, f.Zones, want.ID)); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
	level := find(t, f.Zones, "w level with R1 on the reverse")
	if level.Left != 0 || level.Right != 2000 || level.Bottom != 300 || level.Top != 380 || level.Screws != 0 || level.Places == nil {
		t.Errorf("%+v", level)
	}
	// Two screws of each of the four panels, the last one's at 1840 and 1960.
	top := find(t, f.Zones, "w below the ceiling")
	if top.Bottom != 2250 || top.Screws != 8 || len(top.Places) != 8 || top.Places[7].X != 1960 {
		t.Errorf("%+v", top)
	}
}

// The strips are 150 wide, the wall is 100 x 120.
func TestZonesAreClippedToTheWall(t *testing.T) {
	f := setOut(t, planOf(`"width": 100, "height": 120`, plainRun))
	if len(f.Zones) != 3 {
		t.Fatalf("%d zones, want 3", len(f.Zones))
	}
	for _, z := range f.Zones {
		if z.Left != 0 || z.Right != 100 || z.Bottom != 0 || z.Top != 120 {
			t.Errorf("%s: %v to %v, %v to %v", z.ID, z.Left, z.Right, z.Bottom, z.Top)
		}
	}
}

// The panel is its own mirror image: 6 + 14 x 40 + 28 + 6 = 600.
func TestAMirroredWallHasMirroredZones(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := tenths(t, "wall", 700, 6000) + 0.03 // so that no screw is wanted half-way between two spaces
		corners := rapid.SampledFrom([]string{"internal", "external", "none"})
		left, right := corners.Draw(t, "left"), corners.Draw(t, "right")
		thick := tenths(t, "thickness", 90, 110)
		var here, there [2][]string
		for face := range here {
			for i := range rapid.IntRange(0, 3).Draw(t, "accessories") {
				wide := tenths(t, "wide", 20, 200)
				x, y := tenths(t, "x", 0, width-wide-0.1), tenths(t, "y", 0, 2000)
				one := func(x float64) string {
					return fmt.Sprintf(`{"id": "S%d%d", "kind": "socket", "x": %.2f, "y": %v, "width": %v, "height": 90}`, face, i, x, y, wide)
				}
				here[face], there[face] = append(here[face], one(x)), append(there[face], one(width-x-wide))
			}
		}
		wall := func(left, right string, on [2][]string, from string) *facts.Facts {
			return setOut(t, planOf(fmt.Sprintf(`"width": %.2f, "height": 2400, "thickness": %v, "ends": {"left": {"corner": %q}, "right": {"corner": %q}}, "services": [%s], "reverse": [%s]`,
				width, thick, left, right, strings.Join(on[0], ","), strings.Join(on[1], ",")),
				`{"id": "E", "on": "w", "panel": "oak", "from": "`+from+`", "fix": {"screws": {"per_end": 2, "length": 45, "rows_apart": 600}}}`))
		}
		var seen [2][]string
		for i, f := range []*facts.Facts{wall(left, right, here, "left"), wall(right, left, there, "right")} {
			v := view{mirrored: i == 1, width: width}
			for _, z := range f.Zones {
				id := z.ID
				if strings.HasSuffix(id, " corner") {
					id = "w " + v.side(strings.Fields(id)[1])
				}
				slices.Sort(z.Pieces)
				v.add("%s: %s, %v..%v, %d screws of %v, %v deep", id, v.span(z.Left, z.Right), z.Bottom, z.Top, z.Screws, z.Pieces, z.DepthSaid)
				for _, p := range z.Places {
					v.add("%s: %s at %s, %v", id, p.Piece, v.x(p.X), p.Y)
				}
			}
			slices.Sort(v.out)
			seen[i] = v.out
		}
		if diff := cmp.Diff(seen[0], seen[1]); diff != "" {
			t.Fatalf("as it is - mirrored and seen from behind +\n%s", diff)
		}
	})
}
