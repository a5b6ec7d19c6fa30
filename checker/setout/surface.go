package setout

import (
	"cmp"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// surface is what a run stands on, in the wall's coordinates: a wall face above
// its skirting, or a leaf in its closed place.
type surface struct {
	on                       string
	wall                     *plan.Wall
	leaf                     *plan.Leaf
	left, right, bottom, top float64
	ring                     []planar.Side // of the wall's outline; nil on a leaf and where it is a rectangle
}

func surfaceOf(r *plan.Run) *surface {
	if l := r.Leaf; l != nil {
		left, bottom := l.Opening.X+l.SideGap, l.FloorGap
		return &surface{on: l.Path(), wall: r.Wall, leaf: l, left: left, right: left + l.Width, bottom: bottom, top: bottom + l.Height}
	}
	s := &surface{on: r.Wall.Name, wall: r.Wall, left: 0, right: r.Wall.Width, bottom: r.Wall.SkirtingHeight, top: r.Wall.Height}
	if r.Wall.Outline != nil {
		s.ring = outlineOf(r.Wall).Sides()
	}
	return s
}

// clearance is a wall with the gaps that a run keeps from its floor and its ceiling.
type clearance struct {
	wall         *plan.Wall
	floor, above float64
}

// field is what a run may cover where the wall is no rectangle; nil where it is
// one. It keeps the base from the floor and the clear top from the ceiling
// wherever they lie: what is swept by a side of the outline that is moved up,
// or down, by so much is taken out. Runs that keep the same gaps share it.
func (s *setter) field(l *laid) ([]planar.Polygon, error) {
	wall := l.surface.wall
	if l.surface.leaf != nil || wall.Outline == nil {
		return nil, nil
	}
	keep := clearance{wall, wall.SkirtingHeight + l.run.Base, l.run.ClearTop}
	if known, ok := s.fields[keep]; ok {
		return known, nil
	}
	outline := outlineOf(wall)
	var swept []planar.Polygon
	for _, side := range outline.Sides() {
		by := keep.floor // the material is on the left of a side, so one that runs to the right is a floor
		if side.To.X < side.From.X {
			by = -keep.above
		}
		if math.Abs(by) > near && side.To.X != side.From.X {
			a, b := side.From, side.To
			swept = append(swept, planar.Polygon{Outer: []planar.Point{a, b, {X: b.X, Y: b.Y + by}, {X: a.X, Y: a.Y + by}}})
		}
	}
	out, err := outline.Minus(swept...)
	if err != nil {
		return nil, err
	}
	if out == nil {
		out = []planar.Polygon{}
	}
	s.fields[keep] = out
	return out, nil
}

// outlineOf is a wall's outline.
func outlineOf(w *plan.Wall) planar.Polygon {
	if w.Outline == nil {
		return planar.Rect(0, 0, w.Width, w.Height)
	}
	var p planar.Polygon
	for _, c := range w.Outline {
		p.Outer = append(p.Outer, planar.Point(c))
	}
	return p
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
		} else if r.HeadDrop != nil && o.Kind != "pillar" { // a pillar is no opening to pass into
			h.top = max(h.bottom, h.top-*r.HeadDrop)
		}
		if h.top > h.bottom {
			out = append(out, h)
		}
	}
	slices.SortStableFunc(out, func(a, b hole) int { return cmp.Compare(a.left, b.left) })
	return out
}

// holesAcross gives the holes that share some width with a stretch. The widest
// hole bounds how far to the left of the stretch one that reaches it can begin.
func (l *laid) holesAcross(left, right float64) []hole {
	begins := func(h hole, x float64) int { return cmp.Compare(h.left, x) }
	first, _ := slices.BinarySearchFunc(l.holes, left-l.widest, begins)
	end, _ := slices.BinarySearchFunc(l.holes, right-near, begins)
	var out []hole
	for _, h := range l.holes[first:max(first, end)] {
		if h.right > left+near {
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
	out := &facts.Background{Kind: b.Kind, Lining: round(b.Lining), StudsStated: b.StudCentres != nil && b.FirstStud != nil,
		SolidWall: b.Kind == "plaster on masonry" || b.Kind == "bare masonry", Framed: isFramed(b)}
	return out
}

// surfaces gives the facts of walls, openings, leaves and runs.
func (s *setter) surfaces(f *facts.Facts) {
	for _, w := range s.plan.Walls {
		wall := facts.Wall{About: facts.About{ID: w.Name, At: w.At, On: w.Name}, Width: round(w.Width), Height: round(w.Height),
			Background: backgroundOf(&surface{wall: w}), ServicesStated: w.ServicesStated, Area: squareMetres(outlineOf(w).Area())}
		wall.Thickness, wall.Thin, wall.ReverseStated = rounded(w.Thickness), s.thin(w), w.ReverseStated
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
		f.Runs = append(f.Runs, facts.Run{About: facts.About{ID: r.run.ID, At: r.run.At, On: r.surface.on}, Panel: r.run.Panel.Name, Pieces: len(r.parts),
			Left: round(r.from), Right: round(r.to), BareLeft: round(r.from - r.surface.left), BareRight: round(r.surface.right - r.to)})
	}
}
