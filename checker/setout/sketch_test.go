package setout_test

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"

	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

// sketch is a random plan: one wall with one run, and runs on its doors' leaves.
// Its lengths are whole hundredths of a millimetre, so that no fact of it lies
// half-way between two roundings, and where one thing would be exactly half a
// millimetre (how far setting out looks beyond a jamb) or half a space from
// another, one of the two has odd hundredths: noise could tip it either way.
type sketch struct {
	width, height              float64 // of the wall
	panel, board               float64 // a panel's cover width and height
	pitch, slat, first         float64
	leftEdge, rightEdge        string
	leftCorner, rightCorner    string
	stud                       float64 // the first one's middle; the centres are 600
	fromRight                  bool
	start, joint, base, clear  float64
	drop                       float64
	openings                   []gap
	bays                       []bay    // of a wall that is no rectangle
	courses                    []course // none: one
	perEnd                     int
	onStuds                    bool
	zigzag, around, centreLine bool
}

// gap is an opening of a sketch; where leaf is true a run stands on its leaf.
type gap struct {
	kind                 string
	x, width, sill, head float64
	architrave           float64 // 0 where there is none or it comes off
	leaf, leafRight      bool
	leafStart            float64
}

// tenths draws a length in whole tenths of a millimetre.
func tenths(t *rapid.T, name string, least, most float64) float64 {
	return float64(rapid.IntRange(int(math.Ceil(least*10)), int(math.Floor(most*10))).Draw(t, name)) / 10
}

// draw draws a sketch. Where plain, panels leave free just the openings.
func draw(t *rapid.T, plain bool) sketch {
	s := drawRun(t, tenths(t, "wall width", 1500, 9000), tenths(t, "wall height", 1800, 3200))
	if !plain {
		s.drop = rapid.SampledFrom([]float64{0, 22}).Draw(t, "drop")
	}
	s.drawOpenings(t, plain)
	if s.free() < 12*(s.height-s.base-s.clear) { // a run of which nothing is left is refused, and a joint may take up to 10
		t.Skip("the openings take the whole field")
	}
	return s
}

// drawRun draws a sketch of a wall without openings.
func drawRun(t *rapid.T, width, height float64) sketch {
	edges := rapid.SampledFrom([]string{"recess", "tongue", "square"})
	corners := rapid.SampledFrom([]string{"internal", "external", "none"})
	s := sketch{width: width, height: height, board: tenths(t, "board", 1500, 3300),
		leftEdge: edges.Draw(t, "left edge"), rightEdge: edges.Draw(t, "right edge"), leftCorner: corners.Draw(t, "left corner"), rightCorner: corners.Draw(t, "right corner"),
		fromRight: rapid.Bool().Draw(t, "from right"), base: tenths(t, "base", 0, 60), clear: tenths(t, "clear top", 0, 30),
		perEnd: rapid.IntRange(0, 2).Draw(t, "screws"), onStuds: rapid.Bool().Draw(t, "on studs"),
		zigzag: rapid.Bool().Draw(t, "zigzag"), around: rapid.Bool().Draw(t, "around"), centreLine: rapid.Bool().Draw(t, "centre line")}
	// A whole number of slats, so that the pattern seen in a mirror is a pattern that a plan can state.
	s.pitch = tenths(t, "pitch", 20, 80)
	s.slat = tenths(t, "slat", 5, s.pitch-5)
	s.first = tenths(t, "first", 0, s.pitch-s.slat)
	last := tenths(t, "space behind the last slat", 0, s.pitch-s.slat)
	ends := s.first + s.slat + last
	n := rapid.IntRange(int(math.Ceil((200-ends)/s.pitch)), int(math.Floor((1250-ends)/s.pitch))).Draw(t, "slats")
	s.panel = to10th(ends + float64(n)*s.pitch)
	s.start = tenths(t, "start", -s.panel+1, s.width/3)
	s.stud = tenths(t, "stud", 0, 600) + 0.07
	return s
}

