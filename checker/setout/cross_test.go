package setout_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

func crossOf(f *facts.Facts) []string {
	var out []string
	for _, j := range f.CrossJoints {
		s := fmt.Sprintf("%s at %v, %v to %v, gap %v, %s on %s", j.ID, j.Y, j.Left, j.Right, j.Gap, j.UpperMadeBy, j.LowerMadeBy)
		if j.NearestUpright != nil {
			s += fmt.Sprintf(", upright %v", *j.NearestUpright)
		}
		if n := j.NextTo; n != nil {
			s += fmt.Sprintf(", next %s by %v", n.Joint, n.Step)
		}
		out = append(out, s)
	}
	return out
}

func TestCrossJointsAreWhereCoursesMeet(t *testing.T) {
	for _, c := range []struct {
		name, wall, runs string
		want             []string
	}{
		{"one course has none", `"width": 1200, "height": 2400`, plainRun, nil},
		{"uprights that run through", `"width": 1200, "height": 3000`, `{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 1000}, {}]}`, []string{
			"E1.1 / E2.1 at 1000, 0 to 600, gap 0, end on end, upright 0, next E1.2 / E2.2 by 0",
			"E1.2 / E2.2 at 1000, 600 to 1200, gap 0, end on end, upright 0"}},
		// The second course is shortened at its top, so its upper edge at 1000 + 1000 is sawn; the third ends at 3000.
		{"three courses, the second sawn", `"width": 600, "height": 3000`, `{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 1000}, {"height": 1000}, {"gap": 4}]}`, []string{
			"E1.1 / E2.1 at 1000, 0 to 600, gap 0, end on end",
			"E2.1 / E3.1 at 2002, 0 to 600, gap 4, end on crosscut"}},
		// A door from 700 to 1500 takes the line at 1000 away there: E2 is 100 wide below and 300 of E3 is left.
		{"a door interrupts the line", `"width": 1800, "height": 3000, "openings": {"d": {"kind": "door", "x": 700, "width": 800, "head": 2000}}`,
			`{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 1000}, {}]}`, []string{
				"E1.1 / E2.1 at 1000, 0 to 600, gap 0, end on end, upright 0, next E1.2 / E2.2 by 0",
				"E1.2 / E2.2 at 1000, 600 to 700, gap 0, end on end, upright 0",
				"E1.3 / E2.3 at 1000, 1500 to 1800, gap 0, end on end"}},
		// A window across the line within the panel: it meets the one above on both sides.
		{"twice the same two", `"width": 600, "height": 3000, "openings": {"win": {"kind": "window", "x": 200, "width": 200, "sill": 800, "head": 1200}}`,
			`{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 1000}, {}]}`, []string{
				"E1.1 / E2.1 at 1000, 0 to 200, gap 0, end on end",
				"E1.1 / E2.1 2 at 1000, 400 to 600, gap 0, end on end"}},
		// From the right pieces are numbered from there, and cross joints still follow one another from the left.
		{"from the right, shifted by 200", `"width": 1000, "height": 3000`, `{"id": "E", "on": "w", "panel": "oak", "from": "right", "courses": [{"height": 1000}, {"start": -200}]}`, []string{
			"E1.2 / E2.2 at 1000, 0 to 400, gap 0, end on end, upright 200, next E1.1 / E2.2 by 0",
			"E1.1 / E2.2 at 1000, 400 to 600, gap 0, end on end, upright 200, next E1.1 / E2.1 by 0",
			"E1.1 / E2.1 at 1000, 600 to 1000, gap 0, end on end, upright 200"}},
	} {
		if diff := cmp.Diff(c.want, crossOf(setOut(t, planOf(c.wall, c.runs)))); diff != "" {
			t.Errorf("%s: want - got +\n%s", c.name, diff)
		}
	}
}

func TestWhetherACrossJointIsTrimmed(t *testing.T) {
	yes, no := true, false
	for edges, want := range map[string]*bool{
		``:                  nil,
		`, "cut_edges": {}`: &no,
		`, "cut_edges": {"left": {"by": "trim"}}`:     &no,
		`, "cut_edges": {"top": {"by": "finish"}}`:    &yes,
		`, "cut_edges": {"bottom": {"by": "return"}}`: &yes,
	} {
		f := setOut(t, planOf(`"width": 600, "height": 3000`, `{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 1000}, {}]`+edges+`}`))
		if diff := cmp.Diff(want, f.CrossJoints[0].Trimmed); diff != "" {
			t.Errorf("%q: want - got +\n%s", edges, diff)
		}
	}
}

// Along every line the cross joints cover what both courses have there, and no more.
func TestCrossJointsCoverTheLineBetweenTwoCourses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width, low := tenths(t, "width", 700, 5000), tenths(t, "low", 500, 1500)
		first, second := tenths(t, "first", -599, 600), tenths(t, "second", -599, 600)
		f := setOut(t, planOf(fmt.Sprintf(`"width": %v, "height": 3000`, width), fmt.Sprintf(`{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": %v, "start": %v}, {"start": %v}]}`, low, first, second)))
		at := max(0, first, second)
		for i, j := range f.CrossJoints {
			if diff := j.Left - at; diff > 0.011 || diff < -0.011 {
				t.Fatalf("%s begins at %v, the one before it ends at %v", j.ID, j.Left, at)
			}
			at = j.Right
			if (j.NextTo == nil) != (i == len(f.CrossJoints)-1) || j.NextTo != nil && (j.NextTo.Joint != f.CrossJoints[i+1].ID || j.NextTo.Step != 0) {
				t.Fatalf("%s is followed by %v", j.ID, j.NextTo)
			}
		}
		if at < width-0.011 {
			t.Fatalf("the last one ends at %v of %v", at, width)
		}
	})
}

// The joint nearest to a jamb is one that is beside the opening, not one far above it, nor one of a run that ends before it.
func TestAJambTakesAJointThatReachesTheOpening(t *testing.T) {
	// Joints at 600 and 1200 in the first two courses, at 900 in the third, which begins at 2200 over a head of 2000.
	f := setOut(t, planOf(`"width": 1500, "height": 3000, "openings": {"d": {"kind": "door", "x": 910, "width": 400, "head": 2000}}`,
		`{"id": "E", "on": "w", "panel": "oak", "courses": [{"height": 1000}, {"height": 1200}, {"start": -300}]}`))
	if j := find(t, f.Jambs, "w/d left jamb, run E"); j.Distance != 290 || j.Joint != "E2.2 | E2.3" { // 1200 - 910; over the head only the second course has it
		t.Errorf("%s is %v away, want the one at 1200, 290 away", j.Joint, j.Distance)
	}
	// E ends at 600, F is from 600: the door from 700 is F's alone.
	f = setOut(t, planOf(`"width": 2400, "height": 2400, "openings": {"d": {"kind": "door", "x": 700, "width": 400, "head": 2000}}`,
		`{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "E1", "width": 300}, {"id": "E2", "width": 300}]}, {"id": "F", "on": "w", "panel": "oak", "start": 600}`))
	if want := []string{"w/d left jamb, run F", "w/d right jamb, run F"}; !slices.Equal(idsOf(f.Jambs), want) {
		t.Errorf("jambs %q, want %q", idsOf(f.Jambs), want)
	}
}
