package setout

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"trysquare/checker/facts"
)

// crossing is a cross joint with its parts.
type crossing struct {
	facts.CrossJoint
	lower, upper *part
}

// crossJoints gives where the parts of a course meet those of the course above.
func (s *setter) crossJoints(f *facts.Facts) {
	f.CrossJoints = []facts.CrossJoint{}
	tops, bottoms := s.uprights()
	var all []crossing
	for _, l := range s.runs {
		if len(l.courses) < 2 {
			continue
		}
		byCourse := map[*course][]*part{}
		for _, p := range l.parts {
			byCourse[p.cell.course] = append(byCourse[p.cell.course], p)
		}
		for i := 1; i < len(l.courses); i++ {
			lower, upper := l.courses[i-1], l.courses[i]
			below, above := lineOf(byCourse[lower], "up", lower.top), lineOf(byCourse[upper], "down", upper.bottom)
			for _, j := range meetings(below, above) {
				j.At = l.run.Courses[i].At
				j.Y, j.Gap = round((lower.top+upper.bottom)/2), round(upper.bottom-lower.top)
				j.Trimmed = l.trimmed()
				j.NearestUpright = nearest(tops[j.lower], bottoms[j.upper])
				all = append(all, j)
			}
		}
	}
	sideBySide(all)
	for _, j := range all {
		f.CrossJoints = append(f.CrossJoints, j.CrossJoint)
	}
}

// trimmed says whether the run treats edges at the top or the bottom; nil where it says nothing of its cut edges.
func (l *laid) trimmed() *bool {
	if !l.run.CutEdgesStated {
		return nil
	}
	_, top := l.run.CutEdges["top"]
	_, bottom := l.run.CutEdges["bottom"]
	trimmed := top || bottom
	return &trimmed
}

// edgeAt is a level edge of a part on the line between two courses.
type edgeAt struct {
	span
	part *part
	made string
}

// lineOf gives the level edges on a line that face a way, from left to right.
func lineOf(parts []*part, faces string, y float64) []edgeAt {
	var out []edgeAt
	for _, p := range parts {
		for _, side := range p.sides {
			if side.Faces == faces && onLevel(side, y) {
				out = append(out, edgeAt{span{min(side.From.X, side.To.X), max(side.From.X, side.To.X)}, p, p.madeBy(side)})
			}
		}
	}
	slices.SortFunc(out, func(a, b edgeAt) int { return cmp.Compare(a.left, b.left) })
	return out
}

// meetings pairs the edges below a line with those above it.
func meetings(below, above []edgeAt) []crossing {
	var out []crossing
	count := map[string]int{}
	for i, j := 0, 0; i < len(below) && j < len(above); {
		a, b := below[i], above[j]
		left, right := max(a.left, b.left), min(a.right, b.right)
		if right > left+near {
			id := a.part.id + " / " + b.part.id
			if count[id]++; count[id] > 1 {
				id = fmt.Sprintf("%s %d", id, count[id])
			}
			out = append(out, crossing{facts.CrossJoint{About: b.part.about(id), Lower: a.part.id, Upper: b.part.id, Left: round(left), Right: round(right),
				LowerMadeBy: a.made, UpperMadeBy: b.made, InView: a.part.inView() || b.part.inView()}, a.part, b.part})
		}
		if a.right < b.right {
			i++
		} else {
			j++
		}
	}
	return out
}

// uprights gives, for each part, the places of its upright joints that reach
// the top, and those that reach the bottom, of its course.
func (s *setter) uprights() (tops, bottoms map[*part][]float64) {
	tops, bottoms = map[*part][]float64{}, map[*part][]float64{}
	for _, p := range s.pairs {
		c := p.left.cell.course
		if c.number == 0 {
			continue
		}
		for _, one := range []*part{p.left, p.right} {
			if p.top >= c.top-near {
				tops[one] = append(tops[one], p.x())
			}
			if p.bottom <= c.bottom+near {
				bottoms[one] = append(bottoms[one], p.x())
			}
		}
	}
	return tops, bottoms
}

// nearest gives the least distance from one of these places to one of those.
func nearest(these, those []float64) *float64 {
	least := math.Inf(1)
	for _, a := range these {
		for _, b := range those {
			least = min(least, math.Abs(a-b))
		}
	}
	return finite(least)
}

// sideBySide finds, for each cross joint, the one that follows it on the right:
// in the same line of its run, or in a run beside it, there the nearest in height.
func sideBySide(all []crossing) {
	bySurface := map[string][]*crossing{}
	for i := range all {
		bySurface[all[i].On] = append(bySurface[all[i].On], &all[i])
	}
	for _, list := range bySurface {
		slices.SortStableFunc(list, func(a, b *crossing) int { return cmp.Or(cmp.Compare(a.Left, b.Left), cmp.Compare(a.Y, b.Y)) })
		for _, j := range list {
			first, _ := slices.BinarySearchFunc(list, j.Right-near, func(c *crossing, x float64) int { return cmp.Compare(c.Left, x) })
			for _, c := range list[first:] {
				if c.Left > j.Right+j.lower.panel().Pitch {
					break
				}
				step := round(math.Abs(c.Y - j.Y))
				if c.follows(j) && (j.NextTo == nil || step < j.NextTo.Step) {
					j.NextTo = &facts.CrossNext{Joint: c.ID, Step: step}
				}
			}
		}
	}
}

// follows says whether a cross joint that begins where j ends stands beside it:
// in one run those of one line do, in two those that both pieces of j stand beside.
func (c *crossing) follows(j *crossing) bool {
	if c.lower.laid == j.lower.laid {
		return c.lower.cell.course == j.lower.cell.course
	}
	return c.Y > j.lower.bottom && c.Y < j.upper.top
}
