package setout

import (
	"math"

	"trysquare/checker/facts"
	"trysquare/checker/swing"
)

const (
	quarter = 90.0  // degrees that every door must open by
	wide    = 180.0 // and the most that is looked at
)

// swing gives how the leaf turns, or what the plan would have to say for that.
func (d *door) swing() (*facts.DoorSwing, []string) {
	hung, unsaid := d.hung()
	if moving, _ := hung.Bodies(); len(unsaid) > 0 || len(moving) == 0 { // without bodies: of sizes that are no door's
		return nil, unsaid
	}
	a := hung.Analyse(quarter)
	out := &facts.DoorSwing{HingeEdge: edgeFacts(a.HingeEdge), LatchEdge: edgeFacts(a.LatchEdge), LatchNeeded: round(latchNeeded(hung))}
	a = hung.Analyse(wide)
	out.OpeningAngle = round(a.OpeningAngle)
	for _, e := range []swing.Edge{a.HingeEdge, a.LatchEdge} {
		if e.Binds && e.BindsAt <= a.OpeningAngle && out.FirstContact == nil {
			out.FirstContact, out.FirstContactOn = new(round(e.BindsAt)), e.BindsOn
		}
	}
	return out, unsaid
}

func edgeFacts(e swing.Edge) facts.DoorEdge {
	out := facts.DoorEdge{Clearance: round(e.Clearance), Angle: round(e.ClearanceAngle), To: e.ClearanceTo}
	if e.Binds {
		out.BindsAt = new(round(e.BindsAt))
	}
	return out
}

// sideWall gives how far from the hinge jamb's face a wall stands forward on the pull side. Where the leaf opens
// towards this face, a wall at an internal corner is one.
func (d *door) sideWall() *float64 {
	out, w := d.SideWall, d.Opening.Wall
	corner, _, _ := byHinges(d, w.LeftCorner, w.RightCorner)
	room, _, _ := byHinges(d, d.Opening.X, w.Width-d.Opening.Right())
	if d.Opens == "towards" && corner == "internal" && (out == nil || room < *out) {
		return &room
	}
	return out
}

// hung gives the door as package swing knows it, or what the plan leaves unsaid.
func (d *door) hung() (swing.Door, []string) {
	unsaid := []string{}
	need := func(said bool, what string) {
		if !said {
			unsaid = append(unsaid, what)
		}
	}
	need(d.Opens != "", "leaf/opens")
	need(d.Hinges != nil, "leaf/hinges")
	need(d.Hinges == nil || d.Hinges.Proud != nil, "leaf/hinges/proud")
	need(d.OtherCladding == 0, "the edges of leaf/other_cladding")
	// The bare leaf rests on its stop and only moves away, unless its heel turns into it.
	_, push, said := d.sides()
	meetsStop := said && push > 0 || d.Hinges != nil && d.Hinges.FromEdge < 0
	need(!meetsStop || d.Opening.Stop != nil, "frame/stop")
	if len(unsaid) > 0 {
		return swing.Door{}, unsaid
	}
	h := d.Hinges
	out := swing.Door{LeafWidth: d.Width, LeafThickness: d.Thickness, AxisProud: *h.Proud, AxisToHingeEdge: h.FromEdge,
		JambDepth: orZero(d.Opening.FrameDepth), StopWidth: orZero(d.Opening.Stop), StopDepth: push + 1} // 1: deeper than the cladding
	out.HingeGap, out.LatchGap, _ = d.edgeGaps()
	hinge, latch, _ := byHinges(d, wallCladding(d.besideLeft), wallCladding(d.besideRight))
	onLeaf, hingePlace, latchPlace := &out.PullCladding, &out.HingePull, &out.LatchPull
	if d.Opens == "away" {
		onLeaf, hingePlace, latchPlace = &out.PushCladding, &out.HingePush, &out.LatchPush
	}
	*hingePlace, *latchPlace = hinge, latch
	if c := d.clad; c != nil {
		onLeaf.Thickness = c.thickness
		onLeaf.HingeSetback, onLeaf.LatchSetback, _ = byHinges(d, c.left, c.right)
	}
	if w := d.sideWall(); w != nil {
		// There 0 means none; a wall in line with the axis or past it is as good as at it.
		out.SideWall = max(near, out.HingeGap-h.FromEdge+*w)
	}
	return out, unsaid
}

func wallCladding(b *beside) swing.WallCladding {
	if b == nil {
		return swing.WallCladding{}
	}
	return swing.WallCladding{Thickness: b.thickness, Setback: b.at}
}

// latchNeeded gives the least latch gap at which everything on the leaf passes
// the latch jamb and the cladding beside it. A corner passes a height that it
// turns through at sqrt(r² - height²) from the axis: furthest where the height
// is nearest to the axis'.
func latchNeeded(d swing.Door) float64 {
	moving, fixed := d.Bodies()
	edge := d.AxisToHingeEdge + d.LeafWidth
	least := 0.0
	for _, name := range []string{"latch jamb", "latch pull cladding"} {
		f, there := fixed[name]
		if !there {
			continue
		}
		low, high := f[0].Y, f[2].Y
		setback := f[0].X - edge - d.LatchGap
		for _, m := range moving {
			// The latch corner towards the push side: what lies in front of it has a smaller circle, or only moves away.
			if p := m[1]; p.Y < high {
				height := min(max(0, low, p.Y), high)
				least = max(least, math.Sqrt(max(0, p.X*p.X+p.Y*p.Y-height*height))-edge-setback)
			}
		}
	}
	return least
}
