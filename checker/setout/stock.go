package setout

import (
	"cmp"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// blank is what a board must give for one part: the stretch of the whole
// panel's width that it lies in, and its height. The stretch is fixed where an
// edge from the factory is wanted; otherwise it may move by whole pitches.
type blank struct {
	left, right, height float64
	fixed               bool
}

// shelf is a length sawn off a board, with the blanks that are ripped from it.
type shelf struct {
	height float64
	taken  []span
}

// board is a board with the shelves cut from it.
type board struct {
	used    float64
	shelves []shelf
}

// stock gives the boards and the adhesive that the plan comes to.
func (s *setter) stock(f *facts.Facts) {
	for _, panel := range s.plan.Panels {
		var blanks []blank
		area := 0.0
		for _, p := range s.parts {
			if p.panel() == panel {
				blanks = append(blanks, p.blank())
				area += p.poly.Area()
			}
		}
		if len(blanks) == 0 {
			continue
		}
		b := facts.Boards{About: facts.About{ID: panel.Name, At: s.plan.Order.At + "/boards"}, Panel: panel.Name,
			Needed: len(cutFrom(panel, blanks, s.assume.Kerf)), Least: int(math.Ceil(area/(panel.Width*panel.Height) - 1e-9))}
		if n, ok := s.plan.Order.Boards[panel.Name]; ok {
			b.Ordered = &n
			b.At = s.plan.Order.At + "/boards/" + panel.Name
		}
		f.Boards = append(f.Boards, b)
	}
	f.Adhesive = s.adhesive()
}

func (p *part) blank() blank {
	c := p.cell
	return blank{left: round(p.left - c.origin), right: round(p.right - c.origin), height: round(p.top - p.bottom), // alike blanks sort alike
		fixed: same(p.left, c.left) && !c.cutLeft || same(p.right, c.right) && !c.cutRight}
}

// cutFrom finds a cutting plan: the tallest first, each into the first board
// and length that it fits. The plan found works; that no better one exists is not claimed.
func cutFrom(panel *plan.Panel, blanks []blank, kerf float64) []board {
	slices.SortStableFunc(blanks, func(a, b blank) int {
		return cmp.Or(cmp.Compare(b.height, a.height), cmp.Compare(b.right-b.left, a.right-a.left))
	})
	narrowest, lowest := math.Inf(1), math.Inf(1)
	for _, b := range blanks {
		narrowest, lowest = min(narrowest, b.right-b.left), min(lowest, b.height)
	}
	var full, begun []board
	for _, b := range blanks {
		i := slices.IndexFunc(begun, func(d board) bool { return d.fits(panel, b, kerf) })
		if i < 0 {
			begun = append(begun, board{})
			i = len(begun) - 1
		}
		begun[i].take(panel, b, kerf)
		if begun[i].exhausted(panel, narrowest, lowest) {
			full = append(full, begun[i]) // not looked at again, or many boards would take the square of the time
			begun = slices.Delete(begun, i, i+1)
		}
	}
	return append(full, begun...)
}

// exhausted says whether not even the least blank could still come from the board.
func (d board) exhausted(panel *plan.Panel, narrowest, lowest float64) bool {
	if d.used+lowest <= panel.Height+near {
		return false
	}
	for _, h := range d.shelves {
		free := panel.Width
		for _, t := range h.taken {
			free -= t.right - t.left
		}
		if free >= narrowest-near {
			return false
		}
	}
	return true
}

// fits says whether there is room for a blank: in a length begun, or in a new one.
func (d board) fits(panel *plan.Panel, b blank, kerf float64) bool {
	for _, h := range d.shelves {
		if _, ok := h.room(panel, b, kerf); ok {
			return true
		}
	}
	return d.used+kerf+b.height <= panel.Height+near
}

// take puts a blank into a board that it fits, or that is fresh.
func (d *board) take(panel *plan.Panel, b blank, kerf float64) {
	for i := range d.shelves {
		if at, ok := d.shelves[i].room(panel, b, kerf); ok {
			d.shelves[i].taken = append(d.shelves[i].taken, at)
			return
		}
	}
	if len(d.shelves) > 0 {
		d.used += kerf
	}
	d.used += b.height
	d.shelves = append(d.shelves, shelf{height: b.height, taken: []span{{b.left, b.right}}})
}

// room finds where in a length a blank can be ripped.
func (h shelf) room(panel *plan.Panel, b blank, kerf float64) (span, bool) {
	if b.height > h.height+near {
		return span{}, false
	}
	free := func(at span) bool {
		if at.left < -near || at.right > panel.Width+near {
			return false
		}
		for _, t := range h.taken {
			if at.left < t.right+kerf-near && at.right > t.left-kerf+near {
				return false
			}
		}
		return true
	}
	if b.fixed {
		at := span{b.left, b.right}
		return at, free(at)
	}
	for at := math.Mod(b.left+near, panel.Pitch) - near; at+b.right-b.left <= panel.Width+near; at += panel.Pitch {
		if s := (span{at, at + b.right - b.left}); free(s) {
			return s, true
		}
	}
	return span{}, false
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
