package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/mattn/go-isatty"
	"golang.org/x/term"

	"trysquare/checker"
	"trysquare/checker/fault"
	"trysquare/checker/report"
)

type checkCmd struct {
	Plans []string `arg:"" name:"plan" help:"Plans to check: files, folders (every .json in them), or - for standard input."`
	JSON  bool     `name:"json" help:"Print the report as a JSON document."`
	Hold  string   `enum:"error,warning,note,never" default:"error" help:"Least level that keeps the gate shut: error, warning, note or never. Questions and gaps in the plan count with their rule's level."`
}

// Run checks every plan and prints one report.
func (c *checkCmd) Run(ctx context.Context, s *streams) error {
	paths, err := expand(c.Plans)
	if err != nil {
		return err
	}
	check, err := checker.New(report.Hold(c.Hold))
	if err != nil {
		return err
	}
	var plans []report.Plan
	for _, path := range paths {
		p, err := check.CheckFile(ctx, path, s.in)
		if err != nil {
			return err
		}
		for _, f := range p.Faults {
			fmt.Fprintf(s.err, "trysquare: %s\n", printable(f))
		}
		plans = append(plans, p)
	}
	doc := report.Together(plans, report.Hold(c.Hold))
	s.status = doc.Status.ExitStatus()
	if c.JSON {
		enc := json.NewEncoder(s.out)
		enc.SetIndent("", "  ")
		if err := enc.Encode(doc); err != nil {
			return fmt.Errorf("writing the report: %w", err)
		}
		return nil
	}
	for i, p := range plans {
		if i > 0 {
			fmt.Fprintln(s.out)
		}
		if p.Title == "" {
			continue // said on standard error
		}
		if err := report.Text(s.out, p, style(s)); err != nil {
			return err
		}
	}
	return nil
}

// expand puts a folder's plans in its place.
func expand(args []string) ([]string, error) {
	var out []string
	for _, arg := range args {
		info, err := os.Stat(arg)
		if arg == "-" || err != nil || !info.IsDir() {
			out = append(out, arg) // what cannot be read is said when it is read
			continue
		}
		before := len(out)
		err = filepath.WalkDir(arg, func(path string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && strings.EqualFold(filepath.Ext(path), ".json") {
				out = append(out, path)
			}
			return err
		})
		if err != nil {
			return nil, fmt.Errorf("looking for plans in %s: %w", arg, err)
		}
		if len(out) == before {
			return nil, fault.New(fault.Unreadable, fault.Place{File: arg}, "there is no plan (.json) in this folder")
		}
	}
	return out, nil
}

// style looks at where the report goes: colour and the terminal's width on a
// terminal, unless NO_COLOR is set; plain and 100 columns elsewhere.
func style(s *streams) report.Style {
	f, ok := s.out.(*os.File)
	if !ok || !isatty.IsTerminal(f.Fd()) {
		return report.Style{}
	}
	out := report.Style{Colour: os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"}
	if w, _, err := term.GetSize(int(f.Fd())); err == nil && w > 0 {
		out.Width = min(w, 120)
	}
	return out
}

// printable writes a fault for a terminal.
func printable(f *fault.Fault) string { return report.Plain(f.Error()) }
