package swing

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// clad is a leaf of 762 by 40, clad on its pull side, beside clad wall. In front of the axis, 6 mm proud, the claddings end at y = 22 - 6 = 16; the
// moving corner is (3, 16), and the wall's cladding begins at x = -3 less its setback.
func clad(setback float64) Door {
	return Door{LeafWidth: 762, LeafThickness: 40, AxisProud: 6, HingeGap: 3, LatchGap: 3,
		PullCladding: LeafCladding{Thickness: 22, HingeSetback: 3, LatchSetback: 3}, HingePull: WallCladding{Thickness: 22, Setback: setback}}
}

// plain is a leaf of 926 by 44 that turns on the corner of its pull face, with stops of 12 by 25.
func plain() Door {
	return Door{LeafWidth: 926, LeafThickness: 44, HingeGap: 3, LatchGap: 3, StopWidth: 12, StopDepth: 25}
}

func TestTheHingeEdgeOfTheCladdingBinds(t *testing.T) {
	// The corner (3, 16) is sqrt(265) from the axis, at atan(16/3) = 79.38 degrees; at x = -10 it is at 127.9. The leaf opens by the difference.
	a := clad(7).Analyse(90)
	if e := a.HingeEdge; !e.Binds || e.BindsOn != "fixed cladding" || e.Clearance != 0 || e.ClearanceTo != "fixed cladding" || e.ClearanceAngle != e.BindsAt {
		t.Errorf("hinge edge: %+v", e)
	}
	closely(t, "to a tenth", a.HingeEdge.BindsAt, 48.5, 0.05)
	closely(t, "exactly", a.HingeEdge.BindsAt, degrees(math.Acos(-10/math.Sqrt(265))-math.Atan2(16, 3)), 1e-6)
	closely(t, "opens", a.OpeningAngle, a.HingeEdge.BindsAt, 0)
	// The latch edge: the leaf's corner (762, -46) passes the jamb's corner (765, -6).
	if a.LatchEdge.Binds || a.LatchEdge.ClearanceTo != "jamb" {
		t.Errorf("latch edge: %+v", a.LatchEdge)
	}
	closely(t, "latch edge", a.LatchEdge.Clearance, math.Hypot(765, 6)-math.Hypot(762, 46), 1e-6)
	closely(t, "where", a.LatchEdge.ClearanceAngle, degrees(math.Atan2(46, 762)-math.Atan2(6, 765)), 1e-6)
}

// At 90 degrees (3, 16) has come to (-16, 3): clear of that swing from 16.0, which is a setback of 13.
func TestTheHingeEdgeIsClearOfAQuarterTurnFrom16(t *testing.T) {
	for _, c := range []struct {
		setback, clearance float64
		binds              bool
	}{{12.99, 0, true}, {13, 0, false}, {13.25, 0.25, false}} {
		e := clad(c.setback).Analyse(90).HingeEdge
		if e.Binds != c.binds {
			t.Errorf("setback %v: %+v", c.setback, e)
		}
		closely(t, "clearance", e.Clearance, c.clearance, 1e-6)
	}
	if opens := clad(12.99).Analyse(90).OpeningAngle; opens < 88 || opens >= 90 {
		t.Errorf("opens to %v", opens)
	}
	// From 16.3 that corner is clear of any swing. Past a quarter turn it is the cladding's face that meets the wall cladding's corner, (-16.3, 16):
	// both stand at the same height over the axis, so that it does at 180 - 2 atan(16/16.3).
	e := clad(13.3).Analyse(180).HingeEdge
	closely(t, "face to corner", e.BindsAt, 180-2*degrees(math.Atan2(16, 16.3)), 1e-6)
	if !e.Binds || e.BindsOn != "fixed cladding" {
		t.Errorf("hinge edge: %+v", e)
	}
}

