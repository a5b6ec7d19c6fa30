package setout_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
	"trysquare/checker/setout"
)

func misfits(t *testing.T, text string) string {
	t.Helper()
	p, err := decode("plan.json", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	_, err = setout.Plan(context.Background(), p, assumed)
	var m *setout.Misfit
	if err != nil && !errors.As(err, &m) {
		t.Fatalf("%v is no misfit", err)
	}
	if err == nil {
		return ""
	}
	return err.Error()
}

func TestCoursesStandOnOneAnother(t *testing.T) {
	type piece struct {
		id          string
		bottom, top float64
		lower       string // how its lower edge is made
		upper       string
	}
	for _, c := range []struct {
		name, run string
		height    int
		want      []piece
	}{
		{"a board, and what is left", `"courses": [{}, {}]`, 3000, []piece{{"E1.1", 0, 2400, "end", "end"}, {"E2.1", 2400, 3000, "end", "crosscut"}}},
		{"a gap, a base, a clear top", `"base": 10, "clear_top": 5, "courses": [{"height": 1000}, {"gap": 3}]`, 2400, []piece{{"E1.1", 10, 1010, "crosscut", "end"}, {"E2.1", 1013, 2395, "end", "crosscut"}}},
		{"three, the last short of the ceiling", `"courses": [{"height": 500}, {"height": 600}, {"height": 700, "gap": 2}]`, 2400,
			[]piece{{"E1.1", 0, 500, "crosscut", "end"}, {"E2.1", 500, 1100, "end", "crosscut"}, {"E3.1", 1102, 1802, "end", "crosscut"}}},
		{"one is no course among others", `"courses": [{"height": 1000}]`, 2400, []piece{{"E1", 0, 1000, "crosscut", "end"}}},
		{"as high as a board", `"courses": [{"height": 2400}]`, 2400, []piece{{"E1", 0, 2400, "end", "end"}}},
	} {
		f := setOut(t, planOf(fmt.Sprintf(`"width": 600, "height": %d`, c.height), `{"id": "E", "on": "w", "panel": "oak", `+c.run+`}`))
		var got []piece
		for _, p := range f.Pieces {
			got = append(got, piece{p.ID, p.Bottom, p.Top, find(t, f.Edges, p.ID+" lower edge").MadeBy, find(t, f.Edges, p.ID+" upper edge").MadeBy})
		}
		if diff := cmp.Diff(c.want, got, cmp.AllowUnexported(piece{})); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

// A piece that an opening or a rake saws off at one end keeps the other from the factory: one cut will do.
func TestAPieceSawnAtOneEndKeepsTheOther(t *testing.T) {
	f := setOut(t, planOf(`"width": 1800, "height": 2300, "openings": {"win": {"kind": "window", "x": 600, "width": 600, "sill": 900, "head": 2000}}`, plainRun))
	for id, want := range map[string]string{
		"E1 lower edge": "crosscut", "E1 upper edge": "end", // 2300 of 2400, shortened at the floor
		"E2 under lower edge": "end", "E2 under edge at the sill of win": "crosscut",
		"E2 over upper edge": "end", "E2 over edge at the head of win": "crosscut",
	} {
		if got := find(t, f.Edges, id).MadeBy; got != want {
			t.Errorf("%s is made by %q, want %q", id, got, want)
		}
	}
}

func TestARunThatStartsElsewhereThanAtAnEnd(t *testing.T) {
	for _, c := range []struct {
		name, wall, run string
		want            []float64 // left edges, and the last one's right edge
	}{
		{"the middle on a joint of a wall of whole panels", `"width": 2400, "height": 2400`, `"from": "middle"`, []float64{0, 600, 1200, 1800, 2400}},
		{"the middle on a panel there", `"width": 2400, "height": 2400`, `"from": "middle", "centre": "panel"`, []float64{0, 300, 900, 1500, 2100, 2400}},
		// 1200 + 50 = 1250: joints at 50, 650, 1250, 1850.
		{"50 to the right of the middle", `"width": 2400, "height": 2400`, `"from": "middle", "start": 50`, []float64{0, 50, 650, 1250, 1850, 2400}},
		{"50 to the left of it", `"width": 2400, "height": 2400`, `"from": "middle", "start": -50`, []float64{0, 550, 1150, 1750, 2350, 2400}},
		{"a line at the left end", `"width": 1000, "height": 2400`, `"from": "line", "start": 0`, []float64{0, 600, 1000}},
		{"a line at the right end", `"width": 1000, "height": 2400`, `"from": "line", "start": 1000`, []float64{0, 400, 1000}},
		{"a panel on a line: 100 - 300 = -200 to 400", `"width": 1000, "height": 2400`, `"from": "line", "start": 100, "centre": "panel"`, []float64{0, 400, 1000}},
		{"a wall narrower than a panel", `"width": 500, "height": 2400`, `"from": "middle", "centre": "panel"`, []float64{0, 500}},
		// 1000 + 2 = 1002 to 1602; 1000 - 2 = 998 down to 398; 394 down to -206.
		{"a joint left open on the line", `"width": 1602, "height": 2400`, `"from": "line", "start": 1000, "joint": 4`, []float64{0, 398, 1002, 1602}},
		// 602 + 2 = 604 to 1204, 600 + ... the panel before it ends at 600 and begins at 0; before that only the joint.
		{"a joint that ends at the wall's end", `"width": 1204, "height": 2400`, `"from": "line", "start": 602, "joint": 4`, []float64{0, 604, 1204}},
	} {
		f := setOut(t, planOf(c.wall, `{"id": "E", "on": "w", "panel": "oak", `+c.run+`}`))
		var got []float64
		for _, p := range f.Pieces {
			got = append(got, p.Left)
		}
		if got = append(got, f.Pieces[len(f.Pieces)-1].Right); !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
		}
	}
	// On a leaf of 800 from 103 to 903 the middle is at 503.
	f := setOut(t, planOf(`"width": 2000, "height": 2400, "openings": {"d": {"kind": "door", "x": 100, "width": 806, "head": 2000, "leaf": {"width": 800, "height": 1990, "thickness": 40}}}`,
		`{"id": "L", "on": "w/d/leaf", "panel": "oak", "from": "middle"}`))
	if p := f.Pieces; len(p) != 2 || p[0].Left != 103 || p[0].Right != 503 || p[1].Right != 903 {
		t.Errorf("on a leaf: %v", p)
	}
}

func TestATaperIsOnTheSideWhereThePieceIsSawn(t *testing.T) {
	corners := func(xs ...float64) []facts.Point {
		return []facts.Point{{X: xs[0]}, {X: xs[1]}, {X: xs[2], Y: 2400}, {X: xs[3], Y: 2400}}
	}
	for _, c := range []struct {
		name, run, piece string
		want             []facts.Point
		excess           float64
	}{
		{"the last from the left", `"pieces": [{"id": "A"}, {"id": "B", "width": 400, "width_top": 390}]`, "B", corners(600, 1000, 990, 600), 0},
		{"the last from the left, wider at its top", `"pieces": [{"id": "A"}, {"id": "B", "width": 390, "width_top": 400}]`, "B", corners(600, 990, 1000, 600), 0},
		{"the first from the left", `"pieces": [{"id": "A", "width": 400, "width_top": 390}, {"id": "B"}]`, "A", corners(0, 400, 400, 10), 0},
		// As wide as its panel at the bottom: nothing is sawn off there, and still it leans at the wall's end.
		{"the first from the left, whole at its bottom", `"pieces": [{"id": "A", "width": 600, "width_top": 590}, {"id": "B"}]`, "A", corners(0, 600, 600, 10), 0},
		{"the first from the right", `"from": "right", "pieces": [{"id": "A", "width": 400, "width_top": 390}, {"id": "B"}]`, "A", corners(600, 1000, 990, 600), 0},
		{"the last from the right", `"from": "right", "pieces": [{"id": "A"}, {"id": "B", "width": 400, "width_top": 390}]`, "B", corners(0, 400, 400, 10), 0},
		// 420 and 410 are stated and 400 are free: 20 too wide, and the wall's end takes them off both ends.
		{"wider than what is free", `"pieces": [{"id": "A"}, {"id": "B", "width": 420, "width_top": 410}]`, "B", corners(600, 1000, 990, 600), 20},
		{"the only one, sawn on the right because it says so", `"pieces": [{"id": "A", "width": 600, "width_top": 580, "cut": "right"}]`, "A", corners(0, 600, 580, 0), 0},
		{"as wide at its top", `"pieces": [{"id": "A"}, {"id": "B", "width": 400, "width_top": 400}]`, "B", corners(600, 1000, 1000, 600), 0},
	} {
		f := setOut(t, planOf(`"width": 1000, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", `+c.run+`}`))
		p := find(t, f.Pieces, c.piece)
		if diff := cmp.Diff(c.want, p.Outline); diff != "" || *p.Excess != c.excess || !p.Ripped || p.Notched {
			t.Errorf("%s: %v too wide, ripped %t, notched %t; want - got +\n%s", c.name, *p.Excess, p.Ripped, p.Notched, diff)
		}
	}
}

// A start before the wall's end takes some of the first panel; no more than the rest of it is free.
func TestAWidthThatTheStartDoesNotLeaveIsTooWide(t *testing.T) {
	f := setOut(t, planOf(`"width": 1000, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "start": -140, "pieces": [{"id": "A", "width": 500}]}`))
	if p := f.Pieces[0]; p.Right != 460 || *p.Space != 460 || *p.Excess != 40 {
		t.Errorf("to %v, %v free, %v too wide; want 460, 460, 40", p.Right, *p.Space, *p.Excess)
	}
	// And a narrower one keeps the edge that its neighbour needs.
	f = setOut(t, planOf(`"width": 1000, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "start": -140, "pieces": [{"id": "A", "width": 400}, {"id": "B"}]}`))
	if j := f.Joints[0]; j.LeftMadeBy != "tongue" || j.X != 400 {
		t.Errorf("the joint at %v is made by %q, want a tongue at 400", j.X, j.LeftMadeBy)
	}
}

// Slats stand where the panel has them, turned or not.
func TestATurnedPanelHasItsSlatsMirrored(t *testing.T) {
	for _, c := range []struct {
		first, width int
		want         []string // spaces before the first slat, slats and what lies behind the last, from the left
	}{
		// 10, 50, ..., 570 to 598: two behind.
		{10, 600, []string{"2", "10"}},
		// 30, 70, ..., 550 to 578, and a part of one from 590 to 600, which turned stands first.
		{30, 600, []string{"0", "30"}},
	} {
		text := strings.Replace(planOf(`"width": 600, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "turned": true}]}`), `"first": 6`, fmt.Sprintf(`"first": %d`, c.first), 1)
		text = strings.Replace(text, `"thickness": 21,`, `"thickness": 21, "turnable": true,`, 1)
		p := setOut(t, text).Pieces[0]
		got := []string{fmt.Sprint(p.Pattern.Start), fmt.Sprint(600 - p.Pattern.End)}
		if !slices.Equal(got, c.want) {
			t.Errorf("first slat at %d: turned, %v before and behind, want %v", c.first, got, c.want)
		}
	}
}

func TestAPieceThatAnOpeningSwallowsIsNoPiece(t *testing.T) {
	// The door takes all of E2; numbers go on as if it were there.
	f := setOut(t, planOf(`"width": 1800, "height": 2000, "openings": {"d": {"kind": "door", "x": 550, "width": 700, "head": 2000}}`, plainRun))
	if want := []string{"E1", "E3"}; !slices.Equal(idsOf(f.Pieces), want) || f.Runs[0].Pieces != 2 {
		t.Errorf("pieces %q and %d in the run, want %q", idsOf(f.Pieces), f.Runs[0].Pieces, want)
	}
	if len(f.Joints) != 0 {
		t.Errorf("joints %q", idsOf(f.Joints))
	}
	for wall, run := range map[string]string{
		`"width": 1800, "height": 2000, "openings": {"d": {"kind": "door", "x": 0, "width": 1800, "head": 2000}}`:                                                                      plainRun,
		`"width": 1800, "height": 2400, "openings": {"d": {"kind": "door", "x": 0, "width": 1800, "head": 2000}}`:                                                                      `{"id": "E", "on": "w", "panel": "oak", "height": 2000}`,
		`"width": 1800, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 900, "y": 0}, {"x": 900, "y": 1000}, {"x": 1800, "y": 1000}, {"x": 1800, "y": 2400}, {"x": 0, "y": 2400}]`: `{"id": "E", "on": "w", "panel": "oak", "start": 1000, "height": 900}`,
	} {
		want := `/runs/0: nothing is left of the run "E": openings or the wall's outline take all of it`
		if got := misfits(t, planOf(wall, run)); got != want {
			t.Errorf("%s: got %q, want %q", run, got, want)
		}
	}
}

// Pieces drop into an opening, not into a pillar that stands before the wall.
func TestPiecesEndAtTheHeadOfAPillar(t *testing.T) {
	for kind, want := range map[string]float64{"pillar": 2000, "window": 1978} { // 2000 - 22
		f := setOut(t, planOf(`"width": 1800, "height": 2400, "openings": {"o": {"kind": "`+kind+`", "x": 600, "width": 600, "head": 2000}}`, `{"id": "E", "on": "w", "panel": "oak", "head_drop": 22}`))
		if got := find(t, f.Pieces, "E2").Bottom; got != want || (len(f.Headers) == 0) != (kind == "pillar") {
			t.Errorf("over a %s the piece ends at %v, want %v; %d heads", kind, got, want, len(f.Headers))
		}
	}
}

func TestTwoRunsMustNotLieOverEachOther(t *testing.T) {
	const over = `/runs/1: the runs "E" and "F" overlap: "F1" lies over "E1"`
	door := `, "openings": {"d": {"kind": "door", "x": 100, "width": 400, "head": 2000}}`
	for _, c := range []struct{ name, wall, first, second, want string }{
		{"side by side", "", `"pieces": [{"id": "E1"}]`, `"start": 600`, ""},
		{"0.01 over", "", `"pieces": [{"id": "E1"}]`, `"start": 599.99`, ""},
		{"0.02 over", "", `"pieces": [{"id": "E1"}]`, `"start": 599.98`, over},
		{"one above the other", "", `"height": 1000`, `"base": 1000`, ""},
		{"one 0.02 into the other", "", `"height": 1000`, `"base": 999.98`, over},
		{"in a gap between two courses", "", `"courses": [{"height": 1000}, {"gap": 200}]`, `"base": 1000, "height": 200`, ""},
		{"a little too high for it", "", `"courses": [{"height": 1000}, {"gap": 200}]`, `"base": 1000, "height": 201`, `/runs/1: the runs "E" and "F" overlap: "F1" lies over "E2.1"`},
		{"round the same door", door, `"pieces": [{"id": "E1"}]`, `"pieces": [{"id": "F1"}]`, over},
		{"one beside a door up to its head, one over it", door, `"height": 2000, "pieces": [{"id": "E1"}]`, `"base": 2000, "pieces": [{"id": "F1"}]`, ""},
	} {
		text := planOf(`"width": 1200, "height": 2400`+c.wall, `{"id": "E", "on": "w", "panel": "oak", `+c.first+`}, {"id": "F", "on": "w", "panel": "oak", `+c.second+`}`)
		if got := misfits(t, text); got != c.want {
			t.Errorf("%s: got %q, want %q", c.name, got, c.want)
		}
	}
	// E1 leans back from 400 to 390, F1 stands upright at 400; leaning over it to 401 E1 would lie on it.
	lean := planOf(`"width": 1000, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "width": 400, "width_top": 390, "cut": "right"}]},
		{"id": "F", "on": "w", "panel": "oak", "from": "right", "pieces": [{"id": "F1", "width": 600, "cut": "left"}]}`)
	if got := misfits(t, lean); got != "" {
		t.Errorf("with a leaning edge: %s", got)
	}
	deeper := strings.Replace(lean, `"width_top": 390`, `"width_top": 401`, 1)
	if got := misfits(t, deeper); got != over {
		t.Errorf("with an edge that leans over: %q, want %q", got, over)
	}
}

// Each run that lies over others is told once, and many of them take no longer than they are many.
func TestManyRunsThatLieOverEachOtherAreToldOnceEach(t *testing.T) {
	var runs []string
	for i := range 600 {
		runs = append(runs, fmt.Sprintf(`{"id": "R%d_", "on": "w", "panel": "oak"}`, i))
	}
	began := time.Now()
	got := strings.Split(misfits(t, planOf(`"width": 12000, "height": 2400`, strings.Join(runs, ", "))), "\n") // 600 x 20 pieces
	if len(got) != 599 {
		t.Errorf("%d misfits, want 599", len(got))
	}
	if took := time.Since(began); took > 2*time.Second {
		t.Errorf("it took %v", took)
	}
}
