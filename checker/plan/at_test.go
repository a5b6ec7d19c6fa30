package plan_test

import (
	"fmt"
	"reflect"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/plan"
)

// full has every part that carries At, under names that a careless pointer would garble.
const full = `{
"title": "Practice room and store", "units": "mm", "job": {"room": "Practice room", "country": "IE", "room_use": "assembly", "prepared_by": "the lead fitter", "date": "2026-09-14"},
"panels": {"oak 21": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 9}},
  "ash": {"width": 300, "height": 2400, "thickness": 20, "slats": {"pitch": 30, "width": 20, "first": 5}, "backing": {"thickness": 8}}},
"walls": {"Bühne": {"width": 3000, "height": 2390, "background": {"kind": "bare masonry"}, "measured": {"flatness": 4},
    "reverse": [{"id": "S3", "kind": "switch", "x": 100, "y": 1050, "width": 86, "height": 86}]},
  "east.1": {"width": 3640, "height": 2390, "background": {"kind": "solid timber"},
    "openings": {"hatch": {"kind": "hatch", "x": 100, "width": 500, "sill": 900, "head": 1500},
      "door": {"kind": "door", "x": 1396, "width": 768, "head": 2032, "leaf": {"width": 762, "height": 2024, "thickness": 40, "hinges": {"side": "left"}, "closer": {"size": 3}}}},
    "services": [{"id": "S1", "kind": "switch", "x": 1250, "y": 1050, "width": 86, "height": 86}, {"id": "S2", "kind": "socket", "x": 2500, "y": 300, "width": 86, "height": 86}]}},
"runs": [
  {"id": "E", "on": "east.1", "panel": "oak 21", "pieces": [{"id": "E1", "fix": {"screws": {"per_end": 3}}}, {"id": "E2"}],
    "fix": {"adhesive": {"bead": 6}, "screws": {"per_end": 2}}, "cut_edges": {"head": {"by": "finish"}, "left": {"by": "trim", "with": "oak bead"}}},
  {"id": "L", "on": "east.1/door/leaf", "panel": "ash", "from": "right", "fix": {"adhesive": {"bead": 4}}},
  {"id": "C", "on": "Bühne", "panel": "ash", "courses": [{"height": 1000}, {"gap": 3}]}],
"sequence": [{"do": "survey"}, {"do": "wait to cure", "hours": 24}],
"order": {"boards": {"oak 21": 7}, "cartridges": 3, "offcuts": [{"id": "R1", "panel": "ash", "width": 120, "height": 2400}]},
"cutting": [{"panel": "oak 21", "lengths": [["E1"]]}]
}`

// parts gives every part of a plan that carries At, as TYPE, what it calls itself, and the pointer.
func parts(v reflect.Value, seen map[any]bool, out *[]string) {
	switch v.Kind() {
	case reflect.Pointer:
		if !v.IsNil() && !seen[v.Interface()] { // a run leads to its wall again
			seen[v.Interface()] = true
			parts(v.Elem(), seen, out)
		}
	case reflect.Slice:
		for i := range v.Len() {
			parts(v.Index(i), seen, out)
		}
	case reflect.Map:
		for _, key := range v.MapKeys() {
			parts(v.MapIndex(key), seen, out)
		}
	case reflect.Struct:
		if at := v.FieldByName("At"); at.IsValid() {
			own := ""
			for _, field := range []string{"Name", "ID", "Do", "By", "Room", "Kind", "Bead", "PerEnd", "Thickness"} {
				if f := v.FieldByName(field); f.IsValid() && own == "" {
					own = fmt.Sprint(reflect.Indirect(f))
				}
			}
			*out = append(*out, v.Type().Name()+" "+own+": "+at.String())
		}
		for i := range v.NumField() {
			parts(v.Field(i), seen, out)
		}
	}
}

