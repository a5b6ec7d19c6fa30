package setout

import (
	"math"
	"strconv"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// layer is a thing of some thickness, in millimetres, that a screw may pass.
type layer struct {
	what  string
	thick float64
}

// through gives what a screw of a length passes, in order, and how much of it
// lies in each. What it does not reach is not there.
func (p *part) through(s screw, length float64) []layer {
	var out []layer
	for _, l := range append(p.panelLayers(s.onSlat), p.wallLayers(s.into)...) {
		l.thick = min(l.thick, length)
		if l.thick <= near { // nothing, or what converting inches leaves of a screw that ends where it begins
			continue
		}
		length -= l.thick
		if n := len(out); n > 0 && out[n-1].what == l.what { // a cavity, and the air behind a wall without a stated back
			out[n-1].thick += l.thick
			continue
		}
		out = append(out, l)
	}
	return out
}

// panelLayers gives what of the panel a screw passes: between two slats the
// backing only.
func (p *part) panelLayers(onSlat bool) []layer {
	backing := layer{"backing", p.panel().Backing}
	if onSlat {
		return []layer{{"slat", p.panel().Thickness - p.panel().Backing}, backing}
	}
	return []layer{backing}
}

// wallLayers gives what lies behind the panel where a screw reaches into. The
// last layer has no end that the plan tells of, except that of the whole wall.
func (p *part) wallLayers(into string) []layer {
	endless := math.Inf(1)
	if l := p.surface.leaf; l != nil {
		return []layer{{"leaf", l.Thickness}, {"other cladding", l.OtherCladding}, {"space", endless}}
	}
	bg := p.surface.wall.Background
	out := []layer{{"unsaid", endless}}
	if bg != nil {
		switch bg.Kind {
		case "plasterboard on studs":
			out = []layer{{"plasterboard", bg.Lining}, {framing(into, "stud"), endless}}
		case "battens on masonry":
			out = []layer{{framing(into, "batten"), bg.Batten}, {"masonry", endless}}
		case "plaster on masonry":
			out = []layer{{"plaster", bg.Lining}, {"masonry", endless}}
		case "bare masonry":
			out = []layer{{"masonry", endless}}
		case "solid timber":
			out = []layer{{"timber", endless}}
		}
	}
	if p.surface.wall.Thickness == nil {
		return out
	}
	left := *p.surface.wall.Thickness
	for i := range out {
		out[i].thick = min(out[i].thick, left)
		left -= out[i].thick
	}
	return append(out, layer{"space", endless})
}

// framing names what a screw meets where there are studs or battens.
func framing(into, member string) string {
	switch into {
	case "wood":
		return member
	case "space":
		return "space"
	}
	return "unsaid"
}

// depthIn adds up what of a screw lies in what holds it: for wood a stud, a
// batten or timber.
func depthIn(layers []layer, into string) float64 {
	sum := 0.0
	for _, l := range layers {
		if l.what == into || into == "wood" && (l.what == "stud" || l.what == "batten" || l.what == "timber") {
			sum += l.thick
		}
	}
	return sum
}

// onSlat says whether the part has a slat at x, its edges counted in.
func (p *part) onSlat(x float64) bool {
	_, ok := p.slatOver(x)
	return ok
}

// offStud gives how far a place lies from the middle of the nearest stud or
// batten, without sign; not ok where the wall has none or the plan does not place them.
func (p *part) offStud(x float64) (off float64, ok bool) {
	bg := p.surface.wall.Background
	if p.surface.leaf != nil || bg == nil || bg.StudCentres == nil || bg.FirstStud == nil || !isFramed(bg) {
		return 0, false
	}
	return math.Abs(math.Remainder(x-*bg.FirstStud, *bg.StudCentres)), true
}

func isFramed(bg *plan.Background) bool {
	return bg.Kind == "plasterboard on studs" || bg.Kind == "battens on masonry"
}

func (p *part) studAt(x float64) *facts.StudAt {
	off, ok := p.offStud(x)
	if !ok {
		return nil
	}
	half := p.surface.wall.Background.StudWidth / 2
	return &facts.StudAt{Hit: off <= half+near, FromMiddle: round(off), FromEdge: round(math.Abs(half - off))}
}

// screwPaths gives every screw with what it passes and how near to what it
// stands, and gathers the extremes with the fixing of its piece.
func (s *setter) screwPaths(f *facts.Facts) {
	of := screwsOf(f)
	n := 0
	for _, p := range s.parts {
		n += len(p.screws)
	}
	f.Screws = make([]facts.ScrewPath, 0, n) // growing them by and by costs a tenth of setting out
	for _, p := range s.parts {
		sides, all := p.sides, of[p.id]
		for i, sc := range p.screws {
			about := p.about(p.id + " screw " + strconv.Itoa(i+1))
			about.At = p.fix().At + "/screws"
			path := facts.ScrewPath{About: about, Piece: p.id, X: round(sc.x), Y: round(sc.y), Into: sc.into, InWall: rounded(sc.inWall),
				Layers: []facts.Layer{}, OnSlat: sc.onSlat, Stud: p.studAt(sc.x)}
			for _, l := range sc.layers {
				path.Layers = append(path.Layers, facts.Layer{What: l.what, Depth: round(l.thick)})
			}
			upright, level := math.Inf(1), math.Inf(1)
			for _, side := range sides {
				if d := side.Distance(sc.x, sc.y); side.Faces == "left" || side.Faces == "right" {
					upright = min(upright, d)
				} else {
					level = min(level, d)
				}
			}
			edge := min(upright, level)
			path.FromUpright, path.FromLevel, path.Edge = finite(upright), finite(level), round(edge)
			all.NearestEdge = least(all.NearestEdge, &edge)
			if sc.onSlat {
				all.OnSlat++
			}
			if stud := path.Stud; stud != nil && (all.WorstStud == nil || stud.FromMiddle > *all.WorstStud) {
				all.WorstStud = &stud.FromMiddle
			}
			f.Screws = append(f.Screws, path)
		}
	}
}
