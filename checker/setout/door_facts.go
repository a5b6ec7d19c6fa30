package setout

import (
	"slices"

	"trysquare/checker/facts"
)

// Numbers of standards, each with how it was read.
var (
	// Mass in kg of a door of each door mass grade from 1 on: EN 1935:2002, quoted from another page.
	gradeMasses = []float64{20, 40, 60, 80, 100, 120, 160}
	// Greatest width in mm and mass in kg of a leaf for each power size from 1 on: EN 1154, table 1, quoted from another page.
	closerSizes = []closerSize{{750, 20}, {850, 40}, {950, 60}, {1100, 80}, {1250, 100}, {1400, 120}, {1600, 160}}
)

type closerSize struct{ width, mass float64 }

// What a closer adds to the mass that hinges are chosen by, as a share: EN 1935, reported, not read in the source.
const (
	closerAdds    = 0.20
	backcheckAdds = 0.75 // instead
)

func (d *door) facts() facts.Door {
	o := d.Opening
	out := facts.Door{About: facts.About{ID: d.Path(), At: d.At, On: d.Path()}, Opening: o.Wall.Name + "/" + o.Name,
		Width: round(d.Width), Height: round(d.Height), Thickness: round(d.Thickness), Core: d.Core, Opens: d.Opens,
		FrameDepth: rounded(o.FrameDepth), Stop: rounded(o.Stop), SideWall: rounded(d.SideWall), OtherCladding: round(d.OtherCladding),
		BesideLeft: d.besideLeft.facts(), BesideRight: d.besideRight.facts(),
		FloorCover: round(d.FloorCovering), Fits: rounded(d.Fits), Handle: rounded(d.Handle), StandsOut: round(d.StandsOut)}
	if o.LiningStated {
		out.Lining = &facts.DoorLining{Clad: o.LiningClad, Thickness: rounded(o.LiningThickness)}
	}
	if h := d.Hinges; h != nil {
		out.Hinges = &facts.DoorHinges{Side: h.Side, Proud: rounded(h.Proud), FromEdge: round(h.FromEdge), Grade: stated(h.Grade), MassGrade: stated(h.MassGrade), Count: stated(h.Count)}
		if h.MassGrade >= 1 && h.MassGrade <= len(gradeMasses) {
			out.Hinges.GradeMass = new(gradeMasses[h.MassGrade-1])
		}
	}
	if c := d.Closer; c != nil {
		out.Closer = &facts.DoorCloser{Size: stated(c.Size), Backcheck: c.Backcheck}
	}
	out.Cladding = d.cladding()
	if pull, push, ok := d.sides(); ok {
		out.PullCladding, out.PushCladding = new(round(pull)), new(round(push))
	}
	d.gaps(&out)
	d.heights(&out)
	d.masses(&out)
	here := 0.0
	if d.clad != nil {
		here = d.clad.thickness
	}
	after := d.Thickness + here + d.OtherCladding
	out.ThicknessAfter = round(after)
	if d.Fits != nil {
		out.FitsSpare = new(round(*d.Fits - after))
	}
	if d.Handle != nil {
		out.HandleClearance = new(round(*d.Handle - here))
	}
	out.ClearWidth, out.FaceToStop = d.ways()
	out.Swing, out.SwingUnsaid = d.swing()
	return out
}

// stated keeps a count of which 0 means unsaid unsaid.
func stated(n int) *int {
	if n == 0 {
		return nil
	}
	return &n
}

func (b *beside) facts() *facts.DoorBeside {
	if b == nil {
		return nil
	}
	return &facts.DoorBeside{Thickness: round(b.thickness), FromJamb: round(b.at)}
}

func (d *door) cladding() *facts.DoorCladding {
	c := d.clad
	if c == nil {
		return nil
	}
	out := &facts.DoorCladding{Runs: c.runs, Thickness: round(c.thickness), Left: round(c.left), Right: round(c.right),
		Bottom: round(c.low), Top: round(c.top), Area: squareMetres(c.area), Mass: rounded(c.mass)}
	if hinge, latch, ok := byHinges(d, c.left, c.right); ok {
		out.HingeSetback, out.LatchSetback = new(round(hinge)), new(round(latch))
	}
	return out
}

