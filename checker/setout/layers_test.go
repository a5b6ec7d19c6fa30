package setout_test

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
	"trysquare/checker/setout"
)

// onDoor is a door whose leaf of 600 x 1990 x 40 lies from 603 on.
const onDoor = `, "openings": {"d": {"kind": "door", "x": 600, "width": 606, "head": 2000, "leaf": {"width": 600, "height": 1990, "thickness": 40%s}}}`

// A piece of 561: its one screw a row is wanted at 280.5 and goes to the space at 280. The backing is 9, the panel 21.
func TestAScrewPassesWhatLiesBehindIt(t *testing.T) {
	for _, c := range []struct {
		name, wall, on string
		length         float64
		want           string
	}{
		{"a stud behind board of 12.5: 45 - 9 - 12.5", `, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 280}`, "w", 45,
			"backing 9, plasterboard 12.5, stud 23.5"},
		{"280 beside the stud at 0", `, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 0}`, "w", 45,
			"backing 9, plasterboard 12.5, space 23.5"},
		{"studs that the plan does not place", `, "background": {"kind": "plasterboard on studs", "board": 15}`, "w", 45, "backing 9, plasterboard 15, unsaid 21"},
		{"short of the board's back: 20 - 9", `, "background": {"kind": "plasterboard on studs"}`, "w", 20, "backing 9, plasterboard 11"},
		{"short of the backing's back", `, "background": {"kind": "plasterboard on studs"}`, "w", 8, "backing 8"},
		{"just through the backing", `, "background": {"kind": "bare masonry"}`, "w", 9, "backing 9"},
		{"plaster of 13 on masonry: 60 - 9 - 13", `, "background": {"kind": "plaster on masonry"}`, "w", 60, "backing 9, plaster 13, masonry 38"},
		{"bare masonry: 50 - 9", `, "background": {"kind": "bare masonry"}`, "w", 50, "backing 9, masonry 41"},
		{"a batten of 25, and the masonry that carries it: 45 - 9 - 25", `, "background": {"kind": "battens on masonry", "stud_centres": 400, "first_stud": 280}`, "w", 45,
			"backing 9, batten 25, masonry 11"},
		{"between two battens of 30", `, "background": {"kind": "battens on masonry", "stud_centres": 400, "first_stud": 80, "batten": 30}`, "w", 45,
			"backing 9, space 30, masonry 6"},
		{"battens that the plan does not place", `, "background": {"kind": "battens on masonry"}`, "w", 45, "backing 9, unsaid 25, masonry 11"},
		{"solid timber: 30 - 9", `, "background": {"kind": "solid timber"}`, "w", 30, "backing 9, timber 21"},
		{"an unsaid background", ``, "w", 45, "backing 9, unsaid 36"},
		{"out at the back of a wall of 30: 50 - 9 - 30", `, "thickness": 30, "background": {"kind": "bare masonry"}`, "w", 50, "backing 9, masonry 30, space 11"},
		// 30 - 12.5 = 17.5 of cavity, and 50 - 9 - 30 = 11 behind it: 28.5 in the air.
		{"out of a cavity", `, "thickness": 30, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 0}`, "w", 50,
			"backing 9, plasterboard 12.5, space 28.5"},
		{"a leaf of 40: 30 - 9", fmt.Sprintf(onDoor, ``), "w/d/leaf", 30, "backing 9, leaf 21"},
		{"out of it: 55 - 9 - 40", fmt.Sprintf(onDoor, ``), "w/d/leaf", 55, "backing 9, leaf 40, space 6"},
		{"into and out of what is on its other face", fmt.Sprintf(onDoor, `, "other_cladding": 4`), "w/d/leaf", 55, "backing 9, leaf 40, other cladding 4, space 2"},
		{"a length that is unsaid", `, "background": {"kind": "bare masonry"}`, "w", 0, ""},
	} {
		length := ""
		if c.length > 0 {
			length = fmt.Sprintf(`, "length": %v`, c.length)
		}
		f := setOut(t, planOf(`"width": 1800, "height": 2400`+c.wall, `{"id": "E", "on": "`+c.on+`", "panel": "oak", "pieces": [{"id": "E1", "width": 561, "cut": "right"}], "fix": {"screws": {"per_end": 1`+length+`}}}`))
		if s := find(t, f.Screws, "E1 screw 2"); s.OnSlat || s.Layers == nil || passed(s) != c.want {
			t.Errorf("%s: it passes %q, on a slat %t; want %q between two", c.name, passed(s), s.OnSlat, c.want)
		}
	}
}

