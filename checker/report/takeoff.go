package report

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"trysquare/checker/facts"
	"trysquare/checker/judge"
	"trysquare/checker/length"
	"trysquare/checker/plan"
)

// Takeoff is what a plan takes: boards, every cut with its mark, what is left
// of each board, adhesive and fixings.
type Takeoff struct {
	File  string
	Plan  *plan.Plan
	Facts *facts.Facts
}

// unit is the plan's.
func (t Takeoff) unit() length.Unit { return length.Unit(t.Plan.Units) }

func (t Takeoff) mm(v float64) string { return t.unit().Format(v) }

// back says whether marks belong on the back: a portable saw is guided over it
// with the face down, so that its teeth tear where nobody looks (NAVEDTRA 14044
// chapter 5: mark the back, mirrored).
func (t Takeoff) back() bool { return t.Plan.Saw.Kind == "portable" }

// Text prints the take-off for people.
func (t Takeoff) Text(w io.Writer, s Style) error {
	if s.Width == 0 {
		s.Width = 100
	}
	p := &printer{style: s}
	p.title(Plan{Title: "Take-off: " + t.Plan.Title, File: t.File, Room: t.Plan.Job.Room, Date: t.Plan.Job.Date, PreparedBy: t.Plan.Job.PreparedBy})
	p.heading("Boards")
	for _, b := range t.Facts.Boards {
		p.item(b.Panel, t.boards(b))
	}
	p.heading("Cuts")
	p.item("", t.marks())
	for _, st := range t.Facts.Cutting {
		t.stock(p, st)
	}
	if a := t.Facts.Adhesive; a != nil {
		p.heading("Adhesive")
		p.item("", t.adhesive(a))
	}
	t.fixings(p)
	if _, err := io.WriteString(w, p.b.String()); err != nil {
		return fmt.Errorf("printing the take-off: %w", err)
	}
	return nil
}

func (p *printer) heading(text string) {
	p.line("")
	p.line(p.paint("1;4", text))
}

// item prints a text behind a name; what follows on stands in from it.
func (p *printer) item(name, text string) {
	if name != "" {
		text = Plain(name) + ": " + text
	}
	for i, l := range wrap(text, p.style.Width-4) {
		if i > 0 {
			l = "  " + l
		}
		p.line("  " + l)
	}
}

// run writes a length that is bought by the metre, or the foot.
func (t Takeoff) run(mm float64) string {
	if t.unit() == length.Inch {
		return strconv.FormatFloat(mm/304.8, 'f', 1, 64) + " ft"
	}
	return strconv.FormatFloat(mm/1000, 'f', 1, 64) + " m"
}

func (t Takeoff) boards(b facts.Boards) string {
	out := fmt.Sprintf("%d %s", b.Needed, plural(b.Needed, "board", "boards"))
	if b.Proven {
		out += " (no plan takes fewer)"
	} else {
		out += fmt.Sprintf(" (no plan takes fewer than %d)", b.Least)
	}
	if b.Offcuts > 0 {
		out += fmt.Sprintf(" and %d %s from stock", b.Offcuts, plural(b.Offcuts, "offcut", "offcuts"))
	}
	if b.Ordered != nil {
		out += fmt.Sprintf("; %d ordered", *b.Ordered)
	} else {
		out += "; the order does not say how many"
	}
	return out + fmt.Sprintf("; saw cut %s", t.mm(b.Kerf))
}

func plural(n int, one, more string) string {
	if n == 1 {
		return one
	}
	return more
}

func (t Takeoff) marks() string {
	switch t.Plan.Saw.Kind {
	case "portable":
		return "Marks are on the back, mirrored, for a portable saw with the face down. The right edge of the face lies at the left there."
	case "bench":
		return "Marks are on the face, from its left edge and its lower end."
	}
	return "Marks are on the face, from its left edge and its lower end. The plan does not say with which saw; for a portable one, mark the back, mirrored."
}

func (t Takeoff) stock(p *printer, st facts.Stock) {
	if len(st.Cuts) == 0 {
		p.item(st.ID, "whole, for "+Plain(pieces(st.Pieces)))
		return
	}
	p.item(st.ID, "for "+Plain(pieces(st.Pieces)))
	for _, c := range st.Cuts {
		text := fmt.Sprintf("%d. %s at %s", c.Number, c.Kind, t.mark(c))
		if len(c.Gives) > 0 {
			text += "; gives " + strings.Join(c.Gives, ", ")
		}
		for i, l := range wrap(Plain(text), p.style.Width-8) {
			if i > 0 {
				l = "   " + l
			}
			p.line("      " + l)
		}
	}
	for _, o := range st.Left {
		if o.Usable {
			p.line("      " + Plain(fmt.Sprintf("keep %s: %s wide, %s high, %s", o.Name, t.mm(o.Width), t.mm(o.Height), edgesKept(o.Keeps))))
		}
	}
}

