package setout_test

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

// shoelace is the area that a ring encloses.
func shoelace(ring []facts.Point) float64 {
	twice := 0.0
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		twice += a.X*b.Y - a.Y*b.X
	}
	return math.Abs(twice) / 2
}

// within says whether a ray from the point to the right crosses the ring an odd number of times.
func within(ring []facts.Point, x, y float64) bool {
	in := false
	for i, a := range ring {
		b := ring[(i+1)%len(ring)]
		if (a.Y > y) != (b.Y > y) && x < a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			in = !in
		}
	}
	return in
}

func onWall(f *facts.Facts) []facts.Piece {
	var out []facts.Piece
	for _, p := range f.Pieces {
		if !p.OnLeaf {
			out = append(out, p)
		}
	}
	return out
}

func TestPiecesAndOpeningsMakeUpTheField(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, true)
		f, field := s.facts(t), s.field()
		covered, free := 0.0, 0.0
		for _, p := range onWall(f) {
			area := shoelace(p.Outline)
			for _, c := range p.Cutouts {
				area -= shoelace(c.Outline)
			}
			if math.Abs(area/1e6-p.Area) > 0.00006 {
				t.Fatalf("%s: area %v m², its outline has %v mm²", p.ID, p.Area, area)
			}
			covered += area
		}
		for _, h := range s.holes() {
			free += h.areaIn(field)
		}
		if whole := field.areaIn(field); math.Abs(covered+free-whole) > 1 {
			t.Fatalf("%v mm² covered and %v free, the field has %v", covered, free, whole)
		}
		if math.Abs(f.Walls[0].Covered-covered/1e6) > 0.00006 {
			t.Fatalf("the wall says %v m², its pieces have %v mm²", f.Walls[0].Covered, covered)
		}
		// An opening at the field's end may take the first piece or the last.
		left, right := math.Inf(1), math.Inf(-1)
		for _, p := range onWall(f) {
			left, right = min(left, p.Left), max(right, p.Right)
		}
		if r := f.Runs[0]; r.Left != left || r.Right != right || r.Left < field.left-0.01 || r.Right > field.right+0.01 || r.Pieces != len(onWall(f)) {
			t.Fatalf("the run of %d goes from %v to %v, its pieces from %v to %v, the field from %v to %v", r.Pieces, r.Left, r.Right, left, right, field.left, field.right)
		}
	})
}

// Points instead of overlays: one piece at each place that is to be covered, none elsewhere, so that no two overlap.
func TestEveryPlaceIsCoveredOnceOrLeftFree(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		f, field, holes := s.facts(t), s.field(), s.holes()
		for range 100 {
			// Between two tenths, so on no edge.
			x, y := tenths(t, "x", 0, s.width-1)+0.05, tenths(t, "y", 0, s.height-1)+0.05
			want := 0
			if field.has(x, y) {
				want = 1
			}
			for _, h := range holes {
				if h.has(x, y) {
					want = 0
				}
			}
			var there []string
			for _, p := range onWall(f) {
				in := within(p.Outline, x, y)
				for _, c := range p.Cutouts {
					in = in && !within(c.Outline, x, y)
				}
				if in {
					there = append(there, p.ID)
				}
			}
			if len(there) != want {
				t.Fatalf("at %v, %v stand %q, want %d piece(s)", x, y, there, want)
			}
		}
	})
}

func TestEveryPieceLiesOnItsSurfaceAndComesFromOnePanel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		s.joint = tenths(t, "joint", 0, 10)
		f := s.facts(t)
		for _, p := range f.Pieces {
			if p.Left < 0 || p.Right > s.width || p.Bottom < 0 || p.Top > s.height {
				t.Fatalf("%s reaches outside the wall: %v to %v, %v to %v", p.ID, p.Left, p.Right, p.Bottom, p.Top)
			}
			if p.CoverWidth <= 0 || p.CoverWidth > s.panel+0.01 || p.Height <= 0 || p.Height > s.board+0.01 {
				t.Fatalf("%s is %v x %v, a panel %v x %v", p.ID, p.CoverWidth, p.Height, s.panel, s.board)
			}
			if p.Narrowest.Width <= 0 || p.Narrowest.Width > p.CoverWidth {
				t.Fatalf("%s is %v wide and %v where it is narrowest", p.ID, p.CoverWidth, p.Narrowest.Width)
			}
		}
		for _, j := range f.Joints {
			if s.joint != 0 && j.On == "w" && math.Abs(j.Apart-s.joint) > 0.01 {
				t.Fatalf("%s: %v apart, want %v", j.ID, j.Apart, s.joint)
			}
		}
	})
}

// The plan in inches differs in nothing but noise behind the comma, which must not show.
func TestInchesComeToTheSameFacts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		alikeInInches(t, s.facts(t), setOut(t, s.text(t, "in", 25.4)), s.pitch)
	})
}

// alikeInInches holds the facts of a plan against those of the same plan in inches.
func alikeInInches(t *rapid.T, want, got *facts.Facts, pitch float64) {
	for _, list := range [][]facts.LinePair{want.Lines, got.Lines} {
		for i := range list {
			if math.Abs(list[i].Offset-pitch/2) < 0.01 {
				list[i].Direction = "either" // half a pitch is as far to the left as to the right
			}
		}
	}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(0, 0.0101)); diff != "" {
		t.Fatalf("mm - inches +\n%s", diff)
	}
}

func TestAnOpeningNeverAddsPanel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		if len(s.openings) == 0 {
			t.Skip("nothing to leave out")
		}
		with := s.facts(t).Walls[0].Covered
		s.openings = s.openings[1:]
		if without := s.facts(t).Walls[0].Covered; with > without {
			t.Fatalf("%v m² with the opening, %v without it", with, without)
		}
	})
}

func TestBoardsNeededAreAtLeastTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		f := s.facts(t)
		area := 0.0
		for _, p := range f.Pieces {
			area += p.Area
		}
		b := f.Boards[0]
		if b.Needed < b.Least || b.Needed > len(f.Pieces) {
			t.Fatalf("%d boards needed for %d pieces, and %d the least", b.Needed, len(f.Pieces), b.Least)
		}
		// Pieces' areas are rounded to a square centimetre each. A cutting plan may show that more than their area is needed.
		if want := area / (s.panel * s.board / 1e6); float64(b.Least) < want-0.01 {
			t.Fatalf("least %d, the pieces have %v boards' area", b.Least, want)
		}
	})
}
