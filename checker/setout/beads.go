package setout

import (
	"math"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// column is a rectangle of a part that gets its own beads: the whole part, or
// one leg of a notched one.
type column struct {
	left, bottom, right, top float64
	length                   float64   // of all its beads
	upright                  []float64 // x of the beads that run straight up
	zigzag                   *span     // between which upright lines the zigzag goes, nil where there is none
}

// columns cuts a part at the upright line of every corner. Where a part's end
// slants, the column takes the shorter side: no bead runs off the piece.
func (p *part) columns() []column {
	var out []column
	for _, t := range p.poly.Transposed().Trapezoids() {
		out = append(out, column{left: t.Bottom, right: t.Top, bottom: max(t.BottomLeft, t.TopLeft), top: min(t.BottomRight, t.TopRight)})
	}
	return out
}

// lay works out the beads of a column. Within the edge distance all round:
// the lines round it, a zigzag whose legs each go down by the pitch, and a
// centre line. A column too narrow or too low for two lines gets one, up its
// middle or along it.
func (c *column) lay(a *plan.Adhesive) {
	from := 0.0
	if a.FromEdge != nil {
		from = *a.FromEdge
	}
	width, height := c.right-c.left-2*from, c.top-c.bottom-2*from
	middle := (c.left + c.right) / 2
	switch {
	case height <= 0 && width <= 0:
		return
	case width <= 0:
		c.length, c.upright = height, []float64{middle}
		return
	case height <= 0:
		c.length = width
		return
	}
	switch a.Around {
	case "top and sides":
		c.length = width + 2*height
	case "all four edges":
		c.length = 2*width + 2*height
	}
	if c.length > 0 {
		c.upright = []float64{c.left + from, c.right - from}
	}
	if a.Zigzag != nil {
		c.zigzag = &span{c.left + from, c.right - from}
		c.length += height / *a.Zigzag * math.Hypot(width, *a.Zigzag)
	}
	if a.CentreLine {
		c.length += height
		c.upright = append(c.upright, middle)
	}
}

func (p *part) beadFacts(a *plan.Adhesive) *facts.Bead {
	out := &facts.Bead{Zigzag: rounded(a.Zigzag), FromEdge: rounded(a.FromEdge), Around: a.Around, Centre: a.CentreLine}
	p.beads = p.columns()
	for i := range p.beads {
		p.beads[i].lay(a)
		out.Length += p.beads[i].length
	}
	out.Volume = rounded(volume(a, out.Length))
	out.Length = round(out.Length)
	return out
}

// volume gives the millilitres in a length of round bead, pi d²/4 times the
// length (a millilitre is 1000 mm³); nil where the bead's diameter is unsaid.
func volume(a *plan.Adhesive, length float64) *float64 {
	if a.Bead == nil {
		return nil
	}
	v := math.Pi * *a.Bead * *a.Bead / 4 * length / 1000
	return &v
}

// holdsBetween counts the screws, upright beads and zigzags of a part between two upright lines.
func (p *part) holdsBetween(left, right float64) int {
	n := 0
	for _, s := range p.screws {
		if s.x > left+near && s.x < right-near {
			n++
		}
	}
	for _, c := range p.beads {
		for _, x := range c.upright {
			if x > left+near && x < right-near {
				n++
			}
		}
		if z := c.zigzag; z != nil && z.left < right-near && z.right > left+near {
			n++
		}
	}
	return n
}

// fixings gives what holds each part.
func (s *setter) fixings(f *facts.Facts) {
	f.Fixings = make([]facts.Fixing, 0, len(s.parts))
	for _, p := range s.parts {
		fix := p.fix()
		about := p.about(p.id)
		if fix != nil {
			about.At = fix.At
		}
		out := facts.Fixing{About: about, Piece: p.id, OnLeaf: p.surface.leaf != nil, Stated: fix != nil,
			PieceSize: facts.Size{Width: round(p.right - p.left), Height: round(p.top - p.bottom)}, Background: backgroundOf(p.surface)}
		if fix != nil && fix.Adhesive != nil {
			out.Bead = p.beadFacts(fix.Adhesive)
		}
		if fix != nil && fix.Screws != nil {
			out.Screws = p.screwFacts(fix.Screws)
		}
		f.Fixings = append(f.Fixings, out)
	}
}

// fix is the piece's own fixing, or the run's.
func (p *part) fix() *plan.Fix {
	if p.cell.spec != nil && p.cell.spec.Fix != nil {
		return p.cell.spec.Fix
	}
	return p.run().Fix
}
