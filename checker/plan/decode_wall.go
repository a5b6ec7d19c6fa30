package plan

import (
	"fmt"
	"maps"
	"slices"

	"trysquare/checker/source"
)

func (b *builder) wall(name string, r rawWall) {
	at := "/walls/" + source.Escape(name)
	w := &Wall{At: at, Name: name, Width: float64(r.Width), Height: float64(r.Height),
		LeftCorner: r.Ends.Left.Corner, RightCorner: r.Ends.Right.Corner, LeftWall: r.Ends.Left.Wall, RightWall: r.Ends.Right.Wall,
		SkirtingHeight: float64(r.Skirting.Height), SkirtingThickness: float64(r.Skirting.Thickness)}
	b.positive(at, sized("width", w.Width), sized("height", w.Height), size{"thickness", optional(r.Thickness)})
	b.notTiny(at, sized("width", w.Width), sized("height", w.Height))
	w.Thickness = optional(r.Thickness)
	b.notNegative(at, sized("skirting/height", w.SkirtingHeight), sized("skirting/thickness", w.SkirtingThickness))
	sound := w.Width > 0 && w.Height > 0 // nothing is compared with a size that is wrong by itself
	if sound && w.SkirtingHeight >= w.Height {
		b.geometry(at+"/skirting/height", "the skirting must be lower than the wall, which is %s high", b.write(w.Height))
	}
	if sound && r.Outline != nil {
		b.outline(w, r.Outline)
	}
	w.Measured = b.measured(at+"/measured", r.Measured)
	if r.Background != nil {
		w.Background = b.background(at+"/background", r.Background)
	}
	for _, name := range slices.Sorted(maps.Keys(r.Openings)) {
		b.opening(w, name, r.Openings[name])
	}
	b.apart(w)
	w.Services, w.ServicesStated = b.services(w, at+"/services", r.Services, sound)
	w.Reverse, w.ReverseStated = b.services(w, at+"/reverse", r.Reverse, sound)
	b.plan.Walls = append(b.plan.Walls, w)
}

// services reads the accessories on one face of a wall; stated is false where the plan has no list of them.
func (b *builder) services(w *Wall, at string, list *[]rawService, sound bool) (out []Service, stated bool) {
	if list == nil {
		return nil, false
	}
	for i, s := range *list {
		sat := fmt.Sprintf("%s/%d", at, i)
		out = append(out, Service{At: sat, ID: s.ID, Kind: s.Kind, X: float64(s.X), Y: float64(s.Y), Width: float64(s.Width), Height: float64(s.Height)})
		b.positive(sat, sized("width", float64(s.Width)), sized("height", float64(s.Height)))
		if !sound || s.Width <= 0 || s.Height <= 0 {
			continue // said already, at the size itself
		}
		if s.X < 0 || float64(s.X+s.Width) > w.Width+tolerance || s.Y < 0 || float64(s.Y+s.Height) > w.Height+tolerance {
			b.geometry(sat, "the accessory %q reaches outside its wall, which is %s wide and %s high", s.ID, b.write(w.Width), b.write(w.Height))
		} else if !w.has(float64(s.X), float64(s.Y), float64(s.X+s.Width), float64(s.Y+s.Height)) {
			b.geometry(sat, "the accessory %q reaches outside its wall's outline", s.ID)
		}
	}
	return out, true
}

func (b *builder) measured(at string, r *rawMeasured) *Measured {
	if r == nil {
		return nil
	}
	m := &Measured{At: at, Floor: optional(r.Widths.Floor), Middle: optional(r.Widths.Middle), Ceiling: optional(r.Widths.Ceiling),
		PlumbLeft: optional(r.OutOfPlumb.Left), PlumbRight: optional(r.OutOfPlumb.Right), Flatness: optional(r.Flatness)}
	b.positive(at+"/widths", size{"floor", m.Floor}, size{"middle", m.Middle}, size{"ceiling", m.Ceiling})
	b.notNegative(at, size{"flatness", m.Flatness})
	for i, h := range r.Heights {
		hat := fmt.Sprintf("%s/heights/%d", at, i)
		b.positive(hat, sized("height", float64(h.Height)))
		b.notNegative(hat, sized("x", float64(h.X)))
		m.Heights = append(m.Heights, MeasuredHeight{float64(h.X), float64(h.Height)})
	}
	return m
}

func (b *builder) background(at string, r *rawBackground) *Background {
	bg := &Background{At: at, Kind: r.Kind, StudCentres: optional(r.StudCentres), FirstStud: optional(r.FirstStud),
		StudWidth: or(r.StudWidth, DefaultStudWidth), Batten: or(r.Batten, DefaultBatten)}
	switch r.Kind {
	case "plasterboard on studs":
		bg.Lining = or(r.Board, DefaultBoard)
	case "plaster on masonry":
		bg.Lining = or(r.Plaster, DefaultPlaster)
	}
	b.positive(at, size{"board", optional(r.Board)}, size{"plaster", optional(r.Plaster)}, size{"stud_centres", bg.StudCentres}, size{"stud_width", optional(r.StudWidth)}, size{"batten", optional(r.Batten)})
	b.notTiny(at, size{"stud_centres", bg.StudCentres})
	if c := bg.StudCentres; c != nil && *c >= leastSize && bg.StudWidth >= *c {
		b.geometry(at+"/stud_centres", "studs at these centres would touch: each is %s wide", b.write(bg.StudWidth))
	}
	return bg
}

