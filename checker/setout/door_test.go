package setout_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
)

// doorPlan is a plan with one door "d" in a wall "w" of 3000 x 2400; what is left empty the plan does not say.
type doorPlan struct {
	panel       string  // of "p": 600 x 2400; its thickness and mass
	x           float64 // of the left jamb, 1000 where it is 0
	width, head float64
	wall        string // more of the wall
	opening     string // more of the opening
	leaf        string
	runs        string
}

func (h doorPlan) door(t *testing.T) facts.Door {
	t.Helper()
	if h.panel == "" {
		h.panel = `"thickness": 20`
	}
	if h.x == 0 {
		h.x = 1000
	}
	if h.runs == "" { // a plan has a run; this one is far from the door
		h.runs = `{"id": "F", "on": "far", "panel": "p"}`
	}
	f := setOut(t, fmt.Sprintf(`{"title": "Larch Lane", "units": "mm",
		"panels": {"p": {"width": 600, "height": 2400, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 9}, %s}},
		"walls": {"far": {"width": 600, "height": 2400}, "w": {"width": 3000, "height": 2400%s,
			"openings": {"d": {"kind": "door", "x": %v, "width": %v, "head": %v%s, "leaf": {%s}}}}},
		"runs": [%s]}`, h.panel, h.wall, h.x, h.width, h.head, h.opening, h.leaf, h.runs))
	return find(t, f.Doors, "w/d/leaf")
}

// smallLeaf is a leaf of 762 x 2024 x 40 with gaps of 3 all round.
func smallLeaf(leaf string) doorPlan {
	return doorPlan{width: 768, head: 2030, leaf: `"width": 762, "height": 2024, "thickness": 40` + leaf}
}

// wideLeaf is a leaf of 926 x 2024 x 44 with gaps of 3 all round.
func wideLeaf(leaf string) doorPlan {
	return doorPlan{width: 932, head: 2030, leaf: `"width": 926, "height": 2024, "thickness": 44` + leaf}
}

const (
	doorLeaf    = `{"id": "L", "on": "w/d/leaf", "panel": "p"}`
	doorWall    = `{"id": "E", "on": "w", "panel": "p"}`
	towardsLeft = `, "opens": "towards", "hinges": {"side": "left", "proud": 0}`
	awayLeft    = `, "opens": "away", "hinges": {"side": "left", "proud": 0}`
)

func p[T any](v T) *T { return &v }

func degrees(radians float64) float64 { return math.Round(radians*180/math.Pi*100) / 100 }

// wantFacts compares facts by their names.
func wantFacts(t *testing.T, name string, pairs ...any) {
	t.Helper()
	for i := 0; i+2 < len(pairs); i += 3 {
		if diff := cmp.Diff(pairs[i+1], pairs[i+2]); diff != "" {
			t.Errorf("%s: %s: want - got +\n%s", name, pairs[i], diff)
		}
	}
}

