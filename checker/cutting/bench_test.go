package cutting

import (
	"context"
	"fmt"
	"testing"
)

// mixed is a job as it comes off walls: whole panels, cuts at corners with one
// edge, strips that begin anywhere, headers over doors and a few low pieces.
func mixed(n int) []Blank {
	var out []Blank
	for i := range n {
		w := float64(60 + 37*(i*i%13))
		b := Blank{ID: fmt.Sprintf("B%05d", i), Right: w, Height: 2390}
		switch i % 6 {
		case 0:
			b.Right, b.LeftEdge, b.RightEdge = 600, true, true
		case 1:
			b.LeftEdge = true
		case 2:
			b.Left, b.Right, b.RightEdge = 600-w, 600, true
		case 3:
			b.Left, b.Right = float64(i%90), w+float64(i%90)
		case 4:
			b.Right, b.Height, b.LeftEdge, b.RightEdge = 600, 380, true, true
		case 5:
			b.Height, b.End = float64(400+100*(i%7)), i%4 == 1
		}
		out = append(out, b)
	}
	return out
}

// BenchmarkPlan plans jobs of growing size. Over 64 blanks nothing is searched.
//
// Trees over all gaps and all heights: 2 to 3.5 µs a blank from 10 blanks to
// 10,000, about 30 ms in all on two slow cores. The search looks at a length's
// width before it compares or allocates: a third of the time for 64 blanks.
func BenchmarkPlan(b *testing.B) {
	jobs := map[string]func(int) []Blank{
		"mixed": mixed,
		// Every board stays open, and no blank but the last few fits what is left of it.
		"open": func(n int) []Blank { return named(times(n-n/10, at(0, 400, 2300)), times(n/10, at(0, 198, 2200))) },
		// Every gap is wide enough and none suits the pattern.
		"off": func(n int) []Blank { return named(times(n/2, at(0, 302, 2400)), times(n/2, at(30, 325, 2390))) },
	}
	for _, name := range []string{"mixed", "open", "off"} {
		for _, n := range []int{10, 100, 1_000, 10_000} {
			blanks := jobs[name](n)
			b.Run(fmt.Sprintf("%s/%d", name, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
					if err != nil || l.Boards == 0 {
						b.Fatal(l.Boards, err)
					}
				}
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/blank")
			})
		}
	}
}

func BenchmarkPlanFromManyOffcuts(b *testing.B) {
	blanks := mixed(5_000)
	var offcuts []Offcut
	for i := range 5_000 {
		offcuts = append(offcuts, Offcut{ID: fmt.Sprintf("O%05d", i), Right: float64(50 + i%300), Height: float64(300 + i%2000), LeftEdge: i%2 == 0})
	}
	for b.Loop() {
		if l, err := Plan(context.Background(), slatted, blanks, offcuts, Usual(2)); err != nil || l.Boards == 0 {
			b.Fatal(l.Boards, err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/5_000, "ns/blank")
}

func BenchmarkCheck(b *testing.B) {
	blanks := mixed(10_000)
	l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
	if err != nil {
		b.Fatal(err)
	}
	a := assigned(l)
	for b.Loop() {
		if misfits, err := Check(slatted, a, blanks, 2); err != nil || len(misfits) > 0 {
			b.Fatal(misfits, err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/10_000, "ns/blank")
}
