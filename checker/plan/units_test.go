package plan_test

import (
	"testing"

	"trysquare/checker/plan"
)

const inches = `{
"title": "Instrument store, back wall", "units": "in",
"panels": {"ash": {"width": 24, "height": 96, "thickness": "13/16 in", "mass": 13.5, "slats": {"pitch": 1.5, "width": 1, "first": 0.25},
  "backing": {"thickness": "3/8 in"}, "edges": {"left": "recess", "right": "tongue", "overlap": "3/16 in"}}},
"walls": {"back": {"width": "10 ft", "height": "7 ft 11 1/2 in",
  "background": {"kind": "plasterboard on studs", "board": "1/2 in", "stud_centres": 16, "first_stud": 8, "stud_width": "1 1/2 in"},
  "skirting": {"height": 4, "thickness": "600 mm"},
  "openings": {"door": {"kind": "door", "x": 30, "width": 30, "head": 80, "leaf": {"width": "29 3/4 in", "height": "79 5/8 in", "thickness": 1.75}}},
  "services": [{"id": "S", "kind": "switch", "x": 118, "y": 48, "width": 2, "height": "4 1/2 in"}]}},
"runs": [{"id": "B", "on": "back", "panel": "ash", "start": -12, "joint": "1/16 in", "base": "1/4 in", "clear_top": 0.5, "height": "7 ft", "head_drop": "2 cm",
  "pieces": [{"id": "B1", "width": 24, "gap": "2 mm"}],
  "fix": {"adhesive": {"bead": "1/4 in", "zigzag": 12, "from_edge": 2, "cartridge": 290},
          "screws": {"per_end": 2, "rows_apart": 16, "from_end": 2, "from_edge": "40 mm", "length": "1 5/8 in", "plug": {"length": 1}}}}]
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
	if p := decode(t, replaced(t, inches, `"width": "10 ft"`, `"width": "1000000 in"`)); p.Walls[0].Width < 25_399_999 {
		t.Errorf("the wall is %v mm wide", p.Walls[0].Width)
	}
	for _, text := range []string{"1000001 in", "-1000001 in", "25401 m", "9999999999999999999999999999999999999 m"} {
		var got string
		if _, err := plan.Decode(document(t, replaced(t, inches, `"start": -12`, `"start": "`+text+`"`))); err != nil {
			got = err.Error()
		}
		if want := `p:10:61: at /runs/0/start: "` + text + `" is too large; the most is 1000000 in (25.4 km)`; got != want {
			t.Errorf("got  %s\nwant %s", got, want)
		}
	}
}
