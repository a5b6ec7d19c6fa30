package setout_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
)

// Six panels of 600 and a closing piece of 3640 - 3600 = 40, over the whole height of 2400.
func TestTrueWidthsOfAClosingPiece(t *testing.T) {
	type want struct {
		floor, middle, ceiling, narrowest, taper, off *float64
		narrows                                       string
		rests                                         int
	}
	for name, c := range map[string]struct {
		measured string
		want     want
	}{
		"widths": {`"widths": {"floor": 3640, "middle": 3638, "ceiling": 3636}`,
			want{some(40), some(38), some(36), some(36), some(4), some(4), "upwards", 3}},
		"leans inwards, widest at the floor": {`"out_of_plumb": {"right": -6}`, // 3640 at the floor, 3634 at the ceiling
			want{some(40), some(37), some(34), some(34), some(6), some(6), "upwards", 1}},
		"leans outwards, widest at the ceiling": {`"out_of_plumb": {"right": 6}`, // 3634 at the floor
			want{some(34), some(37), some(40), some(34), some(6), some(6), "downwards", 1}},
		"both ends lean alike": {`"widths": {"floor": 3640, "middle": 3640, "ceiling": 3640}, "out_of_plumb": {"left": 6, "right": 6}`,
			want{some(40), some(43), some(46), some(40), some(6), some(6), "downwards", 4}},
		"one width": {`"widths": {"floor": 3637}`, want{floor: some(37), narrowest: some(37), rests: 1}},
		// The left end's top lies 2 to the right, so the right end's lies 2 further than the width says: 36 + 2.
		"the other end's lean": {`"widths": {"floor": 3640, "ceiling": 3636}, "out_of_plumb": {"left": 2}`,
			want{some(40), nil, some(38), some(38), some(2), some(2), "upwards", 2}},
		"a width and the end's lean": {`"widths": {"floor": 3638}, "out_of_plumb": {"right": -6}`, // 38, 35, 32
			want{some(38), some(35), some(32), some(32), some(6), some(8), "upwards", 2}},
		"a width at the ceiling and the end's lean": {`"widths": {"ceiling": 3634}, "out_of_plumb": {"right": -6}`,
			want{some(40), some(37), some(34), some(34), some(6), some(6), "upwards", 2}},
		"a bow": {`"widths": {"floor": 3640, "middle": 3630, "ceiling": 3640}, "out_of_plumb": {"right": 0}`,
			want{some(40), some(30), some(40), some(30), some(0), some(0), "nowhere", 4}},
		// Tape and level disagree: 3636 - 3640 = -4, and -6 - 2 = -8. The end's own lean decides.
		"a lean that the widths do not bear out": {`"widths": {"floor": 3640, "middle": 3638, "ceiling": 3636}, "out_of_plumb": {"left": 2, "right": -6}`,
			want{some(40), some(37), some(34), some(34), some(6), some(6), "upwards", 4}},
		// Straight on from 40 and 38: 36 at the top.
		"two widths": {`"widths": {"floor": 3640, "middle": 3638}`,
			want{some(40), some(38), nil, some(36), some(4), some(4), "upwards", 2}},
		"no room":                     {`"widths": {"floor": 3598, "ceiling": 3600}`, want{some(-2), nil, some(0), some(-2), some(2), some(42), "downwards", 2}},
		"nothing":                     {``, want{}},
		"only the other end's lean":   {`"out_of_plumb": {"left": 2}`, want{}},
		"what says nothing of an end": {`"flatness": 3`, want{}},
	} {
		f := setOut(t, planOf(`"width": 3640, "height": 2400, "measured": {`+c.measured+`}`, plainRun))
		if len(f.Closings) != 1 { // the first panel is whole: it closes nothing
			t.Fatalf("%s: closing pieces %q, want one", name, idsOf(f.Closings))
		}
		g := f.Closings[0]
		got := want{g.TrueFloor, g.TrueMiddle, g.TrueCeiling, g.Narrowest, g.Taper, g.Off, g.Narrows, g.RestsOn}
		if diff := cmp.Diff(c.want, got, cmp.AllowUnexported(want{})); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
		plain := facts.Closing{About: facts.About{ID: "E7 at the right end", At: "/runs/0", On: "w"}, Piece: "E7", Run: "E", End: "right", PlannedBottom: 40, PlannedTop: 40, Parallel: true, InView: true}
		g.TrueFloor, g.TrueMiddle, g.TrueCeiling, g.TrueBottom, g.TrueTop, g.Narrowest, g.Taper, g.Off, g.RipBottom, g.RipTop, g.Narrows, g.RestsOn = nil, nil, nil, nil, nil, nil, nil, nil, nil, nil, "", 0
		if diff := cmp.Diff(plain, g); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
	}
}

