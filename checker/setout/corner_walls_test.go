package setout_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
)

// twoWalls writes a plan of a wall "north", 2400 wide, and of "east", which its right end meets; ends and runs are the text inside theirs.
// "ash" has another pitch than "oak".
func twoWalls(north, east, runs string) string {
	text := planOf(`"width": 1, "height": 1`, runs)
	text = strings.Replace(text, `"w": {"width": 1, "height": 1}`, `"north": {"width": 2400, "height": 2400, "ends": {`+north+`}}, "east": {"width": 3000, "height": 2400, "ends": {`+east+`}}`, 1)
	return strings.Replace(text, `"panels": {`, `"panels": {"ash": {"width": 300, "height": 2400, "thickness": 15, "slats": {"pitch": 30, "width": 20, "first": 5}, "backing": {"thickness": 9}}, `, 1)
}

const (
	northRun = `{"id": "N", "on": "north", "panel": "oak"}`
	internal = `"right": {"corner": "internal", "wall": "east"}`
	toNorth  = `"left": {"corner": "internal", "wall": "north"}`
)

// Slats of a whole panel end at 6 + 14 x 40 + 28 = 594 of 600: the last of N4 is 6 from the corner.
func TestSlatsAcrossACorner(t *testing.T) {
	about := func(id, at string) facts.About { return facts.About{ID: id, At: at, On: "north"} }
	both := about("north | east: N4 | E1", "/walls/north/ends/right")
	for name, c := range map[string]struct {
		north, east, run string
		want             facts.Corner
	}{
		// 6 + 27 - 21 = 12, as within the panel. Of the last slat, 21 - 6 = 15 are behind the panel that butts.
		"carried through": {internal, toNorth, `"panel": "oak", "start": 21`, facts.Corner{About: both, Kind: "internal", Left: "N4", Right: "E1", LeftDistance: some(6), RightDistance: some(27),
			Covered: 21, Gap: some(12), PatternGap: 12, GapError: some(0), Hidden: 15, Comparable: true, InView: true}},
		// 6 + 6 - 21 = -9, 21 short of 12: over a pitch of 40 that is 40 - 21 = 19 the short way.
		"right into the corner": {internal, toNorth, `"panel": "oak"`, facts.Corner{About: both, Kind: "internal", Left: "N4", Right: "E1", LeftDistance: some(6), RightDistance: some(6),
			Covered: 21, Gap: some(-9), PatternGap: 12, GapError: some(21), Hidden: 15, Comparable: true, CarriedOffset: 19, InView: true}},
		// 6 + 6 = 12 round the corner, nothing behind anything.
		"external": {strings.Replace(internal, "internal", "external", 1), strings.Replace(toNorth, "internal", "external", 1), `"panel": "oak"`, facts.Corner{About: both, Kind: "external", Left: "N4", Right: "E1",
			LeftDistance: some(6), RightDistance: some(6), Gap: some(12), PatternGap: 12, GapError: some(0), Comparable: true, InView: true}},
		// The first panel is cut by 9: its first slat, from 6 to 34, stands at -3 and is cut to 0..25. The pattern starts at -3:
		// 6 - 3 - 21 = -18 would be its gap, 30 short of 12: 10 the short way. What is seen: 6 + 0 - 21 = -15.
		"a slat cut at the corner": {internal, toNorth, `"panel": "oak", "start": -9`, facts.Corner{About: both, Kind: "internal", Left: "N4", Right: "E1", LeftDistance: some(6), RightDistance: some(0),
			Covered: 21, Gap: some(-15), PatternGap: 12, GapError: some(27), Hidden: 15, Comparable: true, CarriedOffset: 10, InView: true}},
		// 6 + 5 - 21 = -10; hidden behind 15: 15 - 6 = 9.
		"another product": {internal, toNorth, `"panel": "ash"`, facts.Corner{About: both, Kind: "internal", Left: "N4", Right: "E1", LeftDistance: some(6), RightDistance: some(5),
			Covered: 21, Gap: some(-10), PatternGap: 12, GapError: some(22), Hidden: 9, InView: true}},
		// A first piece of 4, kept at its left edge, ends before its first slat.
		"no slat": {internal, toNorth, `"panel": "oak", "pieces": [{"id": "E1", "width": 4, "cut": "right"}]`, facts.Corner{About: both, Kind: "internal", Left: "N4", Right: "E1", LeftDistance: some(6),
			Covered: 21, PatternGap: 12, Hidden: 15, Comparable: true, CarriedOffset: 19, InView: true}},
		"hidden": {internal, toNorth, `"panel": "oak", "start": 21, "pieces": [{"id": "E1", "hidden_by": "a cupboard"}]`, facts.Corner{About: both, Kind: "internal", Left: "N4", Right: "E1", LeftDistance: some(6), RightDistance: some(27),
			Covered: 21, Gap: some(12), PatternGap: 12, GapError: some(0), Hidden: 15, Comparable: true}},
		"only the right wall says so": {``, toNorth, `"panel": "oak", "start": 21`, facts.Corner{About: about("north | east: N4 | E1", "/walls/east/ends/left"), Kind: "internal", Left: "N4", Right: "E1",
			LeftDistance: some(6), RightDistance: some(27), Covered: 21, Gap: some(12), PatternGap: 12, GapError: some(0), Hidden: 15, Comparable: true, InView: true}},
	} {
		c.want.LeftWall, c.want.RightWall = "north", "east"
		f := setOut(t, twoWalls(c.north, c.east, northRun+`, {"id": "E", "on": "east", `+c.run+`}`))
		if diff := cmp.Diff([]facts.Corner{c.want}, f.Corners); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
	}
}