// passed writes down what a screw passes.
func passed(s facts.ScrewPath) string {
	var out []string
	for _, l := range s.Layers {
		out = append(out, fmt.Sprintf("%s %v", l.What, l.Depth))
	}
	return strings.Join(out, ", ")
}

// 33 wide from a panel's left edge: a slat from 6 on and no space; its middle is at 16.5.
func TestAScrewOnASlatPassesThePanelsThickness(t *testing.T) {
	f := setOut(t, planOf(`"width": 600, "height": 2400, "background": {"kind": "solid timber"}`,
		`{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "width": 33, "cut": "right"}, {"id": "E2", "width": 561}], "fix": {"screws": {"per_end": 1, "length": 45}}}`))
	got := find(t, f.Screws, "E1 screw 1")
	// 21 - 9 = 12 of slat; 45 - 21 = 24 in the wall.
	if passed(got) != "slat 12, backing 9, timber 24" || !got.OnSlat || *got.InWall != 24 || got.X != 16.5 {
		t.Errorf("at %v it passes %s; on a slat %t, %v in the wall", got.X, passed(got), got.OnSlat, *got.InWall)
	}
	if all := f.Fixings[0].Screws; all.OnSlat != 2 || *all.Into[0].Depth != 24 {
		t.Errorf("%d on slats, %v deep; want 2, 24", all.OnSlat, *all.Into[0].Depth)
	}
	if all := f.Fixings[1].Screws; all.OnSlat != 0 || *all.Into[0].Depth != 36 {
		t.Errorf("%d on slats, %v deep; want 0, 45 - 9 = 36", all.OnSlat, *all.Into[0].Depth)
	}
}

// The first slat begins at 30; 20 of the panel from its left edge have neither a slat nor a space between two. The middle is at 10.
func TestAScrewBesideTheFirstSlatIsOnNone(t *testing.T) {
	text := planOf(`"width": 600, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "width": 20, "cut": "right"}], "fix": {"screws": {"per_end": 1, "length": 45}}}`)
	f := setOut(t, strings.Replace(text, `"first": 6`, `"first": 30`, 1))
	if got := f.Screws[0]; got.OnSlat || got.X != 10 || *got.InWall != 36 {
		t.Errorf("at %v, on a slat %t, %v in the wall; want 10, on none, 45 - 9 = 36", got.X, got.OnSlat, *got.InWall)
	}
}

// The batten holds over its own thickness only.
func TestABattenHoldsNoDeeperThanItIsThick(t *testing.T) {
	f := setOut(t, planOf(`"width": 600, "height": 2400, "background": {"kind": "battens on masonry", "stud_centres": 280, "first_stud": 0}`,
		`{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "width": 561, "cut": "right"}], "fix": {"screws": {"per_end": 1, "length": 60}}}`))
	if into := f.Fixings[0].Screws.Into[0]; into.What != "wood" || *into.Depth != 25 {
		t.Errorf("%v into %s, want 25 into wood", *into.Depth, into.What)
	}
}

func TestAScrewIsMeasuredAgainstTheNearestStud(t *testing.T) {
	for _, c := range []struct {
		name, background string
		want             *facts.StudAt
	}{
		// The screw is at 280; the studs are 38 wide, 19 to each side.
		{"in the middle", `"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 280`, &facts.StudAt{Hit: true, FromMiddle: 0, FromEdge: 19}},
		{"on its edge", `"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 261`, &facts.StudAt{Hit: true, FromMiddle: 19, FromEdge: 0}},
		{"beside it", `"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 303.5`, &facts.StudAt{Hit: false, FromMiddle: 23.5, FromEdge: 4.5}},
		// 280 is 280 from 0 and 120 from 400; 50 / 2 = 25 of it is batten.
		{"nearer the next batten", `"kind": "battens on masonry", "stud_centres": 400, "first_stud": 0, "stud_width": 50`, &facts.StudAt{Hit: false, FromMiddle: 120, FromEdge: 95}},
		{"studs that the plan does not place", `"kind": "plasterboard on studs", "stud_centres": 600`, nil},
		{"a wall without", `"kind": "bare masonry", "stud_centres": 600, "first_stud": 280`, nil},
	} {
		f := setOut(t, planOf(`"width": 1800, "height": 2400, "background": {`+c.background+`}`, `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "width": 561, "cut": "right"}], "fix": {"screws": {"per_end": 1}}}`))
		if diff := cmp.Diff(c.want, f.Screws[0].Stud); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
		if worst := f.Fixings[0].Screws.WorstStud; (worst == nil) != (c.want == nil) || worst != nil && *worst != c.want.FromMiddle {
			t.Errorf("%s: the worst is %v", c.name, worst)
		}
	}
	// Screws at 40 and 560, studs at 0 and 600 and so on: both 40 off; at 30, 630: 10 and 70.
	f := setOut(t, planOf(`"width": 600, "height": 2400, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 30}`,
		`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 2}}}`))
	if worst := f.Fixings[0].Screws.WorstStud; *worst != 70 {
		t.Errorf("the worst is %v off, want 70", *worst)
	}
}

