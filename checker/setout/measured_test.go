package setout_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

func some(v float64) *float64 { return &v }

// noPlace leaves out where a fact stands in the plan.
var noPlace = cmpopts.IgnoreTypes(facts.About{})

func TestMeasurementsStandAgainstTheDrawing(t *testing.T) {
	f := setOut(t, planOf(`"width": 3640, "height": 2400, "measured": {"widths": {"floor": 3640, "middle": 3638, "ceiling": 3636},
		"heights": [{"x": 0, "height": 2400}, {"x": 1800, "height": 2397}, {"x": 3600, "height": 2403}, {"x": 3641, "height": 2400}],
		"out_of_plumb": {"left": 2, "right": -6}, "flatness": 4}`, plainRun))
	want := map[string]facts.Measurement{
		"w width at the floor":   {What: "width", Where: "floor", Nominal: some(3640), Measured: 3640, Differs: some(0)},
		"w width half way up":    {What: "width", Where: "middle", Nominal: some(3640), Measured: 3638, Differs: some(-2)},
		"w width at the ceiling": {What: "width", Where: "ceiling", Nominal: some(3640), Measured: 3636, Differs: some(-4)},
		"w height at 0 mm":       {What: "height", X: some(0), Nominal: some(2400), Measured: 2400, Differs: some(0)},
		"w height at 1800 mm":    {What: "height", X: some(1800), Nominal: some(2400), Measured: 2397, Differs: some(-3)},
		"w height at 3600 mm":    {What: "height", X: some(3600), Nominal: some(2400), Measured: 2403, Differs: some(3)},
		"w height at 3641 mm":    {What: "height", X: some(3641), Measured: 2400}, // beyond the wall
		// 2403 - 2397 = 6 over 3600 - 1800 = 1.8 m: 3.33 to a metre.
		"w ceiling out of level":   {What: "level", Measured: 6, PerMetre: some(3.33)},
		"w left end out of plumb":  {What: "plumb", Where: "left", Nominal: some(0), Measured: 2, Differs: some(2)},
		"w right end out of plumb": {What: "plumb", Where: "right", Nominal: some(0), Measured: -6, Differs: some(-6)},
		"w flatness":               {What: "flatness", Measured: 4},
	}
	if len(f.Measurements) != len(want) {
		t.Errorf("measurements %q, want %d", idsOf(f.Measurements), len(want))
	}
	for id, w := range want {
		if diff := cmp.Diff(w, find(t, f.Measurements, id), noPlace); diff != "" {
			t.Errorf("%s: want - got +\n%s", id, diff)
		}
	}
	for id, at := range map[string]string{"w width half way up": "/walls/w/measured/widths/middle", "w height at 1800 mm": "/walls/w/measured/heights/1",
		"w right end out of plumb": "/walls/w/measured/out_of_plumb/right", "w ceiling out of level": "/walls/w/measured/heights"} {
		if got := find(t, f.Measurements, id).At; got != at {
			t.Errorf("%s stands at %s, want %s", id, got, at)
		}
	}
}

// Of several pairs that differ alike, the nearest two make the steepest slope; two in one place make none.
func TestTheSteepestSlopeIsTaken(t *testing.T) {
	for _, c := range []struct {
		heights  string
		measured float64
		perMetre *float64
	}{
		{`{"x": 0, "height": 2400}, {"x": 2000, "height": 2396}, {"x": 3000, "height": 2400}`, 4, some(4)}, // 4 over 1 m, not over 2 m
		{`{"x": 0, "height": 2396}, {"x": 0, "height": 2400}`, 4, nil},
		{`{"x": 0, "height": 2400}, {"x": 500, "height": 2400}`, 0, some(0)},
	} {
		got := find(t, setOut(t, planOf(`"width": 3640, "height": 2400, "measured": {"heights": [`+c.heights+`]}`, plainRun)).Measurements, "w ceiling out of level")
		if diff := cmp.Diff(facts.Measurement{What: "level", Measured: c.measured, PerMetre: c.perMetre}, got, noPlace); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.heights, diff)
		}
	}
	if f := setOut(t, planOf(`"width": 3640, "height": 2400, "measured": {"heights": [{"x": 0, "height": 2400}]}`, plainRun)); len(f.Measurements) != 1 {
		t.Errorf("one height makes no level: %q", idsOf(f.Measurements))
	}
}