func TestTheLatchEdgeNeedsAGap(t *testing.T) {
	// Turning on the corner of its pull face, the leaf's far corner is sqrt(762² + 40²) from the axis, 1.05 more than 762.
	need := math.Hypot(762, 40) - 762
	closely(t, "least gap, to a hundredth", need, 1.05, 0.005)
	door := func(gap float64) Door { return Door{LeafWidth: 762, LeafThickness: 40, HingeGap: 3, LatchGap: gap} }
	a := door(3).Analyse(90)
	if a.LatchEdge.Binds || a.LatchEdge.ClearanceTo != "jamb" || a.OpeningAngle != 90 {
		t.Errorf("%+v", a)
	}
	closely(t, "clearance", a.LatchEdge.Clearance, 3-need, 1e-6)
	closely(t, "where", a.LatchEdge.ClearanceAngle, degrees(math.Atan2(40, 762)), 1e-6)
	if e := door(need + 1e-5).Analyse(90).LatchEdge; e.Binds {
		t.Errorf("a hair more than the least gap: %+v", e)
	}
	if e := door(need - 1e-5).Analyse(90).LatchEdge; !e.Binds {
		t.Errorf("a hair less than the least gap: %+v", e)
	}
	// With a gap of 1 the corner, atan(40/762) below x, meets the jamb's face where it comes to x = 763.
	a = door(1).Analyse(90)
	closely(t, "binds", a.LatchEdge.BindsAt, degrees(math.Atan2(40, 762)-math.Acos(763/math.Hypot(762, 40))), 1e-6)
	if a.LatchEdge.BindsOn != "jamb" || a.OpeningAngle != a.LatchEdge.BindsAt {
		t.Errorf("%+v", a)
	}
}

func TestClearWidthAt90ByHand(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Door)
		want   float64
	}{
		{"leaf 926, gap 3, stop 12, thickness 44", func(*Door) {}, 926 + 3 - 12 - 44},
		{"with 20 of cladding on the push face", func(d *Door) { d.PushCladding = LeafCladding{20, 20, 20} }, 853},
		{"cladding on the pull face is out of the way", func(d *Door) { d.PullCladding = LeafCladding{20, 20, 20} }, 873},
		{"an axis 6 proud moves the leaf in", func(d *Door) { d.AxisProud = 6 }, 867},
		{"without a stop", func(d *Door) { d.StopWidth = 0 }, 885},
		{"a lining that stands out less than the stop", func(d *Door) { d.LiningThickness, d.JambDepth = 10, 100 }, 873},
		{"a lining that stands out more", func(d *Door) { d.LiningThickness, d.JambDepth = 20, 100 }, 865},
		{"no room for a lining behind the stop", func(d *Door) { d.LiningThickness, d.JambDepth = 20, 69 }, 873},
		// On the hinge side the stop stands 60 - 3 = 57 past the axis, further than the leaf's 44.
		{"a wide stop on both sides", func(d *Door) { d.StopWidth = 60 }, 929 - 60 - 57},
		{"wall cladding set back", func(d *Door) { d.LatchPull = WallCladding{20, 5} }, 873},
		{"wall cladding 15 into the opening", func(d *Door) { d.LatchPush = WallCladding{20, -15} }, 929 - 15 - 44},
		{"stops that meet", func(d *Door) { d.StopWidth = 600 }, 0},
	} {
		d := plain()
		c.change(&d)
		closely(t, c.name, d.Analyse(90).ClearWidthAt90, c.want, 1e-9)
	}
}

func TestPushSideCladdingAndTheStop(t *testing.T) {
	for _, c := range []struct {
		name                  string
		hinge, latch          float64 // setbacks
		lapsHinge, lapsLatch  float64
		hingeBinds, latchBind bool
	}{
		// A stop of 12 behind a gap of 3 covers the leaf's last 9.
		{"laps the stop at the latch by 4", 20, 5, 0, 4, false, true},
		{"laps the stop at the hinge by 7", 2, 20, 7, 0, true, false},
		{"laps both, in front of the leaf's edges too", -1, -2, 10, 11, true, true},
		// The edge (917, -44) to (917, -64) moves towards the latch before it moves out.
		{"stands against the stop", 20, 9, 0, 0, false, true},
		// Its corner (926 - s, -64) stays clear of the stop's corner (917, -44) where 926 - s is at most sqrt(917² + 44² - 64²) = 915.82.
		{"just too wide", 20, 10.17, 0, 0, false, true},
		{"just clear", 20, 10.19, 0, 0, false, false},
	} {
		d := plain()
		d.PushCladding = LeafCladding{20, c.hinge, c.latch}
		a := d.Analyse(90)
		closely(t, c.name+": hinge lap", a.HingeEdge.LapsStop, c.lapsHinge, 1e-9)
		closely(t, c.name+": latch lap", a.LatchEdge.LapsStop, c.lapsLatch, 1e-9)
		closely(t, c.name+": lap", a.LapsStop, max(c.lapsHinge, c.lapsLatch), 1e-9)
		for _, e := range []struct {
			got  Edge
			want bool
		}{{a.HingeEdge, c.hingeBinds}, {a.LatchEdge, c.latchBind}} {
			if e.got.Binds != e.want || e.want && e.got.BindsOn != "stop" {
				t.Errorf("%s: %+v, want binding %t", c.name, e.got, e.want)
			}
		}
	}
	d := plain()
	d.StopDepth, d.PushCladding = 0, LeafCladding{20, 0, 0}
	if a := d.Analyse(90); a.LapsStop != 0 {
		t.Errorf("without a stop: %+v", a)
	}
}