func TestTheCladdingBindsAtTheHinges(t *testing.T) {
	// The leaf's cladding ends at y = 22 - 6 = 16 before the axis, its hinge edge at x = 3: the corner (3, 16), sqrt(265) from the axis. The
	// wall's begins 3 + 7 = 10 behind the axis. 79.38 to 127.90 degrees: 48.52.
	want := degrees(math.Acos(-10/math.Sqrt(265)) - math.Atan2(16, 3))
	if math.Abs(want-48.5) > 0.05 {
		t.Fatalf("worked out %v", want)
	}
	h := smallLeaf(`, "opens": "towards", "hinges": {"side": "left", "proud": 6}`)
	h.panel, h.opening = `"thickness": 22`, `, "frame": {"architrave": {"width": 7, "removed": false}}`
	h.runs = doorWall + `, {"id": "L", "on": "w/d/leaf", "panel": "p", "start": 3}`
	d := h.door(t)
	wantFacts(t, "pull side", "beside", p(facts.DoorBeside{Thickness: 22, FromJamb: 7}), d.BesideLeft, "setback", p(3.0), d.Cladding.HingeSetback,
		"hinge edge", facts.DoorEdge{Angle: want, To: "fixed cladding", BindsAt: &want}, d.Swing.HingeEdge,
		"first", p(want), d.Swing.FirstContact, "on", "fixed cladding", d.Swing.FirstContactOn, "opens", want, d.Swing.OpeningAngle)
	// At 90 degrees the corner has come to (-16, 3): clear from 16.0, which is a setback of 13, and by 0.25 with 13.25 (a corner of the wall at y = 16,
	// the leaf's face upright before it).
	for setback, binds := range map[string]bool{"12.9": true, "13": false, "13.25": false} {
		h.opening = `, "frame": {"architrave": {"width": ` + setback + `, "removed": false}}`
		e := h.door(t).Swing.HingeEdge
		if (e.BindsAt != nil) != binds {
			t.Errorf("setback %s: %+v", setback, e)
		}
		if setback == "13.25" {
			wantFacts(t, setback, "clearance", facts.DoorEdge{Clearance: 0.25, Angle: 90, To: "fixed cladding"}, e)
		}
	}
}

func TestTheLatchEdgePassesItsJamb(t *testing.T) {
	// sqrt(762² + 40²) - 762 = 1.05; 3 less 1.0492 are 1.95, when the corner is level with the axis: atan(40/762) = 3.00 degrees.
	d := smallLeaf(towardsLeft).door(t)
	wantFacts(t, "762 x 40", "needed", 1.05, d.Swing.LatchNeeded, "edge", facts.DoorEdge{Clearance: 1.95, Angle: 3, To: "jamb"}, d.Swing.LatchEdge,
		"hinge edge", facts.DoorEdge{Clearance: 3, To: "jamb"}, d.Swing.HingeEdge, "opens", 180.0, d.Swing.OpeningAngle, "first", (*float64)(nil), d.Swing.FirstContact)
	// With 20 on the push side, flush with the leaf's edge: sqrt(762² + 60²) - 762 = 2.36.
	h := smallLeaf(awayLeft)
	h.opening, h.runs = `, "frame": {"stop": 2}`, doorLeaf
	wantFacts(t, "clad on the push side", "needed", 2.36, h.door(t).Swing.LatchNeeded)
	// With an axis 6 proud the jamb ends 6 behind it: sqrt(762² + 46² - 6²) - 762 = 1.3635.
	wantFacts(t, "proud", "needed", 1.36, smallLeaf(`, "opens": "towards", "hinges": {"side": "left", "proud": 6}`).door(t).Swing.LatchNeeded)
	// Clad on the pull side and beside it, both 20, flush with leaf and jamb: the corner passes level with the axis, sqrt(762² + 46²) - 762 = 1.3872.
	h = smallLeaf(`, "opens": "towards", "hinges": {"side": "left", "proud": 6}`)
	h.runs = doorLeaf + "," + doorWall
	wantFacts(t, "proud and clad", "needed", 1.39, h.door(t).Swing.LatchNeeded)
	// With the wall's cladding 10 back it is the jamb again.
	h.opening = `, "frame": {"architrave": {"width": 10, "removed": false}}`
	wantFacts(t, "proud and clad, 10 back", "needed", 1.36, h.door(t).Swing.LatchNeeded)
}

