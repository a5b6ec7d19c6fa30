package plan_test

import (
	"testing"

	"trysquare/checker/plan"
)

const inches = `{
"title": "Instrument store, back wall", "units": "in",
"panels": {"ash": {"width": 24, "height": 96, "thickness": "13/16 in", "mass": 13.5, "slats": {"pitch": 1.5, "width": 1, "first": 0.25},
  "backing": {"thickness": "3/8 in"}, "edges": {"left": "recess", "right": "tongue", "overlap": "3/16 in"}}},
"walls": {"back": {"width": "10 ft", "height": "7 ft 11 1/2 in", "thickness": 5,
  "outline": [{"x": 0, "y": 90}, {"x": "100 mm", "y": 90}, {"x": "100 mm", "y": "95 1/2 in"}, {"x": 120, "y": "7 ft 11 1/2 in"}, {"x": 120, "y": 0}, {"x": 0, "y": 0}],
  "measured": {"widths": {"floor": 120, "middle": "119 7/8 in", "ceiling": "3045 mm"}, "heights": [{"x": 60, "height": "95 1/4 in"}], "out_of_plumb": {"left": "1/8 in", "right": "-1/4 in"}, "flatness": "3 mm"},
  "reverse": [{"id": "R", "kind": "socket", "x": 10, "y": 12, "width": 3, "height": 3}],
  "background": {"kind": "plasterboard on studs", "board": "1/2 in", "stud_centres": 16, "first_stud": 8, "stud_width": "1 1/2 in"},
  "skirting": {"height": 4, "thickness": "600 mm"},
  "openings": {"door": {"kind": "door", "x": 30, "width": 30, "head": 80, "frame": {"depth": "4 1/2 in", "stop": "1/2 in"},
    "lining": {"clad": true, "thickness": "1/2 in", "panel": "ash", "start": "-2 in"},
    "leaf": {"width": "29 3/4 in", "height": "79 5/8 in", "thickness": 1.75, "hinges": {"side": "left", "proud": "1/4 in", "from_edge": "-1/8 in"},
      "furniture": {"fits": 2.5, "handle": "2 in", "stands_out": "3 cm"}, "floor_covering": "1/2 in", "side_wall": 4, "other_cladding": "3/4 in"}}},
  "services": [{"id": "S", "kind": "switch", "x": 118, "y": 48, "width": 2, "height": "4 1/2 in"}]}},
"runs": [{"id": "B", "on": "back", "panel": "ash", "start": -12, "joint": "1/16 in", "base": "1/4 in", "clear_top": 0.5, "height": "7 ft", "head_drop": "2 cm",
  "pieces": [{"id": "B1", "width": 24, "gap": "2 mm"}],
  "fix": {"adhesive": {"bead": "1/4 in", "zigzag": 12, "from_edge": 2, "cartridge": 290},
          "screws": {"per_end": 2, "rows_apart": 16, "from_end": 2, "from_edge": "40 mm", "length": "1 5/8 in", "plug": {"length": 1}}}},
  {"id": "C", "on": "back", "panel": "ash", "from": "line", "start": 30, "courses": [{"height": 30}, {"height": "2 ft", "start": "1 ft", "gap": "1/8 in"}]},
  {"id": "T", "on": "back", "panel": "ash", "pieces": [{"id": "T1", "width": 20, "width_top": "19 1/2 in"}]}],
"order": {"trim": "10 ft", "offcuts": [{"id": "O", "panel": "ash", "width": 8, "height": "4 ft"}]}, "saw": {"kerf": "1/8 in"}
}`

