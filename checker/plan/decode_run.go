package plan

import (
	"cmp"
	"fmt"
	"math"
	"strings"

	"trysquare/checker/length"
)

// write writes millimetres in the plan's own units, for messages.
func (b *builder) write(mm float64) string { return length.Unit(b.plan.Units).Format(mm) }

func (b *builder) run(at string, r *rawRun) {
	run := &Run{At: at, ID: r.ID, On: r.On, From: cmp.Or(r.From, "left"), Centre: cmp.Or(r.Centre, "joint"), FixedIn: r.FixedIn, Start: float64(r.Start), Joint: float64(r.Joint),
		Base: float64(r.Base), ClearTop: float64(r.ClearTop), Height: optional(r.Height), HeadDrop: optional(r.HeadDrop)}
	run.Panel = b.findPanel(r.Panel)
	if run.Panel == nil {
		b.reference(at+"/panel", "there is no panel %q in the plan", r.Panel)
	}
	width, what := b.surface(run)
	b.notNegative(at, sized("joint", run.Joint), sized("base", run.Base), sized("clear_top", run.ClearTop), size{"head_drop", run.HeadDrop})
	b.positive(at, size{"height", run.Height})
	if r.CutEdges != nil {
		run.CutEdgesStated, run.CutEdges = true, map[string]Treatment{}
		for where, t := range *r.CutEdges {
			run.CutEdges[where] = Treatment{At: at + "/cut_edges/" + where, By: t.By, With: t.With}
		}
	}
	b.courses(run, r)
	if width > 0 {
		b.starts(run, r, width, what)
	}
	run.Fix = b.fix(at+"/fix", r.Fix)
	if len(r.Pieces) > 0 && (run.From == "middle" || run.From == "line" || len(run.Courses) > 1) {
		b.geometry(at+"/pieces", "pieces can be spelled out only in a run of one course from the left or the right end")
	}
	for i, p := range r.Pieces {
		pat := fmt.Sprintf("%s/pieces/%d", at, i)
		piece := Piece{At: pat, ID: p.ID, Width: optional(p.Width), Cut: p.Cut, Gap: optional(p.Gap), HiddenBy: p.HiddenBy, WidthTop: optional(p.WidthTop), Turned: p.Turned, Scribed: p.Scribed, Fix: b.fix(pat+"/fix", p.Fix)}
		b.positive(pat, size{"width", piece.Width}, size{"width_top", piece.WidthTop})
		if piece.WidthTop != nil && piece.Width == nil {
			b.geometry(pat+"/width_top", "a tapered piece needs its width at the bottom too")
		}
		if piece.Turned && run.Panel != nil && !run.Panel.Turnable {
			b.geometry(pat+"/turned", "the panel %q is not one that may be turned", run.Panel.Name)
		}
		b.notNegative(pat, size{"gap", piece.Gap})
		if piece.Width != nil && run.Panel != nil && run.Panel.Width > 0 && max(*piece.Width, or2(piece.WidthTop)) > run.Panel.Width+tolerance {
			b.geometry(pat+"/width", "a piece cannot be wider than its panel, which covers %s", b.write(run.Panel.Width))
		}
		run.Pieces = append(run.Pieces, piece)
	}
	b.plan.Runs = append(b.plan.Runs, run)
}