func TestACornerIsWhereBothWallsSaySo(t *testing.T) {
	eastRun := `, {"id": "E", "on": "east", "panel": "oak"}`
	for name, c := range map[string]struct {
		text string
		want int
	}{
		"one names the other, which gives the kind only": {twoWalls(internal, `"left": {"corner": "internal"}`, northRun+eastRun), 1},
		"the other names another":                        {twoWalls(internal, `"left": {"corner": "internal", "wall": "west"}`, northRun+eastRun), 0},
		"neither names one":                              {twoWalls(`"right": {"corner": "internal"}`, `"left": {"corner": "internal"}`, northRun+eastRun), 0},
		"two kinds":                                      {twoWalls(internal, `"left": {"corner": "external", "wall": "north"}`, northRun+eastRun), 0},
		"the face goes on":                               {twoWalls(`"right": {"corner": "none", "wall": "east"}`, ``, northRun+eastRun), 0},
		"not in the plan":                                {twoWalls(`"right": {"corner": "internal", "wall": "south"}`, ``, northRun+eastRun), 0},
		"itself":                                         {twoWalls(`"right": {"corner": "internal", "wall": "north"}`, ``, northRun+eastRun), 0},
		"one is bare":                                    {twoWalls(internal, toNorth, northRun), 0},
		// North's left end meets east's right one and east's left one north's right: two corners, at each of which one wall is silent.
		"each names the other at its left end": {twoWalls(`"left": {"corner": "internal", "wall": "east"}`, `"left": {"corner": "internal", "wall": "north"}`, northRun+eastRun), 2},
		"two lay claim to one end": {strings.Replace(twoWalls(internal, ``, northRun+eastRun), `"walls": {`,
			`"walls": {"west": {"width": 900, "height": 2400, "ends": {"right": {"corner": "internal", "wall": "east"}}}, `, 1), 0},
	} {
		if got := idsOf(setOut(t, c.text).Corners); len(got) != c.want {
			t.Errorf("%s: corners %q, want %d", name, got, c.want)
		}
	}
}