// Every expected value is the inches times 25.4, by hand.
func TestAPlanInInchesComesOutInMillimetres(t *testing.T) {
	p := decode(t, inches)
	panel, wall, run := p.Panels[0], p.Walls[0], p.Runs[0]
	equal(t, "panel width", panel.Width, 609.6)
	equal(t, "panel height", panel.Height, 2438.4)
	equal(t, "panel thickness", panel.Thickness, 20.6375)
	equal(t, "pitch", panel.Pitch, 38.1)
	equal(t, "slat", panel.SlatWidth, 25.4)
	equal(t, "first slat", panel.First, 6.35)
	equal(t, "backing", panel.Backing, 9.525)
	equal(t, "overlap", panel.Overlap, 4.7625)
	equal(t, "mass is no length and", panel.Mass, 13.5)
	equal(t, "wall width", wall.Width, 3048)
	equal(t, "wall height", wall.Height, 2425.7)
	equal(t, "board", wall.Background.Lining, 12.7)
	stated(t, "stud centres", wall.Background.StudCentres, 406.4)
	stated(t, "first stud", wall.Background.FirstStud, 203.2)
	equal(t, "stud width", wall.Background.StudWidth, 38.1)
	equal(t, "a default stays in mm and the batten", wall.Background.Batten, 25)
	equal(t, "skirting height", wall.SkirtingHeight, 101.6)
	equal(t, "a text with its own unit and the skirting", wall.SkirtingThickness, 600)
	door := wall.Openings[0]
	equal(t, "door x", door.X, 762)
	equal(t, "door's right jamb", door.Right(), 1524)
	equal(t, "door head", door.Head, 2032)
	equal(t, "leaf width", door.Leaf.Width, 755.65)
	equal(t, "leaf side gap", door.Leaf.SideGap, 3.175)  // (762 − 755.65) ÷ 2
	equal(t, "leaf height", door.Leaf.Height, 2022.475)  // 79.625 × 25.4
	equal(t, "leaf floor gap", door.Leaf.FloorGap, 6.35) // 2032 − 3.175 − 2022.475
	equal(t, "leaf thickness", door.Leaf.Thickness, 44.45)
	equal(t, "switch x", wall.Services[0].X, 2997.2)
	equal(t, "switch y", wall.Services[0].Y, 1219.2)
	equal(t, "switch height", wall.Services[0].Height, 114.3)
	equal(t, "start", run.Start, -304.8)
	equal(t, "joint", run.Joint, 1.5875)
	equal(t, "base", run.Base, 6.35)
	equal(t, "clear top", run.ClearTop, 12.7)
	stated(t, "height", run.Height, 2133.6)
	stated(t, "head drop", run.HeadDrop, 20)
	stated(t, "piece width", run.Pieces[0].Width, 609.6)
	stated(t, "gap", run.Pieces[0].Gap, 2)
	stated(t, "bead", run.Fix.Adhesive.Bead, 6.35)
	stated(t, "zigzag", run.Fix.Adhesive.Zigzag, 304.8)
	stated(t, "bead from edge", run.Fix.Adhesive.FromEdge, 50.8)
	stated(t, "a cartridge is in ml and", run.Fix.Adhesive.Cartridge, 290)
	stated(t, "rows apart", run.Fix.Screws.RowsApart, 406.4)
	equal(t, "screws from end", run.Fix.Screws.FromEnd, 50.8)
	equal(t, "screws from edge", run.Fix.Screws.FromEdge, 40)
	stated(t, "screw length", run.Fix.Screws.Length, 41.275)
	stated(t, "plug length", run.Fix.Screws.Plug.Length, 25.4)
}

// The same for walls of any outline, what was measured, doors that turn, courses and stock.
func TestTheRestOfAPlanInInchesComesOutInMillimetres(t *testing.T) {
	p := decode(t, inches)
	wall, courses, tapered := p.Walls[0], p.Runs[1].Courses, p.Runs[2].Pieces[0]
	stated(t, "wall thickness", wall.Thickness, 127)
	// Anticlockwise from the lowest corner on the left, whichever way the plan goes round.
	for i, want := range []plan.Corner{{X: 0, Y: 0}, {X: 3048, Y: 0}, {X: 3048, Y: 2425.7}, {X: 100, Y: 2425.7}, {X: 100, Y: 2286}, {X: 0, Y: 2286}} {
		equal(t, "a corner's x", wall.Outline[i].X, want.X)
		equal(t, "a corner's y", wall.Outline[i].Y, want.Y)
	}
	m := wall.Measured
	stated(t, "width at the floor", m.Floor, 3048)
	stated(t, "width half way up", m.Middle, 3044.825) // 119.875 × 25.4
	stated(t, "width at the ceiling", m.Ceiling, 3045)
	equal(t, "place of a height", m.Heights[0].X, 1524)
	equal(t, "height there", m.Heights[0].Height, 2419.35) // 95.25 × 25.4
	stated(t, "lean on the left", m.PlumbLeft, 3.175)
	stated(t, "lean on the right", m.PlumbRight, -6.35)
	stated(t, "flatness", m.Flatness, 3)
	equal(t, "socket on the reverse", wall.Reverse[0].Y, 304.8)
	door := wall.Openings[0]
	stated(t, "frame depth", door.FrameDepth, 114.3)
	stated(t, "stop", door.Stop, 12.7)
	stated(t, "lining", door.LiningThickness, 12.7)
	stated(t, "lining start", door.LiningStart, -50.8)
	stated(t, "hinges proud", door.Leaf.Hinges.Proud, 6.35)
	equal(t, "hinges from the edge", door.Leaf.Hinges.FromEdge, -3.175)
	stated(t, "furniture fits", door.Leaf.Fits, 63.5)
	stated(t, "handle", door.Leaf.Handle, 50.8)
	equal(t, "furniture stands out", door.Leaf.StandsOut, 30)
	equal(t, "floor covering", door.Leaf.FloorCovering, 12.7)
	stated(t, "side wall", door.Leaf.SideWall, 101.6)
	equal(t, "other cladding", door.Leaf.OtherCladding, 19.05)
	equal(t, "line", p.Runs[1].Start, 762)
	stated(t, "course height", courses[0].Height, 762)
	equal(t, "a course's start is the run's and", courses[0].Start, 762)
	stated(t, "second course's height", courses[1].Height, 609.6)
	equal(t, "second course's start", courses[1].Start, 304.8)
	equal(t, "second course's gap", courses[1].Gap, 3.175)
	stated(t, "width", tapered.Width, 508)
	stated(t, "width at the top", tapered.WidthTop, 495.3)
	stated(t, "trim", p.Order.Trim, 3048)
	equal(t, "offcut width", p.Order.Offcuts[0].Width, 203.2)
	equal(t, "offcut height", p.Order.Offcuts[0].Height, 1219.2)
	stated(t, "kerf", p.Saw.Kerf, 3.175)
}

