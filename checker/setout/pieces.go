package setout

import (
	"fmt"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/planar"
)

// pieces gives the facts of pieces, and of the strips and legs that openings leave of them.
func (s *setter) pieces(f *facts.Facts) {
	f.Pieces = make([]facts.Piece, 0, len(s.parts))
	for _, p := range s.parts {
		rips := p.rips()
		p.ripped = slices.ContainsFunc(rips, func(r facts.Rip) bool { return r.MadeBy == "rip" })
		f.Rips = append(f.Rips, rips...)
		f.Pieces = append(f.Pieces, p.facts())
		for _, h := range p.laid.holesAcross(p.left-1, p.right+1) {
			f.Strips = append(f.Strips, p.strips(h)...)
			f.Legs = append(f.Legs, p.legs(h)...)
		}
	}
}

func (p *part) about(id string) facts.About {
	return facts.About{ID: id, At: p.cell.at, On: p.surface.on}
}

func (p *part) facts() facts.Piece {
	narrow := p.poly.Narrowest()
	out := facts.Piece{About: p.about(p.id), Run: p.run().ID, Panel: p.panel().Name, OnLeaf: p.surface.leaf != nil,
		Left: round(p.left), Right: round(p.right), Bottom: round(p.bottom), Top: round(p.top),
		CoverWidth: round(p.right - p.left), Height: round(p.top - p.bottom), Area: squareMetres(p.poly.Area()),
		Notched: !p.straight(), InView: p.inView(),
		Narrowest: facts.Narrow{Width: round(narrow.Width), X: round(narrow.X), Y: round(narrow.Y)},
		Pattern:   p.pattern(),
		Outline:   points(p.poly.Outer), Cutouts: []facts.Cutout{}}
	for _, ring := range p.poly.Holes {
		out.Cutouts = append(out.Cutouts, facts.Cutout{Outline: points(ring)})
	}
	out.Ripped = p.ripped
	if p.cell.spec != nil {
		out.HiddenBy = p.cell.spec.HiddenBy
	}
	if p.cell.stated != nil {
		stated, space := round(*p.cell.stated), round(p.cell.space)
		excess := round(max(0, *p.cell.stated-p.cell.space))
		out.StatedWidth, out.Space, out.Excess = &stated, &space, &excess
	}
	return out
}

// squareMetres gives square millimetres as square metres, rounded to a square centimetre.
func squareMetres(mm2 float64) float64 { return math.Round(mm2/100) / 1e4 }

func points(ring []planar.Point) []facts.Point {
	out := make([]facts.Point, len(ring))
	for i, q := range ring {
		out[i] = facts.Point{X: round(q.X), Y: round(q.Y)}
	}
	return out
}

// overlapsX says whether a hole lies over or under some of the part's width.
func (p *part) overlapsX(h hole) bool { return h.left < p.right-near && h.right > p.left+near }

// strips gives what of a part lies over and under a hole.
func (p *part) strips(h hole) []facts.Strip {
	var out []facts.Strip
	if !p.overlapsX(h) {
		return nil
	}
	add := func(where string, height float64) {
		out = append(out, facts.Strip{About: p.about(p.id + " " + where + " " + h.opening.Name), Piece: p.id, Opening: h.id(),
			Where: where, Height: round(height), InView: p.inView()})
	}
	over, under := math.Inf(1), math.Inf(1) // the least of each: another hole may take some of it
	for _, c := range p.columns() {
		switch {
		case c.right <= h.left+near || c.left >= h.right-near:
		case same(c.bottom, h.top):
			over = min(over, c.top-c.bottom)
		case same(c.top, h.bottom):
			under = min(under, c.top-c.bottom)
		}
	}
	if !math.IsInf(over, 1) {
		add("over", over)
	}
	if !math.IsInf(under, 1) {
		add("under", under)
	}
	return out
}

func (h hole) id() string { return h.opening.Wall.Name + "/" + h.opening.Name }

// legs gives what of a part stands directly beside a hole, at the heights that both have.
func (p *part) legs(h hole) []facts.Leg {
	var out []facts.Leg
	for _, side := range []string{"left", "right"} {
		jamb := h.left
		if side == "right" {
			jamb = h.right
		}
		least, low, high := besideHole(h, side, jamb, p.poly.Uprights())
		if math.IsInf(least.Width, 1) { // nothing but the tip of a slanting end
			least, low, high = besideHole(h, side, jamb, p.levels)
		}
		if math.IsInf(least.Width, 1) {
			continue
		}
		out = append(out, facts.Leg{About: p.about(p.id + " " + side + " of " + h.opening.Name), Piece: p.id, Opening: h.id(), Side: side,
			Width: round(least.Width), Y: round(max(least.Y, low)), Height: round(high - low), Notched: p.overlapsX(h), Ripped: p.ripped, InView: p.inView()})
	}
	return out
}

