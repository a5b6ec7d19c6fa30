package plan

import (
	"fmt"
	"math"
	"slices"

	"trysquare/checker/planar"
)

// outline reads a wall's corners. They must make one simple polygon that spans
// the wall's width and height.
func (b *builder) outline(w *Wall, corners []rawCorner) {
	at := w.At + "/outline"
	var ring []planar.Point
	for i, c := range corners {
		q := planar.Point{X: float64(c.X), Y: float64(c.Y)}
		if j := slices.IndexFunc(ring, func(o planar.Point) bool { return math.Hypot(o.X-q.X, o.Y-q.Y) <= tolerance }); j >= 0 {
			b.geometry(fmt.Sprintf("%s/%d", at, i), "corner %d lies where corner %d does; each corner stands in the list once", i+1, j+1)
			return
		}
		ring = append(ring, q)
	}
	polygon, err := planar.New(ring)
	if err != nil {
		b.geometry(at, "the outline makes no wall: %v", err)
		return
	}
	left, bottom, right, top := polygon.Bounds()
	if math.Abs(left) > tolerance || math.Abs(bottom) > tolerance || math.Abs(right-w.Width) > tolerance || math.Abs(top-w.Height) > tolerance {
		b.geometry(at, "the outline must span the wall: from 0 to %s across and from 0 to %s up", b.write(w.Width), b.write(w.Height))
		return
	}
	for _, q := range polygon.Outer {
		w.Outline = append(w.Outline, Corner(q))
	}
}

// has says whether a rectangle lies within the wall's outline; it may touch it.
func (w *Wall) has(left, bottom, right, top float64) bool {
	if w.Outline == nil {
		return true
	}
	var outline planar.Polygon
	for _, c := range w.Outline {
		outline.Outer = append(outline.Outer, planar.Point(c))
	}
	outside, err := planar.Rect(left, bottom, right, top).Minus(outline)
	for _, p := range outside {
		l, b, r, t := p.Bounds()
		if p.Area()/max(r-l, t-b) > tolerance { // thicker than what converting inches leaves
			return false
		}
	}
	return err == nil
}
