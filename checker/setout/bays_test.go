package setout_test

import (
	"math"
	"slices"

	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

// bay is a stretch of a wall with a straight floor and a straight ceiling. Next
// to one another they make raked and stepped ceilings, sloping and stepped floors, nibs.
type bay struct {
	left, right    float64
	floor, ceiling slope
}

// course is a course of a sketch's run.
type course struct{ height, start, gap float64 }

// drawCourses gives a sketch two or three courses, the last up to the ceiling.
func (s *sketch) drawCourses(t *rapid.T) {
	for range rapid.IntRange(2, 3).Draw(t, "courses") {
		s.courses = append(s.courses, course{tenths(t, "course", 300, 700), tenths(t, "start", -s.panel+1, s.width/3), rapid.SampledFrom([]float64{0, 3.3}).Draw(t, "gap")})
	}
}

// slope is the heights at the left and the right end of a bay.
type slope struct{ left, right float64 }

func (b bay) at(s slope, x float64) float64 {
	return s.left + (s.right-s.left)*(x-b.left)/(b.right-b.left)
}

// drawBays draws a sketch of a wall of bays. Their widths and rises are a prime
// number of tenths, so that no corner of a piece lies half-way between two roundings.
func drawBays(t *rapid.T, plain bool) sketch {
	wide := rapid.SampledFrom([]float64{300.7, 500.3, 799.3, 997.3, 1200.7, 1501.3})
	step := rapid.SampledFrom([]float64{0, 5.3, 10.1, 49.9, 100.9})
	rise := rapid.SampledFrom([]float64{0, 0, 49.9, -49.9, 200.3, -200.3, 400.1, -400.1})
	var bays []bay
	x, floor, ceiling := 0.0, 0.0, tenths(t, "ceiling", 2200, 2800)
	for i := range rapid.IntRange(2, 5).Draw(t, "bays") {
		b := bay{left: x, right: to10th(x + wide.Draw(t, "bay"))}
		if i > 0 && rapid.Bool().Draw(t, "stepped") {
			floor, ceiling = step.Draw(t, "floor"), tenths(t, "ceiling", 1800, 2900)
		}
		b.floor.left, b.ceiling.left = floor, ceiling
		floor, ceiling = to10th(floor+step.Draw(t, "floor rises by")), to10th(ceiling+rise.Draw(t, "ceiling rises by"))
		if ceiling < 1500 {
			ceiling = b.ceiling.left
		}
		b.floor.right, b.ceiling.right = floor, ceiling
		x, bays = b.right, append(bays, b)
	}
	top := 0.0
	for _, b := range bays {
		top = max(top, b.ceiling.left, b.ceiling.right)
	}
	s := drawRun(t, x, top)
	s.bays = bays
	if !plain {
		s.drop = rapid.SampledFrom([]float64{0, 22}).Draw(t, "drop")
	}
	for _, b := range bays {
		if rapid.Bool().Draw(t, "an opening") {
			s.openings = append(s.openings, b.drawOpening(t))
		}
	}
	return s
}

// drawOpening draws one that lies within the bay, up to its ceiling at the most.
func (b bay) drawOpening(t *rapid.T) gap {
	g := gap{kind: rapid.SampledFrom([]string{"window", "pillar", "hatch"}).Draw(t, "kind"), x: tenths(t, "x", b.left, b.right-200) + 0.03}
	g.width = tenths(t, "width", 100, b.right-g.x-1)
	// Odd hundredths, as elsewhere: setting out looks half a millimetre beyond a sill and a head.
	g.sill = max(b.floor.left, b.floor.right)
	if rapid.Bool().Draw(t, "over the floor") {
		g.sill = tenths(t, "sill", g.sill, g.sill+700) + 0.03
	}
	g.head = min(b.ceiling.left, b.ceiling.right)
	if rapid.Bool().Draw(t, "under the ceiling") {
		g.head = tenths(t, "head", g.sill+100, g.head-1) + 0.03
	}
	return g
}

// outline gives the corners of the wall, along the floor and back along the ceiling.
func (s sketch) outline() []facts.Point {
	var floor, ceiling []facts.Point
	for _, b := range s.bays {
		floor = append(floor, facts.Point{X: b.left, Y: b.floor.left}, facts.Point{X: b.right, Y: b.floor.right})
		ceiling = append(ceiling, facts.Point{X: b.left, Y: b.ceiling.left}, facts.Point{X: b.right, Y: b.ceiling.right})
	}
	slices.Reverse(ceiling)
	return slices.Compact(append(floor, ceiling...))
}

// between gives where at x the run's field begins and ends, in one bay: the
// gaps kept from floor and ceiling wherever they lie, and no higher than a board.
func (s sketch) between(b bay, x float64) (low, high float64) {
	low, high = b.at(b.floor, x)+s.base, b.at(b.ceiling, x)-s.clear
	return low, min(high, s.base+s.board)
}

// area adds up the part of the field that lies between two heights and two
// upright lines: between the places where one of the limits takes over from
// another, its height is linear.
func (s sketch) area(left, right, bottom, top float64) float64 {
	sum := 0.0
	for _, b := range s.bays {
		l, r := max(left, b.left), min(right, b.right)
		if l >= r {
			continue
		}
		lines := []func(x float64) float64{
			func(x float64) float64 { return b.at(b.floor, x) + s.base }, func(x float64) float64 { return b.at(b.ceiling, x) - s.clear },
			func(float64) float64 { return s.base + s.board }, func(float64) float64 { return bottom }, func(float64) float64 { return top }}
		at := []float64{l, r}
		for i, f := range lines {
			for _, g := range lines[:i] {
				if rise := (f(r) - g(r)) - (f(l) - g(l)); rise != 0 {
					at = append(at, min(r, max(l, l-(f(l)-g(l))/rise*(r-l))))
				}
			}
		}
		slices.Sort(at)
		height := func(x float64) float64 {
			low, high := s.between(b, x)
			return max(0, min(high, top)-max(low, bottom))
		}
		for i := 1; i < len(at); i++ {
			sum += (at[i] - at[i-1]) * (height(at[i-1]) + height(at[i])) / 2
		}
	}
	return sum
}

// ends gives between which upright lines the run stands.
func (s sketch) ends() (left, right float64) {
	if s.fromRight {
		return 0, s.width - max(0, s.start)
	}
	return max(0, s.start), s.width
}

// covers says whether a place of the wall is to be covered; near a limit it is not told.
func (s sketch) covers(x, y float64) (covered, told bool) {
	left, right := s.ends()
	told = math.Min(math.Abs(x-left), math.Abs(x-right)) > 0.1
	covered = x > left && x < right
	for _, b := range s.bays {
		told = told && math.Min(math.Abs(x-b.left), math.Abs(x-b.right)) > 0.1
		if x > b.left && x < b.right {
			low, high := s.between(b, x)
			told = told && math.Min(math.Abs(y-low), math.Abs(y-high)) > 0.1
			covered = covered && y > low && y < high
		}
	}
	for _, h := range s.holes() {
		told = told && math.Min(math.Abs(x-h.left), math.Abs(x-h.right)) > 0.1 && math.Min(math.Abs(y-h.bottom), math.Abs(y-h.top)) > 0.1
		covered = covered && !h.has(x, y)
	}
	return covered, told
}
