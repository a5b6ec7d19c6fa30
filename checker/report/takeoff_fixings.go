package report

import (
	"cmp"
	"fmt"
	"strconv"
)

// fixingLine is one line of what is counted of screws, plugs, trims and finish.
type fixingLine struct {
	name     string
	quantity string // as people write it
	value    string // in the table's unit
	unit     string
	ordered  string // "" where the order does not say
}

// fixingLines gives what is counted, as it is printed.
func (t Takeoff) fixingLines() []fixingLine {
	c := t.Facts.Counts
	var out []fixingLine
	for _, s := range c.Screws {
		out = append(out, counted("screws "+t.sized(s.Length)+spaced(s.Colour), s.Count))
	}
	if c.ScrewsInAll > 0 {
		out = append(out, inAll("screws in all", c.ScrewsInAll, c.ScrewsOrdered))
	}
	for _, p := range c.Plugs {
		out = append(out, counted("plugs "+t.sized(p.Length), p.Count))
	}
	if c.PlugsInAll > 0 {
		out = append(out, inAll("plugs in all", c.PlugsInAll, c.PlugsOrdered))
	}
	for _, trim := range c.Trims {
		out = append(out, t.long("trim "+cmp.Or(trim.With, "(product not named)"), trim.Length))
	}
	if c.TrimInAll > 0 {
		line := t.long("trim in all", c.TrimInAll)
		if c.TrimOrdered != nil {
			line.ordered = t.run(*c.TrimOrdered)
		}
		out = append(out, line)
	}
	if c.ReturnLength > 0 {
		out = append(out, t.long("edges with a return", c.ReturnLength))
	}
	if c.FinishLength > 0 {
		line := t.long("edges to finish", c.FinishLength)
		line.quantity += fmt.Sprintf(", %s m²", strconv.FormatFloat(c.FinishArea, 'f', -1, 64))
		out = append(out, line)
	}
	return out
}

func counted(name string, n int) fixingLine {
	return fixingLine{name: name, quantity: strconv.Itoa(n), value: strconv.Itoa(n), unit: "pieces"}
}

func inAll(name string, n int, ordered *int) fixingLine {
	line := counted(name, n)
	if ordered != nil {
		line.ordered = strconv.Itoa(*ordered)
	}
	return line
}

func (t Takeoff) long(name string, mm float64) fixingLine {
	return fixingLine{name: name, quantity: t.run(mm), value: strconv.FormatFloat(mm, 'f', -1, 64), unit: "mm"}
}

func (t Takeoff) sized(mm *float64) string {
	if mm == nil {
		return "(length not said)"
	}
	return t.mm(*mm)
}

func spaced(s string) string {
	if s == "" {
		return ""
	}
	return " " + s
}

// fixings prints what is counted of screws, plugs, trims and finish.
func (t Takeoff) fixings(p *printer) {
	lines := t.fixingLines()
	if len(lines) == 0 {
		return
	}
	p.heading("Fixings and edges")
	for _, l := range lines {
		text := l.quantity
		if l.ordered != "" {
			text += "; " + l.ordered + " ordered"
		}
		p.item(l.name, Plain(text))
	}
}

func (t Takeoff) fixingRows(row func(...string)) {
	for _, l := range t.fixingLines() {
		row("fixings and edges", l.name, "", "needed", l.value, l.unit, "", "", "", "", "")
		if l.ordered != "" {
			row("fixings and edges", l.name, "", "ordered", l.ordered, "", "", "", "", "", "")
		}
	}
}