func TestWhatStandsInTheWayOfTheSwing(t *testing.T) {
	side := smallLeaf(towardsLeft + `, "side_wall": 100`)
	corner := smallLeaf(towardsLeft)
	corner.x, corner.wall = 97, `, "ends": {"left": {"corner": "internal"}}`
	behind := smallLeaf(awayLeft)
	behind.x, behind.wall = corner.x, corner.wall
	right := smallLeaf(`, "opens": "towards", "hinges": {"side": "right", "proud": 0}`)
	right.x, right.wall = 3000-768-97, `, "ends": {"right": {"corner": "internal"}}`
	open := corner
	open.wall = `, "ends": {"left": {"corner": "external"}}`
	lapped := wideLeaf(awayLeft)
	lapped.opening, lapped.runs = `, "frame": {"stop": 12}`, doorLeaf
	heel := smallLeaf(`, "opens": "towards", "hinges": {"side": "left", "proud": 0, "from_edge": -30}`)
	heel.opening = `, "frame": {"stop": 12}`
	faced, behindFace := smallLeaf(towardsLeft), smallLeaf(awayLeft)
	faced.runs, behindFace.runs = doorWall, doorWall
	tight := faced
	tight.width, tight.leaf = 766, tight.leaf+`, "side_gap": 3`
	nearer, further := corner, corner
	nearer.leaf += `, "side_wall": 50`
	further.leaf += `, "side_wall": 150`
	atAxis := smallLeaf(`, "opens": "towards", "hinges": {"side": "left", "proud": 0, "from_edge": 5}, "side_wall": 0`)
	for _, c := range []struct {
		name     string
		doorPlan doorPlan
		opens    float64
		on       string
	}{
		// 100 from the jamb is 103 from the axis; the latch edge's corner, 762 from it, comes there at 97.77 degrees.
		{"side wall", side, degrees(math.Acos(-103.0 / 762)), "side wall"},
		{"internal corner, 97 + 3", corner, degrees(math.Acos(-100.0 / 762)), "side wall"},
		{"the same on the right", right, degrees(math.Acos(-100.0 / 762)), "side wall"},
		{"internal corner on the push side", behind, 180, ""},
		{"external corner", open, 180, ""},
		{"side wall nearer than the corner, 50 + 3", nearer, degrees(math.Acos(-53.0 / 762)), "side wall"},
		{"side wall further than the corner", further, degrees(math.Acos(-100.0 / 762)), "side wall"},
		// The jamb's face is 2 before the axis, and so is the side wall's: a leaf whose face is in line with the axis opens square.
		{"side wall at the axis", atAxis, 90, "side wall"},
		// The leaf's face, in line with the axis, meets the cladding's corner (-3, 20) where that is.
		{"cladding of 20 beside the hinges", faced, degrees(math.Atan2(20, -3)), "fixed cladding"},
		{"the same on the push side", behindFace, 180, ""},
		// The corner (762, -40) meets the jamb's face 763 from the axis, before the other edge binds.
		{"a latch gap of 1", tight, degrees(math.Atan2(40, 762) - math.Acos(763/math.Hypot(762, 40))), "jamb"},
		{"cladding that laps the stop", lapped, 0, "stop"},
		{"a heel that turns into the stop", heel, 0, "stop"},
	} {
		s := c.doorPlan.door(t).Swing
		if s == nil || math.Abs(s.OpeningAngle-c.opens) > 0.005 || s.FirstContactOn != c.on || (s.FirstContact == nil) != (c.on == "") {
			t.Errorf("%s: %+v, want %v on %q", c.name, s, c.opens, c.on)
		}
	}
	// Its corner (926 - s, -64) stays clear of the stop's corner (917, -44) where 926 - s is at most sqrt(917² + 44² - 64²) = 915.82.
	for start, binds := range map[string]bool{"10.17": true, "10.19": false} {
		lapped.runs = `{"id": "L", "on": "w/d/leaf", "panel": "p", "from": "right", "start": ` + start + `}`
		if e := lapped.door(t).Swing.LatchEdge; (e.BindsAt != nil) != binds {
			t.Errorf("%s back from the latch edge: %+v", start, e)
		}
	}
}

