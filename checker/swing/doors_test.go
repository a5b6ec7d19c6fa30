package swing

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// doors draws doors of which about half bind somewhere.
var doors = rapid.Custom(func(t *rapid.T) Door {
	mm := func(name string, from, to int) float64 { // in half millimetres, so that some things fall together
		return float64(rapid.IntRange(2*from, 2*to).Draw(t, name)) / 2
	}
	some := func(name string, from, to int) float64 { // often none
		return max(0, mm(name, from-(to-from)/2, to))
	}
	leaf := func(name string) LeafCladding {
		return LeafCladding{some(name, 9, 30), mm(name+" hinge setback", -2, 25), mm(name+" latch setback", -2, 25)}
	}
	wall := func(name string) WallCladding { return WallCladding{some(name, 9, 30), mm(name+" setback", -5, 40)} }
	return Door{LeafWidth: mm("width", 300, 1100), LeafThickness: mm("thickness", 30, 60), AxisProud: mm("axis proud", -10, 15),
		AxisToHingeEdge: mm("axis to hinge edge", -8, 8), HingeGap: mm("hinge gap", 1, 8), LatchGap: mm("latch gap", 1, 8),
		PullCladding: leaf("pull"), PushCladding: leaf("push"), PullReveal: mm("reveal", -5, 10), JambDepth: some("jamb", 100, 200),
		StopWidth: some("stop width", 8, 25), StopDepth: mm("stop depth", 10, 30), LiningThickness: some("lining", 6, 25),
		HingePull: wall("hinge pull"), LatchPull: wall("latch pull"), HingePush: wall("hinge push"), LatchPush: wall("latch push"),
		SideWall: some("side wall", 50, 300)}
})

// resting says whether the closed leaf may lie against a fixture without being short of clearance.
func (d Door) resting(part int, name string) bool {
	if d.StopWidth > 0 && d.StopDepth > 0 {
		return part == 0 && (name == "hinge stop" || name == "latch stop")
	}
	return part == 0 && (name == "hinge lining" || name == "latch lining")
}

func TestAnalyseIsWhatASweepFinds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := doors.Draw(t, "door")
		most := float64(rapid.SampledFrom([]int{3, 8, 95}).Draw(t, "opened by"))
		a := d.Analyse(most)
		moving, fixed := d.Bodies()
		opens := most
		for i, e := range []Edge{a.HingeEdge, a.LatchEdge} {
			side := []string{"hinge ", "latch "}[i]
			contact, gap, slowest, enters := math.Inf(1), math.Inf(1), 0.0, false
			for name, f := range fixed {
				if name[:6] != side && (name != "side wall" || i == 1) {
					continue
				}
				for part, m := range moving {
					slowest = max(slowest, perStep(convex(m)))
					enters = enters || e.Binds && entered(convex(m), convex(f), e.BindsAt, most)
					if at, found := sweepContact(convex(m), convex(f), 0, most); found {
						contact = min(contact, at)
					} else if !d.resting(part, name) {
						gap = min(gap, sweepDistance(convex(m), convex(f), 0, most))
					}
				}
			}
			if e.Binds != enters || contact < e.BindsAt-1e-9 || !e.Binds && !math.IsInf(contact, 1) {
				t.Fatalf("%s edge: %+v, by the sweep at %v", side, e, contact)
			}
			if !e.Binds && (e.Clearance > gap+near || gap > e.Clearance+slowest) {
				t.Fatalf("%s edge: %+v, by the sweep %v", side, e, gap)
			}
			if e.Binds {
				opens = min(opens, e.BindsAt)
			}
			if !e.Binds && (e.BindsAt != 0 || e.BindsOn != "") || e.Binds && (e.Clearance != 0 || e.BindsOn == "") || e.ClearanceTo == "" {
				t.Fatalf("%s edge does not agree with itself: %+v", side, e)
			}
		}
		if a.OpeningAngle != opens {
			t.Fatalf("opens to %v, its edges to %v", a.OpeningAngle, opens)
		}
	})
}

