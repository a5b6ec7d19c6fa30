package setout_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
	"trysquare/checker/swing"
)

func TestGapsStopAndLining(t *testing.T) {
	// Opening 768 x 2032, leaf 762 x 2024, 2 on its left and 6 below: 4 on its right, 2 above.
	h := doorPlan{width: 768, head: 2032, opening: `, "frame": {"stop": 12}, "lining": {"clad": true, "thickness": 9}`,
		runs: `{"id": "L", "on": "w/d/leaf", "panel": "p", "start": 5, "clear_top": 4}`}
	leaf := `"width": 762, "height": 2024, "thickness": 40, "side_gap": 2, "floor_gap": 6`
	h.leaf = leaf + `, "opens": "away", "hinges": {"side": "right"}`
	d := h.door(t)
	// Stop less gap less setback: 12 - 2 - 5, 12 - 4 - 0, 12 - 2 - 4. Gap and setback less strips: 2 + 5 - 9, 4 + 0 - 9, 2 + 4 - 9.
	wantFacts(t, "push side", "gaps", []facts.DoorGap{{Side: "left", Edge: "latch", Gap: 2, LapsStop: p(5.0), LiningGap: p(-2.0)},
		{Side: "right", Edge: "hinge", Gap: 4, LapsStop: p(8.0), LiningGap: p(-5.0)}, {Side: "head", Gap: 2, LapsStop: p(6.0), LiningGap: p(-3.0)}, {Side: "floor", Gap: 6}}, d.Gaps,
		"laps", p(8.0), d.LapsStop, "lining", p(-5.0), d.LiningGap, "latch", p(2.0), d.LatchGap, "hinge", p(4.0), d.HingeGap,
		"setbacks", []*float64{p(0.0), p(5.0)}, []*float64{d.Cladding.HingeSetback, d.Cladding.LatchSetback}, "push", p(20.0), d.PushCladding, "pull", p(0.0), d.PullCladding)
	none := (*float64)(nil)
	for _, c := range []struct {
		name, leaf, opening string
		laps, lining        *float64
	}{
		{"bare on the push side", `, "opens": "towards"`, h.opening, p(0.0), none},
		{"clad there from the room behind", `, "opens": "towards", "other_cladding": 12`, h.opening, none, none},
		{"no word of which way", ``, h.opening, none, none},
		{"no word of the stop", `, "opens": "away"`, `, "lining": {"clad": true, "thickness": 9}`, none, p(-5.0)},
		{"strips not said how thick", `, "opens": "away"`, `, "frame": {"stop": 12}, "lining": {"clad": true}`, p(8.0), none},
		{"no strips", `, "opens": "away"`, `, "frame": {"stop": 6}, "lining": {"clad": false, "thickness": 9}`, p(2.0), none}, // 6 - 4 - 0
	} {
		h.leaf, h.opening = leaf+c.leaf, c.opening
		d := h.door(t)
		wantFacts(t, c.name, "laps", c.laps, d.LapsStop, "lining", c.lining, d.LiningGap, "latch", none, d.LatchGap)
	}
}

func TestMasses(t *testing.T) {
	// 14.4 kg on 600 x 2400 are 10 kg/m²; 762 x (2024 - 24) are 1.524 m²: 15.24 kg. 22 + 1.76 + 15.24 = 39; + 20 % = 46.8, + 75 % = 68.25.
	h := smallLeaf(`, "mass": 22, "hardware": 1.76`)
	h.panel, h.runs = `"thickness": 20, "mass": 14.4`, `{"id": "L", "on": "w/d/leaf", "panel": "p", "base": 24}`
	leaf, panel := h.leaf, h.panel
	none := (*float64)(nil)
	for closer, want := range map[string]float64{"": 39, `, "closer": {"size": 2}`: 46.8, `, "closer": {"backcheck": true}`: 68.25} {
		h.leaf = leaf + closer
		d := h.door(t)
		wantFacts(t, "clad"+closer, "before", p(23.76), d.MassBefore, "cladding", p(15.24), d.Cladding.Mass, "area", 1.524, d.Cladding.Area,
			"after", p(39.0), d.MassAfter, "adjusted", p(want), d.AdjustedMass, "closer", p(2), d.CloserNeeded)
	}
	h.leaf, h.panel = leaf, `"thickness": 20`
	d := h.door(t)
	wantFacts(t, "panel's unsaid", "before", p(23.76), d.MassBefore, "cladding", none, d.Cladding.Mass, "after", none, d.MassAfter, "adjusted", none, d.AdjustedMass, "closer", (*int)(nil), d.CloserNeeded)
	h.leaf, h.panel = leaf+`, "other_cladding": 12`, panel
	wantFacts(t, "other face's unsaid", "after", none, h.door(t).MassAfter)
	d = smallLeaf("").door(t)
	wantFacts(t, "leaf's unsaid", "before", none, d.MassBefore, "after", none, d.MassAfter, "beyond", false, d.BeyondCloser)
	d = smallLeaf(`, "mass": 55, "closer": {"backcheck": true}`).door(t)
	wantFacts(t, "55 kg, backcheck", "adjusted", p(96.25), d.AdjustedMass, "closer", &facts.DoorCloser{Backcheck: true}, d.Closer)
}

