package cutting

import (
	"context"
	"slices"
)

// mostSearched is how many parts a job may have to be searched through.
const mostSearched = 64

// improve searches for plans with fewer boards than the best one found: first
// with as many as no plan can do without, and, each time that all plans are
// gone through in vain, with one more. It gives the best plan and bound known
// when a plan is found or the steps are used up.
func (j *job) improve(ctx context.Context, parts []*part, best []sawn, least, steps int) ([]sawn, int, error) {
	r := &rows{job: j, known: map[string]bool{}}
	for n := least; n < boards(best) && steps > 0; n++ {
		share := (steps + 1) / 2 // one step in two is kept for the numbers after this one
		if n+1 == boards(best) {
			share = steps
		}
		r.steps = 0
		s := newSearch(ctx, r, parts, n, share)
		found := s.place(0, -1, -1)
		if s.err != nil {
			return nil, 0, s.err
		}
		steps -= r.steps
		if found {
			return s.plan(), least, nil
		}
		if !s.out && !r.blind { // nor with fewer
			least = n + 1
		}
	}
	return best, least, nil
}

// search goes through the plans with a number of boards: part after part, the
// tallest first, into each length that takes it, and into a new length of each
// board. The first part of a length is its tallest, so that gives the height.
type search struct {
	ctx   context.Context
	rows  *rows
	parts []*part
	cut   []begun // offcuts first, then boards
	most  int     // steps
	out   bool    // they are used up
	err   error
	areas []float64 // of each part and all after it, with their kerfs
	low   []unit    // least height of each part and all after it
	thin  []unit    // least width
}

// begun is a board or offcut in the course of the search.
type begun struct {
	*bin
	class   int // those as wide and with the same edges share it
	used    unit
	ends    int
	lengths []row
}

type row struct {
	height, width unit // width is that of all parts, with a gap each
	parts         []*part
	end           bool
}

func newSearch(ctx context.Context, r *rows, parts []*part, boards, most int) *search {
	s := &search{ctx: ctx, rows: r, parts: parts, most: most}
	s.areas, s.low, s.thin = make([]float64, len(parts)+1), make([]unit, len(parts)+1), make([]unit, len(parts)+1)
	s.low[len(parts)], s.thin[len(parts)] = r.job.height, r.job.width
	for i, p := range slices.Backward(parts) {
		s.areas[i] = s.areas[i+1] + float64(p.width+r.job.gap())*float64(p.height+r.job.kerf)
		s.low[i], s.thin[i] = min(s.low[i+1], p.height), min(s.thin[i+1], p.width)
	}
	classes := map[shape]int{}
	for i := range len(r.job.offcuts) + boards {
		b := r.job.board
		if i < len(r.job.offcuts) {
			b = r.job.offcuts[i]
		}
		wide := shape{left: b.left, right: b.right, leftEdge: b.leftEdge, rightEdge: b.rightEdge}
		if _, known := classes[wide]; !known {
			classes[wide] = len(classes)
		}
		s.cut = append(s.cut, begun{bin: b, class: classes[wide]})
	}
	return s
}

// place puts a part and all after it somewhere, and says whether that worked.
// Of interchangeable parts, none lies before the one before it.
func (s *search) place(i, board, length int) bool {
	if i == len(s.parts) {
		return true
	}
	if s.rows.steps++; s.rows.steps > s.most {
		s.out = true
	}
	if s.rows.steps%1024 == 0 && s.ctx.Err() != nil {
		s.err = s.ctx.Err()
	}
	if s.out || s.err != nil || s.areas[i] > s.space(i) {
		return false
	}
	if i == 0 || s.parts[i].kind != s.parts[i-1].kind {
		board, length = -1, -1
	}
	whole := board // the first board in which every length may be tried
	if length > 0 {
		whole++
	}
	for b := max(board, 0); b < len(s.cut); b++ {
		from := 0
		if b == board {
			from = max(length, 0)
		}
		if s.seen(max(whole, 0), b) {
			continue
		}
		if s.beside(i, b, from) || s.above(i, b) {
			return true
		}
		if s.out || s.err != nil {
			return false
		}
	}
	return false
}

