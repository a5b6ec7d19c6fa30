package cutting

import (
	"cmp"
	"context"
	"slices"
)

// length is a length of a board or offcut, with what is ripped from it.
type length struct {
	height unit
	pieces []piece // from left to right
	end    bool    // something in it needs a factory end
}

// sawn is a board or offcut with what is cut from it.
type sawn struct {
	*bin
	lengths []length
	used    unit // height of all lengths with the kerfs between them
	ends    int  // factory ends that are needed
}

// boards counts the new boards.
func boards(cut []sawn) int {
	n := 0
	for _, s := range cut {
		if s.offcut == "" {
			n++
		}
	}
	return n
}

// apart gives a board each to parts beside and above which nothing else can
// lie, and the other parts. What suits an offcut is not among them.
func (j *job) apart() (alone []sawn, others []*part) {
	narrowest, lowest := j.width, j.height
	for _, p := range j.parts {
		narrowest, lowest = min(narrowest, p.width), min(lowest, p.height)
	}
	widest, highest := none, none
	for _, o := range j.offcuts {
		widest, highest = max(widest, o.right-o.left), max(highest, o.height)
	}
	for _, p := range j.parts {
		beside := p.width+j.gap()+narrowest <= j.width+3*near
		above := p.height+j.kerf+lowest <= j.height+near
		stocked := p.width <= widest+3*near && p.height <= highest+near
		pieces, ok := j.inOrder(&j.board.shape, []*part{p})
		if beside || above || stocked || !ok {
			others = append(others, p)
			continue
		}
		alone = append(alone, sawn{bin: j.board, lengths: []length{{height: p.height, pieces: pieces, end: p.end}}})
	}
	return alone, others
}

// firstFit puts each part into the first length that it fits, or a new length
// of the first board, the tallest first; in two orders of those equally tall,
// of which the better is taken.
func (j *job) firstFit(ctx context.Context, parts []*part) ([]sawn, error) {
	best, err := newPacker(j, parts).pack(ctx, parts)
	if err != nil {
		return nil, err
	}
	widest := slices.Clone(parts)
	slices.SortStableFunc(widest, func(a, b *part) int {
		return cmp.Or(cmp.Compare(b.height, a.height), cmp.Compare(b.width, a.width))
	})
	other, err := newPacker(j, parts).pack(ctx, widest)
	if err != nil {
		return nil, err
	}
	if boards(other) < boards(best) {
		best = other
	}
	return best, nil
}
