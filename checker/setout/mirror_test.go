package setout_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"trysquare/checker/facts"
)

// view writes facts down without names, sorted, as they are seen from the room
// or, mirrored, from behind the wall.
type view struct {
	mirrored bool
	width    float64 // of the wall
	pitch    float64
	out      []string
}

func (v *view) add(format string, args ...any) { v.out = append(v.out, fmt.Sprintf(format, args...)) }

// x gives a place across the wall, span the two ends of a stretch.
func (v *view) x(x float64) string {
	if v.mirrored {
		x = v.width - x
	}
	return fmt.Sprintf("%.2f", math.Round(x*100)/100+0) // 0 without a sign
}

func (v *view) span(a, b float64) string {
	if v.mirrored != (a > b) {
		a, b = b, a
	}
	return v.x(a) + ".." + v.x(b)
}

func (v *view) side(side string) string {
	if other := map[string]string{"left": "right", "right": "left"}[side]; v.mirrored && other != "" {
		return other
	}
	return side
}

// both gives two things in the order from the left.
func (v *view) both(left, right string) string {
	if v.mirrored {
		left, right = right, left
	}
	return left + "|" + right
}

// of writes down everything that a mirror turns round and leaves otherwise as it is.
func (v *view) of(f *facts.Facts) []string {
	at := map[string]string{} // pieces by where they are
	for _, p := range f.Pieces {
		at[p.ID] = fmt.Sprintf("%s %.2f..%.2f", v.span(p.Left, p.Right), p.Bottom, p.Top)
		v.add("piece %s: wide %.2f, narrowest %.2f at %.2f, ripped %t, notched %t, %d corners, %d holes", at[p.ID], p.CoverWidth, p.Narrowest.Width, p.Narrowest.Y,
			p.Ripped, p.Notched, len(p.Outline), len(p.Cutouts))
	}
	for _, l := range f.Legs {
		v.add("leg of %s on the %s of %s: %.2f x %.2f at %.2f, notched %t, ripped %t", at[l.Piece], v.side(l.Side), l.Opening, l.Width, l.Height, l.Y, l.Notched, l.Ripped)
	}
	for _, s := range f.Strips {
		v.add("strip of %s %s %s: %.2f", at[s.Piece], s.Where, s.Opening, s.Height)
	}
	for _, r := range f.Rips {
		v.add("cut of %s on its %s by %s at %s: %.2f into a slat, %.2f stays", at[r.Piece], v.side(r.Side), r.MadeBy, v.x(r.X), r.IntoSlat, r.SlatLeft)
	}
	for _, j := range f.Joints {
		v.add("joint of %s at %s, %.2f..%.2f: %s, hooks %t of %t, apart %.2f, gap %.2f", v.both(at[j.Left], at[j.Right]), v.x(j.X), j.Bottom, j.Top,
			v.both(j.LeftMadeBy, j.RightMadeBy), j.Interlocks, j.HasInterlock, j.Apart, j.Gap)
	}
	for _, e := range f.Edges {
		v.add("edge of %s facing %s, %s %.2f..%.2f: %s meets %s, %s by %.8s", at[e.Piece], v.side(e.Side), v.span(e.From.X, e.To.X), e.Low, e.High, e.MadeBy, e.Meets, e.Cover, e.CoveredBy)
	}
	for _, j := range f.CrossJoints {
		upright := "none"
		if j.NearestUpright != nil {
			upright = fmt.Sprintf("%.2f", *j.NearestUpright)
		}
		v.add("cross joint of %s and %s, %s at %.2f: gap %.2f, %s on %s, upright %s", at[j.Lower], at[j.Upper], v.span(j.Left, j.Right), j.Y, j.Gap, j.UpperMadeBy, j.LowerMadeBy, upright)
	}
	for _, l := range f.Lines {
		direction := v.side(l.Direction)
		if math.Abs(l.Offset-v.pitch/2) < 0.01 {
			direction = "either" // half a pitch is as far to the left as to the right
		}
		v.add("lines %s %s, %s, of %s and %s: %.2f %s", l.Where, l.Opening, v.side(l.Side), at[l.Piece], at[l.Other], l.Offset, direction)
	}
	for _, j := range f.Jambs {
		v.add("jamb %s of %s at %s: %.2f %s", v.side(j.Side), j.Opening, v.x(j.X), j.Distance, j.Where)
	}
	for _, h := range f.Headers {
		v.add("head of %s", h.Opening)
	}
	v.screws(f, at)
	slices.Sort(v.out)
	return v.out
}

// screws writes down those of whole pieces wide enough that each outer screw has its own space to go to.
func (v *view) screws(f *facts.Facts, at map[string]string) {
	pieces := map[string]facts.Piece{}
	for _, p := range f.Pieces {
		pieces[p.ID] = p
	}
	for _, fix := range f.Fixings {
		// One screw in the middle may be as far from one space as from the next.
		if p := pieces[fix.Piece]; fix.Screws == nil || p.Notched || p.CoverWidth < 201 || !fix.Screws.OnStuds && fix.Screws.PerTop < 2 {
			continue
		}
		for _, s := range fix.Screws.Places {
			v.add("screw of %s at %s, %.2f into %s", at[fix.Piece], v.x(s.X), s.Y, s.Into)
		}
	}
}

func TestAMirroredPlanHasMirroredFacts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t, false)
		s.joint = rapid.SampledFrom([]float64{0, 2, 3.3}).Draw(t, "joint")
		f, g := s.facts(t), s.mirrored().facts(t)
		here, behind := view{width: s.width, pitch: s.pitch}, view{mirrored: true, width: s.width, pitch: s.pitch}
		if diff := cmp.Diff(here.of(f), behind.of(g)); diff != "" {
			t.Fatalf("as it is - mirrored and seen from behind +\n%s", diff)
		}
		if math.Abs(f.Adhesive.Length-g.Adhesive.Length) > 0.02 {
			t.Fatalf("%v mm of bead, mirrored %v", f.Adhesive.Length, g.Adhesive.Length)
		}
	})
}
