package main

import (
	"context"
	"fmt"
	"strings"
	"text/tabwriter"

	"trysquare/checker"
	"trysquare/checker/fault"
	"trysquare/checker/judge"
	"trysquare/checker/length"
	"trysquare/checker/limits"
	"trysquare/checker/report"
)

type rulesCmd struct{}

// Run lists the rules with their level, their limits and their title.
func (c *rulesCmd) Run(ctx context.Context, s *streams) error {
	check, err := checker.New(report.HoldError)
	if err != nil {
		return err
	}
	tw := tabwriter.NewWriter(s.out, 0, 0, 2, ' ', 0)
	for _, r := range check.Engine.Rules {
		fmt.Fprintf(tw, "%s\t%s\t%s\t%s\n", r.ID, outcome(r), limitValues(r, check.Engine.Limits), r.Title)
	}
	if err := tw.Flush(); err != nil {
		return fmt.Errorf("listing the rules: %w", err)
	}
	return nil
}

// outcome says what a broken rule gives: its level, or a question.
func outcome(r *judge.Rule) string {
	if r.Asks != nil {
		return "asks"
	}
	return r.Level
}

func limitValues(r *judge.Rule, set limits.Set) string {
	var out []string
	for _, id := range r.Limits {
		out = append(out, judge.Write(set[id].Value, set[id].Unit, length.Millimetre))
	}
	return strings.Join(out, ", ")
}

type whyCmd struct {
	Rule string `arg:"" help:"The rule's id, as reports and the list of rules have it."`
}

// Run prints what a rule says of itself.
func (c *whyCmd) Run(ctx context.Context, s *streams) error {
	check, err := checker.New(report.HoldError)
	if err != nil {
		return err
	}
	for _, r := range check.Engine.Rules {
		if r.ID == c.Rule {
			return explain(s, r, check.Engine.Limits)
		}
	}
	return fault.New(fault.Rule, fault.Place{File: c.Rule}, "there is no such rule; trysquare rules lists them")
}

func explain(s *streams, r *judge.Rule, set limits.Set) error {
	var b strings.Builder
	section := func(label, text string) { fmt.Fprintf(&b, "%s\n  %s\n\n", label, text) }
	fmt.Fprintf(&b, "%s (%s)\n%s.\n\n", r.ID, outcome(r), r.Title)
	section("What it looks at", r.Description)
	section("Why it matters", r.Matters)
	section("What to do", plainPlaceholders(r.Do))
	section("Example", r.Example)
	if r.Asks != nil {
		section("Who answers", r.Asks.Who+".")
		section("With what", r.Asks.Evidence+".")
	}
	for _, id := range r.Limits {
		l := set[id]
		section("Limit "+id, fmt.Sprintf("%s: %s\n  Basis: %s", l.Means, judge.Write(l.Value, l.Unit, length.Millimetre), basis(l.Basis)))
	}
	section("Basis of the check", basis(r.Basis))
	if _, err := fmt.Fprint(s.out, strings.TrimRight(b.String(), "\n")+"\n"); err != nil {
		return fmt.Errorf("explaining the rule: %w", err)
	}
	return nil
}

func basis(b limits.Basis) string {
	text := b.Text("")
	if len(b.Country) > 0 {
		text, _, _ = strings.Cut(text, "; of ")
		text += "; has authority in " + strings.Join(b.Country, ", ")
	}
	if b.Note != "" {
		text += "\n  Note: " + b.Note
	}
	return text
}

// plainPlaceholders shows a text's places as blanks.
func plainPlaceholders(text string) string {
	return strings.NewReplacer("{", "<", "}", ">").Replace(text)
}
