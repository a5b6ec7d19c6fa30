package setout

import (
	"testing"

	"trysquare/checker/planar"
)

// A hole 86 x 86 with its lower left corner at (257, 1050) in a piece from 0 to
// 600 and from 0 to 2400: 257 are left on its left, 600 - 343 = 257 on its right.
func TestLandRoundAHoleByHand(t *testing.T) {
	piece := planar.Rect(0, 0, 600, 2400)
	notched := planar.Polygon{Outer: []planar.Point{{X: 0, Y: 0}, {X: 210, Y: 0}, {X: 210, Y: 2010}, {X: 600, Y: 2010}, {X: 600, Y: 2384}, {X: 0, Y: 2384}}}
	raked := planar.Polygon{Outer: []planar.Point{{X: 0, Y: 0}, {X: 400, Y: 0}, {X: 400, Y: 300}, {X: 0, Y: 0.001}}}
	for _, c := range []struct {
		name  string
		hole  planar.Polygon
		piece planar.Polygon
		land  float64
		edge  string
	}{
		{"in the middle: the first of two as near", planar.Rect(257, 1050, 343, 1136), piece, 257, "right"},
		{"20 from the left edge", planar.Rect(20, 1050, 106, 1136), piece, 20, "left"},
		{"8 from the upper end", planar.Rect(257, 2306, 343, 2392), piece, 8, "up"},
		{"at the edge", planar.Rect(514, 1050, 600, 1136), piece, 0, "right"},
		{"over the edge", planar.Rect(557, 1050, 643, 1136), piece, 0, "right"},
		{"in the leg beside a door: 210 - 186 = 24", planar.Rect(100, 1050, 186, 1136), notched, 24, "right"},
		// Up and to the right of the notch's corner (210, 2010): from (240, 2050) hypot(30, 40) = 50, but 40 above the head.
		{"over the head", planar.Rect(240, 2050, 326, 2136), notched, 40, "down"},
		// Left of the corner and above it: from (180, 2050) to (210, 2010): hypot(30, 40) = 50.
		{"round the corner of a notch", planar.Rect(100, 2050, 180, 2136), notched, 50, "right"},
		// The rake rises 3 in 4 from (0, 0); its distance from (300, 150): (3*300 - 4*150)/5 = 60. Below: 50; right: 400-350 = 50.
		{"under a rake", planar.Rect(300, 60, 330, 150), raked, 60, "down"},
	} {
		if land, edge := landRound(c.hole, c.piece); !same(land, c.land) || edge != c.edge {
			t.Errorf("%s: %v at the edge facing %s, want %v, %s", c.name, land, edge, c.land, c.edge)
		}
	}
}