// A closed leaf rests on its stop, and is no less free for it: its corner (926, -44) passes the jamb's corner (929, 0).
func TestALeafThatRestsOnItsStopIsClear(t *testing.T) {
	d := plain()
	want := Edge{Clearance: 929 - math.Hypot(926, 44), ClearanceAngle: degrees(math.Atan2(44, 926)), ClearanceTo: "jamb"}
	withLining := d
	withLining.StopWidth, withLining.LiningThickness, withLining.JambDepth = 0, 12, 100
	for name, d := range map[string]Door{"a stop": d, "a lining": withLining} {
		e := d.Analyse(120).LatchEdge
		closely(t, name, e.Clearance, want.Clearance, 1e-6)
		closely(t, name, e.ClearanceAngle, want.ClearanceAngle, 1e-6)
		if e.Binds || e.ClearanceTo != want.ClearanceTo {
			t.Errorf("%s: %+v", name, e)
		}
		// An axis 30 in from the hinge edge, its heel goes into the stop at once.
		d.AxisToHingeEdge = -30
		if e := d.Analyse(120).HingeEdge; !e.Binds || e.BindsAt > 1e-5 || e.BindsOn != name[2:] {
			t.Errorf("%s and a heel: %+v", name, e)
		}
	}
}

// Behind a thin stop of 3 the lining is nearer to the leaf than the jamb is, 5 less 1.05 for the leaf's corner.
func TestALeafMayBeNearestToTheLiningBehindItsStop(t *testing.T) {
	d := plain()
	d.LatchGap, d.StopDepth, d.LiningThickness, d.JambDepth = 5, 3, 12, 100
	if e, want := d.Analyse(90).LatchEdge, (Edge{Clearance: 3, ClearanceTo: "lining"}); e != want {
		t.Errorf("%+v, want %+v", e, want)
	}
}

// Closed, a leaf hung 10 in front of its wall is 10 from it, and nothing is nearer: the wall begins at y = -50, the leaf ends at y = -40.
func TestALeafInFrontOfItsWall(t *testing.T) {
	d := Door{LeafWidth: 762, LeafThickness: 40, HingeGap: -20, LatchGap: -20, PullReveal: -50}
	a := d.Analyse(90)
	want := Edge{Clearance: 10, ClearanceTo: "jamb"}
	if a.HingeEdge != want || a.LatchEdge != want {
		t.Errorf("%+v", a)
	}
	// The jambs' faces are at x = 20 and 742; the open leaf reaches to x = 40.
	closely(t, "clear width", a.ClearWidthAt90, 742-40, 1e-9)
}

func TestWhatElseBinds(t *testing.T) {
	d := Door{LeafWidth: 762, LeafThickness: 40, HingeGap: 3, LatchGap: 3, SideWall: 100}
	a := d.Analyse(180)
	// The latch edge's corner (762, 0) comes to x = -100.
	closely(t, "side wall", a.OpeningAngle, degrees(math.Acos(-100.0/762)), 1e-6)
	if a.HingeEdge.BindsOn != "side wall" {
		t.Errorf("%+v", a.HingeEdge)
	}
	d = plain()
	d.StopWidth, d.LiningThickness, d.JambDepth, d.PushCladding = 0, 12, 100, LeafCladding{20, 20, 5} // 12 - 3 - 5 = 4 over the lining
	if e := d.Analyse(90).LatchEdge; e.BindsOn != "lining" || e.BindsAt != 0 || e.LapsStop != 0 {
		t.Errorf("lining: %+v", e)
	}
	// A leaf 30 back in the reveal: its hinge edge's pull corner is on the axis, its pull face meets the jamb's front corner (-3, 30), which
	// stands at 95.7 degrees, when it is there.
	d = Door{LeafWidth: 762, LeafThickness: 40, HingeGap: 3, LatchGap: 3, PullReveal: 30}
	a = d.Analyse(180)
	closely(t, "reveal", a.OpeningAngle, degrees(math.Atan2(30, -3)), 1e-6)
	if a.HingeEdge.BindsOn != "jamb" {
		t.Errorf("%+v", a.HingeEdge)
	}
}

