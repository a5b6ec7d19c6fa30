package plan_test

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/plan"
	"trysquare/schema"
)

func TestWhatAMinimalPlanLeavesUnsaidStaysUnsaidOrTakesItsDefault(t *testing.T) {
	got := decode(t, minimal)
	panel := &plan.Panel{At: "/panels/oak", Name: "oak", Width: 600, Height: 2400, Thickness: 21, Pitch: 40, SlatWidth: 28, First: 6, Backing: 9,
		LeftEdge: "square", RightEdge: "square"}
	wall := &plan.Wall{At: "/walls/back", Name: "back", Width: 3000, Height: 2390}
	want := &plan.Plan{
		Title: "Instrument store, Larch Lane community hall", Units: "mm", Job: plan.Job{At: "/job", Country: "other"},
		Panels: []*plan.Panel{panel}, Walls: []*plan.Wall{wall},
		Runs: []*plan.Run{{At: "/runs/0", ID: "A", On: "back", Wall: wall, Panel: panel, From: "left", Centre: "joint",
			Courses: []plan.Course{{At: "/runs/0"}}}}, // one course, as high as the run
		Order: plan.Order{At: "/order", Boards: map[string]int{}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("plan (- want, + got):\n%s", diff)
	}
	if got.Runs[0].Panel != got.Panels[0] || got.Runs[0].Wall != got.Walls[0] {
		t.Error("the run stands on a copy of its wall or panel")
	}
}

func TestAnEmptyListIsSaidAndAMissingOneIsNot(t *testing.T) {
	p := decode(t, changed(t,
		`"height": 2390}`, `"height": 2390, "services": []}`,
		`"panel": "oak"}]`, `"panel": "oak", "cut_edges": {}}], "sequence": [], "order": {"boards": {"oak": 0}, "cartridges": 0}`))
	if !p.Walls[0].ServicesStated || !p.StepsStated || !p.Runs[0].CutEdgesStated {
		t.Errorf("empty lists are taken for missing ones: services %v, sequence %v, cut edges %v", p.Walls[0].ServicesStated, p.StepsStated, p.Runs[0].CutEdgesStated)
	}
	if n, said := p.Order.Boards["oak"]; !said || n != 0 || p.Order.Cartridges == nil || *p.Order.Cartridges != 0 {
		t.Errorf("an order of none is taken for no order: %+v", p.Order)
	}
}

func TestABackgroundTakesTheLiningOfItsKind(t *testing.T) {
	tests := []struct {
		text                  string
		lining, stud, battens float64
	}{
		{`"kind": "plasterboard on studs"`, 12.5, 38, 25},
		{`"kind": "plasterboard on studs", "board": 15, "stud_width": 45`, 15, 45, 25},
		{`"kind": "plasterboard on studs", "plaster": 10`, 12.5, 38, 25},
		{`"kind": "plaster on masonry"`, 13, 38, 25},
		{`"kind": "plaster on masonry", "plaster": 18, "board": 15`, 18, 38, 25},
		{`"kind": "bare masonry", "plaster": 18`, 0, 38, 25},
		{`"kind": "battens on masonry", "batten": "2 in"`, 0, 38, 50.8},
		{`"kind": "solid timber"`, 0, 38, 25},
	}
	for _, tt := range tests {
		b := decode(t, changed(t, `"height": 2390}`, `"height": 2390, "background": {`+tt.text+`}}`)).Walls[0].Background
		equal(t, tt.text+": lining", b.Lining, tt.lining)
		equal(t, tt.text+": stud width", b.StudWidth, tt.stud)
		equal(t, tt.text+": batten", b.Batten, tt.battens)
		if b.StudCentres != nil || b.FirstStud != nil {
			t.Errorf("%s: studs are placed that the plan does not place", tt.text)
		}
	}
}

func TestScrewsTakeTheirDistancesFromTheEnds(t *testing.T) {
	fix := decode(t, changed(t, `"panel": "oak"}`, `"panel": "oak", "fix": {"screws": {"per_end": 2.0}}}`)).Runs[0].Fix
	want := &plan.Fix{At: "/runs/0/fix", Screws: &plan.Screws{At: "/runs/0/fix/screws", PerEnd: 2, FromEnd: 50, FromEdge: 50}}
	if diff := cmp.Diff(want, fix); diff != "" {
		t.Errorf("fix (- want, + got):\n%s", diff)
	}
	said := decode(t, changed(t, `"panel": "oak"}`, `"panel": "oak", "fix": {"screws": {"per_end": 3, "from_end": 80, "from_edge": "3 cm"}}}`)).Runs[0].Fix.Screws
	equal(t, "from_end", said.FromEnd, 80)
	equal(t, "from_edge", said.FromEdge, 30)
}

func TestALeafHangsInTheMiddleWithTheHeadsGapLikeTheSides(t *testing.T) {
	tests := []struct {
		name, opening, leaf string
		side, floor         float64
	}{
		{"gap left at the floor", `"width": 768, "head": 2032`, `"width": 762, "height": 2024`, 3, 5},  // (768 − 762) ÷ 2; 2032 − 3 − 2024
		{"leaf down to the floor", `"width": 768, "head": 2032`, `"width": 762, "height": 2031`, 3, 0}, // 2032 − 3 − 2031 is below the floor
		{"gaps stated", `"width": 768, "head": 2032`, `"width": 760, "height": 2020, "side_gap": 5, "floor_gap": 10`, 5, 10},
		{"only the side stated", `"width": 768, "head": 2032`, `"width": 760, "height": 2020, "side_gap": 2`, 2, 8},  // the head like the sides on average: 2032 − (768 − 760) ÷ 2 − 2020
		{"hatch above a sill", `"width": 600, "sill": 900, "head": 1500`, `"width": 594, "height": 590`, 3, 907},     // 1500 − 3 − 590
		{"hatch down to its sill", `"width": 600, "sill": 900, "head": 1500`, `"width": 594, "height": 600`, 3, 900}, // not 897, below the sill
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			l := decode(t, changed(t, `"height": 2390}`, `"height": 2390, "openings": {"o": {"kind": "door", "x": 1000, `+tt.opening+`, "leaf": {`+tt.leaf+`, "thickness": 40}}}}`)).Walls[0].Openings[0].Leaf
			equal(t, "side gap", l.SideGap, tt.side)
			equal(t, "floor gap", l.FloorGap, tt.floor)
			if l.Path() != "back/o/leaf" {
				t.Errorf("the leaf is called %s", l.Path())
			}
		})
	}
}

