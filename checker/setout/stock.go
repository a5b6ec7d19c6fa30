package setout

import (
	"context"
	"fmt"
	"strings"

	"trysquare/checker/cutting"
	"trysquare/checker/facts"
	"trysquare/checker/plan"
	"trysquare/checker/source"
)

// searchSteps is how many steps the search for a better cutting plan may take:
// some ten milliseconds. Of the jobs that it can settle at all it settles most
// in a tenth of that.
const searchSteps = 5_000

// stock gives the boards with what is sawn from each, and the adhesive.
func (s *setter) stock(ctx context.Context, f *facts.Facts) error {
	f.Cutting, f.CutMisfits = []facts.Stock{}, []facts.CutMisfit{}
	settings := cutting.Usual(s.assume.Kerf)
	settings.Nodes = searchSteps
	if k := s.plan.Saw.Kerf; k != nil {
		settings.Kerf = *k
	}
	ends := neededEnds(f)
	for _, panel := range s.plan.Panels {
		var blanks []cutting.Blank
		for _, p := range s.parts {
			if p.panel() == panel {
				blanks = append(blanks, p.blank(ends[p.id]))
			}
		}
		if len(blanks) == 0 {
			continue
		}
		if err := s.cut(ctx, f, panel, blanks, settings); err != nil {
			return fmt.Errorf("planning the cuts of %s: %w", panel.Name, err)
		}
	}
	f.Adhesive = s.adhesive()
	return nil
}

// neededEnds gives the parts whose upper or lower end from the factory is to be
// seen: one that meets another course, or nothing.
func neededEnds(f *facts.Facts) map[string]bool {
	out := map[string]bool{}
	for _, e := range f.Edges {
		if e.MadeBy == "end" && (e.Meets == "piece" || e.Meets == "air") {
			out[e.Piece] = true
		}
	}
	return out
}

// blank is what a board must give for a part. A part of a turned panel lies on
// the board as it was before turning.
func (p *part) blank(end bool) cutting.Blank {
	c, width := p.cell, p.panel().Width
	out := cutting.Blank{ID: p.id, Left: round(p.left - c.origin), Right: round(p.right - c.origin), Height: round(p.top - p.bottom), End: end,
		LeftEdge: same(p.left, c.left) && !c.cutLeft, RightEdge: same(p.right, c.right) && !c.cutRight}
	if c.spec != nil && c.spec.Turned {
		out.Left, out.Right = round(width-out.Right), round(width-out.Left)
		out.LeftEdge, out.RightEdge = out.RightEdge, out.LeftEdge
	}
	out.Left, out.Right = max(0, out.Left), min(round(width), out.Right)
	return out
}

func (s *setter) cut(ctx context.Context, f *facts.Facts, panel *plan.Panel, blanks []cutting.Blank, settings cutting.Settings) error {
	board := cutting.Board{Width: round(panel.Width), Height: round(panel.Height), Pitch: panel.Pitch, Turnable: panel.Turnable}
	layout, err := cutting.Plan(ctx, board, blanks, s.offcuts(panel), settings)
	if err != nil {
		return err
	}
	out := facts.Boards{About: facts.About{ID: panel.Name, At: s.plan.Order.At + "/boards"}, Panel: panel.Name,
		Needed: layout.Boards, Least: layout.Least, Proven: layout.Proven, Offcuts: len(layout.Stocks) - layout.Boards, Kerf: round(settings.Kerf)}
	if n, ok := s.plan.Order.Boards[panel.Name]; ok {
		out.Ordered = &n
		out.At = s.plan.Order.At + "/boards/" + source.Escape(panel.Name)
	}
	if s.plan.CuttingStated {
		if err := s.ownCutting(f, &out, panel, board, blanks, settings.Kerf); err != nil {
			return err
		}
	}
	f.Boards = append(f.Boards, out)
	cuts := cutting.Cuts(layout)
	for _, st := range layout.Stocks {
		n := 0 // the saw list goes stock by stock
		for n < len(cuts) && cuts[n].Board == st.Board && cuts[n].Offcut == st.Offcut {
			n++
		}
		f.Cutting = append(f.Cutting, stockFacts(panel, out.At, st, cuts[:n]))
		cuts = cuts[n:]
	}
	return nil
}

// offcuts gives the offcuts in stock of a product, lying as they would on a
// board: at its left where they keep no edge.
func (s *setter) offcuts(panel *plan.Panel) []cutting.Offcut {
	var out []cutting.Offcut
	for _, o := range s.plan.Order.Offcuts {
		if o.Panel != panel {
			continue
		}
		c := cutting.Offcut{ID: o.ID, Right: round(o.Width), Height: round(o.Height), LeftEdge: o.Keeps == "left"}
		if o.Keeps == "right" {
			c.Left, c.Right, c.RightEdge = round(panel.Width-o.Width), round(panel.Width), true
		}
		out = append(out, c)
	}
	return out
}

