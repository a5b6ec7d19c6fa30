package cutting

import "math"

// CutKind is what a cut does.
type CutKind string

const (
	Crosscut CutKind = "crosscut" // across the whole board, between lengths
	Rip      CutKind = "rip"      // along the slats, over the whole height of a length
	Trim     CutKind = "trim"     // across one blank, to its own height
)

// Cut is a line of the saw list. The mark is where the blank or length is to
// end; the blade goes beside it, so that the blank keeps its size. All marks of
// one step are set out before its first cut: a kerf does not shift the next.
//
// From the face, a crosscut is measured from the bottom end of the board or
// offcut, a rip from its left edge, and a trim from the bottom end of the
// length. A portable saw cuts with the face down: there the left edge lies at
// the right, and Back measures from the other edge or end.
type Cut struct {
	Board   int    // number of the board; 0 for an offcut from stock
	Offcut  string // the offcut's ID
	Kind    CutKind
	Length  int      // from the bottom, from 1: the length that is marked, or that is ripped or trimmed
	Mark    float64  // mm from the left edge or bottom end, on the face
	Back    float64  // mm from the right edge or top end, on the back
	Beyond  bool     // the blade goes on the far side of the mark, as Mark measures; otherwise on the near side
	Blanks  []string // those that have their size with this cut
	Offcuts []string // those that fall off
}

const nearMM = float64(near) / perMM

// Cuts gives the saw list in a fitter's order, stock by stock: its crosscuts
// from the bottom, then the rips of each length from the left, then the trims.
func Cuts(layout Layout) []Cut {
	var out []Cut
	for _, s := range layout.Stocks {
		l := list{stock: s, kerf: layout.Kerf}
		l.crosscuts()
		for i := range s.Lengths {
			l.rips(i)
		}
		for i := range s.Lengths {
			l.trims(i)
		}
		out = append(out, l.cuts...)
	}
	return out
}

// stretch is what a blank or length takes of an extent.
type stretch struct{ from, to float64 }

// line is a cut along an extent.
type line struct {
	mark   float64
	beyond bool
	of     int     // the stretch that it marks
	frees  []int   // the stretches that no cut after it touches
	rest   float64 // where what falls off begins; not a number if nothing does
}

// lines gives the cuts that part stretches from each other and from what lies between them.
func lines(extent, kerf float64, stretches []stretch) []line {
	var out []line
	end := 0.0
	for i, s := range stretches {
		gap := s.from - end
		if i == 0 && gap > nearMM || i > 0 && gap > kerf+2*nearMM {
			rest := 0.0
			if i > 0 {
				rest = end + kerf
			}
			out = append(out, line{mark: s.from, of: i, rest: rest})
		}
		if i+1 < len(stretches) || extent-s.to > nearMM {
			c := line{mark: s.to, beyond: true, of: i, frees: []int{i}, rest: math.NaN()}
			if i+1 == len(stretches) {
				c.rest = s.to + kerf
			}
			out = append(out, c)
		} else if len(out) > 0 { // it ends with the extent: the cut before it was the last
			out[len(out)-1].frees = append(out[len(out)-1].frees, i)
		}
		end = s.to
	}
	return out
}

type list struct {
	stock Stock
	kerf  float64
	cuts  []Cut
}

func (l *list) add(kind CutKind, length int, extent float64, c line, offcut string, blanks []string) {
	cut := Cut{Board: l.stock.Board, Offcut: l.stock.Offcut, Kind: kind, Length: length + 1, Mark: c.mark, Back: tidy(extent - c.mark),
		Beyond: c.beyond, Blanks: blanks}
	if offcut != "" {
		cut.Offcuts = []string{offcut}
	}
	l.cuts = append(l.cuts, cut)
}

// tidy takes off what a subtraction leaves behind the sixth place.
func tidy(v float64) float64 { return math.Round(v*perMM) / perMM }

// at gives the remainder whose lower left corner lies at a place, if there is one.
func (l *list) at(x, y float64) string {
	for _, r := range l.stock.Left {
		if math.Abs(r.X-x) <= 2*nearMM && math.Abs(r.Y-y) <= 2*nearMM {
			return r.ID
		}
	}
	return ""
}

// ripLines gives the rips of a length.
func (l *list) ripLines(length int) []line {
	var s []stretch
	for _, p := range l.stock.Lengths[length].Pieces {
		s = append(s, stretch{p.Left, p.Right})
	}
	return lines(l.stock.Width, l.kerf, s)
}

// trimLines gives the trim of a piece, measured in its length.
func (l *list) trimLines(length int, p Piece) []line {
	of := l.stock.Lengths[length]
	return lines(tidy(of.Top-of.Bottom), l.kerf, []stretch{{tidy(p.Bottom - of.Bottom), tidy(p.Top - of.Bottom)}})
}

func (l *list) crosscuts() {
	var s []stretch
	for _, of := range l.stock.Lengths {
		s = append(s, stretch{of.Bottom, of.Top})
	}
	for _, c := range lines(l.stock.Height, l.kerf, s) {
		var blanks []string
		for _, i := range c.frees {
			if pieces := l.stock.Lengths[i].Pieces; len(l.ripLines(i)) == 0 && len(l.trimLines(i, pieces[0])) == 0 {
				blanks = append(blanks, pieces[0].Blank)
			}
		}
		l.add(Crosscut, c.of, l.stock.Height, c, l.at(0, c.rest), blanks)
	}
}

func (l *list) rips(length int) {
	of := l.stock.Lengths[length]
	for _, c := range l.ripLines(length) {
		var blanks []string
		for _, i := range c.frees {
			if p := of.Pieces[i]; len(l.trimLines(length, p)) == 0 {
				blanks = append(blanks, p.Blank)
			}
		}
		l.add(Rip, length, l.stock.Width, c, l.at(c.rest, of.Bottom), blanks)
	}
}

func (l *list) trims(length int) {
	of := l.stock.Lengths[length]
	for _, p := range of.Pieces {
		for _, c := range l.trimLines(length, p) {
			l.add(Trim, length, tidy(of.Top-of.Bottom), c, l.at(p.Left, of.Bottom+c.rest), []string{p.Blank})
		}
	}
}