// besideHole gives the least width of what stands directly beside a jamb, and from where to where it does.
func besideHole(h hole, side string, jamb float64, parts []planar.Trapezoid) (least planar.Width, low, high float64) {
	least.Width, low, high = math.Inf(1), math.Inf(1), math.Inf(-1)
	for _, t := range parts {
		edge := t.BottomRight
		if side == "right" {
			edge = t.BottomLeft
		}
		if !same(edge, jamb) || t.Top <= h.bottom+near || t.Bottom >= h.top-near {
			continue
		}
		if w := t.Narrowest(); w.Width < least.Width {
			least = w
		}
		low, high = min(low, max(t.Bottom, h.bottom)), max(high, min(t.Top, h.top))
	}
	return least, low, high
}

// rips gives the upright cuts of a part and how each runs through the pattern.
func (p *part) rips() []facts.Rip {
	var out []facts.Rip
	for _, side := range p.sides {
		if side.Faces != "left" && side.Faces != "right" {
			continue
		}
		made := p.madeBy(side)
		if made != "rip" && made != "notch" {
			continue
		}
		x, into, left := p.cutAt(side)
		id := p.id + " " + side.Faces + " " + made
		for n := 2; taken(out, id); n++ {
			id = fmt.Sprintf("%s %s %s %d", p.id, side.Faces, made, n)
		}
		out = append(out, facts.Rip{About: p.about(id), Piece: p.id, Side: side.Faces, MadeBy: made, X: round(x),
			IntoSlat: round(into), SlatLeft: round(left), SlatWidth: round(p.panel().SlatWidth), InView: p.inView()})
	}
	return out
}

func taken(rips []facts.Rip, id string) bool {
	for _, r := range rips {
		if r.ID == id {
			return true
		}
	}
	return false
}

// cutAt gives where a cut that faces left or right runs deepest inside a slat,
// as slatAt does: a leaning one runs through several.
func (p *part) cutAt(side planar.Side) (x, into, left float64) {
	low, high := side.From, side.To
	if low.Y > high.Y {
		low, high = high, low
	}
	x = low.X
	into, left = p.slatAt(x, side.Faces)
	places := []float64{high.X}
	if low.X != high.X {
		for _, slat := range p.slats(min(low.X, high.X), max(low.X, high.X)) {
			places = append(places, (slat.left+slat.right)/2)
		}
	}
	for _, at := range places {
		if i, l := p.slatAt(at, side.Faces); i > into+near || i > into-near && math.Abs(at-low.X) < math.Abs(x-low.X) {
			x, into, left = at, i, l
		}
	}
	return x, into, left
}

// slatAt gives how far an upright line at x runs inside a slat from the slat's
// nearest edge, and how much of that slat stays on the side away from the cut;
// 0 and 0 where it runs in a space or along an edge.
func (p *part) slatAt(x float64, faces string) (into, left float64) {
	s, ok := p.slatOver(x)
	if !ok || x <= s.left+near || x >= s.right-near {
		return 0, 0
	}
	left = x - s.left // the material is on the left of a cut that faces right
	if faces == "left" {
		left = s.right - x
	}
	return min(x-s.left, s.right-x), left
}

// slatOver gives the slat of the whole panel that an upright line runs over, its edges counted in.
func (p *part) slatOver(x float64) (span, bool) {
	c, panel := p.cell, p.panel()
	first := c.origin + c.first
	k := math.Floor((x + near - first) / panel.Pitch)
	s := span{max(first+k*panel.Pitch, c.origin), min(first+k*panel.Pitch+panel.SlatWidth, c.origin+panel.Width)}
	return s, k >= 0 && first+k*panel.Pitch < c.origin+c.noSlat-near && x <= s.right+near
}

// span is a stretch of upright lines: slats across a piece.
type span struct{ left, right float64 }

// slats gives the slats of the whole panel between two upright lines, cut off by them, from left to right.
func (p *part) slats(left, right float64) []span {
	c, panel := p.cell, p.panel()
	first := c.origin + c.first
	left, right = max(left, c.origin), min(right, c.origin+panel.Width)
	out := make([]span, 0, int(max(0, right-left)/panel.Pitch)+2)
	for k := max(0, math.Floor((left-first)/panel.Pitch)-1); ; k++ {
		l := first + k*panel.Pitch
		if l >= min(right, c.origin+c.noSlat)-near {
			return out
		}
		r := min(l+panel.SlatWidth, right)
		if l = max(l, left); r > l+near {
			out = append(out, span{l, r})
		}
	}
}

// phase is where the pattern starts within one pitch, measured from the wall's left end.
func (p *part) phase() float64 { return p.cell.origin + p.cell.first }
