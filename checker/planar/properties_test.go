package planar

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"
)

type box struct{ left, bottom, right, top float64 }

func (b box) polygon() Polygon { return Rect(b.left, b.bottom, b.right, b.top) }
func (b box) area() float64    { return max(0, b.right-b.left) * max(0, b.top-b.bottom) }

// both gives what two boxes share; its area is 0 where they share nothing.
func (b box) both(c box) box {
	return box{max(b.left, c.left), max(b.bottom, c.bottom), min(b.right, c.right), min(b.top, c.top)}
}

// boxes draws from few enough places that sides often fall together, which is where an overlay goes wrong.
var boxes = rapid.Custom(func(t *rapid.T) box {
	place := rapid.Map(rapid.IntRange(-1e6, 9e6), func(n int) float64 { return float64(n) / 1000 })
	if rapid.Bool().Draw(t, "on a grid") {
		place = rapid.Map(rapid.IntRange(0, 12), func(n int) float64 { return float64(n) * 50.8 })
	}
	x, y := place.Draw(t, "x"), place.Draw(t, "y")
	size := rapid.SampledFrom([]float64{12.7, 50.8, 101.6, 600, 2400})
	return box{x, y, x + size.Draw(t, "width"), y + size.Draw(t, "height")}
})

func sum(ps []Polygon) float64 {
	total := 0.0
	for _, p := range ps {
		total += p.Area()
	}
	return total
}

// The area of what one or two boxes take out of another is known in closed form, without any overlay.
func TestAreasOfWhatIsLeftAndWhatIsTakenAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := boxes.Draw(t, "a"), boxes.Draw(t, "b"), boxes.Draw(t, "c")
		for _, one := range []struct {
			take []box
			both float64
		}{
			{[]box{b}, a.both(b).area()},
			{[]box{b, c}, a.both(b).area() + a.both(c).area() - a.both(b).both(c).area()},
		} {
			var take []Polygon
			for _, o := range one.take {
				take = append(take, o.polygon())
			}
			left, err := a.polygon().Minus(take...)
			if err != nil {
				t.Fatal(err)
			}
			// A millionth of a millimetre of rounding along 20 m of sides is 0.02 mm².
			if math.Abs(sum(left)+one.both-a.area()) > 0.02 {
				t.Fatalf("%v left and %v taken, of %v", sum(left), one.both, a.area())
			}
		}
	})
}

// Whatever shape comes out, cutting it into trapezoids either way keeps its area, and its rings are as the package says.
func TestWhatIsLeftIsWellFormed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left, err := boxes.Draw(t, "a").polygon().Minus(boxes.Draw(t, "b").polygon(), boxes.Draw(t, "c").polygon())
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range left {
			if len(p.Outer) < 4 || p.Area() <= 0 {
				t.Fatalf("%v is no polygon", p)
			}
			for i, ring := range p.rings() {
				if area := (Polygon{Outer: ring}).Area(); (area > 0) != (i == 0) {
					t.Fatalf("ring %d of %v turns the wrong way", i, p)
				}
				for _, q := range ring {
					if q.Y < ring[0].Y || q.Y == ring[0].Y && q.X < ring[0].X {
						t.Fatalf("ring %d of %v does not start at its lowest leftmost corner", i, p)
					}
				}
			}
			for _, q := range []Polygon{p, p.Transposed()} {
				area := 0.0
				for _, z := range q.Trapezoids() {
					area += (z.BottomRight - z.BottomLeft + z.TopRight - z.TopLeft) / 2 * (z.Top - z.Bottom)
				}
				if math.Abs(area-p.Area()) > 0.02 {
					t.Fatalf("trapezoids of %v have %v in all, want %v", q, area, p.Area())
				}
			}
		}
	})
}

func (p Polygon) moved(dx, dy float64) Polygon {
	shift := func(ring []Point) []Point {
		var out []Point
		for _, q := range ring {
			out = append(out, Point{q.X + dx, q.Y + dy})
		}
		return out
	}
	out := Polygon{Outer: shift(p.Outer)}
	for _, h := range p.Holes {
		out.Holes = append(out.Holes, shift(h))
	}
	return out
}

func TestMovingEverythingMovesTheResult(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := boxes.Draw(t, "a").polygon(), boxes.Draw(t, "b").polygon()
		// Whole millimetres: the grain's rounding then falls on the same side in both places.
		dx, dy := float64(rapid.IntRange(-5000, 5000).Draw(t, "dx")), float64(rapid.IntRange(-5000, 5000).Draw(t, "dy"))
		here, err := a.Minus(b)
		if err != nil {
			t.Fatal(err)
		}
		there, err := a.moved(dx, dy).Minus(b.moved(dx, dy))
		if err != nil {
			t.Fatal(err)
		}
		var want []Polygon
		for _, p := range here {
			want = append(want, p.moved(dx, dy))
		}
		if diff := cmp.Diff(want, there, cmpopts.EquateApprox(0, 3*grain), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("want - got +\n%s", diff)
		}
		for i, p := range here {
			w, v := p.Narrowest(), there[i].Narrowest()
			if diff := cmp.Diff(Width{w.X + dx, w.Y + dy, w.Width}, v, cmpopts.EquateApprox(0, 3*grain)); diff != "" {
				t.Fatalf("narrowest: want - got +\n%s", diff)
			}
		}
	})
}

func TestTransposedTwiceIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left, err := boxes.Draw(t, "a").polygon().Minus(boxes.Draw(t, "b").polygon())
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range left {
			once := p.Transposed()
			if once.Area() <= 0 {
				t.Fatalf("%v lost its sense", once)
			}
			if diff := cmp.Diff(p, once.Transposed()); diff != "" {
				t.Fatalf("want - got +\n%s", diff)
			}
		}
	})
}

// Sides that only noise holds apart meet: no sliver, no thread that ties two pieces together.
func TestNoiseChangesNothing(t *testing.T) {
	noise := rapid.SampledFrom([]float64{-3e-10, -1e-13, 0, 1e-13, 3e-10})
	rapid.Check(t, func(t *rapid.T) {
		a, b := boxes.Draw(t, "a"), boxes.Draw(t, "b")
		want, err := a.polygon().Minus(b.polygon())
		if err != nil {
			t.Fatal(err)
		}
		c := box{b.left + noise.Draw(t, "left"), b.bottom + noise.Draw(t, "bottom"), b.right + noise.Draw(t, "right"), b.top + noise.Draw(t, "top")}
		got, err := a.polygon().Minus(c.polygon())
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 3*grain), cmpopts.EquateEmpty()); diff != "" {
			t.Fatalf("want - got +\n%s", diff)
		}
	})
}
