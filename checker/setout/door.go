package setout

import (
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// door is a leaf in its opening with what lies on it and beside it. Lengths are
// exact; what leaves it is rounded.
type door struct {
	*plan.Leaf
	left, right, top       float64 // gaps
	clad                   *coat   // on this face; nil where it is bare
	besideLeft, besideOver *beside
	besideRight            *beside
}

// coat is the cladding on this face of a leaf.
type coat struct {
	runs                             []string
	thickness, left, right, low, top float64 // left and right: from the leaf's edges; low and top: above the floor
	area                             float64
	mass                             *float64
}

// beside is the nearest cladding on the wall: how far its edge lies from the
// jamb's face or, over the opening, above the floor.
type beside struct{ thickness, at float64 }

// doors gives the facts of every leaf.
func (s *setter) doors(f *facts.Facts) {
	f.Doors = []facts.Door{}
	for _, w := range s.plan.Walls {
		for _, o := range w.Openings {
			if o.Leaf != nil {
				f.Doors = append(f.Doors, s.door(o.Leaf).facts())
			}
		}
	}
}

func (s *setter) door(l *plan.Leaf) *door {
	o := l.Opening
	d := &door{Leaf: l, left: l.SideGap, right: o.Width - l.Width - l.SideGap, top: o.Head - l.FloorGap - l.Height}
	d.clad = s.coatOf(l)
	d.besideLeft, d.besideRight, d.besideOver = s.around(l)
	return d
}

// coatOf gathers the pieces on a leaf.
func (s *setter) coatOf(l *plan.Leaf) *coat {
	var c *coat
	kg := 0.0
	for _, p := range s.onSurface(l.Path()) {
		if c == nil {
			c = &coat{left: math.Inf(1), right: math.Inf(1), low: math.Inf(1), top: math.Inf(-1), mass: &kg}
		}
		if !slices.Contains(c.runs, p.run().ID) {
			c.runs = append(c.runs, p.run().ID)
		}
		c.thickness = max(c.thickness, p.panel().Thickness)
		c.left, c.right = min(c.left, p.left-p.surface.left), min(c.right, p.surface.right-p.right)
		c.low, c.top = min(c.low, p.bottom), max(c.top, p.top)
		c.area += p.poly.Area()
		if p.panel().Mass == 0 {
			c.mass = nil
		}
		kg += p.poly.Area() * p.panel().Mass / (p.panel().Width * p.panel().Height)
	}
	return c
}

// around gives the wall's cladding nearest to the leaf: at its heights beside
// the jambs, no further than its width, and over it.
func (s *setter) around(l *plan.Leaf) (left, right, over *beside) {
	o, low, high := l.Opening, l.FloorGap, l.FloorGap+l.Height
	nearer := func(old *beside, at, thickness float64) *beside {
		if old == nil || at < old.at-near || same(at, old.at) && thickness > old.thickness {
			return &beside{thickness, at}
		}
		return old
	}
	for _, p := range s.partsAcross(o.Wall.Name, o.X-l.Width, o.Right()+l.Width) {
		for _, t := range p.levels {
			from, to := min(t.BottomLeft, t.TopLeft), max(t.BottomRight, t.TopRight)
			if from < o.Right()-near && to > o.X+near { // it reaches over the opening, or under it
				if t.Bottom >= o.Sill-near {
					over = nearer(over, t.Bottom, p.panel().Thickness)
				}
				continue
			}
			if t.Top <= low+near || t.Bottom >= high-near {
				continue
			}
			for _, y := range []float64{max(t.Bottom, low), min(t.Top, high)} {
				begins, ends := t.At(y)
				if at := o.X - ends; to <= o.X+near && at <= l.Width {
					left = nearer(left, max(0, at), p.panel().Thickness)
				}
				if at := begins - o.Right(); from >= o.Right()-near && at <= l.Width {
					right = nearer(right, max(0, at), p.panel().Thickness)
				}
			}
		}
	}
	return left, right, over
}

// byHinges puts what is on the left and on the right in the order of the hinge
// and the latch edge; ok is false where the plan does not say.
func byHinges[T any](d *door, left, right T) (hinge, latch T, ok bool) {
	switch {
	case d.Hinges == nil:
		return hinge, latch, false
	case d.Hinges.Side == "right":
		return right, left, true
	}
	return left, right, true
}

// edgeGaps gives the gaps at the hinge and the latch edge: where both sides are the same, whatever the hinges.
func (d *door) edgeGaps() (hinge, latch float64, ok bool) {
	if d.Hinges == nil {
		return d.left, d.right, same(d.left, d.right)
	}
	return byHinges(d, d.left, d.right)
}

// sides gives the thickness of cladding on the pull and the push side. A leaf that is bare on both need not open anywhere.
func (d *door) sides() (pull, push float64, ok bool) {
	here, other := 0.0, d.OtherCladding
	if d.clad != nil {
		here = d.clad.thickness
	}
	if d.Opens == "away" {
		return other, here, true
	}
	return here, other, d.Opens == "towards" || here == 0 && other == 0
}

// pushRun gives the cladding on the push side; known is false where the plan does not say where its edges are.
func (d *door) pushRun() (c *coat, known bool) {
	_, push, ok := d.sides()
	switch {
	case !ok:
		return nil, false
	case push == 0:
		return nil, true
	case d.Opens == "away":
		return d.clad, true
	}
	return nil, false
}

// strips gives the thickness of strips on the reveal, 0 where there are none; ok is false where it is unsaid.
func (d *door) strips() (float64, bool) {
	if !d.Opening.LiningClad {
		return 0, true
	}
	return orZero(d.Opening.LiningThickness), d.Opening.LiningThickness != nil
}