func TestAScrewIsMeasuredAgainstEveryEdgeOfItsPiece(t *testing.T) {
	type at struct{ x, y, edge, upright, level float64 }
	for _, c := range []struct {
		name, opening, screws string
		want                  []at
		nearest               float64
	}{
		// E2 from 600 to 1200 with a notch from 660 to 860 up to 2000. At the foot: the leg of 60 has one space, at 640, 40 from
		// its left edge and 20 from the jamb; the leg of 340 wants 910 and 1150, which go to 920 (60 from the jamb) and 1160.
		{"a notch", `{"kind": "door", "x": 660, "width": 200, "head": 2000}`, `"per_end": 2`,
			[]at{{640, 50, 20, 20, 50}, {920, 50, 50, 60, 50}, {1160, 50, 40, 40, 50}, {640, 2350, 40, 40, 50}, {1160, 2350, 40, 40, 50}}, 20},
		// A cut-out from 700 to 900, 800 to 1400, and one more row at 1200: beside it 100 wide, where 625 and 675 go to 640 and 680,
		// and 300 wide, where 950 and 1150 go to 960 (10 off; 920 is 30) and 1160. The level edge nearest to 680, 1200 is the
		// cut-out's head at 1400, whose end is 20 across and 200 up: 200.9975. From 640: 60 across, 208.8061; from 960: the same.
		// From 1160: 260 across, 328.0244.
		{"a cut-out", `{"kind": "window", "x": 700, "width": 200, "sill": 800, "head": 1400}`, `"per_end": 2, "rows_apart": 1200`,
			[]at{{640, 50, 40, 40, 50}, {1160, 50, 40, 40, 50}, {640, 1200, 40, 40, 208.81}, {680, 1200, 20, 20, 201}, {960, 1200, 60, 60, 208.81},
				{1160, 1200, 40, 40, 328.02}, {640, 2350, 40, 40, 50}, {1160, 2350, 40, 40, 50}}, 20},
	} {
		f := setOut(t, planOf(`"width": 1200, "height": 2400, "openings": {"o": `+c.opening+`}`, `{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {`+c.screws+`}}}`))
		var got []at
		for _, s := range f.Screws {
			if s.Piece == "E2" {
				got = append(got, at{s.X, s.Y, s.Edge, *s.FromUpright, *s.FromLevel})
			}
		}
		if diff := cmp.Diff(c.want, got, cmp.AllowUnexported(at{})); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
		if nearest := f.Fixings[1].Screws.NearestEdge; *nearest != c.nearest {
			t.Errorf("%s: the nearest is %v, want %v", c.name, *nearest, c.nearest)
		}
	}
}

// A wall that stands on a corner has no level edge, nor a piece that fills it; nothing is infinite.
func TestAPieceWithoutALevelEdge(t *testing.T) {
	f := setOut(t, planOf(`"width": 500, "height": 2000, "outline": [{"x": 250, "y": 0}, {"x": 500, "y": 1000}, {"x": 250, "y": 2000}, {"x": 0, "y": 1000}]`,
		`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 1, "rows_apart": 500}}}`))
	if len(f.Screws) == 0 {
		t.Fatal("no screws")
	}
	for _, s := range f.Screws {
		if s.FromLevel != nil || s.FromUpright == nil || *s.FromUpright != s.Edge {
			t.Errorf("%s: %v from a level edge, %v from an upright one, %v from any", s.ID, s.FromLevel, *s.FromUpright, s.Edge)
		}
	}
}

// toSide is the distance from a side's line where that is square to the place, otherwise from its nearer end.
func toSide(a, b facts.Point, x, y float64) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	long := math.Hypot(dx, dy)
	before, behind := (x-a.X)*dx+(y-a.Y)*dy, (x-b.X)*dx+(y-b.Y)*dy
	if before > 0 && behind < 0 {
		return math.Abs((x-a.X)*dy-(y-a.Y)*dx) / long
	}
	return min(math.Hypot(x-a.X, y-a.Y), math.Hypot(x-b.X, y-b.Y))
}

