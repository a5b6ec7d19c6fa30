package plan_test

import (
	"errors"
	"testing"

	"trysquare/checker/fault"
	"trysquare/checker/plan"
)

// Most mistakes have a file in testdata/bad; here is what one file alone does not show.

func TestASizeThatIsWrongByItselfBringsNoFurtherFaults(t *testing.T) {
	const door = `"height": 2390, "openings": {"door": {"kind": "door", "x": 1000, "width": 800, "head": 2032, "leaf": {"width": 794, "height": 2024, "thickness": 40}}},
	  "skirting": {"height": 100}, "services": [{"id": "S", "kind": "switch", "x": 100, "y": 100, "width": 86, "height": 86}]}`
	text := changed(t, `"height": 2390}`, door)
	for name, tt := range map[string]struct{ old, new, want string }{
		"panel width":     {`"width": 600`, `"width": 0`, "/panels/oak/width: this must be more than 0"},
		"panel thickness": {`"thickness": 21`, `"thickness": -21`, "/panels/oak/thickness: this must be more than 0"},
		"pitch":           {`"pitch": 40`, `"pitch": -40`, "/panels/oak/slats/pitch: this must be more than 0"},
		"tiny pitch":      {`"pitch": 40`, `"pitch": 4`, "/panels/oak/slats/pitch: this is under 5 mm; is it in the wrong unit?"},
		"wall width":      {`"width": 3000`, `"width": 0`, "/walls/back/width: this must be more than 0"},
		"wall height":     {`"height": 2390`, `"height": -2390`, "/walls/back/height: this must be more than 0"},
		"opening width":   {`"width": 800`, `"width": 0`, "/walls/back/openings/door/width: this must be more than 0"},
		"opening head":    {`"head": 2032`, `"head": 0`, "/walls/back/openings/door/head: this must be more than 0"},
		"leaf height":     {`"height": 2024`, `"height": 0`, "/walls/back/openings/door/leaf/height: this must be more than 0"},
		"skirting":        {`"height": 100}`, `"height": -100}`, "/walls/back/skirting/height: this must not be less than 0"},
		"accessory width": {`"width": 86`, `"width": 0`, "/walls/back/services/0/width: this must be more than 0"},
	} {
		if got := faults(t, replaced(t, text, tt.old, tt.new)); got != tt.want {
			t.Errorf("%s: got\n%s\nwant\n%s", name, got, tt.want)
		}
	}
	if got := faults(t, text); got != "" {
		t.Errorf("the plan without a mistake: %s", got)
	}
}

func TestStudsAreNotComparedWithCentresThatAreWrongByThemselves(t *testing.T) {
	for centres, want := range map[string]string{
		"0":  "this must be more than 0",
		"4":  "this is under 5 mm; is it in the wrong unit?",
		"38": "studs at these centres would touch: each is 38 mm wide",
		"39": "",
	} {
		if want != "" {
			want = "/walls/back/background/stud_centres: " + want
		}
		got := faults(t, changed(t, `"height": 2390}`, `"height": 2390, "background": {"kind": "plasterboard on studs", "stud_centres": `+centres+`}}`))
		if got != want {
			t.Errorf("centres of %s mm: got %q, want %q", centres, got, want)
		}
	}
}