// What the outline has at the place is nominal; where it leaves that open, nothing is.
func TestAShapedWallIsMeasuredAgainstItsOutline(t *testing.T) {
	const measured = `, "measured": {"widths": {"floor": 3000, "middle": 3000, "ceiling": 3000}, "out_of_plumb": {"left": 1, "right": 1},
		"heights": [{"x": 0, "height": 2000}, {"x": 1000, "height": 2000}, {"x": 1500, "height": 2000}, {"x": 3000, "height": 2000}]}`
	// Nominal: floor, middle, ceiling; heights at 0, 1000, 1500, 3000; left and right end.
	for name, c := range map[string]struct {
		outline string
		height  float64
		want    []any
	}{
		// The ceiling falls by 600 over 3000: 2600 - 600/3 = 2400 at 1000, 2600 - 300 = 2300 at 1500.
		"raked":   {`{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2000}, {"x": 0, "y": 2600}`, 2600, []any{3000., 3000., 3000., 2600., 2400., 2300., 2000., 0., 0.}},
		"stepped": {`{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2000}, {"x": 1500, "y": 2000}, {"x": 1500, "y": 2400}, {"x": 0, "y": 2400}`, 2400, []any{3000., 3000., nil, 2400., 2400., nil, 2000., 0., 0.}},
		// The wall comes to a point at 3000.
		"leaning end": {`{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 2990, "y": 2400}, {"x": 0, "y": 2400}`, 2400, []any{3000., 2995., 2990., 2400., 2400., 2400., nil, 0., nil}},
		// A sloping floor: 300 at the right, 100 at 1000, 150 at 1500.
		"sloping floor": {`{"x": 0, "y": 0}, {"x": 3000, "y": 300}, {"x": 3000, "y": 2400}, {"x": 0, "y": 2400}`, 2400, []any{3000., 3000., 3000., 2400., 2300., 2250., 2100., 0., 0.}},
		// Eaves of 2000, a ridge of 2600 at 1500: 2000 + 600 x 1000/1500 = 2400.
		"gable": {`{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2000}, {"x": 1500, "y": 2600}, {"x": 0, "y": 2000}`, 2600, []any{3000., 3000., nil, 2000., 2400., 2600., 2000., 0., 0.}},
	} {
		f := setOut(t, planOf(fmt.Sprintf(`"width": 3000, "height": %v, "outline": [%s]`, c.height, c.outline)+measured, plainRun))
		var got []any
		for _, id := range []string{"width at the floor", "width half way up", "width at the ceiling", "height at 0 mm", "height at 1000 mm", "height at 1500 mm", "height at 3000 mm", "left end out of plumb", "right end out of plumb"} {
			m := find(t, f.Measurements, "w "+id)
			if m.Nominal == nil {
				got = append(got, nil)
				continue
			}
			got = append(got, *m.Nominal)
			if want := m.Measured - *m.Nominal; math.Abs(*m.Differs-want) > 1e-9 {
				t.Errorf("%s: %s differs by %v, want %v", name, m.ID, *m.Differs, want)
			}
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
	}
	// Against the rake: -2, +1 and -5, so 6 between 1000 and 3000: 3 to a metre.
	f := setOut(t, planOf(`"width": 3000, "height": 2600, "outline": [{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2000}, {"x": 0, "y": 2600}],
		"measured": {"heights": [{"x": 0, "height": 2598}, {"x": 1000, "height": 2401}, {"x": 3000, "height": 1995}]}`, plainRun))
	if diff := cmp.Diff(facts.Measurement{What: "level", Measured: 6, PerMetre: some(3)}, find(t, f.Measurements, "w ceiling out of level"), noPlace); diff != "" {
		t.Errorf("level of a raked ceiling: want - got +\n%s", diff)
	}
}

func TestASurveyCountsWhatWasMeasured(t *testing.T) {
	for _, c := range []struct {
		measured string
		want     facts.Survey
	}{
		{``, facts.Survey{About: facts.About{ID: "w", At: "/walls/w", On: "w"}}},
		{`, "measured": {}`, facts.Survey{About: facts.About{ID: "w", At: "/walls/w/measured", On: "w"}, Stated: true}},
		{`, "measured": {"widths": {"floor": 3640, "ceiling": 3638}, "heights": [{"x": 0, "height": 2400}, {"x": 0, "height": 2399}, {"x": 9, "height": 2400}], "out_of_plumb": {"right": 0}, "flatness": 3}`,
			facts.Survey{About: facts.About{ID: "w", At: "/walls/w/measured", On: "w"}, Stated: true, Widths: 2, Heights: 2, RightPlumb: true, FlatnessStated: true, Flatness: some(3)}},
	} {
		f := setOut(t, planOf(`"width": 3640, "height": 2400`+c.measured, plainRun))
		if diff := cmp.Diff([]facts.Survey{c.want}, f.Surveys); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.measured, diff)
		}
	}
	f := setOut(t, planOf(`"width": 1200, "height": 2400}, "bare": {"width": 900, "height": 2400, "measured": {"flatness": 1}`, plainRun))
	if len(f.Surveys) != 1 || len(f.Measurements) != 1 {
		t.Errorf("surveys of %q, want of w, which is clad; measurements %q, want one", idsOf(f.Surveys), idsOf(f.Measurements))
	}
}