func TestBodiesStandWhereTheDrawingSays(t *testing.T) {
	d := Door{LeafWidth: 900, LeafThickness: 40, AxisProud: 5, AxisToHingeEdge: 2, HingeGap: 3, LatchGap: 4,
		PullCladding: LeafCladding{20, 6, 7}, PushCladding: LeafCladding{18, 14, 15}, PullReveal: 1, JambDepth: 120,
		StopWidth: 12, StopDepth: 25, LiningThickness: 10,
		HingePull: WallCladding{21, 8}, LatchPull: WallCladding{22, -9}, HingePush: WallCladding{23, 10}, LatchPush: WallCladding{24, 11},
		SideWall: 300}
	moving, fixed := d.Bodies()
	// The leaf is at x 2 to 902, y -45 to -5; the jambs' faces at -1 and 906; the wall from y = -4 to -124; the stops to -70.
	want := []Body{rect(2, 902, -45, -5), rect(8, 895, -5, 15), rect(16, 887, -63, -45)}
	if diff := cmp.Diff(want, moving); diff != "" {
		t.Errorf("moving: want - got +\n%s", diff)
	}
	const far = -1e4 // walls may end anywhere beyond the leaf's reach
	wantFixed := map[string]Body{
		"hinge jamb": rect(far, -1, -124, -4), "latch jamb": rect(906, -far, -124, -4), "hinge stop": rect(-1, 11, -70, -45), "latch stop": rect(894, 906, -70, -45),
		"hinge lining": rect(-1, 9, -124, -70), "latch lining": rect(896, 906, -124, -70),
		"hinge pull cladding": rect(far, -9, -4, 17), "latch pull cladding": rect(897, -far, -4, 18),
		"hinge push cladding": rect(far, -11, -147, -124), "latch push cladding": rect(917, -far, -148, -124), "side wall": rect(far, -300, -4, -far),
	}
	for name, b := range fixed {
		for i, p := range b {
			// The leaf's furthest corner is sqrt(902² + 45²) = 903.1 from the axis.
			if p.X < -904 {
				p.X = far
			}
			if p.X > 1000 {
				p.X = -far
			}
			if p.Y > 904 {
				p.Y = -far
			}
			b[i] = p
		}
		fixed[name] = b
	}
	if diff := cmp.Diff(wantFixed, fixed); diff != "" {
		t.Errorf("fixed: want - got +\n%s", diff)
	}
	if _, fixed := (Door{LeafWidth: 900, LeafThickness: 40}).Bodies(); len(fixed) != 2 {
		t.Errorf("a bare door has %v", fixed)
	}
}

func TestADoorThatCannotBeHasNoBodiesAndTheZeroAnalysis(t *testing.T) {
	for name, change := range map[string]func(*Door){
		"no width": func(d *Door) { d.LeafWidth = 0 }, "no thickness": func(d *Door) { d.LeafThickness = -1 },
		"not a number": func(d *Door) { d.PushCladding.LatchSetback = math.NaN() }, "without end": func(d *Door) { d.SideWall = math.Inf(1) },
		"too large": func(d *Door) { d.LatchPush.Setback = -2e6 },
	} {
		d := plain()
		change(&d)
		if moving, fixed := d.Bodies(); len(moving) != 0 || fixed == nil || len(fixed) != 0 {
			t.Errorf("%s: %v, %v", name, moving, fixed)
		}
		if a := d.Analyse(90); a != (Analysis{}) {
			t.Errorf("%s: %+v", name, a)
		}
	}
	for _, c := range []struct{ angle, want float64 }{{math.NaN(), 0}, {-5, 0}, {0, 0}, {95, 95}} {
		if got := plain().Analyse(c.angle).OpeningAngle; got != c.want {
			t.Errorf("opened by %v: %v, want %v", c.angle, got, c.want)
		}
	}
}