// 5 mm are 6.3 thirty-seconds of an inch.
func TestAMessageWritesLengthsInThePlansUnits(t *testing.T) {
	got := faults(t, replaced(t, inches, `"pitch": 1.5, "width": 1, "first": 0.25`, `"pitch": "1/8 in", "width": "1/16 in", "first": 0`))
	if want := "/panels/ash/slats/pitch: this is under 3/16 in (5 mm); is it in the wrong unit?"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	got = faults(t, replaced(t, inches, `"id": "B1", "width": 24`, `"id": "B1", "width": "24 1/32 in"`))
	if want := "/runs/0/pieces/0/width: a piece cannot be wider than its panel, which covers 24 in (609.6 mm)"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestFaultsComeInTheOrderOfTheFileWithTheirKinds(t *testing.T) {
	text := `{"title": "t", "units": "mm",
"runs": [{"id": "A", "on": "north", "panel": "oak"}],
"walls": {"back": {"width": 3000, "height": 0}},
"panels": {"oak": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 30}}}}`
	_, err := plan.Decode(document(t, text))
	var list fault.List
	if !errors.As(err, &list) || len(list) != 3 {
		t.Fatalf("got %v, want three faults", err)
	}
	for i, want := range []struct {
		kind fault.Kind
		line int
	}{{fault.Reference, 2}, {fault.Geometry, 3}, {fault.Geometry, 4}} {
		if list[i].Kind != want.kind || list[i].Place.Start.Line != want.line {
			t.Errorf("fault %d is %s in line %d, want %s in line %d", i, list[i].Kind, list[i].Place.Start.Line, want.kind, want.line)
		}
	}
}

func TestOpeningsMayTouchAndStandOverOneAnother(t *testing.T) {
	for name, tt := range map[string]struct{ opening, want string }{
		"beside, touching":    {`"x": 1800, "width": 400, "sill": 0, "head": 2032`, ""},
		"above, touching":     {`"x": 1000, "width": 800, "sill": 2032, "head": 2300`, ""},
		"a little over":       {`"x": 1799, "width": 400, "sill": 0, "head": 2032`, `/walls/back/openings/z: the openings "door" and "z" overlap`},
		"a little too low":    {`"x": 1000, "width": 800, "sill": 2031, "head": 2300`, `/walls/back/openings/z: the openings "door" and "z" overlap`},
		"one within another":  {`"x": 1100, "width": 100, "sill": 900, "head": 1000`, `/walls/back/openings/z: the openings "door" and "z" overlap`},
		"flush with the wall": {`"x": 2600, "width": 400, "sill": 0, "head": 2390`, ""},
		"left of the wall":    {`"x": -1, "width": 400, "sill": 0, "head": 2032`, `/walls/back/openings/z: the opening "z" reaches outside its wall, which is 3000 mm wide and 2390 mm high`},
	} {
		got := faults(t, changed(t, `"height": 2390}`, `"height": 2390, "openings": {"door": {"kind": "door", "x": 1000, "width": 800, "head": 2032}, "z": {"kind": "hatch", `+tt.opening+`}}}`))
		if got != tt.want {
			t.Errorf("%s: got %q, want %q", name, got, tt.want)
		}
	}
}

func TestARunMayStartAnywhereThatLeavesSomethingOnTheWall(t *testing.T) {
	for start, fits := range map[string]bool{"-599": true, "0": true, "2999": true, "-600": false, "3000": false, "-10000": false} {
		if got := faults(t, changed(t, `"id": "A"`, `"id": "A", "start": `+start)); (got == "") != fits {
			t.Errorf("a start of %s: %q", start, got)
		}
	}
}

// An opening and an accessory may touch the outline; what is thinner than converting inches leaves does not count.
func TestOpeningsAndAccessoriesLieWithinTheOutline(t *testing.T) {
	// The ceiling falls from 2390 at the left end to 1490 at the right one, 3 in 10; a box of 200 x 500 stands at the right.
	const wall = `"height": 2390, "outline": [{"x": 0, "y": 0}, {"x": 2800, "y": 0}, {"x": 2800, "y": 500}, {"x": 3000, "y": 500}, {"x": 3000, "y": 1490}, {"x": 0, "y": 2390}]`
	for name, tt := range map[string]struct{ opening, want string }{
		"well inside": {`"x": 100, "width": 800, "head": 2000`, ""},
		// At 1000 the ceiling is at 2390 - 300 = 2090.
		"its corner on the rake":           {`"x": 200, "width": 800, "head": 2090`, ""},
		"its corner a hair over it":        {`"x": 200, "width": 800, "head": 2090.004`, ""},
		"its corner a millimetre over it":  {`"x": 200, "width": 800, "head": 2091`, "outside"},
		"beside the box":                   {`"x": 2000, "width": 800, "head": 1400`, ""},
		"into the box":                     {`"x": 2000, "width": 801, "head": 1400`, "outside"},
		"on the box":                       {`"x": 2800, "width": 200, "sill": 500, "head": 1400`, ""},
		"a pillar at the wall's other end": {`"x": 0, "width": 300, "head": 2300`, ""},
	} {
		want := tt.want
		if want != "" {
			want = `/walls/back/openings/o: the opening "o" reaches outside its wall's outline`
		}
		if got := faults(t, changed(t, `"height": 2390}`, wall+`, "openings": {"o": {"kind": "window", `+tt.opening+`}}}`)); got != want {
			t.Errorf("%s: got %q, want %q", name, got, want)
		}
	}
	for list, want := range map[string]string{
		`"services": [{"id": "S", "kind": "switch", "x": 2714, "y": 100, "width": 86, "height": 86}]`: "",
		`"services": [{"id": "S", "kind": "switch", "x": 2715, "y": 100, "width": 86, "height": 86}]`: `/walls/back/services/0: the accessory "S" reaches outside its wall's outline`,
		`"reverse": [{"id": "S", "kind": "switch", "x": 2900, "y": 1490, "width": 86, "height": 86}]`: `/walls/back/reverse/0: the accessory "S" reaches outside its wall's outline`,
	} {
		if got := faults(t, changed(t, `"height": 2390}`, wall+`, `+list+`}`)); got != want {
			t.Errorf("%s: got %q, want %q", list, got, want)
		}
	}
}

func TestAnOutlineSpansItsWall(t *testing.T) {
	const span = "/walls/back/outline: the outline must span the wall: from 0 to 3000 mm across and from 0 to 2390 mm up"
	for outline, want := range map[string]string{
		`{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2390}, {"x": 0, "y": 2390}`:            "",
		`{"x": 0, "y": 2390}, {"x": 3000, "y": 2390}, {"x": 3000, "y": 0}, {"x": 0, "y": 0}`:            "",
		`{"x": 0.004, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2390}, {"x": 0.004, "y": 2390}`:    "",
		`{"x": 1, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2390}, {"x": 1, "y": 2390}`:            span,
		`{"x": 0, "y": 10}, {"x": 3000, "y": 10}, {"x": 3000, "y": 2390}, {"x": 0, "y": 2390}`:          span,
		`{"x": 0, "y": 0}, {"x": 2999, "y": 0}, {"x": 2999, "y": 2390}, {"x": 0, "y": 2390}`:            span,
		`{"x": 0, "y": 0}, {"x": 3000, "y": 0}, {"x": 3000, "y": 2390}, {"x": 3000.003, "y": 2390.003}`: "/walls/back/outline/3: corner 4 lies where corner 3 does; each corner stands in the list once",
	} {
		if got := faults(t, changed(t, `"height": 2390}`, `"height": 2390, "outline": [`+outline+`]}`)); got != want {
			t.Errorf("%s: got %q, want %q", outline, got, want)
		}
	}
}

func TestACourseMayStartAnywhereThatLeavesSomethingOnTheWall(t *testing.T) {
	for _, tt := range []struct {
		run  string
		fits bool
	}{
		{`"courses": [{"height": 1000, "start": -599}, {"start": 2999}]`, true},
		{`"courses": [{"height": 1000, "start": -600}, {}]`, false},
		{`"courses": [{"height": 1000}, {"start": 3000}]`, false},
		{`"from": "middle", "courses": [{"height": 1000, "start": 1499}, {"start": -1499}]`, true},
		{`"from": "middle", "courses": [{"height": 1000, "start": 1500}, {}]`, false},
		{`"from": "line", "courses": [{"height": 1000, "start": 0}, {"start": 3000}]`, true},
		{`"from": "line", "courses": [{"height": 1000, "start": -1}, {"start": 3000}]`, false},
	} {
		if got := faults(t, changed(t, `"id": "A"`, `"id": "A", `+tt.run)); (got == "") != tt.fits {
			t.Errorf("%s: %q", tt.run, got)
		}
	}
}
