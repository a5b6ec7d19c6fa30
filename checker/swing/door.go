package swing

import "math"

// largestDoor is the largest measure of a door that is worked with, in mm.
const largestDoor = 1e6

// LeafCladding is what one face of a leaf carries.
type LeafCladding struct {
	Thickness    float64 // mm; 0 for none
	HingeSetback float64 // mm from the leaf's hinge edge back to the cladding's; negative where it oversails the edge
	LatchSetback float64 // mm from the leaf's latch edge back to the cladding's; negative where it oversails the edge
}

// WallCladding is what one face of the wall carries on one side of the opening.
type WallCladding struct {
	Thickness float64 // mm; 0 for none
	Setback   float64 // mm from the jamb's face back to the cladding's edge, away from the opening; negative where it stands into the opening
}

// Door is a hung leaf with what stands round it, in mm, in plan with the axis
// of the hinges (o) at the origin, the closed leaf along +x and the pull side,
// towards which it opens anticlockwise, at +y. A door hinged on the other side
// is the same seen in a mirror.
//
//	  #                   ^ y         pull side
//	  #                   |
//	S # +-----------+     o- - - - - - > x                     +-----------+
//	i # | HingePull |         +----------------------+         | LatchPull |
//	d # |           |         |     PullCladding     |         |           |
//	e # #################  +----------------------------+  #################
//	W #   wall     jamb #  |            leaf            |  # jamb     wall
//	a # #################  +----------------------------+  #################
//	l # #################------+  +--------------+  +------#################
//	l # ################# stop |  | PushCladding |  | stop #################
//	  # #################------+  +--------------+  +------#################
//	    #################--------+                +--------#################
//	    ################# lining |                | lining #################
//	    #################--------+                +--------#################
//	    | HingePush |                push side                 | LatchPush |
//	    +-----------+                                          +-----------+
//
// From left to right: the jamb's face, HingeGap, the leaf's hinge edge at x =
// AxisToHingeEdge, LeafWidth, its latch edge, LatchGap, the jamb's face.
type Door struct {
	LeafWidth     float64 // mm
	LeafThickness float64 // mm

	AxisProud       float64 // mm that the axis lies in front of the leaf's pull face; 0 in it, negative behind it
	AxisToHingeEdge float64 // mm from the axis along the closed leaf to its hinge edge; negative where the axis lies within the leaf's width

	HingeGap float64 // mm from the closed leaf's hinge edge to the jamb's face
	LatchGap float64 // mm from the closed leaf's latch edge to the jamb's face

	PullCladding, PushCladding LeafCladding

	PullReveal float64 // mm from the wall's pull face back to the closed leaf's pull face; 0 flush, negative where the leaf stands proud
	JambDepth  float64 // mm from the wall's pull face to its push face; 0 for as deep as leaf and stop need
	StopWidth  float64 // mm that the stop stands out from the jamb's face; 0 for none
	StopDepth  float64 // mm that the stop runs on from the closed leaf's push face; 0 for none

	LiningThickness float64 // mm that the lining stands out from the jamb's face between the stop and the wall's push face; 0 for none

	HingePull, LatchPull, HingePush, LatchPush WallCladding

	SideWall float64 // mm from the axis along -x to the face of a wall that stands at right angles on the pull side; 0 for none
}

// usable says whether every measure can be worked with and there is a leaf.
func (d Door) usable() bool {
	for _, v := range []float64{d.LeafWidth, d.LeafThickness, d.AxisProud, d.AxisToHingeEdge, d.HingeGap, d.LatchGap, d.PullReveal, d.JambDepth,
		d.StopWidth, d.StopDepth, d.LiningThickness, d.SideWall,
		d.PullCladding.Thickness, d.PullCladding.HingeSetback, d.PullCladding.LatchSetback,
		d.PushCladding.Thickness, d.PushCladding.HingeSetback, d.PushCladding.LatchSetback,
		d.HingePull.Thickness, d.HingePull.Setback, d.LatchPull.Thickness, d.LatchPull.Setback,
		d.HingePush.Thickness, d.HingePush.Setback, d.LatchPush.Thickness, d.LatchPush.Setback} {
		if !(math.Abs(v) <= largestDoor) { // so asked that what is not a number fails too
			return false
		}
	}
	return d.LeafWidth > 0 && d.LeafThickness > 0
}