func TestEveryPartKnowsItsPlaceInTheDocument(t *testing.T) {
	d := document(t, full)
	p, err := plan.Decode(d)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	parts(reflect.ValueOf(p), map[any]bool{}, &got)
	want := []string{
		"Job Practice room: /job",
		"Panel oak 21: /panels/oak 21",
		"Panel ash: /panels/ash",
		"Wall Bühne: /walls/Bühne",
		"Wall east.1: /walls/east.1",
		"Background bare masonry: /walls/Bühne/background",
		"Measured : /walls/Bühne/measured",
		"Service S3: /walls/Bühne/reverse/0",
		"Background solid timber: /walls/east.1/background",
		"Opening hatch: /walls/east.1/openings/hatch",
		"Opening door: /walls/east.1/openings/door",
		"Leaf 40: /walls/east.1/openings/door/leaf",
		"Hinges : /walls/east.1/openings/door/leaf/hinges",
		"Closer : /walls/east.1/openings/door/leaf/closer",
		"Service S1: /walls/east.1/services/0",
		"Service S2: /walls/east.1/services/1",
		"Run E: /runs/0",
		"Course : /runs/0", // one, as the run
		"Course : /runs/1",
		"Run C: /runs/2",
		"Course : /runs/2/courses/0",
		"Course : /runs/2/courses/1",
		"Piece E1: /runs/0/pieces/0",
		"Piece E2: /runs/0/pieces/1",
		"Fix : /runs/0/pieces/0/fix",
		"Screws 3: /runs/0/pieces/0/fix/screws",
		"Fix : /runs/0/fix",
		"Adhesive 6: /runs/0/fix/adhesive",
		"Screws 2: /runs/0/fix/screws",
		"Treatment finish: /runs/0/cut_edges/head",
		"Treatment trim: /runs/0/cut_edges/left",
		"Run L: /runs/1",
		"Fix : /runs/1/fix",
		"Adhesive 4: /runs/1/fix/adhesive",
		"Step survey: /sequence/0",
		"Step wait to cure: /sequence/1",
		"Order : /order",
		"Offcut R1: /order/offcuts/0",
		"CutBoard : /cutting/0",
	}
	slices.Sort(got)
	slices.Sort(want)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("parts (- want, + got):\n%s", diff)
	}
	// The pointers are written here by hand; the document must know each of them.
	for pointer, says := range map[string]string{
		"/panels/oak 21/width": "600", "/walls/Bühne/background/kind": "bare masonry", "/walls/east.1/openings/door/leaf/thickness": "40",
		"/walls/east.1/services/1/id": "S2", "/runs/0/pieces/0/fix/screws/per_end": "3", "/runs/0/cut_edges/left/with": "oak bead", "/runs/1/fix/adhesive/bead": "4",
		"/sequence/1/do": "wait to cure", "/order/cartridges": "3", "/runs/2/courses/0/height": "1000", "/walls/Bühne/reverse/0/id": "S3", "/order/offcuts/0/width": "120", "/job/room": "Practice room",
	} {
		if n := d.At(pointer); n == nil || n.Text != says {
			t.Errorf("%s does not say %q", pointer, says)
		}
	}
}

func TestWhatAPlanSaysIsTakenOver(t *testing.T) {
	p := decode(t, full)
	job := plan.Job{At: "/job", Room: "Practice room", RoomUse: "assembly", PreparedBy: "the lead fitter", Date: "2026-09-14", Country: "IE"}
	if diff := cmp.Diff(job, p.Job); diff != "" {
		t.Errorf("job (- want, + got):\n%s", diff)
	}
	hours, three := 24.0, 3
	if diff := cmp.Diff([]plan.Step{{At: "/sequence/0", Do: "survey"}, {At: "/sequence/1", Do: "wait to cure", Hours: &hours}}, p.Steps); diff != "" {
		t.Errorf("steps (- want, + got):\n%s", diff)
	}
	offcuts := []plan.Offcut{{At: "/order/offcuts/0", ID: "R1", Panel: p.Panels[0], Width: 120, Height: 2400, Keeps: "none"}}
	if diff := cmp.Diff(plan.Order{At: "/order", Boards: map[string]int{"oak 21": 7}, Cartridges: &three, Offcuts: offcuts}, p.Order); diff != "" {
		t.Errorf("order (- want, + got):\n%s", diff)
	}
	wall, leaf := p.Runs[0], p.Runs[1]
	if wall.Wall.Name != "east.1" || wall.Leaf != nil || wall.Panel.Name != "oak 21" || wall.FromRight() {
		t.Errorf("the run E stands on %v, %v", wall.Wall.Name, wall.Leaf)
	}
	if leaf.Leaf != p.Walls[1].Openings[0].Leaf && leaf.Leaf != p.Walls[1].Openings[1].Leaf || leaf.Leaf.Path() != "east.1/door/leaf" || leaf.Wall != wall.Wall || !leaf.FromRight() {
		t.Errorf("the run L does not stand on the leaf of the door: %+v", leaf)
	}
}
