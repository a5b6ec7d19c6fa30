package setout

import (
	"math"
	"slices"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
)

// screw is a screw in its place. inWall is from the wall's or leaf's face to
// the point, nil where the screw's length is unsaid.
type screw struct {
	x, y   float64
	into   string
	inWall *float64
	depth  *float64 // into what it reaches
	spare  *float64 // of a leaf
	onSlat bool     // it stands on a slat's face, not between two
	layers []layer  // what it passes; none where its length is unsaid
}

// row is the screws at one height across one stretch of a part.
type row struct {
	y      float64
	top    bool
	bottom bool
	screws []screw
}

// rows sets the screws of a part out: a row at the top, a row at the bottom of
// each leg, and between them as many as keep within the spacing.
func (p *part) rows(sc *plan.Screws) []row {
	end := min(sc.FromEnd, (p.top-p.bottom)/4)
	top, bottom := p.top-end, p.bottom+end
	heights := []float64{bottom, top}
	if sc.RowsApart != nil {
		n := math.Ceil((top - bottom - near) / *sc.RowsApart)
		for i := 1.0; i < n; i++ {
			heights = append(heights, bottom+(top-bottom)*i/n)
		}
	}
	slices.Sort(heights)
	var out []row
	for _, y := range heights {
		for _, across := range p.across(y) {
			r := row{y: y, top: same(y, top), bottom: same(y, bottom)}
			for _, x := range p.screwPlaces(sc, across) {
				r.screws = append(r.screws, p.screwAt(sc, x, y))
			}
			out = append(out, r)
		}
	}
	return out
}

// mostSteps bounds the work of finding a space for every screw, and a zigzag's turns, far above any real job's.
const mostSteps = 2e7

// mostScrews is how many screws a plan may come to: 25 for each of as many pieces as it may have.
const mostScrews = 25 * Most

// bound refuses screws and beads so close, on pieces so large, that setting them out would not end or not be a number.
func (s *setter) bound() {
	steps, screws := 0.0, 0.0
	for _, p := range s.parts {
		fix := p.fix()
		if fix != nil && fix.Adhesive != nil && fix.Adhesive.Zigzag != nil && (p.top-p.bottom) / *fix.Adhesive.Zigzag > mostSteps {
			s.misfit(fix.At+"/adhesive/zigzag", "the zigzag goes down by next to nothing between two turns; is it in the wrong unit?")
			return
		}
		if fix == nil || fix.Screws == nil {
			continue
		}
		rows, across, width := 2.0, float64(fix.Screws.PerEnd), p.right-p.left
		if a := fix.Screws.RowsApart; a != nil {
			rows += (p.top - p.bottom) / *a
		}
		if bg := p.surface.wall.Background; fix.Screws.OnStuds && bg != nil && bg.StudCentres != nil {
			across = width / *bg.StudCentres
		}
		screws += rows * across
		if steps += rows * (across + 1) * (width/p.panel().Pitch + 1); steps > mostSteps || screws > mostScrews {
			s.misfit(fix.At+"/screws", "the plan comes to too many screws and slats; is a length in the wrong unit?")
			return
		}
	}
}

// across gives the stretches of a part at a height, from left to right.
func (p *part) across(y float64) []span {
	var out []span
	for _, t := range p.levels {
		if y < t.Bottom || y >= t.Top {
			continue
		}
		left, right := t.At(y)
		out = append(out, span{left, right})
	}
	return out
}

// screwPlaces gives where along a stretch the screws of a row go: spread evenly
// between the two outer ones, or on the studs, each moved to the middle of the
// nearest space between slats. Two that would share a space become one; a stud
// with no space in front of it gets none.
func (p *part) screwPlaces(sc *plan.Screws, across span) []float64 {
	var wanted []float64
	edge := min(sc.FromEdge, (across.right-across.left)/4)
	left, right := across.left+edge, across.right-edge
	switch {
	case sc.OnStuds:
		wanted = p.studs(across)
	case sc.PerEnd == 1:
		wanted = []float64{(left + right) / 2}
	default:
		for i := range sc.PerEnd {
			wanted = append(wanted, left+(right-left)*float64(i)/float64(sc.PerEnd-1))
		}
	}
	spaces := p.spaces(across)
	var out []float64
	for _, x := range wanted {
		wanted := x
		for i, middle := range spaces {
			if i == 0 || math.Abs(middle-wanted) < math.Abs(x-wanted)-near { // the left one of two as near
				x = middle
			}
		}
		if sc.OnStuds && math.Abs(x-wanted) > p.surface.wall.Background.StudWidth/2+near {
			continue
		}
		if len(out) == 0 || !same(out[len(out)-1], x) {
			out = append(out, x)
		}
	}
	return out
}

