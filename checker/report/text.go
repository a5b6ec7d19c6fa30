package report

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/rivo/uniseg"

	"trysquare/checker/judge"
)

// Style is how a report is printed for people.
type Style struct {
	Width  int  // columns; 0 is 100
	Colour bool // escape sequences for colour and weight
}

// Text prints the report on one plan: its findings by wall and piece, and a
// last line that counts them.
func Text(w io.Writer, p Plan, s Style) error {
	if s.Width == 0 {
		s.Width = 100
	}
	t := &printer{style: s}
	t.title(p)
	for _, f := range p.Faults {
		t.paragraph("", t.paint("1", "Cannot check"), labelWidth, Plain(f.Error()))
	}
	if p.Title != "" {
		entries := merge(p.Results)
		t.findings(entries)
		t.summary(p, entries)
	}
	_, err := io.WriteString(w, t.b.String())
	if err != nil {
		return fmt.Errorf("printing the report: %w", err)
	}
	return nil
}

type printer struct {
	b     strings.Builder
	style Style
}

// paint puts escape sequences round a text where colour is wanted.
func (t *printer) paint(code, text string) string {
	if !t.style.Colour || text == "" {
		return text
	}
	return "\x1b[" + code + "m" + text + "\x1b[0m"
}

func (t *printer) line(text string) { t.b.WriteString(strings.TrimRight(text, " ") + "\n") }

func (t *printer) title(p Plan) {
	if p.Title != "" {
		for _, l := range wrap(Plain(p.Title), t.style.Width) {
			t.line(t.paint("1", l))
		}
	}
	var about []string
	for _, part := range []string{p.File, p.Room, p.Date} {
		if part != "" {
			about = append(about, Plain(part))
		}
	}
	if p.PreparedBy != "" {
		about = append(about, "by "+Plain(p.PreparedBy))
	}
	t.dim("", strings.Join(about, " · "))
}

// entry is one finding as it is printed: results of one rule on one surface
// that say the same of several subjects are printed once, and so are all its
// questions and gaps there, each subject's own words in a line.
type entry struct {
	Result
	subjects []string
	texts    []string // one where all say the same, otherwise one a subject
	places   []string
	rank     int
}

// add takes another result into the entry.
func (e *entry) add(r Result) {
	e.subjects = append(e.subjects, name(r.Subject))
	e.texts = append(e.texts, r.Text)
	if at := place(r); !slices.Contains(e.places, at) {
		e.places = append(e.places, at)
	}
}

func place(r Result) string {
	return fmt.Sprintf("line %d, column %d", r.Place.Start.Line, r.Place.Start.Rune)
}

// word gives the label and its paint for a result; the order is that of the list.
func word(r Result) (label, paint string, rank int) {
	switch {
	case r.Kind == judge.Fail && r.Level == "error":
		return "Put right", "1;35", 0
	case r.Kind == judge.Fail && r.Level == "warning":
		return "Think again", "1;34", 1
	case r.Kind == judge.Fail:
		return "Mind", "34", 2
	case r.Kind == judge.Review:
		return "Ask", "1;36", 3
	}
	return "Say", "1", 4
}

// labelWidth is the width of the label's column.
const labelWidth = 13

func (t *printer) findings(entries []entry) {
	groups := map[string][]entry{}
	var places []string
	for _, e := range entries {
		on := e.Subject.On
		if _, ok := groups[on]; !ok {
			places = append(places, on)
		}
		groups[on] = append(groups[on], e)
	}
	slices.SortFunc(places, func(a, b string) int {
		return cmp.Or(cmp.Compare(b2i(a == ""), b2i(b == "")), cmp.Compare(a, b)) // the job as a whole comes last
	})
	for _, on := range places {
		t.line("")
		t.line(t.paint("1;4", surfaceName(on)))
		heading := ""
		for _, e := range groups[on] {
			if h := strings.Join(e.subjects, ", "); h != heading {
				heading = h
				t.paragraph("  ", "", 0, Plain(heading))
			}
			t.entry(e)
		}
	}
}

func surfaceName(on string) string {
	switch {
	case on == "":
		return "The job as a whole"
	case strings.HasSuffix(on, "/leaf"):
		return "Leaf in " + Plain(strings.TrimSuffix(on, "/leaf"))
	}
	return "Wall " + Plain(on)
}

