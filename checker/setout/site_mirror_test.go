package setout_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

// corridor is a random plan of two clad walls that meet in a corner, each with what was measured of it.
type corridor struct {
	panel, pitch, slat, first float64
	edges                     [2]string // left and right
	walls                     [2]side   // the left one and the right one
	kind                      string
	named                     [2]bool // the walls that name the other
}

// side is one wall of a corridor with the run on it.
type side struct {
	width, start float64
	from         string
	middle       float64 // of a window; 0 where there is none
	widths       [3]*float64
	heights      map[float64]float64
	plumb        [2]*float64
	order        []int // in which pieces are fixed, from 1; nil where unsaid
}

func drawCorridor(t *rapid.T) corridor {
	c := corridor{pitch: tenths(t, "pitch", 30, 60), kind: rapid.SampledFrom([]string{"internal", "external"}).Draw(t, "corner")}
	c.slat = tenths(t, "slat", 5, c.pitch-5)
	c.first = tenths(t, "first", 0, c.pitch-c.slat)
	last := tenths(t, "space behind the last slat", 0, c.pitch-c.slat)
	c.panel = to10th(c.first + c.slat + last + c.pitch*float64(rapid.IntRange(5, 15).Draw(t, "slats")))
	for i := range c.edges {
		c.edges[i] = rapid.SampledFrom([]string{"recess", "tongue", "square"}).Draw(t, "edge")
		c.named[i] = i == 0 || rapid.Bool().Draw(t, "the other names it too")
	}
	// Even whole millimetres, so that nothing worked out of them lies half-way between two roundings.
	maybe := func(name string, least, most int) *float64 {
		if !rapid.Bool().Draw(t, name+" stated") {
			return nil
		}
		return some(2 * float64(rapid.IntRange(least/2, most/2).Draw(t, name)))
	}
	for i := range c.walls {
		w := &c.walls[i]
		w.width, w.from = 2*tenths(t, "width", 500, 2000), rapid.SampledFrom([]string{"left", "right", "middle"}).Draw(t, "from")
		w.start = tenths(t, "start", 1-c.panel, 300)
		if w.from == "middle" {
			w.start = tenths(t, "start", -400, 400)
		}
		if rapid.Bool().Draw(t, "window") {
			w.middle = tenths(t, "middle of the window", 250, w.width-250) + 0.03
		}
		for j := range w.widths {
			w.widths[j] = maybe("width there", int(w.width)-20, int(w.width)+20)
		}
		for j := range w.plumb {
			w.plumb[j] = maybe("plumb", -15, 15)
		}
		w.heights = map[float64]float64{}
		for range rapid.IntRange(0, 4).Draw(t, "heights") {
			w.heights[tenths(t, "place", 0, w.width)] = tenths(t, "height", 2380, 2420)
		}
		if w.from != "middle" && w.middle == 0 && rapid.Bool().Draw(t, "order stated") {
			n := int(math.Ceil((w.width-w.start)/c.panel - 1e-9))
			for p := range n {
				w.order = append(w.order, p+1)
			}
			w.order = rapid.Permutation(w.order).Draw(t, "order")
		}
	}
	return c
}

// mirrored gives the corridor as seen from behind its walls: the left wall is then the right one.
func (c corridor) mirrored() corridor {
	m := c
	slats := math.Floor((c.panel-c.first-c.slat)/c.pitch+1e-9) * c.pitch
	m.first = max(0, to10th(c.panel-c.first-c.slat-slats))
	m.edges = [2]string{c.edges[1], c.edges[0]}
	m.named = [2]bool{c.named[1], c.named[0]}
	negative := func(v *float64) *float64 {
		if v == nil {
			return nil
		}
		return some(-*v)
	}
	for i := range c.walls {
		w := c.walls[1-i]
		w.plumb = [2]*float64{negative(w.plumb[1]), negative(w.plumb[0])}
		switch w.from {
		case "left":
			w.from = "right"
		case "right":
			w.from = "left"
		default:
			w.start = -w.start
		}
		if w.middle > 0 {
			w.middle = w.width - w.middle
		}
		heights := map[float64]float64{}
		for x, h := range w.heights {
			heights[math.Round((w.width-x)*10)/10] = h
		}
		w.heights = heights
		m.walls[i] = w
	}
	return m
}

func (c corridor) facts(t *rapid.T) *facts.Facts {
	type object = map[string]any
	walls, runs, names := object{}, []object{}, [2]string{"a", "b"}
	for i, w := range c.walls {
		widths, plumb, heights := object{}, object{}, []object{}
		for j, name := range []string{"floor", "middle", "ceiling"} {
			if w.widths[j] != nil {
				widths[name] = *w.widths[j]
			}
		}
		for j, name := range []string{"left", "right"} {
			if w.plumb[j] != nil {
				plumb[name] = *w.plumb[j]
			}
		}
		for x, h := range w.heights {
			heights = append(heights, object{"x": x, "height": h})
		}
		slices.SortFunc(heights, func(a, b object) int { return int(10 * (a["x"].(float64) - b["x"].(float64))) })
		wall := object{"width": w.width, "height": 2400, "measured": object{"widths": widths, "out_of_plumb": plumb, "heights": heights}}
		if c.named[i] {
			end := []string{"right", "left"}[i]
			wall["ends"] = object{end: object{"corner": c.kind, "wall": names[1-i]}}
		}
		if w.middle > 0 {
			wall["openings"] = object{"win": object{"kind": "window", "x": w.middle - 200, "width": 400, "sill": 1200, "head": 1800}}
		}
		walls[names[i]] = wall
		run := object{"id": names[i], "on": names[i], "panel": "p", "from": w.from, "start": w.start}
		var order []string
		for _, n := range w.order {
			order = append(order, fmt.Sprintf("%s%d", names[i], n))
		}
		if order != nil {
			run["fixed_in"] = order
		}
		runs = append(runs, run)
	}
	b, err := json.Marshal(object{"title": "Larch Lane", "units": "mm", "walls": walls, "runs": runs,
		"panels": object{"p": object{"width": c.panel, "height": 2400, "thickness": 21, "backing": object{"thickness": 9}, "slats": object{"pitch": c.pitch, "width": c.slat, "first": c.first},
			"edges": object{"left": c.edges[0], "right": c.edges[1], "overlap": 5}}}})
	if err != nil {
		t.Fatal(err)
	}
	return setOut(t, string(b))
}