// gaps fills in the gaps round the closed leaf, and what of its push side stands in the way of stop and lining.
func (d *door) gaps(out *facts.Door) {
	leftEdge, rightEdge := "", ""
	if d.Hinges != nil {
		leftEdge, rightEdge = "hinge", "latch"
		if d.Hinges.Side == "right" {
			leftEdge, rightEdge = rightEdge, leftEdge
		}
	}
	if hinge, latch, ok := d.edgeGaps(); ok {
		out.HingeGap, out.LatchGap = new(round(hinge)), new(round(latch))
	}
	c, known := d.pushRun()
	strips, _ := d.strips()
	var setback coat // all 0 where there is nothing
	if c != nil {
		setback = coat{left: c.left, right: c.right, top: d.FloorGap + d.Height - c.top}
	}
	for _, g := range []struct {
		side, edge   string
		gap, setback float64
	}{{"left", leftEdge, d.left, setback.left}, {"right", rightEdge, d.right, setback.right}, {"head", "", d.top, setback.top}} {
		gap := facts.DoorGap{Side: g.side, Edge: g.edge, Gap: round(g.gap)}
		switch {
		case known && c == nil:
			gap.LapsStop = new(0.0)
		case known && d.Opening.Stop != nil:
			gap.LapsStop = new(round(max(0, *d.Opening.Stop-g.gap-g.setback)))
		}
		if c != nil && strips > 0 {
			gap.LiningGap = new(round(g.gap + g.setback - strips))
		}
		out.Gaps = append(out.Gaps, gap)
		if v := gap.LapsStop; v != nil && (out.LapsStop == nil || *v > *out.LapsStop) {
			out.LapsStop = v
		}
		if v := gap.LiningGap; v != nil && (out.LiningGap == nil || *v < *out.LiningGap) {
			out.LiningGap = v
		}
	}
	out.Gaps = append(out.Gaps, facts.DoorGap{Side: "floor", Gap: round(d.FloorGap - d.Opening.Sill)})
}

// heights fills in what is clear under the leaf and over it.
func (d *door) heights(out *facts.Door) {
	low, top := d.FloorGap, d.FloorGap+d.Height
	if c := d.clad; c != nil {
		out.HangsLower = round(max(0, low-c.low))
		low, top = min(low, c.low), max(top, c.top)
	}
	out.FloorClear = round(low - d.FloorCovering)
	if d.besideOver != nil {
		out.UnderHead = new(round(d.besideOver.at - top))
	}
	if c, _ := d.pushRun(); c != nil {
		out.RidgedTo = new(round(c.low - d.FloorCovering))
	}
}

// masses fills in what the leaf weighs and what that asks of hinges and closer.
func (d *door) masses(out *facts.Door) {
	if d.Mass == 0 {
		return
	}
	mass := d.Mass + d.Hardware
	out.MassBefore = new(round(mass))
	if d.clad != nil && d.clad.mass == nil || d.OtherCladding > 0 {
		return
	}
	if d.clad != nil {
		mass += *d.clad.mass
	}
	out.MassAfter = new(round(mass))
	adds := 0.0
	if d.Closer != nil {
		if adds = closerAdds; d.Closer.Backcheck {
			adds = backcheckAdds
		}
	}
	out.AdjustedMass = new(round(mass * (1 + adds)))
	size := 1 + slices.IndexFunc(closerSizes, func(c closerSize) bool { return d.Width <= c.width+near && *out.MassAfter <= c.mass })
	out.CloserNeeded, out.BeyondCloser = stated(size), size == 0
}

// ways gives the clear width by Approved Document M (its limits quoted, the
// formula reported) and, as ADA 404.2.3 measures it (quoted), from the face of
// the door to the stop.
func (d *door) ways() (clear, face *float64) {
	_, push, ok := d.sides()
	_, gap, gapSaid := d.edgeGaps()
	strips, stripsSaid := d.strips()
	if !ok || !gapSaid || !stripsSaid || d.Opening.Stop == nil {
		return nil, nil
	}
	stop := max(*d.Opening.Stop, strips)
	to := d.Width + gap - stop
	clear = new(round(to - max(d.Thickness+push, stop) - d.StandsOut))
	if h := d.Hinges; h != nil && h.Proud != nil {
		// At 90 degrees the push face lies as far past the axis as it does behind it when closed.
		face = new(round(h.FromEdge + to - *h.Proud - d.Thickness - push))
	}
	return clear, face
}
