package setout

import (
	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// zones gives the strips of each clad wall in which cables are likely: under
// the ceiling, beside corners, and in line with each accessory, up and down and
// to both sides. Accessories on the reverse of a thin wall make them on this
// face too. Zones are where a screw is dangerous; outside them it is not
// thereby harmless.
func (s *setter) zones(f *facts.Facts) {
	for _, w := range s.plan.Walls {
		parts := s.onSurface(w.Name)
		if len(parts) == 0 {
			continue
		}
		for _, z := range s.zonesOf(w) {
			z.On, z.Pieces, z.Places, z.DepthSaid = w.Name, []string{}, []facts.ZoneScrew{}, true
			for _, p := range parts {
				p.fallIn(&z)
			}
			f.Zones = append(f.Zones, z)
		}
	}
}

func (s *setter) zonesOf(w *plan.Wall) []facts.Zone {
	strip := s.assume.CableStrip
	zone := func(at, id, why string, left, bottom, right, top float64) facts.Zone {
		return facts.Zone{About: facts.About{ID: w.Name + " " + id, At: at}, Why: why,
			Left: round(max(0, left)), Right: round(min(w.Width, right)), Bottom: round(max(0, bottom)), Top: round(min(w.Height, top))}
	}
	out := []facts.Zone{zone(w.At, "below the ceiling", "the top of the wall", 0, w.Height-strip, w.Width, w.Height)}
	// An end that the plan does not describe may be a corner.
	if w.LeftCorner != "none" {
		out = append(out, zone(w.At, "left corner", "the angle of two walls", 0, 0, strip, w.Height))
	}
	if w.RightCorner != "none" {
		out = append(out, zone(w.At, "right corner", "the angle of two walls", w.Width-strip, 0, w.Width, w.Height))
	}
	inLine := func(a plan.Service, where string) {
		out = append(out,
			zone(a.At, "above and below "+a.ID+where, a.Kind+" "+a.ID+where, a.X, 0, a.X+a.Width, w.Height),
			zone(a.At, "level with "+a.ID+where, a.Kind+" "+a.ID+where, 0, a.Y, w.Width, a.Y+a.Height))
	}
	for _, a := range w.Services {
		inLine(a, "")
	}
	if thin := s.thin(w); thin != nil && *thin {
		for _, a := range w.Reverse {
			inLine(a, " on the reverse")
		}
	}
	return out
}

// thin says whether a wall is so thin that cables to accessories on its other
// face count on this one; nil where its thickness is unsaid.
func (s *setter) thin(w *plan.Wall) *bool {
	if w.Thickness == nil {
		return nil
	}
	is := *w.Thickness <= s.assume.ThinWall+near
	return &is
}

// fallIn counts the part's screws that enter the wall within a zone.
func (p *part) fallIn(z *facts.Zone) {
	if p.right < z.Left || p.left > z.Right || p.top < z.Bottom || p.bottom > z.Top {
		return
	}
	hit := false
	for _, s := range p.screws {
		if s.x < z.Left-near || s.x > z.Right+near || s.y < z.Bottom-near || s.y > z.Top+near {
			continue
		}
		hit = true
		z.Screws++
		z.Places = append(z.Places, facts.ZoneScrew{Piece: p.id, X: round(s.x), Y: round(s.y), InWall: rounded(s.inWall)})
		if s.inWall == nil {
			z.DepthSaid = false
			continue
		}
		if z.Deepest == nil || *s.inWall > *z.Deepest {
			z.Deepest = rounded(s.inWall)
		}
	}
	if hit {
		z.Pieces = append(z.Pieces, p.id)
	}
}