func (d Door) latchEdge() float64  { return d.AxisToHingeEdge + d.LeafWidth }
func (d Door) hingeJamb() float64  { return d.AxisToHingeEdge - d.HingeGap }
func (d Door) latchJamb() float64  { return d.latchEdge() + d.LatchGap }
func (d Door) pullFace() float64   { return -d.AxisProud }
func (d Door) pushFace() float64   { return -d.AxisProud - d.LeafThickness }
func (d Door) wallFront() float64  { return d.pullFace() + d.PullReveal }
func (d Door) hasStop() bool       { return d.StopWidth > 0 && d.StopDepth > 0 }
func (d Door) liningFrom() float64 { return d.pushFace() - d.stopDepth() }

func (d Door) stopDepth() float64 {
	if d.hasStop() {
		return d.StopDepth
	}
	return 0
}

func (d Door) wallBack() float64 {
	if d.JambDepth > 0 {
		return d.wallFront() - d.JambDepth
	}
	return min(d.wallFront()-d.LeafThickness, d.liningFrom()) // there is always a jamb
}

// rect is the rectangle between two places in x and two in y, or nothing.
func rect(left, right, bottom, top float64) Body {
	if right <= left || top <= bottom {
		return nil
	}
	return Body{{left, bottom}, {right, bottom}, {right, top}, {left, top}}
}

// Bodies gives the closed leaf followed by its claddings, and what stands still
// by name: "hinge" or "latch" followed by "jamb" (with the wall that it stands
// in), "stop", "lining", "pull cladding" or "push cladding", and "side wall".
// What the door does not have is left out. A door with a leaf of no width or
// thickness, or a measure that is not a number or beyond 1 km, has no bodies.
// Walls reach a little further than the leaf does.
func (d Door) Bodies() (moving []Body, fixed map[string]Body) {
	fixed = map[string]Body{}
	if !d.usable() {
		return nil, fixed
	}
	for _, b := range []Body{
		rect(d.AxisToHingeEdge, d.latchEdge(), d.pushFace(), d.pullFace()),
		rect(d.AxisToHingeEdge+d.PullCladding.HingeSetback, d.latchEdge()-d.PullCladding.LatchSetback, d.pullFace(), d.pullFace()+d.PullCladding.Thickness),
		rect(d.AxisToHingeEdge+d.PushCladding.HingeSetback, d.latchEdge()-d.PushCladding.LatchSetback, d.pushFace()-d.PushCladding.Thickness, d.pushFace()),
	} {
		if b != nil {
			moving = append(moving, b)
		}
	}
	far := 0.0
	for _, b := range moving {
		for _, p := range b {
			radius, _ := p.polar()
			far = max(far, radius+1)
		}
	}
	left := func(edge float64) float64 { return min(edge, 0) - far }
	right := func(edge float64) float64 { return max(edge, 0) + far }
	front, back, hinge, latch := d.wallFront(), d.wallBack(), d.hingeJamb(), d.latchJamb()
	for name, b := range map[string]Body{
		"hinge jamb":          rect(left(hinge), hinge, back, front),
		"latch jamb":          rect(latch, right(latch), back, front),
		"hinge stop":          rect(hinge, hinge+d.StopWidth, d.liningFrom(), d.pushFace()),
		"latch stop":          rect(latch-d.StopWidth, latch, d.liningFrom(), d.pushFace()),
		"hinge lining":        rect(hinge, hinge+d.LiningThickness, back, d.liningFrom()),
		"latch lining":        rect(latch-d.LiningThickness, latch, back, d.liningFrom()),
		"hinge pull cladding": rect(left(hinge), hinge-d.HingePull.Setback, front, front+d.HingePull.Thickness),
		"latch pull cladding": rect(latch+d.LatchPull.Setback, right(latch), front, front+d.LatchPull.Thickness),
		"hinge push cladding": rect(left(hinge), hinge-d.HingePush.Setback, back-d.HingePush.Thickness, back),
		"latch push cladding": rect(latch+d.LatchPush.Setback, right(latch), back-d.LatchPush.Thickness, back),
	} {
		if b != nil {
			fixed[name] = b
		}
	}
	if d.SideWall > 0 {
		fixed["side wall"] = rect(-d.SideWall-far, -d.SideWall, front, max(front, 0)+far)
	}
	return moving, fixed
}
