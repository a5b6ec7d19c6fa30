package setout_test

import (
	"context"
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"trysquare/checker/setout"
)

// FuzzPlan gives arbitrary numbers to a plan that has a little of everything. A
// plan is refused or set out, in under a second, and its facts are numbers.
func FuzzPlan(f *testing.F) {
	f.Add(3640., 2390., 600., 2400., 40., 28., 6., 0., 0., 1396., 768., 2032., 300., 400., 600., 2, false)
	f.Add(120., 95.5, 24., 96., 1.5, 1., .25, -12., .1, 40., 30., 80., 12., 16., 16., 1, true)
	for _, n := range []float64{0, 5, 1e-300, 5e-324, 1e6, -1} {
		f.Add(n, n, n, n, n, n, n, n, n, n, n, n, n, n, n, 100, true)
		f.Add(3640., 2390., 600., 2400., 40., 28., 6., 0., 0., 1396., 768., 2032., n, 400., 600., 2, false)
		f.Add(3640., 2390., 600., 2400., 40., n, 6., n, n, 1396., 768., 2032., 300., 400., 600., 2, false)
		f.Add(n, 2390., n, 2400., 40., 28., 6., 0., 0., 1396., 768., 2032., 300., 400., 600., 2, false)
	}
	// As large as lengths get, with everything as close as it gets: slats, studs, rows, panels.
	f.Add(1e6, 1e6, 600., 1e6, 5., 4., 0., 0., 0., 1e3, 768., 2032., 300., 5., 5., 100, false)
	f.Add(1e6, 1e6, 1e6, 1e6, 5., 4., 0., 0., 0., 1e3, 768., 2032., 300., 5., 600., 100, false)
	f.Add(1e6, 3000., 1e6, 3000., 5., 4., 0., 0., 0., 1e3, 768., 2032., 300., 400., 40., 2, true)
	f.Add(1e6, 3000., 6., 3000., 6., 4., 0., 0., 0., 1e3, 768., 2032., 300., 400., 600., 2, false)
	f.Add(9000., 2400., 6., 2400., 6., 4., 0., 0., 0., 100., 100., 2000., 300., 400., 600., 1, false)
	f.Add(9000., 2400., 7., 2400., 6., 4., 0., 0., 0., 100., 5000., 2000., 300., 2000., 600., 2, false)
	f.Fuzz(func(t *testing.T, width, height, panel, board, pitch, slat, first, start, joint, x, opening, head, zigzag, rows, studs float64, screws int, inches bool) {
		unit := "mm"
		if inches {
			unit = "in"
		}
		text := fmt.Sprintf(`{"title": "f", "units": %q, "panels": {"p": {"width": %v, "height": %v, "thickness": "20 mm", "slats": {"pitch": %v, "width": %v, "first": %v}, "backing": {"thickness": "9 mm"}}},
			"walls": {"w": {"width": %v, "height": %v, "background": {"kind": "plasterboard on studs", "stud_centres": %v, "first_stud": %v},
				"openings": {"o": {"kind": "window", "x": %v, "width": %v, "head": %v, "sill": "100 mm", "leaf": {"width": %v, "height": %v, "thickness": 1}}}, "services": []}},
			"runs": [{"id": "E", "on": "w", "panel": "p", "start": %v, "joint": %v, "fix": {"adhesive": {"bead": 6, "zigzag": %v, "from_edge": %v, "around": "all four edges"}, "screws": {"per_end": %d, "on_studs": %t, "rows_apart": %v, "length": 45}}},
				{"id": "L", "on": "w/o/leaf", "panel": "p", "start": %v, "from": "right"}]}`,
			unit, panel, board, pitch, slat, first, width, height, studs, x, x, opening, head, opening-1, head/2, start, joint, zigzag, slat, screws, inches, rows, start)
		p, err := decode("fuzz.json", []byte(text))
		if err != nil {
			return // refused before it is set out
		}
		began := time.Now()
		out, err := setout.Plan(context.Background(), p, assumed)
		if took := time.Since(began); took > time.Second {
			t.Errorf("it took %v\n%s", took, text)
		}
		if err != nil {
			return
		}
		if _, err := json.Marshal(out); err != nil {
			t.Errorf("facts that are no numbers: %v\n%s", err, text)
		}
	})
}