func (b *builder) opening(w *Wall, name string, r rawOpening) {
	at := w.At + "/openings/" + source.Escape(name)
	o := &Opening{At: at, Name: name, Kind: r.Kind, Wall: w, X: float64(r.X), Width: float64(r.Width), Sill: float64(r.Sill), Head: float64(r.Head),
		ArchitraveWidth: float64(r.Frame.Architrave.Width), ArchitraveStays: r.Frame.Architrave.Width > 0 && !r.Frame.Architrave.Removed}
	if r.Lining != nil {
		o.LiningStated, o.LiningClad, o.LiningThickness = true, r.Lining.Clad, optional(r.Lining.Thickness)
		b.positive(at+"/lining", size{"thickness", o.LiningThickness})
		o.LiningStart = optional(r.Lining.Start)
		if r.Lining.Panel != "" {
			if o.LiningPanel = b.findPanel(r.Lining.Panel); o.LiningPanel == nil {
				b.reference(at+"/lining/panel", "there is no panel %q in the plan", r.Lining.Panel)
			}
		}
	}
	o.FrameDepth, o.Stop = optional(r.Frame.Depth), optional(r.Frame.Stop)
	b.positive(at+"/frame", size{"depth", o.FrameDepth}, size{"stop", o.Stop})
	before := len(b.faults)
	b.positive(at, sized("width", o.Width), sized("head", o.Head))
	b.notNegative(at, sized("sill", o.Sill), sized("frame/architrave/width", o.ArchitraveWidth))
	sound := len(b.faults) == before && w.Width > 0 && w.Height > 0
	switch {
	case !sound: // said already, at the size itself
	case o.Sill >= o.Head:
		b.geometry(at+"/sill", "the sill must be below the head")
	case o.X < 0 || o.Right() > w.Width+tolerance || o.Head > w.Height+tolerance:
		b.geometry(at, "the opening %q reaches outside its wall, which is %s wide and %s high", name, b.write(w.Width), b.write(w.Height))
	case !w.has(o.X, o.Sill, o.Right(), o.Head):
		b.geometry(at, "the opening %q reaches outside its wall's outline", name)
	}
	w.Openings = append(w.Openings, o)
	if r.Leaf == nil {
		return
	}
	l := &Leaf{At: at + "/leaf", Opening: o, Width: float64(r.Leaf.Width), Height: float64(r.Leaf.Height), Thickness: float64(r.Leaf.Thickness), FireRating: r.Leaf.FireRating}
	l.SideGap = or(r.Leaf.SideGap, (o.Width-l.Width)/2)
	l.FloorGap = or(r.Leaf.FloorGap, max(o.Sill, o.Head-(o.Width-l.Width)/2-l.Height))
	before = len(b.faults)
	b.positive(l.At, sized("width", l.Width), sized("height", l.Height), sized("thickness", l.Thickness))
	b.notNegative(l.At, size{"side_gap", optional(r.Leaf.SideGap)}, size{"floor_gap", optional(r.Leaf.FloorGap)})
	if !sound || len(b.faults) > before || o.Sill >= o.Head {
		// said already
	} else if l.Width > o.Width+tolerance || l.Height > o.Head-o.Sill+tolerance {
		b.geometry(l.At, "the leaf is larger than its opening, which is %s wide and %s high", b.write(o.Width), b.write(o.Head-o.Sill))
	} else if l.SideGap+l.Width > o.Width+tolerance || l.FloorGap+l.Height > o.Head+tolerance || l.FloorGap < o.Sill-tolerance {
		b.geometry(l.At, "with these gaps the leaf reaches outside its opening")
	}
	b.hang(l, r.Leaf)
	o.Leaf = l
}

// hang reads what a leaf turns on and what is fixed to it.
func (b *builder) hang(l *Leaf, r *rawLeaf) {
	l.Core, l.Mass, l.Hardware, l.Opens = r.Core, r.Mass, r.Hardware, r.Opens
	l.Fits, l.Handle, l.StandsOut = optional(r.Furniture.Fits), optional(r.Furniture.Handle), float64(r.Furniture.StandsOut)
	l.FloorCovering, l.SideWall, l.OtherCladding = float64(r.FloorCovering), optional(r.SideWall), float64(r.OtherCladding)
	b.positive(l.At+"/furniture", size{"fits", l.Fits}, size{"handle", l.Handle})
	b.notNegative(l.At, sized("furniture/stands_out", l.StandsOut), sized("floor_covering", l.FloorCovering), size{"side_wall", l.SideWall}, sized("other_cladding", l.OtherCladding))
	if h := r.Hinges; h != nil {
		l.Hinges = &Hinges{At: l.At + "/hinges", Side: h.Side, Proud: optional(h.Proud), FromEdge: float64(h.FromEdge), Grade: int(h.Grade), MassGrade: int(h.MassGrade), Count: int(h.Count)}
	}
	if c := r.Closer; c != nil {
		l.Closer = &Closer{At: l.At + "/closer", Size: int(c.Size), Backcheck: c.Backcheck}
	}
}

// tolerance in millimetres absorbs what converting inches leaves behind the comma.
const tolerance = 0.005

// apart sees that no two openings of a wall overlap.
func (b *builder) apart(w *Wall) {
	for i, o := range w.Openings {
		for _, p := range w.Openings[:i] {
			if o.X < p.Right()-tolerance && p.X < o.Right()-tolerance && o.Sill < p.Head-tolerance && p.Sill < o.Head-tolerance {
				b.geometry(o.At, "the openings %q and %q overlap", p.Name, o.Name)
			}
		}
	}
}