func TestAnArchitraveStaysUnlessItComesOff(t *testing.T) {
	for frame, want := range map[string]bool{
		``:              false,
		`, "frame": {}`: false,
		`, "frame": {"architrave": {"width": 60, "removed": true}}`:  false,
		`, "frame": {"architrave": {"width": 60, "removed": false}}`: true,
	} {
		o := decode(t, changed(t, `"height": 2390}`, `"height": 2390, "openings": {"o": {"kind": "door", "x": 1000, "width": 800, "head": 2032`+frame+`}}}`)).Walls[0].Openings[0]
		if o.ArchitraveStays != want {
			t.Errorf("%s: stays is %v", frame, o.ArchitraveStays)
		}
	}
}

func TestPanelsInterlockOnlyWithATongueInARecess(t *testing.T) {
	for _, left := range []string{"recess", "tongue", "square"} {
		for _, right := range []string{"recess", "tongue", "square"} {
			want := left == "recess" && right == "tongue" || left == "tongue" && right == "recess"
			p := decode(t, changed(t, `"backing": {"thickness": 9}`, `"backing": {"thickness": 9}, "edges": {"left": "`+left+`", "right": "`+right+`"}`)).Panels[0]
			if p.Interlocks() != want || p.Overlap != 0 {
				t.Errorf("%s and %s: interlocks is %v with an overlap of %v", left, right, p.Interlocks(), p.Overlap)
			}
		}
	}
}

// What the schema tells the reader must be what the code does.
func TestTheSchemaNamesTheSameDefaults(t *testing.T) {
	text, err := schema.Text(schema.Plan)
	if err != nil {
		t.Fatal(err)
	}
	var tree any
	if err := json.Unmarshal(text, &tree); err != nil {
		t.Fatal(err)
	}
	for at, want := range map[string]float64{
		"background/properties/board":                plan.DefaultBoard,
		"background/properties/plaster":              plan.DefaultPlaster,
		"background/properties/stud_width":           plan.DefaultStudWidth,
		"background/properties/batten":               plan.DefaultBatten,
		"fix/properties/screws/properties/from_end":  plan.DefaultFromEnd,
		"fix/properties/screws/properties/from_edge": plan.DefaultFromEdge,
	} {
		here := tree
		for _, token := range strings.Split("$defs/"+at+"/description", "/") {
			m, _ := here.(map[string]any)
			here = m[token]
		}
		said, _ := here.(string)
		m := regexp.MustCompile(`Left out: ([0-9.]+) mm \(common practice\)\.`).FindStringSubmatch(said)
		if m == nil || m[1] != strconv.FormatFloat(want, 'f', -1, 64) {
			t.Errorf("%s says %q, the code takes %v mm", at, said, want)
		}
	}
}
