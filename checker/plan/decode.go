package plan

import (
	"cmp"
	"fmt"
	"maps"
	"slices"

	"trysquare/checker/fault"
	"trysquare/checker/source"
)

// Decode reads a document that has passed its schema. Its errors are a
// fault.List: names that stand for nothing or for two things, and sizes that no
// wall, door or panel can have, each at its place.
func Decode(d *source.Document) (*Plan, error) {
	raw, err := decodeRaw(d)
	if err != nil {
		return nil, err
	}
	b := &builder{doc: d, plan: &Plan{Title: raw.Title, Units: raw.Units}}
	b.plan.Job = Job{At: "/job", Room: raw.Job.Room, RoomUse: raw.Job.RoomUse, PreparedBy: raw.Job.PreparedBy, Date: raw.Job.Date, Country: raw.Job.Country}
	if b.plan.Job.Country == "" {
		b.plan.Job.Country = "other"
	}
	for _, name := range slices.Sorted(maps.Keys(raw.Panels)) {
		b.panel(name, raw.Panels[name])
	}
	for _, name := range slices.Sorted(maps.Keys(raw.Walls)) {
		b.wall(name, raw.Walls[name])
	}
	for i := range raw.Runs {
		b.run(fmt.Sprintf("/runs/%d", i), &raw.Runs[i])
	}
	b.steps(raw)
	b.order(raw)
	b.cutting(raw)
	b.uniqueIDs()
	if err := b.faults.Sorted(); err != nil {
		return nil, err
	}
	return b.plan, nil
}

type builder struct {
	doc    *source.Document
	plan   *Plan
	faults fault.List
}

func (b *builder) geometry(at, format string, args ...any) {
	b.faults = append(b.faults, fault.New(fault.Geometry, b.doc.Place(at), format, args...))
}

func (b *builder) reference(at, format string, args ...any) {
	b.faults = append(b.faults, fault.New(fault.Reference, b.doc.Place(at), format, args...))
}

// size is a length that the plan states and that must be more than 0.
type size struct {
	name string
	mm   *float64
}

func sized(name string, v float64) size { return size{name, &v} }

// positive gives a fault for each size that is not more than 0. Sizes that the
// plan leaves unsaid are nil.
func (b *builder) positive(at string, sizes ...size) {
	for _, s := range sizes {
		if s.mm != nil && *s.mm <= 0 {
			b.geometry(at+"/"+s.name, "this must be more than 0")
		}
	}
}

// leastSize is what panels, pitches and spacings must have at least, in
// millimetres: less is a slip of the unit, and would come to millions of pieces.
const leastSize = 5

func (b *builder) notTiny(at string, sizes ...size) {
	for _, s := range sizes {
		if s.mm != nil && *s.mm > 0 && *s.mm < leastSize {
			b.geometry(at+"/"+s.name, "this is under %s; is it in the wrong unit?", b.write(leastSize))
		}
	}
}

// notNegative is positive for sizes that may be 0.
func (b *builder) notNegative(at string, sizes ...size) {
	for _, s := range sizes {
		if s.mm != nil && *s.mm < 0 {
			b.geometry(at+"/"+s.name, "this must not be less than 0")
		}
	}
}

func (b *builder) panel(name string, r rawPanel) {
	at := "/panels/" + source.Escape(name)
	before := len(b.faults)
	p := &Panel{At: at, Name: name, Width: float64(r.Width), Height: float64(r.Height), Thickness: float64(r.Thickness), Mass: r.Mass,
		Pitch: float64(r.Slats.Pitch), SlatWidth: float64(r.Slats.Width), First: float64(r.Slats.First), Backing: float64(r.Backing.Thickness),
		LeftEdge: "square", RightEdge: "square", Turnable: r.Turnable}
	if r.Edges != nil {
		p.LeftEdge, p.RightEdge, p.Overlap = r.Edges.Left, r.Edges.Right, float64(r.Edges.Overlap)
		b.notNegative(at+"/edges", sized("overlap", p.Overlap))
	}
	b.positive(at, sized("width", p.Width), sized("height", p.Height), sized("thickness", p.Thickness))
	b.positive(at, sized("slats/pitch", p.Pitch), sized("slats/width", p.SlatWidth), sized("backing/thickness", p.Backing))
	b.notTiny(at, sized("width", p.Width), sized("height", p.Height), sized("slats/pitch", p.Pitch))
	b.notNegative(at, sized("slats/first", p.First))
	switch {
	case len(b.faults) > before: // sizes that are wrong by themselves are not compared
	case p.SlatWidth >= p.Pitch:
		b.geometry(at+"/slats/width", "a slat must be narrower than the pitch, or there is no space between slats")
	case p.First >= p.Pitch:
		b.geometry(at+"/slats/first", "the first slat must start within one pitch of the edge")
	case p.Backing >= p.Thickness:
		b.geometry(at+"/backing/thickness", "the backing must be thinner than the panel")
	case p.Overlap >= p.Width:
		b.geometry(at+"/edges/overlap", "the overlap must be less than the panel's width")
	}
	b.plan.Panels = append(b.plan.Panels, p)
}