// ownCutting holds the plan's own cutting plan against the pieces.
func (s *setter) ownCutting(f *facts.Facts, b *facts.Boards, panel *plan.Panel, board cutting.Board, blanks []cutting.Blank, kerf float64) error {
	var assigned []cutting.Assignment
	at := map[int]string{}
	fresh := 0
	for i, c := range s.plan.Cutting {
		if c.Panel != panel {
			continue
		}
		assigned = append(assigned, cutting.Assignment{Board: i + 1, Lengths: c.Lengths})
		at[i+1] = c.At
		if c.Offcut == "" {
			fresh++
		}
	}
	b.Stated = &fresh
	misfits, err := cutting.Check(board, assigned, blanks, kerf)
	if err != nil {
		return err
	}
	for n, m := range misfits {
		where := at[m.Board]
		if where == "" {
			where = "/cutting"
		}
		f.CutMisfits = append(f.CutMisfits, facts.CutMisfit{About: facts.About{ID: strings.TrimSpace(fmt.Sprintf("%s cutting %d: %s %s", panel.Name, n+1, m.Kind, m.Blank)), At: where},
			Kind: string(m.Kind), Panel: panel.Name, Board: m.Board, Piece: m.Blank, By: round(m.By)})
	}
	return nil
}

func stockFacts(panel *plan.Panel, at string, st cutting.Stock, cuts []cutting.Cut) facts.Stock {
	id := st.Offcut
	if st.Board > 0 {
		id = fmt.Sprintf("%s board %d", panel.Name, st.Board)
	}
	out := facts.Stock{About: facts.About{ID: id, At: at}, Panel: panel.Name, Board: st.Board, Width: round(st.Width), Height: round(st.Height),
		Pieces: []facts.CutPart{}, Cuts: []facts.SawCut{}, Left: []facts.Offcut{}}
	for _, l := range st.Lengths {
		for _, p := range l.Pieces {
			out.Pieces = append(out.Pieces, facts.CutPart{Piece: p.Blank, Left: round(p.Left), Right: round(p.Right), Bottom: round(p.Bottom), Top: round(p.Top), Turned: p.Turned})
		}
	}
	for i, c := range cuts {
		out.Cuts = append(out.Cuts, facts.SawCut{Number: i + 1, Kind: string(c.Kind), Length: c.Length, Mark: round(c.Mark), Back: round(c.Back),
			Beyond: c.Beyond, Gives: texts(c.Blanks), Offcuts: texts(c.Offcuts)})
	}
	for _, r := range st.Left {
		out.Left = append(out.Left, facts.Offcut{Name: r.ID, Width: round(r.Right - r.Left), Height: round(r.Height), Keeps: keeps(r.LeftEdge, r.RightEdge), Usable: r.Usable})
	}
	return out
}

func texts(list []string) []string { return append([]string{}, list...) }

func keeps(left, right bool) string {
	switch {
	case left && right:
		return "both"
	case left:
		return "left"
	case right:
		return "right"
	}
	return "none"
}

// adhesive adds up the beads; nil where nothing is glued.
func (s *setter) adhesive() *facts.Adhesive {
	out := &facts.Adhesive{About: facts.About{ID: "adhesive", At: s.plan.Order.At + "/cartridges"}, Cartridges: s.plan.Order.Cartridges}
	total, glued, thicknessSaid, alike := 0.0, false, true, true
	for _, p := range s.parts {
		fix := p.fix()
		if fix == nil || fix.Adhesive == nil {
			continue
		}
		a := fix.Adhesive
		if !glued {
			glued, out.Cartridge = true, a.Cartridge
		}
		alike = alike && a.Cartridge != nil && out.Cartridge != nil && *a.Cartridge == *out.Cartridge
		for _, c := range p.beads {
			out.Length += c.length
			if v := volume(a, c.length); v != nil {
				total += *v
			} else {
				thicknessSaid = false
			}
		}
	}
	if !glued {
		return nil
	}
	out.Length = round(out.Length)
	if thicknessSaid {
		out.Volume = rounded(&total)
	}
	if !alike {
		out.Cartridge = nil
	}
	if out.Cartridge != nil && out.Cartridges != nil {
		ordered := round(*out.Cartridge * float64(*out.Cartridges))
		out.Ordered = &ordered
	}
	return out
}