// free gives the area of the field that the openings leave, from cutting it at every side of one.
func (s sketch) free() float64 {
	field, holes := s.field(), s.holes()
	xs, ys := []float64{field.left, field.right}, []float64{field.bottom, field.top}
	for _, h := range holes {
		xs, ys = append(xs, min(max(h.left, field.left), field.right), min(max(h.right, field.left), field.right)), append(ys, min(max(h.bottom, field.bottom), field.top), min(max(h.top, field.bottom), field.top))
	}
	slices.Sort(xs)
	slices.Sort(ys)
	area := 0.0
	for i := 1; i < len(xs); i++ {
		for j := 1; j < len(ys); j++ {
			x, y := (xs[i-1]+xs[i])/2, (ys[j-1]+ys[j])/2
			if !slices.ContainsFunc(holes, func(h box) bool { return h.has(x, y) }) {
				area += (xs[i] - xs[i-1]) * (ys[j] - ys[j-1])
			}
		}
	}
	return area
}

// drawOpenings gives each opening a part of the wall of its own.
func (s *sketch) drawOpenings(t *rapid.T, plain bool) {
	n := rapid.IntRange(0, 3).Draw(t, "openings")
	for i := range n {
		from, to := to10th(s.width*float64(i)/float64(n)), to10th(s.width*float64(i+1)/float64(n))
		g := gap{kind: rapid.SampledFrom([]string{"door", "window"}).Draw(t, "kind"), x: tenths(t, "x", from, to-300) + 0.03}
		g.width = tenths(t, "width", 250, to-g.x-1)
		if rapid.Bool().Draw(t, "at a joint") { // where odd cases lie
			if x := s.jointAfter(g.x); x < to-300 {
				g.x, g.width = x, min(g.width, to10th(to-x-2))+0.03
			}
		}
		if g.kind == "window" {
			g.sill = tenths(t, "sill", 100, 1400)
		}
		g.head = tenths(t, "head", g.sill+100, s.height)
		if !plain && rapid.Bool().Draw(t, "architrave") {
			g.architrave = 60.01
		}
		if g.kind == "door" && g.head > 1000 {
			g.leaf, g.leafRight, g.leafStart = rapid.Bool().Draw(t, "leaf"), rapid.Bool().Draw(t, "leaf from right"), tenths(t, "leaf start", -s.panel+1, 0)
		}
		s.openings = append(s.openings, g)
	}
}

func to10th(v float64) float64 { return math.Round(v*10) / 10 }

// jointAfter gives the first joint at or behind x.
func (s *sketch) jointAfter(x float64) float64 {
	origin := s.start
	if s.fromRight {
		origin = s.width - s.start
	}
	return to10th(origin + math.Ceil((x-origin)/s.panel)*s.panel)
}

// mirrored gives the sketch as seen from behind the wall.
func (s sketch) mirrored() sketch {
	m := s
	m.leftEdge, m.rightEdge, m.leftCorner, m.rightCorner = s.rightEdge, s.leftEdge, s.rightCorner, s.leftCorner
	m.fromRight, m.stud = !s.fromRight, s.width-s.stud
	slats := math.Floor((s.panel-s.first-s.slat)/s.pitch+1e-9) * s.pitch
	m.first = max(0, to10th(s.panel-s.first-s.slat-slats))
	m.openings = nil
	for _, g := range s.openings {
		g.x, g.leafRight = math.Round((s.width-g.x-g.width)*100)/100, !g.leafRight
		m.openings = append(m.openings, g)
	}
	m.bays = nil
	for i := range s.bays {
		b := s.bays[len(s.bays)-1-i]
		m.bays = append(m.bays, bay{to10th(s.width - b.right), to10th(s.width - b.left), slope{b.floor.right, b.floor.left}, slope{b.ceiling.right, b.ceiling.left}})
	}
	return m
}

