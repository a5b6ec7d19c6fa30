package setout_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
	"trysquare/checker/setout"
)

// planOf writes a plan in mm with one wall "w" and panels "oak" of 600 x 2400; wall and runs are the text inside theirs.
func planOf(wall, runs string) string {
	return `{"title": "Larch Lane", "units": "mm",
		"panels": {"oak": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 9},
			"edges": {"left": "recess", "right": "tongue", "overlap": 5}}},
		"walls": {"w": {` + wall + `}}, "runs": [` + runs + `]}`
}

const plainRun = `{"id": "E", "on": "w", "panel": "oak"}`

func find[T interface{ Subject() facts.About }](t *testing.T, list []T, id string) T {
	t.Helper()
	var names []string
	for _, v := range list {
		if v.Subject().ID == id {
			return v
		}
		names = append(names, v.Subject().ID)
	}
	t.Fatalf("there is no %q among %q", id, names)
	panic("unreachable")
}

func idsOf[T interface{ Subject() facts.About }](list []T) []string {
	out := []string{}
	for _, v := range list {
		out = append(out, v.Subject().ID)
	}
	return out
}

// Lengths that differ by less than the package tells apart meet: 23.622 in is 599.9988 mm.
func TestAJambThatAllButMeetsAJointLeavesNoSliver(t *testing.T) {
	for _, off := range []float64{0, 0.002, 0.004, -0.004} {
		for _, from := range []string{"left", "right"} {
			f := setOut(t, planOf(fmt.Sprintf(`"width": 2400, "height": 2400, "openings": {"d": {"kind": "door", "x": %[1]v, "width": 1200, "head": %[2]v},
				"h": {"kind": "hatch", "x": %[1]v, "width": 1200, "sill": %[2]v, "head": %[3]v}}`, 600+off, 2000+off, 2400+min(off, 0)),
				`{"id": "E", "on": "w", "panel": "oak", "from": "`+from+`"}`))
			names := idsOf(f.Pieces)
			slices.Sort(names)
			// Door and hatch take all of the two panels in the middle.
			if want := []string{"E1", "E4"}; !slices.Equal(names, want) {
				t.Errorf("off by %v, from the %s: pieces %q, want %q", off, from, names, want)
			}
			if len(f.Rips) > 0 {
				t.Errorf("off by %v, from the %s: nothing is sawn upright, got %q", off, from, idsOf(f.Rips))
			}
			for _, l := range f.Legs {
				if l.Width != 600 || l.Notched {
					t.Errorf("off by %v, from the %s: %s is %v wide, want a whole piece of 600", off, from, l.ID, l.Width)
				}
			}
		}
	}
}

// The strip that can break is the one between the two openings: 2100 - 2000 = 100.
func TestAStripIsAsHighAsWhatIsLeftOfIt(t *testing.T) {
	f := setOut(t, planOf(`"width": 1200, "height": 2400, "openings": {"d": {"kind": "door", "x": 400, "width": 400, "head": 2000},
		"h": {"kind": "hatch", "x": 300, "width": 200, "sill": 2100, "head": 2300}}`, plainRun))
	for id, want := range map[string]float64{
		"E1 over d": 100, "E1 under h": 100, "E1 over h": 2400 - 2300,
		"E2 over d": 2400 - 2000,
	} {
		if got := find(t, f.Strips, id).Height; got != want {
			t.Errorf("%s is %v high, want %v", id, got, want)
		}
	}
}

// A leg stands at the heights that it shares with the opening, whether the piece goes on above or not.
func TestALegIsAsHighAsItsOpening(t *testing.T) {
	f := setOut(t, planOf(`"width": 1800, "height": 2400, "openings": {"win": {"kind": "window", "x": 600, "width": 700, "sill": 900, "head": 2000}}`, plainRun))
	for id, want := range map[string]facts.Leg{
		"E1 left of win":  {Width: 600, Y: 900, Height: 1100},
		"E3 right of win": {Width: 500, Y: 900, Height: 1100, Notched: true},
	} {
		got := find(t, f.Legs, id)
		if got.Width != want.Width || got.Y != want.Y || got.Height != want.Height || got.Notched != want.Notched {
			t.Errorf("%s: %+v, want %+v", id, got, want)
		}
	}
}

