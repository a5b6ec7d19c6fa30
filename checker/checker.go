// Package checker runs the whole way of a plan: read, validate, normalise, set
// out, judge, report. Each step is a package of its own below this one.
package checker

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"

	"trysquare/checker/facts"
	"trysquare/checker/fault"
	"trysquare/checker/judge"
	"trysquare/checker/limits"
	"trysquare/checker/plan"
	"trysquare/checker/report"
	"trysquare/checker/setout"
	"trysquare/checker/source"
	"trysquare/checker/validate"
	"trysquare/rules"
	"trysquare/schema"
)

// Checker holds compiled rules; it can check any number of plans, from several goroutines.
type Checker struct {
	Engine *judge.Engine
	Hold   report.Hold
}

// New compiles the rules that ship with the program.
func New(hold report.Hold) (*Checker, error) {
	e, err := judge.LoadPacked(rules.Packed, judge.Options{})
	if err != nil {
		return nil, err
	}
	return &Checker{Engine: e, Hold: hold}, nil
}

// WithRules compiles the rules of a file system that is laid out like rules/:
// families of rules, a lib, and limits.json.
func WithRules(ctx context.Context, files fs.FS, hold report.Hold) (*Checker, error) {
	text, err := fs.ReadFile(files, rules.LimitsFile)
	if err != nil {
		return nil, fmt.Errorf("reading the limits: %w", err)
	}
	set, err := limits.Parse(rules.LimitsFile, text)
	if err != nil {
		return nil, err
	}
	e, err := judge.Load(ctx, files, set, judge.Options{})
	if err != nil {
		return nil, err
	}
	return &Checker{Engine: e, Hold: hold}, nil
}

// assumptions takes what geometry assumes out of the limits.
func (c *Checker) assumptions() (setout.Assumptions, error) {
	var out setout.Assumptions
	for id, to := range map[string]*float64{"services.cable_strip": &out.CableStrip, "services.thin_wall": &out.ThinWall, "stock.kerf": &out.Kerf} {
		l, ok := c.Engine.Limits[id]
		if !ok {
			return out, fmt.Errorf("the limit %q is missing, which setting out needs", id)
		}
		*to = l.Value
	}
	return out, nil
}

// SetOut takes a document as far as its facts. Its errors are faults at their places.
func (c *Checker) SetOut(ctx context.Context, d *source.Document) (*plan.Plan, *facts.Facts, error) {
	if err := validate.Document(d, schema.Plan); err != nil {
		return nil, nil, err
	}
	p, err := plan.Decode(d)
	if err != nil {
		return nil, nil, err
	}
	assume, err := c.assumptions()
	if err != nil {
		return nil, nil, err
	}
	f, err := setout.Plan(ctx, p, assume)
	if err != nil {
		return nil, nil, placed(d, err)
	}
	return p, f, nil
}

// placed puts misfits at their places in the document; other errors it hands on.
func placed(d *source.Document, err error) error {
	var list fault.List
	for _, one := range unjoin(err) {
		var m *setout.Misfit
		if !errors.As(one, &m) {
			return err
		}
		list = append(list, fault.New(fault.Geometry, d.Place(m.At), "%s", m.Message))
	}
	return list.Sorted()
}

func unjoin(err error) []error {
	if joined, ok := err.(interface{ Unwrap() []error }); ok {
		return joined.Unwrap()
	}
	return []error{err}
}

// Check takes a document the whole way. A document that cannot be used gives a
// report that says so; the error is only for what is no plan's fault.
func (c *Checker) Check(ctx context.Context, d *source.Document) (report.Plan, error) {
	p, f, err := c.SetOut(ctx, d)
	if ctx.Err() != nil {
		return report.Plan{}, fmt.Errorf("checking %s: %w", d.Name, ctx.Err())
	}
	if err != nil {
		return report.ForFaults(d.Name, fault.All(err)), nil
	}
	results, faults, err := c.Engine.Judge(ctx, f)
	if err != nil {
		return report.Plan{}, fmt.Errorf("checking %s: %w", d.Name, err)
	}
	return report.ForPlan(d, p, c.Engine, results, faults, c.Hold)
}

// CheckFile reads the file at path, or stdin where path is "-", and checks it.
func (c *Checker) CheckFile(ctx context.Context, path string, stdin io.Reader) (report.Plan, error) {
	d, err := source.ReadFile(path, stdin)
	if err != nil {
		name := path
		if path == "-" {
			name = "standard input"
		}
		return report.ForFaults(name, fault.All(err)), nil
	}
	return c.Check(ctx, d)
}