// A wall with straight ends, of which the plan states what is enough to know the right one: the closing piece fills
// what lies between its joint, upright over the left end's foot, and that end.
func TestAClosingPieceFillsWhatIsLeft(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		foot := tenths(t, "width at the floor", 1900, 2300)
		left, right := tenths(t, "left lean", -20, 20), tenths(t, "right lean", -20, 20)
		at := func(share float64) float64 { return foot + (right-left)*share } // the wall's width
		enough := map[string]string{
			"floor and the end's lean": fmt.Sprintf(`"widths": {"floor": %v}, "out_of_plumb": {"right": %v}`, foot, right),
			"floor, ceiling, left":     fmt.Sprintf(`"widths": {"floor": %v, "ceiling": %v}, "out_of_plumb": {"left": %v}`, foot, at(1), left),
			"floor, ceiling, right":    fmt.Sprintf(`"widths": {"floor": %v, "ceiling": %v}, "out_of_plumb": {"right": %v}`, foot, at(1), right),
			"all":                      fmt.Sprintf(`"widths": {"floor": %v, "middle": %v, "ceiling": %v}, "out_of_plumb": {"left": %v, "right": %v}`, foot, at(0.5), at(1), left, right),
			"no width, so the nominal one at the widest": fmt.Sprintf(`"out_of_plumb": {"left": %v, "right": %v}`, left, right),
		}
		name := rapid.SampledFrom([]string{"floor and the end's lean", "floor, ceiling, left", "floor, ceiling, right", "all", "no width, so the nominal one at the widest"}).Draw(t, "stated")
		height, base, clearTop := tenths(t, "height", 2000, 2400), tenths(t, "base", 0, 50), tenths(t, "clear top", 0, 50)
		nominal := max(at(0), at(1))
		f := setOut(t, planOf(fmt.Sprintf(`"width": %v, "height": %v, "measured": {%s}`, nominal, height, enough[name]), fmt.Sprintf(`{"id": "E", "on": "w", "panel": "oak", "base": %v, "clear_top": %v}`, base, clearTop)))
		if ids := idsOf(f.Closings); len(ids) != 1 || ids[0] != "E4 at the right end" {
			t.Fatalf("closing pieces %q, want E4 at the right end", ids)
		}
		got := f.Closings[0]
		joint := 3 * 600.0
		rightEnd := func(share float64) float64 { return foot + right*share }
		bottom, top := rightEnd(base/height)-joint, rightEnd((height-clearTop)/height)-joint
		for what, v := range map[string][2]*float64{"lower edge": {got.TrueBottom, &bottom}, "upper edge": {got.TrueTop, &top},
			"narrowest": {got.Narrowest, some(min(bottom, top))}, "taper": {got.Taper, some(math.Abs(right) * (height - base - clearTop) / height)}} {
			if v[0] == nil || math.Abs(*v[0]-*v[1]) > 0.011 {
				t.Fatalf("%s stated: %s %v, want %v", name, what, v[0], *v[1])
			}
		}
	})
}
