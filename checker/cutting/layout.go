package cutting

import (
	"fmt"
	"slices"
)

// layout puts what is cut into its place: an offcut's remains in the pattern's
// coordinates, marks from the left edge and bottom end of each board.
func (j *job) layout(cut []sawn, s Settings) Layout {
	out := Layout{Kerf: s.Kerf}
	stocked := func(c sawn) bool { return c.offcut != "" }
	for _, c := range slices.Concat(only(cut, stocked), only(cut, func(c sawn) bool { return !stocked(c) })) {
		d := drawing{job: j, settings: s, bin: c.bin}
		d.stock = Stock{Offcut: c.offcut, Width: mm(c.right - c.left), Height: mm(c.height)}
		d.prefix = c.offcut
		if !stocked(c) {
			out.Boards++
			d.stock.Board = out.Boards
			d.prefix = fmt.Sprint(out.Boards)
		}
		d.draw(c.lengths)
		out.Stocks = append(out.Stocks, d.stock)
	}
	return out
}

func only(cut []sawn, is func(sawn) bool) []sawn {
	var out []sawn
	for _, c := range cut {
		if is(c) {
			out = append(out, c)
		}
	}
	return out
}

// drawing is one board or offcut on its way into a layout.
type drawing struct {
	*job
	*bin
	settings Settings
	stock    Stock
	prefix   string // of its remainders' IDs
	number   int    // of the last of them
}

// draw stacks the lengths. The one or two that need a factory end come to lie at
// the ends; all others follow from the bottom, so that the rest stays in one piece.
func (d *drawing) draw(lengths []length) {
	var bottom, top, between []length
	for _, l := range lengths {
		switch {
		case l.end && d.bottomEnd && bottom == nil:
			bottom = []length{l}
		case l.end:
			top = []length{l}
		default:
			between = append(between, l)
		}
	}
	y, high := unit(0), d.bin.height
	if top != nil {
		high -= top[0].height + d.kerf
	}
	for _, l := range append(bottom, between...) {
		d.length(l, y, false)
		y += l.height + d.kerf
	}
	d.remainder(d.left, d.right, y, high)
	if top != nil {
		d.length(top[0], d.bin.height-top[0].height, true)
	}
}

// length draws a length from y upwards. What is lower than it lies at its
// bottom, or at its top where that is the board's own end.
func (d *drawing) length(l length, y unit, atTop bool) {
	top := y + l.height
	out := Length{Bottom: mm(y), Top: mm(min(top, d.bin.height))}
	from := d.left
	for _, p := range l.pieces {
		left, right := max(p.at, d.left), min(p.end(), d.right)
		d.remainder(from, left-d.kerf, y, top)
		low, high := y, y+p.part.height
		if atTop {
			low, high = top-p.part.height, top
			d.remainder(left, right, y, low-d.kerf)
		} else {
			d.remainder(left, right, high+d.kerf, top)
		}
		out.Pieces = append(out.Pieces, Piece{Blank: p.part.id, Left: mm(left - d.left), Right: mm(right - d.left),
			Bottom: mm(low), Top: mm(min(high, d.bin.height)), Turned: p.turned})
		from = p.end() + d.kerf
	}
	d.remainder(from, d.right, y, top)
	d.stock.Lengths = append(d.stock.Lengths, out)
}

// remainder notes what is left between four lines, if anything is.
func (d *drawing) remainder(left, right, bottom, top unit) {
	if right-left <= near || top-bottom <= near {
		return
	}
	id := ""
	for id == "" || d.taken[id] { // an offcut from stock may be called that
		d.number++
		id = fmt.Sprintf("%s/%d", d.prefix, d.number)
	}
	d.taken[id] = true
	atLeft, atRight := left <= d.left, right >= d.right
	o := Offcut{ID: id, Left: mm(left), Right: mm(right), Height: mm(top - bottom),
		LeftEdge: atLeft && d.leftEdge, RightEdge: atRight && d.rightEdge,
		BottomEnd: bottom <= 0 && d.bottomEnd, TopEnd: top >= d.bin.height && d.topEnd}
	usable := o.Right-o.Left >= d.settings.LeastWidth-mm(near) && o.Height >= d.settings.LeastHeight-mm(near)
	d.stock.Left = append(d.stock.Left, Remainder{Offcut: o, X: mm(left - d.left), Y: mm(bottom), Usable: usable})
}