// 94.7 × 25.4 + 0.8 × 25.4 is 2425.7000000000003 in floats, a hair above a ceiling at 95.5 × 25.4.
func TestWhatIsFlushInInchesIsNotOutside(t *testing.T) {
	for name, pair := range map[string][2]string{
		"accessory at the wall's end": {`"x": 118, "y": 48, "width": 2`, `"x": "117 7/10 in", "y": 48, "width": "2 3/10 in"`},
		"accessory under the ceiling": {`"y": 48, "width": 2, "height": "4 1/2 in"`, `"y": "94 7/10 in", "width": 2, "height": "8/10 in"`},
		"opening at the wall's end":   {`"x": 30, "width": 30`, `"x": "88 7/10 in", "width": "31 3/10 in"`},
		"leaf as wide as its opening": {`"width": "29 3/4 in"`, `"width": "2 ft 6 in"`},
		"piece as wide as its panel":  {`{"id": "B1", "width": 24`, `{"id": "B1", "width": "2 ft"`},
	} {
		if got := faults(t, replaced(t, inches, pair[0], pair[1])); got != "" {
			t.Errorf("%s: %s", name, got)
		}
	}
}

func TestABareNumberAndATextOfTheSameLengthAreTheSame(t *testing.T) {
	bare, text := decode(t, inches), decode(t, replaced(t, inches, `"start": -12`, `"start": "-1 ft"`))
	equal(t, "start as a text", text.Runs[0].Start, bare.Runs[0].Start)
	// A text keeps its own unit in a plan of the other one.
	p := decode(t, changed(t, `"id": "A"`, `"id": "A", "start": "-1 ft", "base": "1/2 in"`))
	equal(t, "start in a metric plan", p.Runs[0].Start, -304.8)
	equal(t, "base in a metric plan", p.Runs[0].Base, 12.7)
}

func TestALengthEndsAtAMillionInches(t *testing.T) {
	if p := decode(t, replaced(t, inches, `"width": "10 ft"`, `"width": "1000000 in"`, `{"x": 120, "y": "7 ft 11 1/2 in"}, {"x": 120, "y": 0}`,
		`{"x": 1000000, "y": "7 ft 11 1/2 in"}, {"x": 1000000, "y": 0}`)); p.Walls[0].Width < 25_399_999 {
		t.Errorf("the wall is %v mm wide", p.Walls[0].Width)
	}
	for _, text := range []string{"1000001 in", "-1000001 in", "25401 m", "9999999999999999999999999999999999999 m"} {
		var got string
		if _, err := plan.Decode(document(t, replaced(t, inches, `"start": -12`, `"start": "`+text+`"`))); err != nil {
			got = err.Error()
		}
		if want := `p:16:61: at /runs/0/start: "` + text + `" is too large; the most is 1000000 in (25.4 km)`; got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
}