// seen writes down what was measured, what closes the walls, the corner and the order of fixing, as seen from the room or from behind.
func (c corridor) seen(f *facts.Facts, mirrored bool) []string {
	var out []string
	add := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	turn := func(side string) string {
		if other := map[string]string{"left": "right", "right": "left", "a": "b", "b": "a"}[side]; mirrored && other != "" {
			return other
		}
		return side
	}
	v := func(p *float64, sign float64) string {
		if p == nil {
			return "unsaid"
		}
		return fmt.Sprintf("%.2f", *p*sign+0)
	}
	width := map[string]float64{"a": c.walls[0].width, "b": c.walls[1].width}
	at := map[string]string{}
	for _, p := range f.Pieces {
		l, r := p.Left, p.Right
		if mirrored {
			l, r = width[p.On]-r, width[p.On]-l
		}
		at[p.ID] = fmt.Sprintf("%s %.2f..%.2f, %.2f..%.2f", turn(p.On), l+0, r+0, p.Bottom, p.Top)
	}
	for _, m := range f.Measurements {
		sign, x := 1.0, m.X
		if mirrored && m.What == "plumb" {
			sign = -1
		}
		if mirrored && x != nil {
			x = some(math.Round((width[m.On]-*x)*100) / 100)
		}
		add("%s %s %s at %s: %s, %s, %s, %s a metre", turn(m.On), m.What, turn(m.Where), v(x, 1), v(m.Nominal, 1), v(&m.Measured, sign), v(m.Differs, sign), v(m.PerMetre, 1))
	}
	for _, s := range f.Surveys {
		l, r := s.LeftPlumb, s.RightPlumb
		if mirrored {
			l, r = r, l
		}
		add("survey of %s: %d, %d, %t, %t", turn(s.On), s.Widths, s.Heights, l, r)
	}
	for _, k := range f.Closings {
		add("%s at the %s end: %.2f, %.2f; %s, %s, %s; %s, %s; narrowest %s, tapers %s %s, off %s; rests on %d, overlap %.2f", at[k.Piece], turn(k.End), k.PlannedBottom, k.PlannedTop,
			v(k.TrueFloor, 1), v(k.TrueMiddle, 1), v(k.TrueCeiling, 1), v(k.TrueBottom, 1), v(k.TrueTop, 1), v(k.Narrowest, 1), v(k.Taper, 1), k.Narrows, v(k.Off, 1), k.RestsOn, k.Overlap)
	}
	for _, k := range f.Corners {
		l, r, toL, toR := at[k.Left], at[k.Right], k.LeftDistance, k.RightDistance
		if mirrored {
			l, r, toL, toR = r, l, toR, toL
		}
		// What is hidden is of the left wall, whose panel runs into the corner; from behind that is the other wall.
		add("%s corner of %s and %s: %s and %s, gap %s, error %s, carried %t %.2f, covered %.2f", k.Kind, l, r, v(toL, 1), v(toR, 1), v(k.Gap, 1), v(k.GapError, 1), k.Comparable, k.CarriedOffset, k.Covered)
	}
	for _, i := range f.Installs {
		l, r := i.LeftMeets, i.RightMeets
		if mirrored {
			l, r = r, l
		}
		meets := func(b *facts.Beside) string {
			if b == nil {
				return "nothing"
			}
			return fmt.Sprintf("something, hooks %t", b.Interlocks)
		}
		text := fmt.Sprintf("fixed: %s interlocks %t, %d slats and %d in part", at[i.Piece], i.Interlocks, i.WholeSlats, i.PartSlats)
		w := c.walls[map[string]int{"a": 0, "b": 1}[i.On]]
		if w.from != "middle" && w.middle == 0 { // from the middle the right goes first, and parts of a panel go from the left
			text += fmt.Sprintf("; %d, stated %t, meets %s and %s, both %t", i.Position, i.Stated, meets(l), meets(r), i.HooksBoth)
			if e := i.FirstOnEnd; e != nil {
				text += fmt.Sprintf(", against the %s end, out by %s", turn(e.End), v(e.OutOfPlumb, 1))
			}
		}
		out = append(out, text)
	}
	slices.Sort(out)
	return out
}

func TestWhatWasMeasuredIsMirroredWithThePlan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorridor(t)
		m := c.mirrored()
		if diff := cmp.Diff(c.seen(c.facts(t), false), m.seen(m.facts(t), true)); diff != "" {
			t.Fatalf("as it is - mirrored and seen from behind +\n%s", diff)
		}
	})
}
