package swing

import "math"

// Edge is what a swing does at one side of the opening.
type Edge struct {
	Clearance      float64 // mm, the least through the swing; 0 where something touches
	ClearanceAngle float64 // degrees at which it is first so small
	ClearanceTo    string  // what is nearest then: "jamb", "stop", "lining", "fixed cladding" or "side wall"

	Binds   bool    // whether the leaf or its cladding runs into something
	BindsAt float64 // degrees at which it first does; 0 where nothing binds
	BindsOn string  // what it runs into, named as in ClearanceTo; "" where nothing binds

	LapsStop float64 // mm by which the push side's cladding overlaps the stop of the closed door; 0 for not at all
}

// Analysis is how a door swings.
type Analysis struct {
	// HingeEdge is against what stands on the hinge side, the side wall included, LatchEdge against what stands on the latch side. A leaf that
	// rests on its stop, or without one on the lining, is not short of clearance there; its cladding may be.
	HingeEdge, LatchEdge Edge

	OpeningAngle   float64 // degrees up to the first contact, at most those asked for
	ClearWidthAt90 float64 // mm left between what stands out furthest on both sides, the leaf and its cladding at 90 degrees among it
	LapsStop       float64 // mm, the greater of both edges'
}

// fixture is a body that stands still, and how it is called in an analysis. Their order decides where two are met at once.
type fixture struct{ name, called string }

var (
	hingeFixtures = []fixture{{"hinge jamb", "jamb"}, {"hinge stop", "stop"}, {"hinge lining", "lining"},
		{"hinge pull cladding", "fixed cladding"}, {"hinge push cladding", "fixed cladding"}, {"side wall", "side wall"}}
	latchFixtures = []fixture{{"latch jamb", "jamb"}, {"latch stop", "stop"}, {"latch lining", "lining"},
		{"latch pull cladding", "fixed cladding"}, {"latch push cladding", "fixed cladding"}}
)

// Analyse opens the door from closed to an angle (degrees, 0 to 360). Each edge
// is followed through the whole swing, even where the other binds before. The
// clear width is worked out even where the door does not open to 90 degrees. A
// door that has no bodies gives the zero Analysis.
func (d Door) Analyse(maxAngle float64) Analysis {
	moving, fixed := d.Bodies()
	if len(moving) == 0 {
		return Analysis{}
	}
	_, maxAngle = span(0, maxAngle)
	a := Analysis{HingeEdge: d.edge(moving, fixed, hingeFixtures, maxAngle), LatchEdge: d.edge(moving, fixed, latchFixtures, maxAngle)}
	a.OpeningAngle = maxAngle
	for _, e := range []Edge{a.HingeEdge, a.LatchEdge} {
		if e.Binds {
			a.OpeningAngle = min(a.OpeningAngle, e.BindsAt)
		}
	}
	if c := d.PushCladding; c.Thickness > 0 && d.hasStop() {
		a.HingeEdge.LapsStop = max(0, d.StopWidth-d.HingeGap-c.HingeSetback)
		a.LatchEdge.LapsStop = max(0, d.StopWidth-d.LatchGap-c.LatchSetback)
		a.LapsStop = max(a.HingeEdge.LapsStop, a.LatchEdge.LapsStop)
	}
	a.ClearWidthAt90 = clearWidth(moving, fixed)
	return a
}

// edge follows everything that moves against the fixtures of one side.
func (d Door) edge(moving []Body, fixed map[string]Body, fixtures []fixture, maxAngle float64) Edge {
	e := Edge{Clearance: math.Inf(1)}
	for _, f := range fixtures {
		against, there := fixed[f.name]
		if !there {
			continue
		}
		for i, m := range moving {
			angle, _, binds := FirstContact(m, against, 0, maxAngle)
			if binds && (!e.Binds || angle < e.BindsAt-noise) {
				e.Binds, e.BindsAt, e.BindsOn = true, angle, f.called
			}
			rests := i == 0 && (f.called == "stop" || f.called == "lining" && !d.hasStop())
			if binds || rests {
				continue
			}
			gap, angle, _ := Clearance(m, against, 0, maxAngle)
			if gap < e.Clearance-noise || gap < e.Clearance+noise && angle < e.ClearanceAngle-noise {
				e.Clearance, e.ClearanceAngle, e.ClearanceTo = gap, angle, f.called
			}
		}
	}
	if e.Binds {
		e.Clearance, e.ClearanceAngle, e.ClearanceTo = 0, e.BindsAt, e.BindsOn
	}
	return e
}

// clearWidth is what the bodies leave between them across the opening, those that move at 90 degrees.
func clearWidth(moving []Body, fixed map[string]Body) float64 {
	left, right := math.Inf(-1), math.Inf(1)
	for _, b := range moving {
		for _, p := range b {
			left = max(left, -p.Y) // turned by 90 degrees (x, y) is (-y, x)
		}
	}
	for _, f := range hingeFixtures {
		for _, p := range fixed[f.name] {
			left = max(left, p.X)
		}
	}
	for _, f := range latchFixtures {
		for _, p := range fixed[f.name] {
			right = min(right, p.X)
		}
	}
	return max(0, right-left)
}