func TestTheLeastCloserAndTheMassOfAGrade(t *testing.T) {
	for _, c := range []struct {
		width, mass float64
		size        int
	}{{926, 48, 3}, {926, 62, 4}, {750, 20, 1}, {750.1, 20, 2}, {700, 20.1, 2}, {950, 60, 3}, {951, 20, 4}, {700, 110, 6}, {1600, 160, 7}, {1600.1, 20, 0}, {900, 160.1, 0}} {
		h := doorPlan{width: c.width + 6, head: 2030, leaf: fmt.Sprintf(`"width": %v, "height": 2024, "thickness": 40, "mass": %v`, c.width, c.mass)}
		d := h.door(t)
		want := &c.size
		if c.size == 0 {
			want = nil
		}
		wantFacts(t, fmt.Sprint(c), "size", want, d.CloserNeeded, "beyond", c.size == 0, d.BeyondCloser)
	}
	for grade, mass := range map[int]*float64{1: p(20.0), 4: p(80.0), 7: p(160.0)} {
		d := smallLeaf(fmt.Sprintf(`, "hinges": {"side": "left", "grade": 11, "mass_grade": %d, "count": 3}`, grade)).door(t)
		wantFacts(t, "grade", "hinges", &facts.DoorHinges{Side: "left", Grade: p(11), MassGrade: &grade, Count: p(3), GradeMass: mass}, d.Hinges)
	}
}

func TestHeightsAndFurniture(t *testing.T) {
	// Floor gap 10, 8 of covering to come: 2 clear. The cladding begins at 10 + 250, 252 above the covering. Top of the leaf at 2030; head 2032.
	h := doorPlan{width: 768, head: 2032, runs: `{"id": "L", "on": "w/d/leaf", "panel": "p", "base": 250}`}
	leaf := `"width": 762, "height": 2020, "thickness": 40, "floor_gap": 10, "floor_covering": 8, "other_cladding": 12, "furniture": {"fits": 70, "handle": 45}`
	none := (*float64)(nil)
	for opens, ridged := range map[string]*float64{"away": p(252.0), "towards": nil} {
		h.leaf = leaf + `, "opens": "` + opens + `"`
		d := h.door(t)
		wantFacts(t, opens, "ridged", ridged, d.RidgedTo, "clear", 2.0, d.FloorClear, "lower", 0.0, d.HangsLower, "under the head", none, d.UnderHead,
			// 40 + 20 + 12 = 72, 2 more than fit; 45 - 20.
			"thickness", 72.0, d.ThicknessAfter, "spare", p(-2.0), d.FitsSpare, "handle", p(25.0), d.HandleClearance)
	}
	// A hatch: its sill at 900, its leaf 10 above that; what is clad below the sill is not over it.
	hatch := h
	hatch.opening, hatch.runs = `, "sill": 900`, `{"id": "E", "on": "w", "panel": "p", "height": 900}`
	hatch.leaf = `"width": 762, "height": 1120, "thickness": 40, "floor_gap": 910`
	d := hatch.door(t)
	wantFacts(t, "hatch", "gap", facts.DoorGap{Side: "floor", Gap: 10}, d.Gaps[3], "under the head", none, d.UnderHead)
	for run, want := range map[string]float64{"": 2, `, "head_drop": 22`: -20, `, "base": 2100`: 70} {
		h.runs = `{"id": "E", "on": "w", "panel": "p"` + run + `}`
		wantFacts(t, "run"+run, "under the head", p(want), h.door(t).UnderHead)
	}
}

