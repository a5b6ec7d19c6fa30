// Package report turns results into the document that people and programs
// read: report.schema.json describes it, Text prints it.
package report

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"slices"
	"strings"

	"trysquare/checker/fault"
	"trysquare/checker/judge"
	"trysquare/checker/length"
	"trysquare/checker/limits"
	"trysquare/checker/plan"
	"trysquare/checker/source"
)

// Version is the version of the report's form; it grows when a reader of the old one would misread the new one.
const Version = 1

// Document is the report on one or more plans.
type Document struct {
	Version int    `json:"version"`
	Hold    Hold   `json:"hold"`   // what the gate was set to
	Status  Status `json:"status"` // the gravest of the plans'
	Plans   []Plan `json:"plans"`
}

// Status says how a plan came through the gate.
type Status string

const (
	Clear      Status = "clear"
	Held       Status = "held"
	Unreadable Status = "unreadable" // the plan, a limit or a rule could not be used
)

// ExitStatus is what a process says of it: 0 clear, 1 held, 2 unreadable.
func (s Status) ExitStatus() int {
	return map[Status]int{Clear: 0, Held: 1}[s] + 2*b2i(s == Unreadable)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// Plan is the report on one plan.
type Plan struct {
	File       string     `json:"file"`
	Title      string     `json:"title"`
	Room       string     `json:"room,omitempty"`
	PreparedBy string     `json:"prepared_by,omitempty"`
	Date       string     `json:"date,omitempty"`
	Country    string     `json:"country,omitempty"`
	Units      string     `json:"units,omitempty"`
	SHA256     string     `json:"sha256,omitempty"` // of the plan's bytes
	Status     Status     `json:"status"`
	Counts     Counts     `json:"counts"`
	Results    []Result   `json:"results"`
	Faults     fault.List `json:"faults"` // why it is unreadable
}

// Counts counts the results by what they ask of the reader.
type Counts struct {
	Errors        int `json:"errors"`
	Warnings      int `json:"warnings"`
	Notes         int `json:"notes"`
	Review        int `json:"review"`
	Open          int `json:"open"`
	Pass          int `json:"pass"`
	NotApplicable int `json:"not_applicable"`
	Holding       int `json:"holding"` // those that hold the gate
}

// Result is what one rule says of one subject.
type Result struct {
	Rule        string       `json:"rule"`
	Title       string       `json:"title"`
	Kind        judge.Kind   `json:"kind"`
	Level       string       `json:"level"` // how grave the rule is when it is broken
	Holds       bool         `json:"holds"` // keeps the gate shut
	Subject     *Subject     `json:"subject,omitempty"`
	Place       *fault.Place `json:"place,omitempty"`
	Related     []Related    `json:"related,omitempty"`
	Measured    *float64     `json:"measured,omitempty"` // in Unit
	Limit       *Limit       `json:"limit,omitempty"`
	Unit        string       `json:"unit,omitempty"`
	Text        string       `json:"text"`
	Do          string       `json:"do,omitempty"`
	Asks        *judge.Asks  `json:"asks,omitempty"`
	Basis       limits.Basis `json:"basis"`
	BasisText   string       `json:"basis_text"`
	Fingerprint string       `json:"fingerprint"`
	order       int
}

// Subject names what a result is about.
type Subject struct {
	Kind  string `json:"kind"`
	ID    string `json:"id"`
	On    string `json:"on,omitempty"`    // the wall or leaf
	Piece string `json:"piece,omitempty"` // the piece that it belongs to
}

// Related is another piece that a result touches.
type Related struct {
	Piece string      `json:"piece"`
	Place fault.Place `json:"place"`
}

// Limit is the number that a result was held against.
type Limit struct {
	ID    string  `json:"id"`
	Value float64 `json:"value"`
	Unit  string  `json:"unit"`
}

// Hold is the least level whose findings keep the gate shut.
type Hold string

const (
	HoldError   Hold = "error"
	HoldWarning Hold = "warning"
	HoldNote    Hold = "note"
	HoldNever   Hold = "never"
)

var gravity = map[string]int{"error": 3, "warning": 2, "note": 1}

// holds says whether a result keeps the gate shut: a failure, a question or a
// silence of the plan in a rule of that level or a graver one.
func (h Hold) holds(kind judge.Kind, level string) bool {
	return h != HoldNever && (kind == judge.Fail || kind == judge.Review || kind == judge.Open) && gravity[level] >= gravity[string(h)]
}

// ForPlan writes the report on a plan that was judged.
func ForPlan(d *source.Document, p *plan.Plan, e *judge.Engine, results []judge.Result, faults fault.List, hold Hold) (Plan, error) {
	sum := sha256.Sum256(d.Bytes)
	out := Plan{File: d.Name, Title: p.Title, Room: p.Job.Room, PreparedBy: p.Job.PreparedBy, Date: p.Job.Date, Country: p.Job.Country, Units: p.Units,
		SHA256: hex.EncodeToString(sum[:]), Results: make([]Result, 0, len(results)), Faults: fault.List{}}
	w := writer{d, p, e, hold}
	for _, r := range results {
		res, err := w.result(r)
		if err != nil {
			return Plan{}, fmt.Errorf("reporting on %s: %w", d.Name, err)
		}
		out.Results = append(out.Results, res)
		out.Counts.add(res)
	}
	slices.SortStableFunc(out.Results, func(a, b Result) int {
		return cmp.Or(cmp.Compare(a.Rule, b.Rule), cmp.Compare(a.order, b.order))
	})
	switch {
	case len(faults) > 0:
		out.Faults, out.Status = faults, Unreadable
	case out.Counts.Holding > 0:
		out.Status = Held
	default:
		out.Status = Clear
	}
	return out, nil
}

// ForFaults writes the report on a plan that could not be judged.
func ForFaults(file string, faults fault.List) Plan {
	return Plan{File: file, Status: Unreadable, Results: []Result{}, Faults: faults}
}

// Together puts the reports on several plans into one document.
func Together(plans []Plan, hold Hold) Document {
	out := Document{Version: Version, Hold: hold, Status: Clear, Plans: plans}
	for _, p := range plans {
		if p.Status.ExitStatus() > out.Status.ExitStatus() {
			out.Status = p.Status
		}
	}
	return out
}

func (c *Counts) add(r Result) {
	switch {
	case r.Kind == judge.Fail && r.Level == "error":
		c.Errors++
	case r.Kind == judge.Fail && r.Level == "warning":
		c.Warnings++
	case r.Kind == judge.Fail:
		c.Notes++
	case r.Kind == judge.Review:
		c.Review++
	case r.Kind == judge.Open:
		c.Open++
	case r.Kind == judge.Pass:
		c.Pass++
	default:
		c.NotApplicable++
	}
	c.Holding += b2i(r.Holds)
}

type writer struct {
	doc    *source.Document
	plan   *plan.Plan
	engine *judge.Engine
	hold   Hold
}

func (w writer) result(r judge.Result) (Result, error) {
	out := Result{Rule: r.Rule.ID, Title: r.Rule.Title, Kind: r.Kind, Level: r.Rule.Level, Holds: w.hold.holds(r.Kind, r.Rule.Level),
		Measured: r.Measured, Basis: r.Rule.Basis, Fingerprint: fingerprint(r), order: r.Subject.Order}
	if limit, ok := w.engine.Limits[r.LimitID]; ok {
		out.Limit = &Limit{ID: r.LimitID, Value: limit.Value, Unit: limit.Unit}
		out.Basis = limit.Basis // the number's own authority
	}
	if r.Measured != nil {
		out.Unit = r.Rule.Unit
	}
	out.BasisText = out.Basis.Text(w.plan.Job.Country)
	if r.Kind == judge.NotApplicable {
		out.Text = fmt.Sprintf("The plan has no %s for this rule to look at.", strings.ReplaceAll(r.Rule.Subject, "_", " "))
		return out, nil
	}
	out.Subject = &Subject{Kind: r.Rule.Subject, ID: r.Subject.ID, On: r.Subject.On, Piece: r.Subject.Piece}
	place := w.doc.Place(r.Subject.At)
	out.Place = &place
	for _, other := range r.Related {
		out.Related = append(out.Related, Related{other.ID, w.doc.Place(other.At)})
	}
	return out, w.say(&out, r)
}

// say writes what a result says and what is to be done.
func (w writer) say(out *Result, r judge.Result) error {
	unit := length.Unit(w.plan.Units)
	limit := w.engine.LimitValue(r.LimitID)
	var err error
	switch r.Kind {
	case judge.Fail, judge.Review:
		if out.Text, err = r.Fill(r.Rule.Says, unit, limit); err != nil {
			return err
		}
		out.Do, err = r.Fill(r.Rule.Do, unit, limit)
		if r.Kind == judge.Review {
			out.Asks = r.Rule.Asks
		}
	case judge.Open:
		out.Text = "The plan does not say " + r.Missing + "."
		out.Do = "Find it out and write it into the plan."
	case judge.Pass:
		out.Text = "Nothing found."
		if r.Measured != nil && limit != nil && w.engine.Limits[r.LimitID].Unit == r.Rule.Unit {
			out.Text = fmt.Sprintf("%s, against %s.", judge.Write(*r.Measured, r.Rule.Unit, unit), judge.Write(*limit, r.Rule.Unit, unit))
		}
	}
	return err
}

// fingerprint is made of the rule and the names of its subjects, so that the
// same finding is known again in another submission.
func fingerprint(r judge.Result) string {
	parts := []string{r.Rule.ID, r.Rule.Subject, r.Subject.ID}
	for _, other := range r.Related {
		parts = append(parts, other.ID)
	}
	sum := sha256.Sum256([]byte(strings.Join(parts, "\x00")))
	return hex.EncodeToString(sum[:8])
}
