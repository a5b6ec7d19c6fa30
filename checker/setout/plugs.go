package setout

import (
	"cmp"
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// plugged says whether a screw gets a plug: its fixing states one, and the plan
// does not say that what is behind is no masonry.
func plugged(sc *plan.Screws, s screw) bool {
	return sc.Plug != nil && (s.into == "masonry" || s.into == "unsaid")
}

// plugAt is a plug in its place.
type plugAt struct {
	x, y float64
	of   *facts.Screws // those of its piece
	edge bool          // its wall is of masonry
}

// plugs gives how near the plugs of each piece stand to other plugs on the
// wall, whatever piece or run they are of, and to the edges of the masonry.
func (s *setter) plugs(f *facts.Facts) {
	of := screwsOf(f)
	for _, w := range s.plan.Walls {
		var all []plugAt
		for _, p := range s.onSurface(w.Name) {
			fix := p.fix()
			if fix == nil || fix.Screws == nil {
				continue
			}
			for _, sc := range p.screws {
				if plugged(fix.Screws, sc) {
					all = append(all, plugAt{sc.x, sc.y, of[p.id], sc.into == "masonry"})
				}
			}
		}
		apart(all)
		for _, g := range all {
			if d := masonryEdge(w, g.x, g.y); g.edge && !math.IsInf(d, 1) {
				g.of.PlugEdge = least(g.of.PlugEdge, &d)
			}
		}
	}
}

// apart notes for each plug's piece how far the plug is from the nearest other
// one. Plugs stand in upright lines: within each the nearest is the next one up
// or down, and lines are looked at outwards until they are farther off than what
// has been found.
func apart(all []plugAt) {
	slices.SortFunc(all, func(a, b plugAt) int { return cmp.Or(cmp.Compare(a.x, b.x), cmp.Compare(a.y, b.y)) })
	var lines [][]plugAt
	for i := 0; i < len(all); {
		n := i + 1
		for n < len(all) && all[n].x == all[i].x {
			n++
		}
		lines = append(lines, all[i:n])
		i = n
	}
	for i, line := range lines {
		for j, g := range line {
			best := math.Inf(1)
			if j > 0 {
				best = g.y - line[j-1].y
			}
			if j+1 < len(line) {
				best = min(best, line[j+1].y-g.y)
			}
			for k := i - 1; k >= 0 && g.x-lines[k][0].x < best; k-- {
				best = min(best, nearestIn(lines[k], g))
			}
			for k := i + 1; k < len(lines) && lines[k][0].x-g.x < best; k++ {
				best = min(best, nearestIn(lines[k], g))
			}
			if !math.IsInf(best, 1) {
				g.of.PlugApart = least(g.of.PlugApart, &best)
			}
		}
	}
}

// nearestIn gives the distance of a plug from the nearest one of another upright line.
func nearestIn(line []plugAt, g plugAt) float64 {
	best := math.Inf(1)
	at, _ := slices.BinarySearchFunc(line, g.y, func(o plugAt, y float64) int { return cmp.Compare(o.y, y) })
	for _, o := range line[max(0, at-1):min(len(line), at+1)] {
		best = min(best, math.Hypot(o.x-g.x, o.y-g.y))
	}
	return best
}

// masonryEdge gives the distance of a place from the nearest edge of a wall's
// masonry that the plan tells of: an opening's, up to the face of its lining,
// behind which the masonry ends sooner, and the wall's end at an external
// corner. It is infinite where there is none, and 0 in an opening.
func masonryEdge(w *plan.Wall, x, y float64) float64 {
	d := math.Inf(1)
	for _, o := range w.Openings {
		if o.Kind == "pillar" {
			continue // it stands in front
		}
		d = min(d, math.Hypot(max(o.X-x, x-o.Right(), 0), max(o.Sill-y, y-o.Head, 0)))
	}
	if w.LeftCorner == "external" {
		d = min(d, x)
	}
	if w.RightCorner == "external" {
		d = min(d, w.Width-x)
	}
	return d
}
