package setout

import (
	"fmt"
	"math"
	"strconv"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// wallEnd is an end of a wall that is one upright line on the drawing.
type wallEnd struct {
	foot, top float64
	out       *float64 // how far its top lies outwards from its foot; nil where unsaid
}

// endOf gives a wall's end; ok is false where the outline has no single upright line there.
func endOf(w *plan.Wall, side string) (wallEnd, bool) {
	end := wallEnd{0, w.Height, nil}
	if w.Outline != nil {
		x, found := 0.0, 0
		if side == "right" {
			x = w.Width
		}
		for _, line := range outlineOf(w).Sides() {
			if same(line.From.X, x) && same(line.To.X, x) {
				end.foot, end.top = min(line.From.Y, line.To.Y), max(line.From.Y, line.To.Y)
				found++
			}
		}
		if found != 1 {
			return wallEnd{}, false
		}
	}
	if m := w.Measured; m != nil && side == "right" {
		end.out = m.PlumbRight
	} else if m != nil && m.PlumbLeft != nil {
		out := -*m.PlumbLeft
		end.out = &out
	}
	return end, true
}

// widthsOf gives what was measured across a wall at the floor, half way up and
// at the ceiling, each beside what the drawing has there.
func widthsOf(w *plan.Wall) (measured, nominal [3]*float64) {
	if w.Measured != nil {
		measured = [3]*float64{w.Measured.Floor, w.Measured.Middle, w.Measured.Ceiling}
	}
	if w.Outline == nil {
		return measured, [3]*float64{&w.Width, &w.Width, &w.Width}
	}
	outline := outlineOf(w)
	var floor, ceiling []planar.Side
	for _, side := range outline.Sides() {
		switch side.Faces {
		case "down":
			floor = append(floor, side)
		case "up":
			ceiling = append(ceiling, side)
		}
	}
	// Along a floor or ceiling of one line there is one width; along several it is anybody's guess which was taken.
	across := func(lines []planar.Side) *float64 {
		if len(lines) != 1 {
			return nil
		}
		width := math.Abs(lines[0].To.X - lines[0].From.X)
		return &width
	}
	return measured, [3]*float64{across(floor), extent(outline, w.Height/2), across(ceiling)}
}

// extent gives how wide a polygon is at a height from its leftmost to its
// rightmost place; nil where a step there leaves it open.
func extent(p planar.Polygon, y float64) *float64 {
	type level struct{ left, right float64 }
	under, over := level{math.Inf(1), math.Inf(-1)}, level{math.Inf(1), math.Inf(-1)}
	for _, t := range p.Trapezoids() {
		if y < t.Bottom-near || y > t.Top+near {
			continue
		}
		left, right := t.At(y)
		if y > t.Bottom+near {
			under.left, under.right = min(under.left, left), max(under.right, right)
		}
		if y < t.Top-near {
			over.left, over.right = min(over.left, left), max(over.right, right)
		}
	}
	a, b := under.right-under.left, over.right-over.left
	switch {
	case math.IsInf(a, -1) && math.IsInf(b, -1):
		return nil
	case math.IsInf(a, -1):
		return &b
	case math.IsInf(b, -1) || same(a, b):
		return &a
	}
	return nil
}

// nominalHeight gives a wall's height at x by the drawing; nil at a step, outside the wall, and where it comes to a point.
func nominalHeight(w *plan.Wall, x float64) *float64 {
	if x < -near || x > w.Width+near {
		return nil
	}
	if w.Outline == nil {
		return &w.Height
	}
	height := extent(outlineOf(w).Transposed(), x)
	if height != nil && *height <= near {
		return nil
	}
	return height
}

// places are the heights at which a width is taken, as the plan calls them and as a fitter does.
var places = [3]struct{ name, words string }{{"floor", "at the floor"}, {"middle", "half way up"}, {"ceiling", "at the ceiling"}}

// measurements gives what was measured of each wall against the drawing.
func (s *setter) measurements(f *facts.Facts) {
	f.Measurements = []facts.Measurement{}
	for _, w := range s.plan.Walls {
		m := w.Measured
		if m == nil {
			continue
		}
		add := func(id, at string, one facts.Measurement) {
			one.About = facts.About{ID: w.Name + " " + id, At: m.At + at, On: w.Name}
			f.Measurements = append(f.Measurements, one)
		}
		measured, nominal := widthsOf(w)
		for i, place := range places {
			if measured[i] != nil {
				add("width "+place.words, "/widths/"+place.name, against("width", place.name, nominal[i], *measured[i]))
			}
		}
		s.heightsAlong(w, add)
		for _, end := range []struct {
			side string
			lean *float64
		}{{"left", m.PlumbLeft}, {"right", m.PlumbRight}} {
			if end.lean == nil {
				continue
			}
			var upright *float64
			if _, ok := endOf(w, end.side); ok {
				upright = new(float64)
			}
			add(end.side+" end out of plumb", "/out_of_plumb/"+end.side, against("plumb", end.side, upright, *end.lean))
		}
		if m.Flatness != nil {
			add("flatness", "/flatness", facts.Measurement{What: "flatness", Measured: round(*m.Flatness)})
		}
	}
}

// against compares what was measured with what the drawing has.
func against(what, where string, nominal *float64, measured float64) facts.Measurement {
	out := facts.Measurement{What: what, Where: where, Nominal: rounded(nominal), Measured: round(measured)}
	if nominal != nil {
		differs := round(measured - *nominal)
		out.Differs = &differs
	}
	return out
}

// heightsAlong gives the heights along a wall, and how far they make the ceiling out of level.
func (s *setter) heightsAlong(w *plan.Wall, add func(id, at string, one facts.Measurement)) {
	type place struct{ x, differs float64 }
	var known []place
	count := map[string]int{}
	for i, h := range w.Measured.Heights {
		nominal := nominalHeight(w, h.X)
		one := against("height", "", nominal, h.Height)
		x := round(h.X)
		one.X = &x
		id := "height at " + strconv.FormatFloat(x, 'f', -1, 64) + " mm"
		if count[id]++; count[id] > 1 {
			id = fmt.Sprintf("%s, %d", id, count[id])
		}
		add(id, fmt.Sprintf("/heights/%d", i), one)
		if nominal != nil {
			known = append(known, place{h.X, h.Height - *nominal})
		}
	}
	if len(known) < 2 {
		return
	}
	most, apart := 0.0, 0.0
	for i, a := range known {
		for _, b := range known[:i] {
			d, x := math.Abs(a.differs-b.differs), math.Abs(a.x-b.x)
			if d > most+near || same(d, most) && x > near && (apart <= near || x < apart) {
				most, apart = d, x
			}
		}
	}
	level := facts.Measurement{What: "level", Measured: round(most)}
	if apart > near {
		slope := round(round(most) / round(apart) * 1000)
		level.PerMetre = &slope
	}
	add("ceiling out of level", "/heights", level)
}

// surveys gives what was measured of each wall that is clad.
func (s *setter) surveys(f *facts.Facts) {
	f.Surveys = []facts.Survey{}
	for _, w := range s.plan.Walls {
		if len(s.onSurface(w.Name)) == 0 {
			continue
		}
		one := facts.Survey{About: facts.About{ID: w.Name, At: w.At, On: w.Name}}
		if m := w.Measured; m != nil {
			one.At, one.Stated = m.At, true
			one.LeftPlumb, one.RightPlumb = m.PlumbLeft != nil, m.PlumbRight != nil
			one.Flatness, one.FlatnessStated = rounded(m.Flatness), m.Flatness != nil
			for _, width := range []*float64{m.Floor, m.Middle, m.Ceiling} {
				if width != nil {
					one.Widths++
				}
			}
			for i, h := range m.Heights {
				again := false
				for _, before := range m.Heights[:i] {
					again = again || same(before.X, h.X)
				}
				if !again {
					one.Heights++
				}
			}
		}
		f.Surveys = append(f.Surveys, one)
	}
}