func TestTheWallsCladdingBesideTheDoor(t *testing.T) {
	at := func(mm float64) *facts.DoorBeside { return &facts.DoorBeside{Thickness: 20, FromJamb: mm} }
	for _, c := range []struct {
		name, opening, run string
		x                  float64
		left, right        *facts.DoorBeside
	}{
		{"up to the jambs", "", "", 1000, at(0), at(0)},
		{"with a header that drops before the leaf", "", `, "head_drop": 30`, 1000, at(0), at(0)},
		{"an architrave that comes off", `, "frame": {"architrave": {"width": 60, "removed": true}}`, "", 1000, at(0), at(0)},
		{"one that stays", `, "frame": {"architrave": {"width": 60, "removed": false}}`, "", 1000, at(60), at(60)},
		{"one panel of 600, 400 off", "", `, "pieces": [{"id": "E1"}]`, 1000, at(400), nil},
		{"one panel of 600, 763 off", "", `, "pieces": [{"id": "E1"}]`, 1363, nil, nil},
		{"above the leaf only", "", `, "base": 2100`, 1000, nil, nil},
		// Its edge leans from 940 to 700 over 2400; the leaf stands from 3 to 2027 above the floor: 1000 - (940 - 0.3), 1000 - (700 + 202.7).
		{"leaning away from the jamb", "", `, "pieces": [{"id": "E1"}, {"id": "E2", "width": 340, "width_top": 100, "cut": "right"}]`, 1000, at(60.3), nil},
		{"leaning towards it", "", `, "pieces": [{"id": "E1"}, {"id": "E2", "width": 100, "width_top": 340, "cut": "right"}]`, 1000, at(97.3), nil},
		// Its edge leans from 3000 - 600 - 340 = 2060 to 2300; the jamb is at 1200 + 768, the leaf 3 above the floor: 2060.3 - 1968.
		{"leaning away on the right", "", `, "from": "right", "pieces": [{"id": "E1"}, {"id": "E2", "width": 340, "width_top": 100, "cut": "left"}]`, 1200, nil, at(92.3)},
	} {
		h := smallLeaf("")
		h.x, h.opening, h.runs = c.x, c.opening, `{"id": "E", "on": "w", "panel": "p"`+c.run+`}`
		d := h.door(t)
		wantFacts(t, c.name, "left", c.left, d.BesideLeft, "right", c.right, d.BesideRight)
	}
}

// randomDoor draws a door hinged on its left, and the same door seen in a mirror.
func randomDoor(t *rapid.T, opens string) (h, mirrored doorPlan) {
	mm := func(name string, least, most float64) float64 { return tenths(t, name, least, most) }
	width, gap, other := mm("width", 400, 1100), mm("hinge gap", 1, 8), mm("latch gap", 0, 8)
	side, far := "left", "right"
	stop := ""
	if rapid.Bool().Draw(t, "stop") || opens == "away" {
		stop = fmt.Sprintf(`, "stop": %v`, mm("stop", 5, 20))
	}
	arch := mm("architrave", 0.1, 40)
	frame := fmt.Sprintf(`, "frame": {"depth": %v, "architrave": {"width": %v, "removed": %t}%s}, "lining": {"clad": true, "thickness": %v}`,
		mm("depth", 90, 150), arch, rapid.Bool().Draw(t, "removed"), stop, mm("strips", 5, 20))
	setback, back := mm("start", 0, 30), rapid.Bool().Draw(t, "clad")
	leaf := fmt.Sprintf(`"width": %v, "height": 2000, "floor_gap": 20, "thickness": %v, "opens": "%s"`, width, mm("thickness", 30, 60), opens)
	proud, edge := mm("proud", -5, 15), mm("from edge", 0, 8)
	wall := mm("side wall", 20, 2000)
	make := func(side, from string, sideGap float64) doorPlan {
		out := doorPlan{width: to10th(width + gap + other), head: 2030, panel: `"thickness": 20, "mass": 10`, opening: frame}
		out.leaf = leaf + fmt.Sprintf(`, "side_gap": %v, "side_wall": %v, "hinges": {"side": "%s", "proud": %v, "from_edge": %v}`, sideGap, wall, side, proud, edge)
		out.runs = `{"id": "E", "on": "w", "panel": "p", "from": "` + from + `", "start": -111}`
		if back {
			out.runs += fmt.Sprintf(`, {"id": "L", "on": "w/d/leaf", "panel": "p", "from": "%s", "start": %v}`, from, setback)
		}
		return out
	}
	h, mirrored = make(side, side, gap), make(far, far, other)
	mirrored.x = to10th(3000 - 1000 - mirrored.width)
	return h, mirrored
}

