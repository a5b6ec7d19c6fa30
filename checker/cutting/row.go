package cutting

import (
	"encoding/binary"
	"math"
	"slices"
)

// mostStates bounds the table of one length: fifteen different parts and more
// are laid out as they come.
const mostStates = 1 << 14

// piece is a part in its place in a length.
type piece struct {
	part   *part
	at     unit // from the whole panel's left edge
	turned bool
}

func (p piece) end() unit { return p.at + p.part.width }

// rows decides what a length can give side by side.
type rows struct {
	job   *job
	known map[string]bool
	key   []byte
	steps int
	blind bool // a length had too many different parts to look through
}

// fits says whether a length gives all the parts, in whatever order.
func (r *rows) fits(b *shape, class int, parts []*part) bool {
	if !r.job.adds(b, parts) {
		return false
	}
	r.key = binary.AppendUvarint(r.key[:0], uint64(class))
	for _, p := range parts { // in the job's order, so that one set has one key
		r.key = binary.AppendUvarint(r.key, uint64(p.kind))
	}
	ok, known := r.known[string(r.key)]
	if !known {
		_, ok = r.arrange(b, parts)
		r.known[string(r.key)] = ok
	}
	return ok
}

// adds says whether widths and kerfs add up to no more than there is, the pattern left aside.
func (j *job) adds(b *shape, parts []*part) bool {
	sum := -j.kerf
	for _, p := range parts {
		sum += p.width + j.gap()
	}
	return sum <= b.right-b.left+3*near
}

// gap is the least that lies between two parts: on a pattern a place may come as much as near too early.
func (j *job) gap() unit {
	if j.pitch == 0 {
		return j.kerf
	}
	return j.kerf - near
}

// arrange finds a place for each part, from left to right, if there is one.
func (r *rows) arrange(b *shape, parts []*part) ([]piece, bool) {
	if r.job.pitch == 0 {
		return r.loose(b, parts)
	}
	kinds := slices.Clone(parts)
	slices.SortStableFunc(kinds, func(a, b *part) int { return a.kind - b.kind })
	states := 1
	var groups []group
	for i, p := range kinds {
		if i == 0 || p.kind != kinds[i-1].kind {
			groups = append(groups, group{first: i, stride: states})
		}
		g := &groups[len(groups)-1]
		g.count++
		if states = g.stride * (g.count + 1); states > mostStates {
			out, ok := r.job.inOrder(b, edgesOutside(parts))
			r.blind = r.blind || !ok
			return out, ok
		}
	}
	return r.tightest(b, kinds, groups, states)
}

// group is a run of interchangeable parts. A state of a length is how many of
// each group lie in it: the sum of count times stride.
type group struct{ first, count, stride int }

// tightest goes through the states of a length. Of the ways to reach one, only
// the one that ends first needs to be kept: whatever can follow another can follow it.
func (r *rows) tightest(b *shape, parts []*part, groups []group, states int) ([]piece, bool) {
	type step struct {
		group int
		piece piece
	}
	ends, steps := make([]unit, states), make([]step, states)
	for i := range ends {
		ends[i] = math.MaxInt64
	}
	ends[0] = b.left - r.job.kerf
	r.steps += states / 64 // going over states that nothing reaches takes time too
	for s, end := range ends {
		if end == math.MaxInt64 {
			continue
		}
		r.steps++
		for i, g := range groups {
			n := s / g.stride % (g.count + 1)
			if n == g.count {
				continue
			}
			p := parts[g.first+n]
			for _, w := range p.choices() {
				if at, ok := r.job.start(b, p, w, end+r.job.kerf); ok && at+p.width < ends[s+g.stride] {
					ends[s+g.stride] = at + p.width
					steps[s+g.stride] = step{i, piece{p, at, w.turned}}
				}
			}
		}
	}
	if ends[states-1] == math.MaxInt64 {
		return nil, false
	}
	var out []piece
	for s := states - 1; s > 0; s -= groups[steps[s].group].stride {
		out = append(out, steps[s].piece)
	}
	slices.Reverse(out)
	return out, true
}

// inOrder lays parts out from left to right as they come, each where it ends first.
func (j *job) inOrder(b *shape, parts []*part) ([]piece, bool) {
	end := b.left - j.kerf
	out := make([]piece, 0, len(parts))
	for _, p := range parts {
		best := piece{at: math.MaxInt64}
		for _, w := range p.choices() {
			if at, ok := j.start(b, p, w, end+j.kerf); ok && at < best.at {
				best = piece{p, at, w.turned}
			}
		}
		if best.part == nil {
			return nil, false
		}
		out = append(out, best)
		end = best.end()
	}
	return out, true
}

// loose lays parts without a pattern out: only which of them lie at the edges matters.
func (r *rows) loose(b *shape, parts []*part) ([]piece, bool) {
	r.steps++
	outside := edgesOutside(parts)
	if out, ok := r.job.inOrder(b, outside); ok {
		return out, true
	}
	if n := len(outside); n > 1 { // the other way round: the one at the left belongs at the right
		outside[0], outside[n-1] = outside[n-1], outside[0]
		return r.job.inOrder(b, outside)
	}
	return nil, false
}

// edgesOutside puts parts that need an edge first and last, those that need the left one first.
func edgesOutside(parts []*part) []*part {
	var left, free, right []*part
	for _, p := range parts {
		switch {
		case p.ways[0].left:
			left = append(left, p)
		case p.ways[0].right:
			right = append(right, p)
		default:
			free = append(free, p)
		}
	}
	if len(left) > 1 { // the second can only be turned
		free, left = append(free, left[1:]...), left[:1]
	}
	if len(right) > 1 && len(left) == 0 {
		left, right = right[:1], right[1:]
	}
	return slices.Concat(left, free, right)
}