// In courses, those meet that share some height: N's upper one starts at 1000, E's at 1200.
func TestCoursesMeetAcrossACornerWhereTheyShareHeight(t *testing.T) {
	f := setOut(t, twoWalls(internal, toNorth, `{"id": "N", "on": "north", "panel": "oak", "courses": [{"height": 1000}, {}]}, {"id": "E", "on": "east", "panel": "oak", "courses": [{"height": 1200}, {}]}`))
	want := []string{"north | east: N1.4 | E1.1", "north | east: N2.4 | E1.1", "north | east: N2.4 | E2.1"}
	if diff := cmp.Diff(want, idsOf(f.Corners)); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

// Where a window stands at the wall's end, the outermost are what is over and under it, and beside it the next piece.
func TestTheOutermostPiecesAreFoundAtEachHeight(t *testing.T) {
	text := strings.Replace(twoWalls(internal, toNorth, northRun+`, {"id": "E", "on": "east", "panel": "oak"}`), `"north": {"width": 2400, "height": 2400,`,
		`"north": {"width": 2400, "height": 2400, "openings": {"win": {"kind": "window", "x": 1800, "width": 600, "sill": 900, "head": 2000}},`, 1)
	want := []string{"north | east: N4 under | E1", "north | east: N4 over | E1", "north | east: N3 | E1"}
	if diff := cmp.Diff(want, idsOf(setOut(t, text).Corners)); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}

func TestRevealLinesStandUnderWhatIsOverTheHead(t *testing.T) {
	wall := func(lining string) string {
		return `"width": 3600, "height": 2400, "openings": {"d": {"kind": "door", "x": 1396, "width": 768, "head": 2032, "lining": {` + lining + `}}}`
	}
	pair := func(piece string, offset float64, direction string) facts.LinePair {
		return facts.LinePair{About: facts.About{ID: piece + " over the lining of d", At: "/walls/w/openings/d/lining", On: "w"}, Opening: "w/d", Where: "reveal", Side: "head",
			Piece: piece, Other: "w/d lining", Comparable: true, Offset: offset, Direction: direction, InView: true}
	}
	// The door goes from 1396 to 2164: E3 (1200 to 1800) and E4 (to 2400) pass over it. Their slats start at 6 in each 40, since 600 is
	// 15 x 40; the lining's first at 1396 + start + 6.
	for name, c := range map[string]struct {
		lining string
		want   []facts.LinePair
	}{
		"from the jamb":        {`"clad": true, "panel": "oak", "start": 0`, []facts.LinePair{pair("E3", 4, "right"), pair("E4", 4, "right")}}, // 1402 = 35 x 40 + 2; 6 - 2 = 4
		"true":                 {`"clad": true, "panel": "oak", "start": 4`, []facts.LinePair{pair("E3", 0, "none"), pair("E4", 0, "none")}},   // 1406
		"the other way":        {`"clad": true, "panel": "oak", "start": 10`, []facts.LinePair{pair("E3", 6, "left"), pair("E4", 6, "left")}},  // 1412
		"cut at the left jamb": {`"clad": true, "panel": "oak", "start": -30`, []facts.LinePair{pair("E3", 6, "left"), pair("E4", 6, "left")}}, // 1372 = 34 x 40 + 12
		"no start":             {`"clad": true, "panel": "oak"`, []facts.LinePair{}},
		"no product":           {`"clad": true, "start": 0`, []facts.LinePair{}},
		"not clad":             {`"clad": false, "panel": "oak", "start": 0`, []facts.LinePair{}},
	} {
		if diff := cmp.Diff(c.want, setOut(t, planOf(wall(c.lining), plainRun)).RevealLines); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
	}
	ash := strings.Replace(planOf(wall(`"clad": true, "panel": "ash", "start": 0`), plainRun), `"panels": {`, `"panels": {"ash": {"width": 300, "height": 2400, "thickness": 15, "slats": {"pitch": 30, "width": 20, "first": 5}, "backing": {"thickness": 9}}, `, 1)
	for _, l := range setOut(t, ash).RevealLines {
		if l.Comparable || l.Offset != 0 {
			t.Errorf("%s: %+v, want patterns that cannot be compared", l.ID, l)
		}
	}
	// A run that stops at 2000 passes over nothing.
	if f := setOut(t, planOf(wall(`"clad": true, "panel": "oak", "start": 0`), `{"id": "E", "on": "w", "panel": "oak", "height": 2000}`)); len(f.RevealLines) != 0 {
		t.Errorf("reveal lines %q under nothing", idsOf(f.RevealLines))
	}
	// What is under a window is not over its head: a panel of 600 is divided into both.
	f := setOut(t, planOf(`"width": 1200, "height": 2400, "openings": {"win": {"kind": "window", "x": 600, "width": 600, "sill": 900, "head": 2000, "lining": {"clad": true, "panel": "oak", "start": 0}}}`, plainRun))
	if diff := cmp.Diff([]string{"E2 over over the lining of win"}, idsOf(f.RevealLines)); diff != "" {
		t.Errorf("want - got +\n%s", diff)
	}
}