func TestAMirroredDoorHasTheSameFacts(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		h, m := randomDoor(rt, rapid.SampledFrom([]string{"towards", "away"}).Draw(rt, "opens"))
		want, got := h.door(t), m.door(t)
		got.BesideLeft, got.BesideRight = got.BesideRight, got.BesideLeft
		got.Gaps[0], got.Gaps[1] = got.Gaps[1], got.Gaps[0]
		got.Gaps[0].Side, got.Gaps[1].Side, got.Hinges.Side = "left", "right", "left"
		if c := got.Cladding; c != nil {
			c.Left, c.Right = c.Right, c.Left
		}
		if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 0.011)); diff != "" {
			rt.Fatalf("as it is - mirrored +\n%s", diff)
		}
	})
}

// What the closed form says of the latch gap, the swing itself finds with a hair more and a hair less.
func TestTheLatchGapNeededIsTheOneThatTheSwingNeeds(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		h, _ := randomDoor(rt, "towards")
		d := h.door(t)
		need := d.Swing.LatchNeeded
		beside := swing.WallCladding{}
		if b := d.BesideRight; b != nil {
			beside = swing.WallCladding{Thickness: b.Thickness, Setback: b.FromJamb}
		}
		for _, by := range []float64{-0.02, 0.02} {
			door := swing.Door{LeafWidth: d.Width, LeafThickness: d.Thickness, AxisProud: *d.Hinges.Proud, AxisToHingeEdge: d.Hinges.FromEdge,
				HingeGap: *d.HingeGap, LatchGap: need + by, JambDepth: *d.FrameDepth, LatchPull: beside}
			if d.Cladding != nil {
				door.PullCladding = swing.LeafCladding{Thickness: d.Cladding.Thickness, HingeSetback: *d.Cladding.HingeSetback, LatchSetback: *d.Cladding.LatchSetback}
			}
			if e := door.Analyse(90).LatchEdge; e.Binds != (by < 0) {
				rt.Fatalf("a latch gap of %v %+v: %+v", need, by, e)
			}
		}
	})
}

func TestEveryLeafIsADoorOnce(t *testing.T) {
	f := setOut(t, planOf(`"width": 3000, "height": 2400, "openings": {
		"b": {"kind": "door", "x": 100, "width": 800, "head": 2000, "leaf": {"width": 790, "height": 1990, "thickness": 40}},
		"a": {"kind": "door", "x": 1000, "width": 800, "head": 2000, "leaf": {"width": 790, "height": 1990, "thickness": 40}},
		"c": {"kind": "window", "x": 2000, "width": 800, "sill": 900, "head": 2000}}`, plainRun))
	if got := idsOf(f.Doors); !slices.Equal(got, idsOf(f.Leaves)) || len(got) != 2 {
		t.Errorf("%q", got)
	}
	if d := f.Doors[0]; d.Opening != "w/a" || d.On != "w/a/leaf" || d.At != "/walls/w/openings/a/leaf" || math.Abs(d.Width-790) > 0 {
		t.Errorf("%+v", d)
	}
	if f := setOut(t, planOf(`"width": 3000, "height": 2400`, plainRun)); f.Doors == nil || len(f.Doors) != 0 {
		t.Errorf("without doors: %v", f.Doors)
	}
}