func TestScrewsOfRandomPlans(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := draw(t, false).facts(t)
		pieces, n := map[string]facts.Piece{}, map[string]int{}
		for _, p := range f.Pieces {
			pieces[p.ID] = p
		}
		for _, s := range f.Screws {
			p := pieces[s.Piece]
			least := math.Inf(1)
			rings := [][]facts.Point{p.Outline}
			for _, c := range p.Cutouts {
				rings = append(rings, c.Outline)
			}
			for _, ring := range rings {
				for i, a := range ring {
					least = min(least, toSide(a, ring[(i+1)%len(ring)], s.X, s.Y))
				}
			}
			if math.Abs(s.Edge-least) > 0.03 || s.Edge > *s.FromUpright || s.Edge > *s.FromLevel {
				t.Fatalf("%s: %v from the edge, %v and %v; its outline has %v", s.ID, s.Edge, *s.FromUpright, *s.FromLevel, least)
			}
			n[s.Piece]++
			if place := placesOf(f, s.Piece)[n[s.Piece]-1]; place.X != s.X || place.Y != s.Y || place.Into != s.Into || *place.InWall != *s.InWall {
				t.Fatalf("%s: %v, and with its piece's fixing %v", s.ID, s, place)
			}
		}
		for _, fix := range f.Fixings {
			if fix.Screws != nil && n[fix.Piece] != fix.Screws.Count {
				t.Fatalf("%d screws of %s, %d with its fixing", n[fix.Piece], fix.Piece, fix.Screws.Count)
			}
		}
	})
}

func placesOf(f *facts.Facts, piece string) []facts.Screw {
	for _, fix := range f.Fixings {
		if fix.Piece == piece {
			return fix.Screws.Places
		}
	}
	return nil
}

func TestAScrewsLayersAddUpToItsLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		maybe := func(name string, least, most float64) string {
			if !rapid.Bool().Draw(t, name+" said") {
				return ""
			}
			return fmt.Sprintf(`, "%s": %v`, name, tenths(t, name, least, most))
		}
		length := tenths(t, "length", 1, 200)
		kind := rapid.SampledFrom([]string{"plasterboard on studs", "plaster on masonry", "bare masonry", "battens on masonry", "solid timber"}).Draw(t, "kind")
		background := fmt.Sprintf(`, "background": {"kind": %q%s%s%s%s%s}`, kind, maybe("board", 6, 30), maybe("plaster", 3, 30), maybe("batten", 10, 60),
			maybe("stud_centres", 100, 700), maybe("first_stud", 0, 600))
		on := rapid.SampledFrom([]string{"w", "w/d/leaf"}).Draw(t, "on")
		f := setOut(t, planOf(`"width": 1800, "height": 2400`+maybe("thickness", 5, 150)+background+fmt.Sprintf(onDoor, maybe("other_cladding", 0, 30)),
			fmt.Sprintf(`{"id": "E", "on": %q, "panel": "oak", "start": %v, "fix": {"screws": {"per_end": %d, "length": %v}}}`,
				on, tenths(t, "start", -590, 0), rapid.IntRange(1, 3).Draw(t, "screws"), length)))
		if len(f.Screws) == 0 {
			t.Fatal("no screws")
		}
		for _, s := range f.Screws {
			sum, panel := 0.0, 0.0
			for i, l := range s.Layers {
				sum += l.Depth
				if l.What == "slat" || l.What == "backing" {
					panel += l.Depth
				}
				if l.Depth <= 0 || i > 0 && s.Layers[i-1].What == l.What {
					t.Fatalf("%s passes %v", s.ID, s.Layers)
				}
			}
			if math.Abs(sum-length) > 0.001 || math.Abs(sum-panel-*s.InWall) > 0.001 {
				t.Fatalf("%s: %v long, %v in the wall, passes %v", s.ID, length, *s.InWall, s.Layers)
			}
		}
	})
}

// 100 screws in each of 2 + 99900 / 5 rows come to 2 million; nothing is set out.
func TestAPlanThatComesToTooManyScrewsIsRefused(t *testing.T) {
	p, err := decode("plan.json", []byte(`{"title": "Larch Lane", "units": "mm", "panels": {"p": {"width": 1000, "height": 100000, "thickness": 21, "slats": {"pitch": 1000, "width": 995, "first": 0}, "backing": {"thickness": 9}}},
		"walls": {"w": {"width": 1000, "height": 100000}}, "runs": [{"id": "E", "on": "w", "panel": "p", "fix": {"screws": {"per_end": 100, "rows_apart": 5}}}]}`))
	if err != nil {
		t.Fatal(err)
	}
	_, err = setout.Plan(context.Background(), p, assumed)
	if want := "/runs/0/fix/screws: the plan comes to too many screws and slats; is a length in the wrong unit?"; err == nil || err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
}
