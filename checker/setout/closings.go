package setout

import (
	"math"

	"trysquare/checker/facts"
	"trysquare/checker/planar"
)

// closings gives the pieces that fill what is left at the ends of walls.
func (s *setter) closings(f *facts.Facts) {
	f.Closings = []facts.Closing{}
	for _, l := range s.runs {
		if l.surface.leaf != nil {
			continue
		}
		for _, c := range l.courses {
			if len(c.cells) == 0 {
				continue
			}
			for _, side := range []string{"left", "right"} {
				outer := c.cells[0]
				if (side == "right") != l.run.FromRight() {
					outer = c.cells[len(c.cells)-1]
				}
				s.closing(f, l, outer, side, len(c.cells) > 1)
			}
		}
	}
}

// closing gives what a panel fills at an end of its wall, for each of its parts that stands there.
func (s *setter) closing(f *facts.Facts, l *laid, c *cell, side string, hasNeighbour bool) {
	w := l.surface.wall
	end, ok := endOf(w, side)
	if !ok {
		return
	}
	planned, cut, edge, kept := c.right, c.cutLeft, c.rightEdge, !c.cutRight // what is free for it, as planned
	if side == "right" {
		planned, cut, edge, kept = w.Width-c.left, c.cutRight, c.leftEdge, !c.cutLeft
	}
	scribed := c.spec != nil && c.spec.Scribed
	if l.run.From == side && !cut && !scribed {
		return // a whole panel that the run starts with: nothing is cut to the end
	}
	t := l.trueWidths(side, end, planned)
	if reached := c.right - c.left; reached < planned-near && !t.reachedBy(reached) {
		return
	}
	overlap := 0.0
	if hasNeighbour && kept && edge == "tongue" {
		overlap = l.run.Panel.Overlap
	}
	for _, p := range c.parts {
		if side == "left" && !same(p.left, c.left) || side == "right" && !same(p.right, c.right) {
			continue // an opening stands between it and the end
		}
		bottom, top := widthAt(c.shape, p.bottom), widthAt(c.shape, p.top)
		one := facts.Closing{About: p.about(p.id + " at the " + side + " end"), Piece: p.id, Run: l.run.ID, End: side,
			PlannedBottom: round(bottom), PlannedTop: round(top), Scribed: scribed, Parallel: same(bottom, top) && !scribed,
			RestsOn: t.rests, Overlap: round(overlap), InView: p.inView(),
			TrueFloor: rounded(t.at[0]), TrueMiddle: rounded(t.at[1]), TrueCeiling: rounded(t.at[2])}
		t.fill(&one, (p.bottom-end.foot)/(end.top-end.foot), (p.top-end.foot)/(end.top-end.foot), bottom, top, overlap)
		f.Closings = append(f.Closings, one)
	}
}

// widthAt gives how wide a panel is at a height.
func widthAt(p planar.Polygon, y float64) float64 {
	width := 0.0
	for _, t := range p.Trapezoids() {
		if y >= t.Bottom-near || width == 0 {
			left, right := t.At(y)
			width = right - left
		}
	}
	return width
}

// upEnd is where on a wall's end its three widths are taken, as shares of its height.
var upEnd = [3]float64{0, 0.5, 1}

// truth is what is left for a closing piece at the foot of the wall's end, half
// way up and at its top; nil where nothing tells.
type truth struct {
	at    [3]*float64
	rests int // measurements
}