// The schema's words: the most that two rows are apart. 2400 - 2 x 50 = 2300 wants one step from 2300 on, two from 1150 on.
func TestRowsAreNoFurtherApartThanAsked(t *testing.T) {
	for asked, steps := range map[float64]float64{2300: 1, 2299: 2, 2294: 2, 1150: 2, 1148: 3, 767: 3, 766: 4, 100: 23, 99.9: 24} {
		f := setOut(t, planOf(`"width": 600, "height": 2400`, fmt.Sprintf(`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 1, "rows_apart": %v}}}`, asked)))
		got := f.Fixings[0].Screws
		if want := math.Round(2300/steps*100) / 100; math.Abs(got.RowGap-want) > 0.011 || got.Count != int(steps)+1 {
			t.Errorf("at most %v apart: %d rows, %v apart; want %v rows, %v apart", asked, got.Count, got.RowGap, steps+1, want)
		}
	}
}

// A stud behind a joint carries both pieces, whatever converting its inches leaves behind the comma.
func TestAStudBehindAJointIsBehindBothPieces(t *testing.T) {
	const panels = 20 // 24 in each, the studs at 16 in centres from 8: one behind every second joint
	text := strings.Replace(planOf(fmt.Sprintf(`"width": %d, "height": 90, "background": {"kind": "plasterboard on studs", "stud_centres": 16, "first_stud": 8, "stud_width": 4}`, 24*panels),
		`{"id": "E", "on": "w", "panel": "oak", "fix": {"screws": {"per_end": 1, "on_studs": true}}}`), `"units": "mm"`, `"units": "in"`, 1)
	text = strings.Replace(text, `"width": 600, "height": 2400`, `"width": 24, "height": "2400 mm"`, 1)
	text = strings.NewReplacer(`"thickness": 21`, `"thickness": "21 mm"`, `"thickness": 9`, `"thickness": "9 mm"`, `"pitch": 40, "width": 28, "first": 6`,
		`"pitch": "40 mm", "width": "28 mm", "first": "6 mm"`, `"overlap": 5`, `"overlap": "5 mm"`).Replace(text)
	for i, got := range setOut(t, text).Fixings {
		// 0 to 24 in: 8 and 24; 24 to 48: 24 and 40; 48 to 72: 56 and 72; and so on: one inside each panel and one
		// behind a joint, so wide (4 in) that the space nearest to the joint is in front of it.
		if got.Screws.PerTop != 2 {
			t.Errorf("piece %d: %d screws in the row at the top, want 2", i+1, got.Screws.PerTop)
		}
	}
}

// Slats stand where the panel has them: none before the first, none beyond the edge.
func TestACutRunsInASlatOnlyWhereThereIsOne(t *testing.T) {
	// Slats of 28 from 30: 30 to 58, ..., 550 to 578, and the next would start at 590, cut off by the panel's edge at 600.
	text := strings.Replace(planOf(`"width": 600, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "start": %v, "pieces": [{"id": "E1", "width": %v, "cut": "%s"}]}`), `"first": 6`, `"first": 30`, 1)
	for _, c := range []struct {
		name        string
		start, wide float64
		cut         string
		into, left  float64
	}{
		{"before the first slat", -10, 590, "left", 0, 0},
		{"in the first slat, 35 from the edge: 5 into it, 23 stay", -35, 565, "left", 5, 23},
		{"in the part of a slat at the far edge, 594 from the other: 4 of its 10 stay", 0, 594, "right", 4, 4},
		{"in that part, with 3 of it on the right of the cut", -597, 3, "left", 3, 3},
	} {
		got := find(t, setOut(t, fmt.Sprintf(text, c.start, c.wide, c.cut)).Rips, "E1 "+c.cut+" rip")
		if got.IntoSlat != c.into || got.SlatLeft != c.left {
			t.Errorf("%s: %v into a slat of which %v stays, want %v and %v", c.name, got.IntoSlat, got.SlatLeft, c.into, c.left)
		}
	}
}