func pieces(list []facts.CutPart) string {
	var out []string
	for _, p := range list {
		name := p.Piece
		if p.Turned {
			name += " (turned)"
		}
		out = append(out, name)
	}
	return strings.Join(out, ", ")
}

func edgesKept(keeps string) string {
	switch keeps {
	case "both":
		return "both long edges as from the factory"
	case "none":
		return "no long edge from the factory"
	}
	return "its " + keeps + " edge as from the factory"
}

// mark says where a cut is marked and on which side of the mark the blade goes.
func (t Takeoff) mark(c facts.SawCut) string {
	at, from, beyond := c.Mark, "the lower end", c.Beyond
	if c.Kind == "rip" {
		from = "the left edge"
	}
	if t.back() {
		at, from, beyond = c.Back, "the upper end", !c.Beyond
		if c.Kind == "rip" {
			from = "the right edge"
		}
	}
	if c.Kind != "crosscut" {
		from += fmt.Sprintf(" of length %d", c.Length)
	}
	if t.back() {
		from += " on the back"
	}
	side := "this side of the mark"
	if beyond {
		side = "beyond the mark"
	}
	return fmt.Sprintf("%s from %s, blade %s", t.mm(at), from, side)
}

func (t Takeoff) adhesive(a *facts.Adhesive) string {
	out := t.run(a.Length) + " of bead"
	if a.Volume != nil {
		out += ", " + judge.Write(*a.Volume, "ml", t.unit())
	}
	if a.Volume != nil && a.Cartridge != nil {
		out += fmt.Sprintf(": %s cartridges of %s, without waste", strconv.FormatFloat(length.Round(*a.Volume / *a.Cartridge), 'f', 1, 64), judge.Write(*a.Cartridge, "ml", t.unit()))
	}
	if a.Cartridges != nil {
		out += fmt.Sprintf("; %d ordered", *a.Cartridges)
	}
	return out
}

// CSV writes the take-off as a table, lengths in millimetres.
func (t Takeoff) CSV(w io.Writer) error {
	out := csv.NewWriter(w)
	row := func(cells ...string) {
		for i := range cells {
			cells[i] = cell(cells[i])
		}
		_ = out.Write(cells) // the writer keeps its error
	}
	num := func(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
	row("section", "name", "number", "what", "quantity", "unit", "mark on face mm", "mark on back mm", "blade", "gives", "leaves")
	for _, b := range t.Facts.Boards {
		row("boards", b.Panel, "", "boards needed", strconv.Itoa(b.Needed), "boards", "", "", "", "", "")
		if b.Ordered != nil {
			row("boards", b.Panel, "", "boards ordered", strconv.Itoa(*b.Ordered), "boards", "", "", "", "", "")
		}
	}
	for _, st := range t.Facts.Cutting {
		for _, c := range st.Cuts {
			side := "this side"
			if c.Beyond {
				side = "beyond"
			}
			row("cuts", st.ID, strconv.Itoa(c.Number), fmt.Sprintf("%s, length %d", c.Kind, c.Length), "1", "cut", num(c.Mark), num(c.Back), side, strings.Join(c.Gives, "; "), strings.Join(c.Offcuts, "; "))
		}
		for _, o := range st.Left {
			if o.Usable {
				row("offcuts", o.Name, "", "left of "+st.ID+", keeps edge: "+o.Keeps, num(o.Width)+" x "+num(o.Height), "mm", "", "", "", "", "")
			}
		}
	}
	if a := t.Facts.Adhesive; a != nil {
		row("adhesive", "", "", "bead", num(a.Length), "mm", "", "", "", "", "")
		if a.Volume != nil {
			row("adhesive", "", "", "volume without waste", num(*a.Volume), "ml", "", "", "", "", "")
		}
	}
	t.fixingRows(row)
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("writing the take-off: %w", err)
	}
	return nil
}

// cell keeps a text from a plan from being read as a formula by a spreadsheet.
func cell(s string) string {
	if s != "" && strings.ContainsRune("=+-@\t\r\n", rune(s[0])) {
		return "'" + s
	}
	return s
}
