package setout

import (
	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// surface is what a run stands on, in the wall's coordinates: a wall face above
// its skirting, or a leaf in its closed place.
type surface struct {
	on                       string
	wall                     *plan.Wall
	leaf                     *plan.Leaf
	left, right, bottom, top float64
}

func surfaceOf(r *plan.Run) *surface {
	if l := r.Leaf; l != nil {
		left, bottom := l.Opening.X+l.SideGap, l.FloorGap
		return &surface{on: l.Path(), wall: r.Wall, leaf: l, left: left, right: left + l.Width, bottom: bottom, top: bottom + l.Height}
	}
	return &surface{on: r.Wall.Name, wall: r.Wall, left: 0, right: r.Wall.Width, bottom: r.Wall.SkirtingHeight, top: r.Wall.Height}
}

// hole is what an opening takes out of a run: more than the opening where an
// architrave stays, less at the head where the pieces drop over it.
type hole struct {
	opening                  *plan.Opening
	left, right, bottom, top float64
}

func holesOf(r *plan.Run) []hole {
	if r.Leaf != nil {
		return nil
	}
	var out []hole
	for _, o := range r.Wall.Openings {
		h := hole{opening: o, left: o.X, right: o.Right(), bottom: o.Sill, top: o.Head}
		if o.ArchitraveStays {
			h.left, h.right, h.top = h.left-o.ArchitraveWidth, h.right+o.ArchitraveWidth, h.top+o.ArchitraveWidth
			if o.Sill > 0 {
				h.bottom -= o.ArchitraveWidth
			}
		} else if r.HeadDrop != nil {
			h.top = max(h.bottom, h.top-*r.HeadDrop)
		}
		if h.top > h.bottom {
			out = append(out, h)
		}
	}
	return out
}

// backgroundOf gives what is behind a run, nil where the plan does not say.
func backgroundOf(s *surface) *facts.Background {
	if s.leaf != nil {
		return &facts.Background{Kind: "leaf"}
	}
	b := s.wall.Background
	if b == nil {
		return nil
	}
	out := &facts.Background{Kind: b.Kind, Lining: round(b.Lining), StudsStated: b.StudCentres != nil && b.FirstStud != nil}
	switch b.Kind {
	case "plaster on masonry", "bare masonry":
		out.SolidWall = true
	case "plasterboard on studs", "battens on masonry":
		out.Framed = true
	}
	return out
}

// surfaces gives the facts of walls, openings, leaves and runs.
func (s *setter) surfaces(f *facts.Facts) {
	for _, w := range s.plan.Walls {
		wall := facts.Wall{About: facts.About{ID: w.Name, At: w.At, On: w.Name}, Width: round(w.Width), Height: round(w.Height),
			Background: backgroundOf(&surface{wall: w}), ServicesStated: w.ServicesStated, Area: squareMetres(w.Width * w.Height)}
		covered := 0.0
		for _, p := range s.onSurface(w.Name) {
			covered += p.poly.Area()
		}
		wall.Covered = squareMetres(covered)
		f.Walls = append(f.Walls, wall)
		for _, o := range w.Openings {
			id := w.Name + "/" + o.Name
			f.Openings = append(f.Openings, facts.Opening{About: facts.About{ID: id, At: o.At, On: w.Name}, Kind: o.Kind,
				Left: round(o.X), Right: round(o.Right()), Bottom: round(o.Sill), Top: round(o.Head)})
			if l := o.Leaf; l != nil {
				f.Leaves = append(f.Leaves, facts.Leaf{About: facts.About{ID: l.Path(), At: l.At, On: l.Path()}, Width: round(l.Width), Height: round(l.Height),
					Thickness: round(l.Thickness), Clad: len(s.onSurface(l.Path())) > 0, FireRating: l.FireRating})
			}
		}
	}
	for _, r := range s.runs {
		first, last := r.cells[0], r.cells[len(r.cells)-1]
		left, right := min(first.left, last.left), max(first.right, last.right)
		f.Runs = append(f.Runs, facts.Run{About: facts.About{ID: r.run.ID, At: r.run.At, On: r.surface.on}, Panel: r.run.Panel.Name, Pieces: len(r.cells),
			Left: round(left), Right: round(right), BareLeft: round(left - r.surface.left), BareRight: round(r.surface.right - right)})
	}
}