// text writes the sketch as a plan document in a unit of so many millimetres.
func (s sketch) text(t *rapid.T, unit string, mm float64) string {
	type object = map[string]any
	l := func(v float64) float64 { return v / mm }
	side := func(right bool) string {
		if right {
			return "right"
		}
		return "left"
	}
	openings := object{}
	runs := []object{{"id": "E", "on": "w", "panel": "p", "from": side(s.fromRight), "start": l(s.start), "joint": l(s.joint), "base": l(s.base), "clear_top": l(s.clear), "head_drop": l(s.drop), "fix": s.fix(l)}}
	if s.courses != nil {
		var courses []object
		for i, c := range s.courses {
			one := object{"start": l(c.start)}
			if i > 0 {
				one["gap"] = l(c.gap)
			}
			if i < len(s.courses)-1 {
				one["height"] = l(c.height)
			}
			courses = append(courses, one)
		}
		runs[0]["courses"] = courses
	}
	for i, g := range s.openings {
		name := fmt.Sprintf("o%d", i)
		o := object{"kind": g.kind, "x": l(g.x), "width": l(g.width), "sill": l(g.sill), "head": l(g.head)}
		if g.architrave > 0 {
			o["frame"] = object{"architrave": object{"width": l(g.architrave), "removed": false}}
		}
		if g.leaf {
			o["leaf"] = object{"width": l(g.width - 6), "height": l(g.head - 10), "thickness": l(40)}
			runs = append(runs, object{"id": "L" + name, "on": "w/" + name + "/leaf", "panel": "p", "from": side(g.leafRight), "start": l(g.leafStart)})
		}
		openings[name] = o
	}
	wall := object{"width": l(s.width), "height": l(s.height), "openings": openings,
		"ends":       object{"left": object{"corner": s.leftCorner}, "right": object{"corner": s.rightCorner}},
		"background": object{"kind": "plasterboard on studs", "stud_centres": l(600), "first_stud": l(s.stud)}}
	if s.bays != nil {
		var outline []object
		for _, q := range s.outline() {
			outline = append(outline, object{"x": l(q.X), "y": l(q.Y)})
		}
		wall["outline"] = outline
	}
	b, err := json.Marshal(object{"title": "Larch Lane", "units": unit,
		"panels": object{"p": object{"width": l(s.panel), "height": l(s.board), "thickness": l(21), "backing": object{"thickness": l(9)},
			"slats": object{"pitch": l(s.pitch), "width": l(s.slat), "first": l(s.first)}, "edges": object{"left": s.leftEdge, "right": s.rightEdge}}},
		"walls": object{"w": wall}, "runs": runs})
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

func (s sketch) fix(l func(float64) float64) map[string]any {
	glue := map[string]any{"bead": l(6), "from_edge": l(50), "centre_line": s.centreLine}
	if s.zigzag {
		glue["zigzag"] = l(300)
	}
	if s.around {
		glue["around"] = "all four edges"
	}
	// 50.03 keeps a screw that is wanted there from being as far from one space as from another.
	return map[string]any{"adhesive": glue, "screws": map[string]any{"per_end": s.perEnd, "on_studs": s.onStuds, "from_edge": l(50.03), "length": l(45), "rows_apart": l(700.3)}}
}

func (s sketch) facts(t *rapid.T) *facts.Facts { return setOut(t, s.text(t, "mm", 1)) }

// box is a rectangle of the wall.
type box struct{ left, bottom, right, top float64 }

func (b box) has(x, y float64) bool { return x > b.left && x < b.right && y > b.bottom && y < b.top }

func (b box) areaIn(o box) float64 {
	return max(0, min(b.right, o.right)-max(b.left, o.left)) * max(0, min(b.top, o.top)-max(b.bottom, o.bottom))
}

// field gives what the run has to cover, the openings apart.
func (s sketch) field() box {
	f := box{0, s.base, s.width, min(s.height-s.clear, s.base+s.board)}
	if s.fromRight {
		f.right -= max(0, s.start)
	} else {
		f.left += max(0, s.start)
	}
	return f
}

// holes gives what panels leave free.
func (s sketch) holes() []box {
	var out []box
	for _, g := range s.openings {
		b := box{g.x - g.architrave, g.sill, g.x + g.width + g.architrave, g.head + g.architrave}
		switch {
		case g.architrave == 0 && g.kind != "pillar":
			b.top -= s.drop
		case g.kind == "pillar": // nothing to drop into
		case g.sill > 0:
			b.bottom -= g.architrave
		}
		out = append(out, b)
	}
	return out
}
