package setout

import "trysquare/checker/planar"

// taper gives a tapered piece its shape: the sawn long edge leans. Only a
// run's first piece can taper at its start, and only its last at its far end,
// or the next would have to lean too.
func (s *setter) taper(l *laid, c *cell, i int) {
	bottom, top := *c.spec.Width, *c.spec.WidthTop
	if same(bottom, top) {
		return
	}
	fromRight := l.run.FromRight()
	u := c.left - l.surface.left // of the panel, from the end that the run starts at
	if fromRight {
		u = l.surface.right - c.right
	}
	leansNear := c.cutsNear(l.run, i, u)
	if leansNear && i > 0 || !leansNear && i < len(l.run.Pieces)-1 {
		s.misfit(c.at+"/width_top", "only a piece at the end of its run can taper, on the side of that end")
		return
	}
	// Where the wall's end takes some of the piece, both its ends lose as much.
	lost := max(bottom, top) - (c.right - c.left)
	bottom, top = bottom-lost, top-lost
	if min(bottom, top) <= near {
		s.misfit(c.at, "nothing would be left of the piece %q at its narrow end", c.id)
		return
	}
	low, high := c.course.bottom, c.course.top
	if leansNear != fromRight { // on the left
		c.shape = planar.Polygon{Outer: []planar.Point{{X: c.right - bottom, Y: low}, {X: c.right, Y: low}, {X: c.right, Y: high}, {X: c.right - top, Y: high}}}
		c.cutLeft = true
		return
	}
	c.shape = planar.Polygon{Outer: []planar.Point{{X: c.left, Y: low}, {X: c.left + bottom, Y: low}, {X: c.left + top, Y: high}, {X: c.left, Y: high}}}
	c.cutRight = true
}
