package main

import (
	"context"

	"trysquare/checker"
	"trysquare/checker/report"
	"trysquare/checker/source"
)

type takeoffCmd struct {
	Plan string `arg:"" help:"The plan: a file, or - for standard input."`
	CSV  bool   `name:"csv" help:"Print a table of comma-separated values, lengths in millimetres."`
}

// Run sets a plan out and prints what it takes.
func (c *takeoffCmd) Run(ctx context.Context, s *streams) error {
	check, err := checker.New(report.HoldError)
	if err != nil {
		return err
	}
	d, err := source.ReadFile(c.Plan, s.in)
	if err != nil {
		return err
	}
	p, f, err := check.SetOut(ctx, d)
	if err != nil {
		return err
	}
	t := report.Takeoff{File: d.Name, Plan: p, Facts: f}
	if c.CSV {
		return t.CSV(s.out)
	}
	return t.Text(s.out, style(s))
}
