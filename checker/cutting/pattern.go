package cutting

import (
	"cmp"
	"maps"
	"slices"
)

// byPattern adds up the steps that parts take on the pattern: from where one
// begins, over its width and a kerf, to where the pattern lets another begin.
// The last part of a length takes no step, only its width; so a length may be
// over by as much as a step can be longer than its width.
func (l stack) byPattern() int {
	if l.pitch == 0 {
		return 0
	}
	phases := map[unit]int{}
	for _, p := range l.parts {
		for _, w := range p.choices() {
			phases[l.phase(w.at)]++
		}
	}
	best := l.bySteps(l.parts, slices.Sorted(maps.Keys(phases)))
	if len(phases) == 1 {
		return best
	}
	// Parts that all begin at one place on the pattern take whole pitches.
	often := slices.SortedFunc(maps.Keys(phases), func(a, b unit) int { return cmp.Or(cmp.Compare(phases[b], phases[a]), cmp.Compare(a, b)) })
	for _, phase := range often[:min(len(often), mostPhases)] {
		var parts []*part
		for _, p := range l.parts {
			if !slices.ContainsFunc(p.choices(), func(w way) bool { return l.phase(w.at) != phase }) {
				parts = append(parts, p)
			}
		}
		best = max(best, l.bySteps(parts, []unit{phase}))
	}
	return best
}

func (j *job) phase(at unit) unit { return (at%j.pitch + j.pitch) % j.pitch }

func (l stack) bySteps(parts []*part, phases []unit) int {
	need, longest := unit(0), unit(0)
	for _, p := range parts {
		least := unit(-1)
		for _, w := range p.choices() {
			if s := l.step(p, w, phases); least < 0 || s < least {
				least = s
			}
		}
		need += least
		longest = max(longest, least-p.width)
	}
	row := func(b *shape) float64 {
		most := b.right - b.left + 2*near + longest
		if len(phases) == 1 {
			most -= most % l.pitch
		}
		return l.rows(b) * float64(most)
	}
	return l.over(float64(need), row(&l.board.shape), row)
}

// step gives the way from the beginning of a part to the first place after it where one of the phases begins.
func (l stack) step(p *part, w way, phases []unit) unit {
	least := p.width + l.gap()
	from := l.phase(w.at + least)
	i, _ := slices.BinarySearch(phases, from)
	if i == len(phases) {
		return least + phases[0] + l.pitch - from
	}
	return least + phases[i] - from
}