const threeWidths = `"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3640, "middle": 3638, "ceiling": 3636}}`

// closed gives a run's closing pieces in few words: planned, true at the lower and upper edge, to mark, measurements.
func closed(t *testing.T, wall, run string) map[string][]any {
	t.Helper()
	out := map[string][]any{}
	v := func(p *float64) any {
		if p == nil {
			return nil
		}
		return *p
	}
	for _, c := range setOut(t, planOf(wall, `{"id": "E", "on": "w", "panel": "oak"`+run+`}`)).Closings {
		out[c.ID] = []any{c.PlannedBottom, c.PlannedTop, v(c.TrueBottom), v(c.TrueTop), v(c.RipBottom), v(c.RipTop), c.RestsOn, c.Parallel}
	}
	return out
}

func TestClosingPiecesOfAllKindsOfRuns(t *testing.T) {
	const spelled = `, "pieces": [{"id": "E1"}, {"id": "E2"}, {"id": "E3"}, {"id": "E4"}, {"id": "E5"}, {"id": "E6"}, `
	for name, c := range map[string]struct {
		wall, run string
		want      map[string][]any
	}{
		// At its right edge the piece keeps the tongue, which lies 5 in its neighbour: 40 + 5 and 36 + 5 on the board.
		"from the right": {threeWidths, `, "from": "right"`, map[string][]any{"E7 at the left end": {40., 40., 40., 36., 45., 41., 3, true}}},
		// The first piece is cut by 12, and the left end's top lies 4 into the room: 588 and 584. The last: 12 more, and
		// the left end's lean moves the right end on: 3640 - 3588 = 52, and 52 - 4 + 4. The first has its tongue: 593, 589.
		"cut to the end it starts from": {`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3640, "middle": 3638, "ceiling": 3636}, "out_of_plumb": {"left": 4}}`, `, "start": -12`,
			map[string][]any{"E1 at the left end": {588., 588., 588., 584., 593., 589., 2, true}, "E7 at the right end": {52., 52., 52., 52., 52., 52., 3, true}}},
		// The same, the left end's lean worked out: the right end leans 0, so of -4 all falls to the left.
		"lean of the start from widths": {`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3640, "ceiling": 3636}, "out_of_plumb": {"right": 0}}`, `, "start": -12`,
			map[string][]any{"E1 at the left end": {588., 588., 588., 584., 593., 589., 2, true}, "E7 at the right end": {52., 52., 52., 52., 52., 52., 3, true}}},
		"nothing tells how the start leans": {threeWidths, `, "start": -12`,
			map[string][]any{"E1 at the left end": {588., 588., nil, nil, nil, nil, 0, true}, "E7 at the right end": {52., 52., 52., 48., 52., 48., 3, true}}},
		// A joint at 1820, three panels each way: 20 left. 3640 - 3636 = 4 less is 2 at each end.
		"from the middle": {`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3636, "ceiling": 3636}}`, `, "from": "middle"`,
			map[string][]any{"E1 at the left end": {20., 20., 18., 18., 23., 23., 2, true}, "E8 at the right end": {20., 20., 18., 18., 18., 18., 2, true}}},
		// The line lies 1820 from the left end, which leans 3 into the room; the right piece takes all that the wall lacks, and the other's lean.
		"from a line": {`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3636, "ceiling": 3636}, "out_of_plumb": {"left": 3}}`, `, "from": "line", "start": 1820`,
			map[string][]any{"E1 at the left end": {20., 20., 20., 17., 25., 22., 2, true}, "E8 at the right end": {20., 20., 16., 19., 16., 19., 2, true}}},
		"tapered": {threeWidths, spelled + `{"id": "E7", "width": 40, "width_top": 36}]`, map[string][]any{"E7 at the right end": {40., 36., 40., 36., 40., 36., 3, false}}},
		"scribed": {threeWidths, spelled + `{"id": "E7", "scribed": true}]`, map[string][]any{"E7 at the right end": {40., 40., 40., 36., 40., 36., 3, false}}},
		"first piece scribed": {`"width": 1200, "height": 2400, "measured": {"out_of_plumb": {"left": 4}}`, `, "pieces": [{"id": "E1", "scribed": true}]`,
			map[string][]any{"E1 at the left end": {600., 600., 600., 596., 600., 596., 2, false}}},
		// From 100 to 2300 of 2400: 40 - 6 x 100/2400 = 39.75 and 40 - 6 x 2300/2400 = 34.25.
		"short of floor and ceiling": {`"width": 3640, "height": 2400, "measured": {"out_of_plumb": {"right": -6}}`, `, "base": 100, "clear_top": 100`,
			map[string][]any{"E7 at the right end": {40., 40., 39.75, 34.25, 39.75, 34.25, 1, true}}},
		"cut to what was measured": {`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3636, "ceiling": 3636}}`, spelled + `{"id": "E7", "width": 36}]`,
			map[string][]any{"E7 at the right end": {36., 36., 36., 36., 36., 36., 2, true}}},
		"short of the end":     {`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3636, "ceiling": 3636}}`, spelled + `{"id": "E7", "width": 35}]`, map[string][]any{}},
		"whole panels":         {`"width": 1200, "height": 2400, "measured": {"widths": {"floor": 1199, "ceiling": 1198}}`, ``, map[string][]any{"E2 at the right end": {600., 600., 599., 598., 599., 598., 2, true}}},
		"alone, with a tongue": {`"width": 500, "height": 2400, "measured": {"widths": {"floor": 499, "ceiling": 499}}`, `, "from": "right"`, map[string][]any{"E1 at the left end": {500., 500., 499., 499., 499., 499., 2, true}}},
		"in two courses, of which the upper is 2400 - 1000 high": {`"width": 3640, "height": 2400, "measured": {"out_of_plumb": {"right": -6}}`, `, "courses": [{"height": 1000}, {}]`,
			map[string][]any{"E1.7 at the right end": {40., 40., 40., 37.5, 40., 37.5, 1, true}, "E2.7 at the right end": {40., 40., 37.5, 34., 37.5, 34., 1, true}}},
		// 40 - 6 x 900/2400 = 37.75; 40 - 6 x 2000/2400 = 35.
		"a window at the end": {`"width": 3640, "height": 2400, "measured": {"out_of_plumb": {"right": -6}}, "openings": {"win": {"kind": "window", "x": 3600, "width": 40, "sill": 900, "head": 2000}}`, ``,
			map[string][]any{"E7 under at the right end": {40., 40., 40., 37.75, 40., 37.75, 1, true}, "E7 over at the right end": {40., 40., 35., 34., 35., 34., 1, true}}},
		"an opening up to the ceiling at the end": {`"width": 3640, "height": 2400, "measured": {"out_of_plumb": {"right": -6}}, "openings": {"d": {"kind": "door", "x": 3620, "width": 20, "head": 2400}}`, ``, map[string][]any{}},
		// The right end is 2000 high, and leans over that: 6 x 1000/2000 = 3 at half of it.
		"under a rake": {`"width": 3640, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 3640, "y": 0}, {"x": 3640, "y": 2000}, {"x": 0, "y": 2400}], "measured": {"out_of_plumb": {"right": -6}}`, `, "height": 1000`,
			map[string][]any{"E7 at the right end": {40., 40., 40., 37., 40., 37., 1, true}}},
		"a shaped end": {`"width": 3640, "height": 2400, "outline": [{"x": 0, "y": 0}, {"x": 3640, "y": 0}, {"x": 3630, "y": 2400}, {"x": 0, "y": 2400}], "measured": {"widths": {"floor": 3640}}`, ``, map[string][]any{}},
	} {
		if diff := cmp.Diff(c.want, closed(t, c.wall, c.run)); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
	}
}

// What hangs on a leaf closes no wall.
func TestALeafHasNoClosingPieces(t *testing.T) {
	f := setOut(t, planOf(`"width": 3000, "height": 2400, "openings": {"d": {"kind": "door", "x": 1000, "width": 768, "head": 2032, "leaf": {"width": 762, "height": 2024, "thickness": 40}}}, "measured": {"widths": {"floor": 3000}}`,
		`{"id": "L", "on": "w/d/leaf", "panel": "oak"}`))
	if len(f.Closings) != 0 || len(f.Surveys) != 0 {
		t.Errorf("closing pieces %q, surveys %q; want none", idsOf(f.Closings), idsOf(f.Surveys))
	}
}
