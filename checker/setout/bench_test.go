package setout_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"trysquare/checker/plan"
	"trysquare/checker/setout"
)

// row writes a plan that comes to so many pieces: panels of 600 on one wall, a
// door or a window every 20 panels, glued and screwed.
func row(pieces int) string {
	var openings []string
	for k := 10; k < pieces; k += 20 {
		// It takes some of one panel and the next, so that no piece is divided.
		kind, sill := "door", ""
		if k/20%2 == 1 {
			kind, sill = "window", `, "sill": 900`
		}
		openings = append(openings, fmt.Sprintf(`"o%d": {"kind": %q, "x": "%d mm", "width": 800, "head": 2040%s}`, k, kind, k*600+190, sill))
	}
	return planOf(fmt.Sprintf(`"width": "%d mm", "height": 2390, "openings": {%s}, "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 300}`, pieces*600, strings.Join(openings, ", ")),
		`{"id": "E", "on": "w", "panel": "oak", "head_drop": 22, "fix": {"adhesive": {"bead": 6, "zigzag": 300, "from_edge": 50, "around": "top and sides", "cartridge": 290},
			"screws": {"per_end": 2, "rows_apart": 600, "length": 45}}}`)
}

func rowPlan(tb testing.TB, pieces int) *plan.Plan {
	tb.Helper()
	p, err := decode("row.json", []byte(row(pieces)))
	if err != nil {
		tb.Fatal(err)
	}
	return p
}

// A piece must not cost more for standing in a long row. What is taken of memory
// can be counted, and what is looked at of all pieces for each would show in it
// where it is kept; time is for the benchmark.
func TestAPieceTakesNoMoreMemoryInALongRow(t *testing.T) {
	perPiece := func(n int) float64 {
		p := rowPlan(t, n)
		return testing.AllocsPerRun(1, func() {
			if _, err := setout.Plan(context.Background(), p, assumed); err != nil {
				t.Fatal(err)
			}
		}) / float64(n)
	}
	if short, long := perPiece(100), perPiece(2_000); long > 1.1*short {
		t.Errorf("%.0f allocations a piece among 2000, %.0f among 100", long, short)
	}
}

// Nanoseconds a piece at 10, 100, 1,000 and 10,000 pieces on two cores:
//
//	34, 44, 49, 63 thousand as first written. With the collector off 44 at 100 and 47 at 10,000: what grew was
//	its work, on 520 allocations a piece.
//	33, 42, 43, 50: a part keeps its sides and trapezoids; slats with room for all; no pointer a side in screw paths.
//	30, 38, 36, 39: edges, pieces, fixings and screws are made as long as they will be: growing them by and by
//	copied them over and over.
//
// Looked at and linear before: openings are found by their left sides, joints
// at a jamb by their places in each course. Not so before: strips and legs of
// every piece with every opening, "left" and "right" of a divided one among all
// openings, joints of every run among all pairs.
func BenchmarkPlan(b *testing.B) {
	for _, n := range []int{10, 100, 1_000, 10_000} {
		p := rowPlan(b, n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := setout.Plan(context.Background(), p, assumed); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/piece")
		})
	}
}
