package setout_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

func areaOf(p facts.Piece) float64 {
	area := shoelace(p.Outline)
	for _, c := range p.Cutouts {
		area -= shoelace(c.Outline)
	}
	return area
}

func TestOnAWallOfAnyOutlinePiecesAndOpeningsMakeUpTheField(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawBays(t, true)
		f := s.facts(t)
		left, right := s.ends()
		whole, free, covered := s.area(left, right, 0, s.height), 0.0, 0.0
		for _, h := range s.holes() {
			free += s.area(max(left, h.left), min(right, h.right), h.bottom, h.top)
		}
		for _, p := range f.Pieces {
			covered += areaOf(p)
		}
		// Corners are rounded to 0.01: up to 0.005 along the slanting ends.
		if math.Abs(covered+free-whole) > 1+0.01*s.width {
			t.Fatalf("%v mm² covered and %v free, the field has %v", covered, free, whole)
		}
		if wall := shoelace(s.outline()); math.Abs(f.Walls[0].Area-wall/1e6) > 0.0001 {
			t.Fatalf("the wall says %v m², its corners enclose %v mm²", f.Walls[0].Area, wall)
		}
	})
}

func TestOnAWallOfAnyOutlineEveryPlaceIsCoveredOnceOrLeftFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawBays(t, false)
		f := s.facts(t)
		for range 100 {
			x, y := tenths(t, "x", 0, s.width-1)+0.05, tenths(t, "y", 0, s.height-1)+0.05
			want, told := s.covers(x, y)
			if !told {
				continue
			}
			n := 0
			for _, p := range f.Pieces {
				in := within(p.Outline, x, y)
				for _, c := range p.Cutouts {
					in = in && !within(c.Outline, x, y)
				}
				if in {
					n++
				}
			}
			if n > 1 || (n == 1) != want {
				t.Fatalf("at %v, %v stand %d pieces, want one: %t", x, y, n, want)
			}
		}
	})
}

func TestOnAWallOfAnyOutlineNothingReachesOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawBays(t, false)
		s.joint = tenths(t, "joint", 0, 10)
		for _, p := range s.facts(t).Pieces {
			if p.CoverWidth > s.panel+0.01 || p.Height > s.board+0.01 || areaOf(p) <= 0 {
				t.Fatalf("%v %s is %v x %v, a panel %v x %v", p.Outline, p.ID, p.CoverWidth, p.Height, s.panel, s.board)
			}
			for _, q := range p.Outline {
				inside := false
				for _, b := range s.bays {
					if q.X >= b.left-0.01 && q.X <= b.right+0.01 {
						low, high := s.between(b, q.X)
						inside = inside || q.Y >= low-0.02 && q.Y <= high+0.02
					}
				}
				if !inside {
					t.Fatalf("%s has a corner at %v, outside the field", p.ID, q)
				}
			}
		}
	})
}

func TestAMirroredWallOfAnyOutlineHasMirroredFacts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawBays(t, false)
		s.joint = rapid.SampledFrom([]float64{0, 2, 3.3}).Draw(t, "joint")
		if rapid.Bool().Draw(t, "in courses") {
			s.drawCourses(t)
		}
		f, g := s.facts(t), s.mirrored().facts(t)
		here, behind := view{width: s.width, pitch: s.pitch}, view{mirrored: true, width: s.width, pitch: s.pitch}
		if diff := cmp.Diff(here.of(f), behind.of(g)); diff != "" {
			t.Fatalf("as it is - mirrored and seen from behind +\n%s", diff)
		}
	})
}

func TestOnAWallOfAnyOutlineInchesComeToTheSameFacts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawBays(t, false)
		if rapid.Bool().Draw(t, "in courses") {
			s.drawCourses(t)
		}
		alikeInInches(t, s.facts(t), setOut(t, s.text(t, "in", 25.4)), s.pitch)
	})
}

// Where panels are a whole number of pitches wide the pattern runs on across
// joints, and a start that is so many pitches further on leaves every cut where it was in it.
func TestWholePitchesFurtherOnEveryCutRunsThroughThePatternAsBefore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawBays(t, false)
		s.panel = math.Ceil(200/s.pitch) * s.pitch
		s.start = tenths(t, "start again", -s.panel+1, 100)
		moved := s
		moved.start += s.pitch * float64(rapid.IntRange(-2, 3).Draw(t, "pitches"))
		if moved.start <= -s.panel+1 {
			t.Skip("the first panel would lie outside the wall")
		}
		type cut struct {
			x    float64
			side string
		}
		depth := map[cut]float64{}
		for _, r := range s.facts(t).Rips {
			depth[cut{r.X, r.Side}] = r.IntoSlat
		}
		same := 0
		for _, r := range moved.facts(t).Rips {
			was, ok := depth[cut{r.X, r.Side}]
			if ok && math.Abs(was-r.IntoSlat) > 0.011 {
				t.Fatalf("the cut at %v was %v inside a slat, now %v", r.X, was, r.IntoSlat)
			}
			if ok {
				same++
			}
		}
		if same == 0 && len(depth) > 2 { // both ends may be cut or not; openings stay
			t.Fatalf("none of %d cuts is left", len(depth))
		}
	})
}