// or2 gives what is said, or 0.
func or2(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

// courses gives a run its courses; one, where the plan lists none.
func (b *builder) courses(run *Run, r *rawRun) {
	for i, c := range r.Courses {
		at := fmt.Sprintf("%s/courses/%d", run.At, i)
		run.Courses = append(run.Courses, Course{At: at, Height: optional(c.Height), Start: or(c.Start, run.Start), Gap: float64(c.Gap)})
		b.positive(at, size{"height", optional(c.Height)})
		b.notTiny(at, size{"height", optional(c.Height)})
		b.notNegative(at, sized("gap", float64(c.Gap)))
		if i == 0 && c.Gap > 0 {
			b.geometry(at+"/gap", "the lowest course has none below it; a gap under the run is its base")
		}
	}
	if len(run.Courses) > 0 && r.Height != nil {
		b.geometry(run.At+"/height", "a run of courses is as high as they are; leave its own height out")
	}
	if len(run.Courses) == 0 {
		run.Courses = []Course{{At: run.At, Height: run.Height, Start: run.Start}}
	}
}

// surface finds the wall or leaf that a run stands on, and sees that the run
// fits on it. It gives how wide that is and what to call it; 0 where a fault has been found.
func (b *builder) surface(run *Run) (width float64, what string) {
	parts := strings.Split(run.On, "/")
	for _, w := range b.plan.Walls {
		if w.Name == parts[0] {
			run.Wall = w
		}
	}
	if run.Wall == nil {
		b.reference(run.At+"/on", "there is no wall %q in the plan", parts[0])
		return 0, ""
	}
	width, room, what := run.Wall.Width, run.Wall.Height-run.Wall.SkirtingHeight, "wall"
	switch {
	case len(parts) == 1:
	case len(parts) == 3 && parts[2] == "leaf":
		for _, o := range run.Wall.Openings {
			if o.Name == parts[1] {
				run.Leaf = o.Leaf
			}
		}
		if run.Leaf == nil {
			b.reference(run.At+"/on", "the wall %q has no opening %q with a leaf", parts[0], parts[1])
			return 0, ""
		}
		width, room, what = run.Leaf.Width, run.Leaf.Height, "leaf"
	default:
		b.reference(run.At+"/on", "a run stands on a wall (\"%s\") or on a leaf (\"%s/OPENING/leaf\")", parts[0], parts[0])
		return 0, ""
	}
	if width <= 0 || room <= 0 || run.Panel != nil && run.Panel.Width <= 0 {
		return 0, "" // said already, at the size itself
	}
	if run.Base+run.ClearTop >= room {
		b.geometry(run.At, "nothing is left between the run's base and its clear top")
	}
	return width, what
}

// starts sees that a run begins on its wall or leaf, and each course that has a start of its own.
func (b *builder) starts(run *Run, r *rawRun, width float64, what string) {
	b.start(run, run.At, run.Start, width, what)
	for i, c := range r.Courses {
		if c.Start != nil {
			b.start(run, run.Courses[i].At, run.Courses[i].Start, width, what)
		}
	}
}

func (b *builder) start(run *Run, at string, start, width float64, what string) {
	at += "/start"
	switch {
	case run.From == "middle":
		if math.Abs(start) >= width/2 {
			b.geometry(at, "that lies %s from the middle of the %s, which is only %s wide", b.write(math.Abs(start)), what, b.write(width))
		}
	case run.From == "line":
		if start < 0 || start > width {
			b.geometry(at, "the line lies outside the %s, which is %s wide", what, b.write(width))
		}
	case start >= width:
		b.geometry(at, "the run would start %s from the end of the %s, which is only %s wide", b.write(start), what, b.write(width))
	case run.Panel != nil && start <= -run.Panel.Width:
		b.geometry(at, "the first panel would lie wholly outside the %s; start less than %s before its end", what, b.write(run.Panel.Width))
	}
}

func (b *builder) fix(at string, r *rawFix) *Fix {
	if r == nil {
		return nil
	}
	f := &Fix{At: at}
	if a := r.Adhesive; a != nil {
		f.Adhesive = &Adhesive{At: at + "/adhesive", Bead: optional(a.Bead), Zigzag: optional(a.Zigzag), FromEdge: optional(a.FromEdge), Around: a.Around, CentreLine: a.CentreLine, Cartridge: a.Cartridge}
		b.positive(f.Adhesive.At, size{"bead", f.Adhesive.Bead}, size{"zigzag", f.Adhesive.Zigzag})
		b.notNegative(f.Adhesive.At, size{"from_edge", f.Adhesive.FromEdge})
	}
	if s := r.Screws; s != nil {
		f.Screws = &Screws{At: at + "/screws", PerEnd: int(s.PerEnd), RowsApart: optional(s.RowsApart), FromEnd: or(s.FromEnd, DefaultFromEnd), FromEdge: or(s.FromEdge, DefaultFromEdge),
			OnStuds: s.OnStuds, Length: optional(s.Length), Colour: s.Colour}
		b.notTiny(f.Screws.At, size{"rows_apart", f.Screws.RowsApart})
		b.positive(f.Screws.At, size{"rows_apart", f.Screws.RowsApart}, sized("from_end", f.Screws.FromEnd), sized("from_edge", f.Screws.FromEdge), size{"length", f.Screws.Length})
		if s.Plug != nil {
			f.Screws.Plug = &Plug{Length: optional(s.Plug.Length), Bit: s.Plug.Bit}
			b.positive(f.Screws.At, size{"plug/length", f.Screws.Plug.Length})
		}
	}
	return f
}