// merge gives what is to be printed: results that are neither a pass nor
// without a subject, those that say the same put together, along the wall and
// the gravest first for the same subject.
func merge(results []Result) []entry {
	var out []entry
	at := map[string]int{}
	for _, r := range results {
		if r.Kind == judge.Pass || r.Kind == judge.NotApplicable {
			continue
		}
		_, _, rank := word(r)
		key := []string{r.Rule, string(r.Kind), r.Subject.On, r.Do}
		if r.Kind == judge.Fail {
			key = append(key, r.Text)
		}
		i, ok := at[strings.Join(key, "\x00")]
		if !ok {
			i = len(out)
			at[strings.Join(key, "\x00")] = i
			out = append(out, entry{Result: r, rank: rank})
		}
		out[i].add(r)
	}
	for i := range out {
		if len(slices.Compact(slices.Clone(out[i].texts))) == 1 {
			out[i].texts = out[i].texts[:1]
		}
	}
	slices.SortStableFunc(out, func(a, b entry) int {
		return cmp.Or(cmp.Compare(b2i(a.Subject.Piece == ""), b2i(b.Subject.Piece == "")), cmp.Compare(a.order, b.order), cmp.Compare(strings.Join(a.subjects, ", "), strings.Join(b.subjects, ", ")), cmp.Compare(a.rank, b.rank))
	})
	return out
}

// name writes a subject as a heading.
func name(s *Subject) string {
	switch s.Kind {
	case "piece", "fixing":
		return s.ID
	case "joint":
		return "joint " + s.ID
	case "leaf":
		return "the leaf"
	case "wall":
		return "the wall"
	case "boards":
		return "boards of " + s.ID
	case "sequence":
		return "order of work"
	case "job":
		return "the plan"
	}
	return s.ID
}

func (t *printer) entry(e entry) {
	label, paint, _ := word(e.Result)
	label = t.paint(paint, label)
	indent := "    " + strings.Repeat(" ", labelWidth)
	for i, text := range e.texts {
		if len(e.texts) > 1 {
			text = e.subjects[i] + ": " + text
		}
		t.paragraph("    ", label, labelWidth, Plain(text))
		label = ""
	}
	if e.Do != "" {
		t.paragraph(indent, "", 0, Plain(e.Do))
	}
	if e.Asks != nil {
		t.paragraph(indent, "", 0, "Who answers: "+Plain(e.Asks.Who)+".")
		t.paragraph(indent, "", 0, "With: "+Plain(e.Asks.Evidence)+".")
	}
	at := strings.Join(e.places[:min(3, len(e.places))], "; ")
	if more := len(e.places) - 3; more > 0 {
		at += fmt.Sprintf("; and %d more", more)
	}
	t.dim(indent, fmt.Sprintf("%s · %s · %s", at, e.Rule, Plain(e.BasisText)))
}

func (t *printer) dim(indent, text string) {
	for _, l := range wrap(text, t.style.Width-len(indent)) {
		t.line(indent + t.paint("2", l))
	}
}

// paragraph prints a text behind a label, wrapped to the width.
func (t *printer) paragraph(indent, label string, column int, text string) {
	lead := indent + label + strings.Repeat(" ", max(0, column-uniseg.StringWidth(unpainted(label))))
	rest := indent + strings.Repeat(" ", column)
	for i, l := range wrap(text, t.style.Width-len(rest)) {
		if i == 0 {
			t.line(lead + l)
		} else {
			t.line(rest + l)
		}
	}
}

func unpainted(s string) string {
	if i := strings.IndexByte(s, 'm'); strings.HasPrefix(s, "\x1b[") && i > 0 {
		return strings.TrimSuffix(s[i+1:], "\x1b[0m")
	}
	return s
}

// wrap breaks a text at spaces so that no line is wider than width, where a word allows it.
func wrap(text string, width int) []string {
	width = max(width, 20)
	var lines []string
	line := ""
	for _, w := range strings.Fields(text) {
		if line != "" && uniseg.StringWidth(line)+1+uniseg.StringWidth(w) > width {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	return append(lines, line)
}

// summary counts findings as they are printed, and what was looked at besides.
func (t *printer) summary(p Plan, entries []entry) {
	counts := [5]int{}
	for _, e := range entries {
		counts[e.rank]++
	}
	var parts []string
	for i, what := range []string{"to put right", "to think again about", "to mind", "to ask", "to say"} {
		if counts[i] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", counts[i], what))
		}
	}
	verdict := map[Status]string{Clear: "Let through", Held: "Held", Unreadable: "Not checked through"}[p.Status]
	if len(parts) == 0 {
		parts = []string{"nothing found"}
		if p.Status == Clear {
			verdict = "Clear"
		}
	}
	text := fmt.Sprintf("%s: %s. Looked at besides: %d that passed", verdict, strings.Join(parts, ", "), p.Counts.Pass)
	if n := p.Counts.NotApplicable; n > 0 {
		text += fmt.Sprintf(", %d rules with nothing to look at", n)
	}
	t.line("")
	for _, l := range wrap(text+".", t.style.Width) {
		t.line(t.paint("1", l))
	}
}