// A door hinged on the other side, turning the other way: seen from its leaf the frame turns anticlockwise.
func TestTheMirroredDoorGivesTheSameNumbers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := doors.Draw(t, "door")
		most := float64(rapid.SampledFrom([]int{10, 90, 180}).Draw(t, "opened by"))
		a := d.Analyse(most)
		moving, fixed := d.Bodies()
		opens, left, right := most, math.Inf(-1), math.Inf(1)
		for i, e := range []Edge{a.HingeEdge, a.LatchEdge} {
			binds, gap := math.Inf(1), math.Inf(1)
			for name, f := range fixed {
				if (name[:6] == "latch ") != (i == 1) {
					continue
				}
				for part, m := range moving {
					angle, _, ok := FirstContact(f.mirrored(), m.mirrored(), 0, most)
					if ok {
						binds, gap = min(binds, angle), 0
					} else if g, _, _ := Clearance(f.mirrored(), m.mirrored(), 0, most); !d.resting(part, name) {
						gap = min(gap, g)
					}
				}
				// Its opening runs from the latch's fixtures on the left to the hinge's on the right.
				for _, p := range f.mirrored() {
					if i == 1 {
						left = max(left, p.X)
					} else {
						right = min(right, p.X)
					}
				}
			}
			opens = min(opens, binds)
			if e.Binds == math.IsInf(binds, 1) || e.Binds && math.Abs(binds-e.BindsAt) > 1e-4 || math.Abs(gap-e.Clearance) > 2*near {
				t.Fatalf("edge %d: %+v, mirrored it binds at %v with a gap of %v", i, e, binds, gap)
			}
		}
		for _, m := range moving {
			for _, p := range m.mirrored().turned(-90) {
				right = min(right, p.X)
			}
		}
		if width := max(0, right-left); math.Abs(width-a.ClearWidthAt90) > 1e-9 || math.Abs(opens-a.OpeningAngle) > 1e-4 {
			t.Fatalf("%+v, mirrored it opens to %v and leaves %v", a, opens, width)
		}
	})
}

func TestADoorOpensAsFarAsItsPartsDo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := doors.Draw(t, "door")
		moving, fixed := d.Bodies()
		var names []string
		for name := range fixed {
			names = append(names, name)
		}
		slices.Sort(names)
		var all []Body
		for _, name := range names {
			all = append(all, fixed[name])
		}
		least := 180.0
		for _, m := range moving {
			least = min(least, OpenAngle(m, all, 180))
		}
		a := d.Analyse(180)
		if math.Abs(least-a.OpeningAngle) > 1e-6 {
			t.Fatalf("opens to %v, its parts to %v", a.OpeningAngle, least)
		}
		if b := d.Analyse(180); a != b {
			t.Fatalf("%+v, and again %+v", a, b)
		}
		// Opened only so far, nothing binds; a little further, something does.
		if least > 1 && least < 180 {
			before, after := d.Analyse(least-1e-3), d.Analyse(min(180, least+0.1))
			if before.HingeEdge.Binds || before.LatchEdge.Binds || !after.HingeEdge.Binds && !after.LatchEdge.Binds {
				t.Fatalf("opens to %v; before that %+v, after %+v", least, before, after)
			}
		}
	})
}

// Less cladding never binds sooner, and never leaves less of the opening.
func TestLessCladdingIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := doors.Draw(t, "door")
		with := d.Analyse(120)
		d.PullCladding.Thickness, d.HingePush.Thickness = 0, 0
		less := d.Analyse(120)
		if less.OpeningAngle < with.OpeningAngle-1e-6 || less.ClearWidthAt90 < with.ClearWidthAt90-1e-9 ||
			less.HingeEdge.Clearance < with.HingeEdge.Clearance-2*near {
			t.Fatalf("with %+v, with less %+v", with, less)
		}
	})
}
