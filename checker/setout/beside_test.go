package setout

import (
	"testing"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// No plan of today has two runs of courses side by side, as a run of courses
// goes on to the wall's end; their cross joints are put beside each other here.
func TestTheCrossJointBesideAnotherMayBeInAnotherRun(t *testing.T) {
	oak := &plan.Panel{Pitch: 40}
	e, f := &laid{run: &plan.Run{Panel: oak}}, &laid{run: &plan.Run{Panel: oak}}
	low, high := &course{number: 1}, &course{number: 2}
	at := func(l *laid, c *course, id string, left, right, bottom, y, top float64) crossing {
		return crossing{facts.CrossJoint{About: facts.About{ID: id, On: "w"}, Left: left, Right: right, Y: y},
			&part{laid: l, cell: &cell{course: c}, bottom: bottom, top: y}, &part{laid: l, bottom: y, top: top}}
	}
	for _, c := range []struct {
		name string
		gap  float64
		want string
		step float64
	}{
		// F's at 1150 lies beside both pieces of E, from 0 to 3000, 150 higher; the one at 1700 700 higher.
		{"10 apart", 10, "F 1150", 150},
		{"a pitch apart", 40, "F 1150", 150},
		{"further than a pitch", 41, "", 0},
	} {
		all := []crossing{
			at(f, high, "F 1700", 600+c.gap, 1200, 1150, 1700, 3000), at(f, low, "F 1150", 600+c.gap, 1200, 0, 1150, 1700),
			at(e, low, "E", 0, 600, 0, 1000, 3000)}
		sideBySide(all)
		switch next := all[2].NextTo; {
		case next == nil:
			if c.want != "" {
				t.Errorf("%s: none follows, want %s", c.name, c.want)
			}
		case next.Joint != c.want || next.Step != c.step:
			t.Errorf("%s: %s follows by %v, want %s by %v", c.name, next.Joint, next.Step, c.want, c.step)
		}
		if all[0].NextTo != nil || all[1].NextTo != nil {
			t.Errorf("%s: something follows the last ones", c.name)
		}
	}
	// In one run only what goes on in the same line follows.
	all := []crossing{at(e, low, "E1", 0, 600, 0, 1000, 2000), at(e, high, "E2", 610, 1200, 1000, 2000, 3000)}
	if sideBySide(all); all[0].NextTo != nil {
		t.Errorf("%s follows, which is of another line", all[0].NextTo.Joint)
	}
}