// A height that the run states and that reaches the ceiling ends at the ceiling as any other.
func TestTheUpperEdgeMeetsWhatIsThere(t *testing.T) {
	for _, c := range []struct{ height, want string }{
		{"", "ceiling"}, {`, "height": 2300`, "ceiling"}, {`, "height": 5000`, "ceiling"}, {`, "height": 1200`, "air"},
	} {
		f := setOut(t, planOf(`"width": 600, "height": 2300`, `{"id": "E", "on": "w", "panel": "oak"`+c.height+`}`))
		if got := find(t, f.Edges, "E1 upper edge").Meets; got != c.want {
			t.Errorf("run%s: the upper edge meets %q, want %q", c.height, got, c.want)
		}
	}
}

// A cutting plan saws rectangles: what the door leaves of E1, 399 x 2000, would give F1, 300 x 1900, and is not used.
func TestLeastCountsRectangles(t *testing.T) {
	f := setOut(t, planOf(`"width": 900, "height": 2400, "openings": {"d": {"kind": "door", "x": 200, "width": 399, "head": 2000}}`,
		`{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1"}]}, {"id": "F", "on": "w", "panel": "oak", "start": 600, "height": 1900}`))
	// E1 takes the whole of a board, so F1 comes out of another.
	if got := f.Boards[0]; got.Least != 2 || got.Needed != 2 {
		t.Errorf("%d boards, at least %d, want 2 and 2", got.Needed, got.Least)
	}
}

func TestEveryFactHasANameOfItsOwn(t *testing.T) {
	hatches := ""
	for i := range 12 { // more notches on one piece than there are digits
		hatches += fmt.Sprintf(`, "h%d": {"kind": "hatch", "x": 50, "width": 100, "sill": %d, "head": %d}`, i, 100+180*i, 180+180*i)
	}
	f := setOut(t, planOf(`"width": 600, "height": 2400, "openings": {`+hatches[2:]+`}`, plainRun))
	if want := "E1 right notch 12"; find(t, f.Rips, want).X != 50 {
		t.Errorf("%s is not at 50", want)
	}
	for name, list := range map[string][]string{"rips": idsOf(f.Rips), "edges": idsOf(f.Edges), "strips": idsOf(f.Strips), "legs": idsOf(f.Legs)} {
		slices.Sort(list)
		if n := len(list); len(slices.Compact(list)) != n {
			t.Errorf("two %s have one name", name)
		}
	}
}

// Pieces are what is fixed, so both parts of a divided one count: 10 500 panels of 6 with a window across them all.
func TestAPlanThatComesToTooManyPiecesIsRefused(t *testing.T) {
	text := strings.NewReplacer(`"width": 600`, `"width": 6`, `"pitch": 40, "width": 28`, `"pitch": 40, "width": 2`, `"overlap": 5`, `"overlap": 0`).Replace(
		planOf(`"width": 63000, "height": 2400, "openings": {"win": {"kind": "window", "x": 0, "width": 63000, "sill": 1000, "head": 2000}}`, plainRun))
	p, err := decode("plan.json", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	_, err = setout.Plan(context.Background(), p, assumed)
	if want := fmt.Sprintf("/runs/0: the plan comes to more than %d pieces; is a length in the wrong unit?", setout.Most); err == nil || err.Error() != want {
		t.Errorf("error %v, want %s", err, want)
	}
}

// A finding names its piece, so the parts of a divided piece must not take a name that the plan gives to another.
func TestPiecesThatWouldShareANameAreRefused(t *testing.T) {
	window := `"width": 1200, "height": 2400, "openings": {"win": {"kind": "window", "x": 600, "width": 600, "sill": 900, "head": 2000}}`
	for _, c := range []struct{ name, runs, want string }{
		{"a part", `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "P over"}, {"id": "P"}]}`, `/runs/0/pieces/1: two pieces would be called "P over"; name the run or the piece otherwise`},
		{"a numbered piece", `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "F1"}]}, {"id": "F", "on": "w", "panel": "oak", "start": 600}`,
			`/runs/1: two pieces would be called "F1"; name the run or the piece otherwise`},
	} {
		p, err := decode("plan.json", []byte(planOf(window, c.runs)))
		if err != nil {
			t.Fatal(err)
		}
		_, err = setout.Plan(context.Background(), p, assumed)
		var m *setout.Misfit
		if !errors.As(err, &m) {
			t.Errorf("%s: error %v, want a misfit", c.name, err)
			continue
		}
		if diff := cmp.Diff(c.want, err.Error()); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}