// trueWidths works out what is left for a piece between its joint and an end of
// its wall, from what was measured; planned is what the drawing leaves.
//
// Leans count outwards: what a width gains from one height to another, both
// ends gain together.
func (l *laid) trueWidths(side string, end wallEnd, planned float64) truth {
	w := l.surface.wall
	other, _ := endOf(w, map[string]string{"left": "right", "right": "left"}[side])
	taken, nominal := widthsOf(w)
	base, count := -1, 0
	for i := range taken {
		// Where a shaped wall is less wide than its ends are apart, what was measured is no distance between them.
		if taken[i] != nil && (nominal[i] == nil || !same(*nominal[i], w.Width)) {
			taken[i] = nil
		}
		if taken[i] != nil {
			count++
			if base < 0 {
				base = i
			}
		}
	}
	share := l.shareAt(side)
	var t truth
	if base < 0 {
		if end.out == nil {
			return t
		}
		base = 0
		foot := w.Width - max(0, *end.out+orZero(other.out)) // the nominal width is the wall's at its widest
		taken[0] = &foot
	}
	here := planned + share*(*taken[base]-w.Width)
	set := func(i int, change float64) {
		v := here + change
		t.at[i] = &v
	}
	switch {
	case end.out != nil:
		for i := range upEnd {
			set(i, *end.out*(upEnd[i]-upEnd[base]))
		}
		if count == 3 {
			*t.at[1] += share * (*taken[1] - (*taken[0]+*taken[2])/2)
		}
	case other.out == nil && share == 0, count < 2 && share == 0:
		return t // the run counts from this end, and nothing tells how it leans
	default:
		for i := range upEnd {
			if taken[i] == nil {
				continue
			}
			change := *taken[i] - *taken[base]
			if other.out != nil {
				change -= *other.out * (upEnd[i] - upEnd[base])
			} else {
				change *= share
			}
			set(i, change)
		}
	}
	switch {
	case share > 0 && end.out != nil:
		t.rests = count + 1
	case share > 0 || end.out == nil:
		t.rests = count
	default:
		t.rests = 2 // the start, marked off the end itself, and the end's lean
	}
	return t
}

// shareAt gives how much of what a wall is wider or narrower than planned falls
// to the piece at one of its ends: none where the run counts from that end, half from the middle.
func (l *laid) shareAt(side string) float64 {
	switch from := l.run.From; {
	case from == "middle":
		return 0.5
	case from == side, from == "line" && side == "left": // a line lies so far from the left end
		return 0
	}
	return 1
}

// known gives the heights at which the width is known, from the floor up.
func (t truth) known() []int {
	var out []int
	for i, v := range t.at {
		if v != nil {
			out = append(out, i)
		}
	}
	return out
}

// reachedBy says whether a piece of a width comes to the end somewhere.
func (t truth) reachedBy(width float64) bool {
	for _, i := range t.known() {
		if width >= *t.at[i]-near {
			return true
		}
	}
	return false
}

// up gives the width at a share of the end's height, in a straight line through the two known heights nearest to it.
func (t truth) up(share float64) float64 {
	known := t.known()
	a, b := known[0], known[1]
	if len(known) == 3 && share > upEnd[b] {
		a, b = known[1], known[2]
	}
	return *t.at[a] + (share-upEnd[a])/(upEnd[b]-upEnd[a])*(*t.at[b]-*t.at[a])
}

// fill puts into a fact what the true widths come to between a piece's lower and upper edge.
func (t truth) fill(one *facts.Closing, lower, upper, plannedBottom, plannedTop, overlap float64) {
	known := t.known()
	switch len(known) {
	case 0:
		return
	case 1:
		one.Narrowest = rounded(t.at[known[0]])
		return
	}
	bottom, top := t.up(lower), t.up(upper)
	least := min(bottom, top)
	for _, i := range known {
		if upEnd[i] > lower && upEnd[i] < upper {
			least = min(least, *t.at[i])
		}
	}
	taper := math.Abs(top - bottom)
	off := max(math.Abs(plannedBottom-bottom), math.Abs(plannedTop-top))
	ripBottom, ripTop := bottom+overlap, top+overlap
	one.TrueBottom, one.TrueTop, one.Narrowest, one.Taper, one.Off = rounded(&bottom), rounded(&top), rounded(&least), rounded(&taper), rounded(&off)
	one.RipBottom, one.RipTop = rounded(&ripBottom), rounded(&ripTop)
	switch {
	case *one.Taper == 0:
		one.Narrows = "nowhere"
	case top < bottom:
		one.Narrows = "upwards"
	default:
		one.Narrows = "downwards"
	}
}
