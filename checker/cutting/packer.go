package cutting

import (
	"context"
	"slices"
)

// tries bounds how many lengths are looked into that are wide enough and do
// not suit the pattern, and how many offcuts that are high enough and do not
// suit: or large jobs would take the square of their size.
const tries = 32

// What a gap lies beside, and so what may be put there. Beyond them come the
// same again for lengths that have, or can still be given, a factory end.
const (
	anywhere = iota
	atLeft
	atRight
	edges
)

// packer finds places by trees over all lengths and all boards. Parts come
// tallest first, so every length is high enough for what comes.
type packer struct {
	job     *job
	cut     []sawn
	where   [][2]int // of each length, in the order begun: its board, and the place there
	lengths [][]int  // of each board: places in where
	gaps    [2 * edges]*tree
	room    [2]*tree // height for a new length, kerf taken off; the same where a factory end is left
}

func newPacker(j *job, parts []*part) *packer {
	k := &packer{job: j}
	for i := range k.gaps {
		k.gaps[i] = newTree(len(parts))
	}
	for i := range k.room {
		k.room[i] = newTree(len(parts) + len(j.offcuts))
	}
	for _, o := range j.offcuts {
		k.begin(o)
	}
	return k
}

// begin takes a board or offcut out.
func (k *packer) begin(b *bin) {
	k.cut, k.lengths = append(k.cut, sawn{bin: b}), append(k.lengths, nil)
	k.measure(len(k.cut) - 1)
}

// measure notes the room for new lengths in a board.
func (k *packer) measure(board int) {
	s := &k.cut[board]
	room := s.height - s.used
	if len(s.lengths) > 0 {
		room -= k.job.kerf
	}
	k.room[0].set(board, room)
	if s.ends == s.bin.ends() {
		room = none
	}
	k.room[1].set(board, room)
}

func (k *packer) pack(ctx context.Context, parts []*part) ([]sawn, error) {
	for i, p := range parts {
		if i%1024 == 0 && ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if !k.intoLength(p) && !k.intoBoard(p) {
			k.begin(k.job.board)
			k.open(len(k.cut)-1, p)
		}
	}
	return slices.DeleteFunc(k.cut, func(s sawn) bool { return len(s.lengths) == 0 }), nil
}

// intoLength puts a part into the first length begun that takes it.
func (k *packer) intoLength(p *part) bool {
	length, slot, best := len(k.where), 0, piece{}
	for _, w := range p.choices() {
		if i, s, at := k.find(p, w, length); i >= 0 {
			length, slot, best = i, s, piece{p, at, w.turned}
		}
	}
	if best.part == nil {
		return false
	}
	board, l := k.at(length)
	l.pieces = slices.Insert(l.pieces, slot, best)
	if p.end && !l.end {
		k.end(board, l)
	}
	k.gauge(length)
	return true
}

// find gives the first length, of those before one, that takes a part in one of its ways, and its place there; -1 if none does.
func (k *packer) find(p *part, w way, before int) (length, slot int, at unit) {
	gaps := k.gaps[kindOf(p, w)]
	for i, n := -1, 0; n <= tries; n++ {
		wide := p.width - 2*near
		if n == tries {
			wide = p.width + k.job.pitch // takes it wherever the pattern begins
		}
		if i = gaps.first(i+1, wide); i < 0 || i >= before {
			break
		}
		if slot, at, ok := k.slot(i, p, w); ok {
			return i, slot, at
		}
	}
	return -1, 0, 0
}

// kindOf gives the gaps to look through for a part.
func kindOf(p *part, w way) int {
	kind := anywhere
	switch {
	case w.left:
		kind = atLeft
	case w.right:
		kind = atRight
	}
	if p.end {
		kind += edges
	}
	return kind
}

// at gives a length by its place in where, and its board.
func (k *packer) at(i int) (board int, l *length) {
	w := k.where[i]
	return w[0], &k.cut[w[0]].lengths[w[1]]
}

// end takes one of a board's factory ends for a length. With the last one gone, its other lengths have none to give.
func (k *packer) end(board int, l *length) {
	l.end = true
	s := &k.cut[board]
	if s.ends++; s.ends == s.bin.ends() {
		for _, i := range k.lengths[board] {
			k.gauge(i)
		}
		k.measure(board)
	}
}

// slot finds the first gap of a length that takes a part, and its place there.
func (k *packer) slot(i int, p *part, w way) (slot int, at unit, ok bool) {
	board, l := k.at(i)
	b := &k.cut[board].shape
	from := b.left
	for slot := range len(l.pieces) + 1 {
		to := b.right
		if slot < len(l.pieces) {
			to = l.pieces[slot].at - k.job.kerf
		}
		if at, ok := k.job.start(b, p, w, from); ok && at+p.width <= to+near {
			return slot, at, true
		}
		if slot < len(l.pieces) {
			from = l.pieces[slot].end() + k.job.kerf
		}
	}
	return 0, 0, false
}

// gauge notes the gaps of a length.
func (k *packer) gauge(i int) {
	board, l := k.at(i)
	s := &k.cut[board]
	widths := [edges]unit{none, none, none}
	from := s.left
	for slot := range len(l.pieces) + 1 {
		to := s.right
		if slot < len(l.pieces) {
			to = l.pieces[slot].at - k.job.kerf
		}
		gap := to - from
		widths[anywhere] = max(widths[anywhere], gap)
		if slot == 0 && s.leftEdge {
			widths[atLeft] = gap
		}
		if slot == len(l.pieces) {
			if s.rightEdge {
				widths[atRight] = gap
			}
		} else {
			from = l.pieces[slot].end() + k.job.kerf
		}
	}
	for kind, w := range widths {
		k.gaps[kind].set(i, w)
		if !l.end && s.ends == s.bin.ends() {
			w = none
		}
		k.gaps[edges+kind].set(i, w)
	}
}

// intoBoard begins a length in the first board or offcut that has the height and takes the part.
func (k *packer) intoBoard(p *part) bool {
	tree := k.room[0]
	if p.end {
		tree = k.room[1]
	}
	for i, n := tree.first(0, p.height-near), 0; i >= 0; i, n = tree.first(i+1, p.height-near), n+1 {
		if n == tries && i < len(k.job.offcuts) {
			if i = tree.first(len(k.job.offcuts), p.height-near); i < 0 { // every board takes it
				return false
			}
		}
		if k.open(i, p) {
			return true
		}
	}
	return false
}

// open begins a length in a board or offcut with a part, if it is wide enough and has the edge.
func (k *packer) open(board int, p *part) bool {
	s := &k.cut[board]
	pieces, ok := k.job.inOrder(&s.shape, []*part{p})
	if !ok {
		return false
	}
	if len(s.lengths) > 0 {
		s.used += k.job.kerf
	}
	s.used += p.height
	s.lengths = append(s.lengths, length{height: p.height, pieces: pieces})
	k.where = append(k.where, [2]int{board, len(s.lengths) - 1})
	k.lengths[board] = append(k.lengths[board], len(k.where)-1)
	if p.end {
		k.end(board, &s.lengths[len(s.lengths)-1])
	}
	k.gauge(len(k.where) - 1)
	k.measure(board)
	return true
}