// beside tries the lengths that a board has.
func (s *search) beside(i, b, from int) bool {
	c, p := &s.cut[b], s.parts[i]
	across := s.rows.job.across(&c.shape) - p.width - s.rows.job.gap()
	for l := from; l < len(c.lengths); l++ {
		r := &c.lengths[l]
		if r.width > across || slices.ContainsFunc(c.lengths[from:l], r.same) {
			continue
		}
		ending := p.end && !r.end
		if ending && c.ends == c.bin.ends() {
			continue
		}
		if !s.rows.fits(&c.shape, c.class, append(r.parts, p)) {
			continue
		}
		before := *r
		r.parts, r.width, r.end = append(r.parts, p), r.width+p.width+s.rows.job.gap(), r.end || p.end
		if ending {
			c.ends++
		}
		if s.place(i+1, b, l) {
			return true
		}
		c.lengths[l] = before
		if ending {
			c.ends--
		}
	}
	return false
}

// above tries a new length of a board.
func (s *search) above(i, b int) bool {
	c, p := &s.cut[b], s.parts[i]
	used := c.used + p.height
	if len(c.lengths) > 0 {
		used += s.rows.job.kerf
	}
	if used > c.height+near || p.end && c.ends == c.bin.ends() || !s.rows.fits(&c.shape, c.class, []*part{p}) {
		return false
	}
	before := *c
	c.lengths = append(c.lengths, row{height: p.height, width: p.width + s.rows.job.gap(), parts: []*part{p}, end: p.end})
	c.used = used
	if p.end {
		c.ends++
	}
	if s.place(i+1, b, len(c.lengths)-1) {
		return true
	}
	*c = before
	return false
}

// seen says whether a board is in the same state as one tried before it: the plans that follow are the same.
func (s *search) seen(from, b int) bool {
	for k := from; k < b; k++ {
		c, d := &s.cut[k], &s.cut[b]
		if len(c.lengths) == len(d.lengths) && c.used == d.used && (c.bin == d.bin || c.shape == d.shape) && slices.EqualFunc(c.lengths, d.lengths, row.same) {
			return true
		}
	}
	return false
}

func (r row) same(o row) bool {
	return r.height == o.height && r.width == o.width && slices.EqualFunc(r.parts, o.parts, func(a, b *part) bool { return a.kind == b.kind })
}

// space is the area, with kerfs, that the part and those after it can still have.
func (s *search) space(i int) float64 {
	j := s.rows.job
	high, low, thin := s.parts[i].height+j.kerf, s.low[i]+j.kerf, s.thin[i]+j.gap()
	sum := 0.0
	for k := range s.cut {
		c := &s.cut[k]
		across := j.across(&c.shape)
		above := c.height + j.kerf + near - c.used
		if len(c.lengths) > 0 {
			above -= j.kerf
		}
		if above >= low && across >= thin {
			sum += float64(across) * float64(above)
		}
		for _, r := range c.lengths {
			if free := across - r.width; free >= thin {
				sum += float64(free) * float64(min(r.height+j.kerf, high))
			}
		}
	}
	return sum * (1 + 1e-12) // adding up must not hide the last part
}

// plan gives the boards and offcuts that the search has cut.
func (s *search) plan() []sawn {
	var out []sawn
	for _, c := range s.cut {
		if len(c.lengths) == 0 {
			continue
		}
		cut := sawn{bin: c.bin}
		for _, r := range c.lengths {
			pieces, _ := s.rows.arrange(&c.shape, r.parts) // fits said that they do
			cut.lengths = append(cut.lengths, length{height: r.height, pieces: pieces, end: r.end})
		}
		out = append(out, cut)
	}
	return out
}