func TestTheSwingNeedsWhatThePlanSays(t *testing.T) {
	for _, c := range []struct {
		name, leaf, opening, runs string
		unsaid                    []string
	}{
		{"nothing of hinges", "", "", "", []string{"leaf/opens", "leaf/hinges"}},
		{"which way", `, "hinges": {"side": "left", "proud": 0}`, "", "", []string{"leaf/opens"}},
		{"the axis", `, "opens": "towards", "hinges": {"side": "left"}`, "", "", []string{"leaf/hinges/proud"}},
		{"the stop of a leaf clad on the push side", awayLeft, "", doorLeaf, []string{"frame/stop"}},
		{"the stop of one clad on the pull side is in nobody's way", towardsLeft, "", doorLeaf, []string{}},
		{"the stop before a heel", `, "opens": "towards", "hinges": {"side": "left", "proud": 0, "from_edge": -1}`, "", "", []string{"frame/stop"}},
		{"the edges of the other cladding", towardsLeft + `, "other_cladding": 12`, `, "frame": {"stop": 12}`, "", []string{"the edges of leaf/other_cladding"}},
	} {
		h := smallLeaf(c.leaf)
		h.opening, h.runs = c.opening, c.runs
		d := h.door(t)
		wantFacts(t, c.name, "unsaid", c.unsaid, d.SwingUnsaid, "swing", len(c.unsaid) == 0, d.Swing != nil)
	}
	d := smallLeaf(`, "side_gap": 2`).door(t)
	none := (*float64)(nil)
	wantFacts(t, "nothing of hinges", "hinges", (*facts.DoorHinges)(nil), d.Hinges, "latch", none, d.LatchGap, "hinge", none, d.HingeGap, "clear", none, d.ClearWidth, "face", none, d.FaceToStop)
}

func TestClearWidths(t *testing.T) {
	none := (*float64)(nil)
	for _, c := range []struct {
		name, leaf, opening, runs string
		clear, face               *float64
	}{
		{"926 + 3 - 12 - 44", towardsLeft, `"stop": 12`, "", p(873.0), p(873.0)},
		{"20 on the push face, on this side", awayLeft, `"stop": 12`, doorLeaf, p(853.0), p(853.0)},
		{"20 on the push face, on the other side", towardsLeft + `, "other_cladding": 20`, `"stop": 12`, "", p(853.0), p(853.0)},
		{"20 on the pull face", towardsLeft, `"stop": 12`, doorLeaf, p(873.0), p(873.0)},
		{"furniture", towardsLeft + `, "furniture": {"stands_out": 60}`, `"stop": 12`, "", p(813.0), p(873.0)},
		// The leaf turns 6 further into the opening, 2 less where the axis is 2 nearer to the jamb.
		{"an axis 6 proud", `, "opens": "away", "hinges": {"side": "right", "proud": 6, "from_edge": 2}`, `"stop": 12`, "", p(873.0), p(869.0)},
		// 929 - 60 - 60; 929 - 60 - 44.
		{"a stop wider than the leaf is thick", towardsLeft, `"stop": 60`, "", p(809.0), p(825.0)},
		{"strips of 15 on the reveal", towardsLeft, `"stop": 12}, "lining": {"clad": true, "thickness": 15`, "", p(870.0), p(870.0)},
		{"strips that are not said how thick", towardsLeft, `"stop": 12}, "lining": {"clad": true`, "", none, none},
		{"no word of the stop", towardsLeft, `"depth": 100`, "", none, none},
		{"no word of which way a clad leaf opens", `, "hinges": {"side": "left", "proud": 0}`, `"stop": 12`, doorLeaf, none, none},
		{"no word of hinges, the gaps the same", "", `"stop": 12`, "", p(873.0), none},
		{"no word of hinges, the gaps different", `, "side_gap": 2`, `"stop": 12`, "", none, none},
	} {
		h := wideLeaf(c.leaf)
		h.opening, h.runs = `, "frame": {`+c.opening+`}`, c.runs
		d := h.door(t)
		wantFacts(t, c.name, "clear width", c.clear, d.ClearWidth, "face to stop", c.face, d.FaceToStop)
	}
}