// spaces gives the middles of the spaces between slats within a stretch.
func (p *part) spaces(across span) []float64 {
	slats := p.slats(across.left, across.right)
	var out []float64
	for i := 1; i < len(slats); i++ {
		out = append(out, (slats[i-1].right+slats[i].left)/2)
	}
	return out
}

// studs gives the centres of the studs or battens behind a stretch; none where the plan does not say where they are.
func (p *part) studs(across span) []float64 {
	bg := p.surface.wall.Background
	if p.surface.leaf != nil || bg == nil || bg.StudCentres == nil || bg.FirstStud == nil {
		return nil
	}
	var out []float64
	for k := math.Ceil((across.left - near - *bg.FirstStud) / *bg.StudCentres); ; k++ {
		x := *bg.FirstStud + k**bg.StudCentres
		if x > across.right+near {
			return out
		}
		out = append(out, x)
	}
}

// screwAt works out what a screw passes and what it reaches.
func (p *part) screwAt(sc *plan.Screws, x, y float64) screw {
	out := screw{x: x, y: y, into: p.behind(x), onSlat: p.onSlat(x)}
	if sc.Length == nil {
		return out
	}
	out.layers = p.through(out, *sc.Length)
	inWall := *sc.Length
	for _, l := range p.panelLayers(out.onSlat) {
		inWall = max(0, inWall-l.thick)
	}
	out.inWall = &inWall
	depth := inWall
	switch out.into {
	case "leaf":
		spare := p.surface.leaf.Thickness - inWall
		out.spare = &spare
	case "masonry", "wood":
		depth = depthIn(out.layers, out.into)
	default:
		return out
	}
	out.depth = &depth
	return out
}

// behind names what a screw at x reaches.
func (p *part) behind(x float64) string {
	if p.surface.leaf != nil {
		return "leaf"
	}
	bg := p.surface.wall.Background
	if bg == nil {
		return "unsaid"
	}
	switch bg.Kind {
	case "plaster on masonry", "bare masonry":
		return "masonry"
	case "solid timber":
		return "wood"
	}
	off, ok := p.offStud(x)
	switch {
	case !ok:
		return "studs unsaid"
	case off <= bg.StudWidth/2+near:
		return "wood"
	}
	return "space"
}

// screwFacts gathers the screws of a part.
func (p *part) screwFacts(sc *plan.Screws) *facts.Screws {
	rows := p.rows(sc)
	out := &facts.Screws{Length: rounded(sc.Length), Colour: sc.Colour, OnStuds: sc.OnStuds, Into: []facts.Into{}, Places: []facts.Screw{}}
	out.PerBottom = math.MaxInt
	var heights []float64
	for _, r := range rows {
		heights = append(heights, r.y)
		out.Count += len(r.screws)
		if r.top {
			out.PerTop += len(r.screws)
		}
		if r.bottom {
			out.PerBottom = min(out.PerBottom, len(r.screws))
		}
		p.screws = append(p.screws, r.screws...)
	}
	if out.PerBottom == math.MaxInt {
		out.PerBottom = 0
	}
	for i := 1; i < len(heights); i++ {
		out.RowGap = max(out.RowGap, round(heights[i]-heights[i-1]))
	}
	if sc.Plug != nil {
		out.PlugStated, out.PlugBit, out.PlugLength = true, sc.Plug.Bit, rounded(sc.Plug.Length)
	}
	for _, s := range p.screws {
		out.Places = append(out.Places, facts.Screw{X: round(s.x), Y: round(s.y), Into: s.into, InWall: rounded(s.inWall)})
	}
	for _, what := range []string{"leaf", "masonry", "space", "studs unsaid", "unsaid", "wood"} {
		if into, ok := p.gather(what); ok {
			out.Into = append(out.Into, into)
		}
	}
	return out
}

// screwsOf gives the facts of each piece's screws by the piece.
func screwsOf(f *facts.Facts) map[string]*facts.Screws {
	out := map[string]*facts.Screws{}
	for _, fix := range f.Fixings {
		out[fix.Piece] = fix.Screws
	}
	return out
}

// gather gives the screws that reach one thing, with the least depth and the least spare.
func (p *part) gather(what string) (facts.Into, bool) {
	out := facts.Into{What: what}
	for _, s := range p.screws {
		if s.into != what {
			continue
		}
		out.Count++
		out.Depth, out.Spare = least(out.Depth, s.depth), least(out.Spare, s.spare)
	}
	return out, out.Count > 0
}

func least(a, b *float64) *float64 {
	if b == nil || a != nil && *a <= round(*b) {
		return a
	}
	return rounded(b)
}
