package setout

import (
	"cmp"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// counts gives what the plan comes to in screws, plugs, trim, finish and
// adhesive, without waste, beside what is on the order.
func (s *setter) counts(f *facts.Facts) {
	o := s.plan.Order
	c := &f.Counts
	*c = facts.Counts{About: facts.About{ID: "counts", At: o.At}, Screws: []facts.ScrewCount{}, ScrewsOrdered: o.Screws,
		Plugs: []facts.PlugCount{}, PlugsOrdered: o.Plugs, Trims: []facts.TrimCount{}, TrimOrdered: rounded(o.Trim)}
	s.countScrews(c)
	s.measureEdges(f, c)
	if a := f.Adhesive; a != nil {
		c.BeadLength = a.Length
		if a.Volume != nil && a.Cartridge != nil && *a.Cartridge > 0 {
			n := int(math.Ceil(*a.Volume / *a.Cartridge - 1e-9))
			c.Cartridges = &n
		}
	}
}

func (s *setter) countScrews(c *facts.Counts) {
	for _, p := range s.parts {
		if len(p.screws) == 0 {
			continue
		}
		sc, plugs := p.fix().Screws, 0
		for _, one := range p.screws {
			if plugged(sc, one) {
				plugs++
			}
		}
		length := rounded(sc.Length)
		i := slices.IndexFunc(c.Screws, func(n facts.ScrewCount) bool { return alike(n.Length, length) && n.Colour == sc.Colour })
		if i < 0 {
			i = len(c.Screws)
			c.Screws = append(c.Screws, facts.ScrewCount{Length: length, Colour: sc.Colour})
		}
		c.Screws[i].Count += len(p.screws)
		c.ScrewsInAll += len(p.screws)
		if plugs == 0 {
			continue
		}
		length = rounded(sc.Plug.Length)
		i = slices.IndexFunc(c.Plugs, func(n facts.PlugCount) bool { return alike(n.Length, length) })
		if i < 0 {
			i = len(c.Plugs)
			c.Plugs = append(c.Plugs, facts.PlugCount{Length: length})
		}
		c.Plugs[i].Count += plugs
		c.PlugsInAll += plugs
	}
	slices.SortFunc(c.Screws, func(a, b facts.ScrewCount) int {
		return cmp.Or(cmp.Compare(orZero(a.Length), orZero(b.Length)), cmp.Compare(a.Colour, b.Colour))
	})
	slices.SortFunc(c.Plugs, func(a, b facts.PlugCount) int { return cmp.Compare(orZero(a.Length), orZero(b.Length)) })
}

// alike says whether two lengths are both unsaid, or said and one.
func alike(a, b *float64) bool {
	if a == nil || b == nil {
		return a == b
	}
	return *a == *b
}

// measureEdges adds up the edges that the plan treats.
func (s *setter) measureEdges(f *facts.Facts, c *facts.Counts) {
	of := map[string]*part{}
	for _, p := range s.parts {
		of[p.id] = p
	}
	area := 0.0
	for _, e := range f.Edges {
		p := of[e.Piece]
		if !treated(e, p.run()) {
			continue
		}
		switch e.Treatment {
		case "trim":
			i := slices.IndexFunc(c.Trims, func(n facts.TrimCount) bool { return n.With == e.TreatmentWith })
			if i < 0 {
				i = len(c.Trims)
				c.Trims = append(c.Trims, facts.TrimCount{With: e.TreatmentWith})
			}
			c.Trims[i].Length += e.Length
			c.TrimInAll += e.Length
		case "return":
			c.ReturnLength += e.Length
		case "finish":
			c.FinishLength += e.Length
			area += e.Length * p.panel().Thickness
		}
	}
	slices.SortFunc(c.Trims, func(a, b facts.TrimCount) int { return cmp.Compare(a.With, b.With) })
	for i := range c.Trims {
		c.Trims[i].Length = round(c.Trims[i].Length)
	}
	c.TrimInAll, c.ReturnLength, c.FinishLength, c.FinishArea = round(c.TrimInAll), round(c.ReturnLength), round(c.FinishLength), squareMetres(area)
}

// treated says whether an edge is one that its treatment is meant for: one that
// would be seen. Where courses meet, one trim covers both their edges; it
// counts with the lower course, or with the upper where only lower edges are trimmed.
func treated(e facts.Edge, r *plan.Run) bool {
	switch {
	case !e.InView:
		return false
	case e.Cover != "covered":
		return true
	case e.Meets != "piece" || e.Treatment != "trim":
		return false
	}
	return e.Side == "up" || e.Side == "down" && r.CutEdges["top"].By != "trim"
}