func (b *builder) steps(raw *rawPlan) {
	if raw.Steps == nil {
		return
	}
	b.plan.StepsStated = true
	for i, s := range *raw.Steps {
		b.plan.Steps = append(b.plan.Steps, Step{At: fmt.Sprintf("/sequence/%d", i), Do: s.Do, Hours: s.Hours})
	}
}

func (b *builder) order(raw *rawPlan) {
	b.plan.Order = Order{At: "/order", Boards: map[string]int{}}
	o := &b.plan.Order
	o.Cartridges, o.Screws, o.Plugs, o.Trim = whole(raw.Order.Cartridges), whole(raw.Order.Screws), whole(raw.Order.Plugs), optional(raw.Order.Trim)
	b.notNegative("/order", size{"trim", o.Trim})
	for i, c := range raw.Order.Offcuts {
		at := fmt.Sprintf("/order/offcuts/%d", i)
		piece := Offcut{At: at, ID: c.ID, Panel: b.findPanel(c.Panel), Width: float64(c.Width), Height: float64(c.Height), Keeps: cmp.Or(c.Keeps, "none")}
		if piece.Panel == nil {
			b.reference(at+"/panel", "there is no panel %q in the plan", c.Panel)
		}
		b.positive(at, sized("width", piece.Width), sized("height", piece.Height))
		o.Offcuts = append(o.Offcuts, piece)
	}
	for _, name := range slices.Sorted(maps.Keys(raw.Order.Boards)) {
		b.plan.Order.Boards[name] = int(raw.Order.Boards[name])
		if b.findPanel(name) == nil {
			at := b.doc.At("/order/boards/" + source.Escape(name)) // what is wrong is the name, not the number behind it
			b.faults = append(b.faults, fault.New(fault.Reference, b.doc.KeyPlace(at), "there is no panel %q in the plan", name))
		}
	}
}

func whole(n *count) *int {
	if n == nil {
		return nil
	}
	w := int(*n)
	return &w
}

// cutting reads the plan's own cutting plan; the pieces that it names are
// looked up when they have been set out.
func (b *builder) cutting(raw *rawPlan) {
	b.plan.Saw = Saw{Kind: raw.Saw.Kind, Kerf: optional(raw.Saw.Kerf)}
	b.notNegative("/saw", size{"kerf", b.plan.Saw.Kerf})
	if raw.Cutting == nil {
		return
	}
	b.plan.CuttingStated = true
	for i, c := range *raw.Cutting {
		at := fmt.Sprintf("/cutting/%d", i)
		board := CutBoard{At: at, Panel: b.findPanel(c.Panel), Offcut: c.Offcut, Lengths: c.Lengths}
		if board.Panel == nil {
			b.reference(at+"/panel", "there is no panel %q in the plan", c.Panel)
		}
		if c.Offcut != "" && !slices.ContainsFunc(b.plan.Order.Offcuts, func(o Offcut) bool { return o.ID == c.Offcut }) {
			b.reference(at+"/offcut", "there is no offcut %q in the order", c.Offcut)
		}
		b.plan.Cutting = append(b.plan.Cutting, board)
	}
}

func (b *builder) findPanel(name string) *Panel {
	for _, p := range b.plan.Panels {
		if p.Name == name {
			return p
		}
	}
	return nil
}

// uniqueIDs sees that every run, piece and accessory has a name of its own: a
// finding names its subject, and one name must not stand for two things.
func (b *builder) uniqueIDs() {
	seen := map[string]string{}
	once := func(kind, id, at string) {
		if first, twice := seen[kind+id]; twice {
			b.reference(at+"/id", "%s %q stands here a second time; the first is in line %d", kind, id, b.doc.Place(first).Start.Line)
			return
		}
		seen[kind+id] = at + "/id"
	}
	for _, r := range b.plan.Runs {
		once("the run", r.ID, r.At)
		for _, p := range r.Pieces {
			once("the piece", p.ID, p.At)
		}
	}
	for _, w := range b.plan.Walls {
		for _, s := range slices.Concat(w.Services, w.Reverse) {
			once("the accessory", s.ID, s.At)
		}
	}
	for _, o := range b.plan.Order.Offcuts {
		once("the offcut", o.ID, o.At)
	}
}
