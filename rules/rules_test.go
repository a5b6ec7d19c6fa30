package rules_test

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/cover"
	"github.com/open-policy-agent/opa/v1/format"
	"github.com/open-policy-agent/opa/v1/tester"

	"trysquare/checker/judge"
	"trysquare/checker/limits"
	"trysquare/rules"
)

var write = flag.Bool("write", false, "write badly formatted rules anew instead of failing")

// modules parses every Rego file below this folder, tests too.
func modules(t *testing.T) map[string]*ast.Module {
	t.Helper()
	out := map[string]*ast.Module{}
	err := filepath.WalkDir(".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".rego" {
			return err
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		m, err := ast.ParseModuleWithOpts(name, string(text), ast.ParserOptions{RegoVersion: ast.RegoV1, ProcessAnnotation: true})
		if err != nil {
			return fmt.Errorf("parsing %s: %w", name, err)
		}
		out[name] = m
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestRules runs every rule's own tests and wants each line of each rule covered.
func TestRules(t *testing.T) {
	all := modules(t)
	coverage := cover.New()
	results, err := tester.NewRunner().SetModules(all).SetCoverageQueryTracer(coverage).RunTests(context.Background(), nil)
	if err != nil {
		t.Fatal(err)
	}
	ran := map[string]int{}
	for r := range results {
		ran[r.Location.File]++
		t.Run(strings.TrimPrefix(r.Package, "data.rules.")+"."+r.Name, func(t *testing.T) {
			if !r.Pass() {
				t.Errorf("%s:%d: %s %v", r.Location.File, r.Location.Row, r.Name, r.Error)
			}
		})
	}
	report := coverage.Report(all)
	for name := range all {
		if path.Base(name) != "rule.rego" && path.Base(name) != "lib.rego" {
			continue
		}
		if path.Base(name) == "rule.rego" && ran[path.Dir(name)+"/rule_test.rego"] < 4 {
			t.Errorf("%s: it wants tests that fire, pass, stand on the boundary and leave things unsaid; %d are there", name, ran[path.Dir(name)+"/rule_test.rego"])
		}
		f := report.Files[name]
		if f == nil || f.Coverage < 100 {
			t.Errorf("%s: not every line is covered by tests: %+v", name, f)
		}
	}
}

// TestPack wants the packed rules to be what these files pack to.
func TestPack(t *testing.T) {
	text, err := os.ReadFile(rules.LimitsFile)
	if err != nil {
		t.Fatal(err)
	}
	set, err := limits.Parse(rules.LimitsFile, text)
	if err != nil {
		t.Fatal(err)
	}
	want, err := judge.Pack(context.Background(), os.DirFS("."), set)
	if err != nil {
		t.Fatal(err)
	}
	got, err := os.ReadFile("pack.json")
	if err == nil && bytes.Equal(got, want) {
		return
	}
	if !*write {
		t.Fatal("pack.json is not what the rules pack to; run go test ./rules -run TestPack -write")
	}
	if err := os.WriteFile("pack.json", want, 0o644); err != nil {
		t.Fatal(err)
	}
}

// TestFormat wants every Rego file as the engine's own formatter writes it.
func TestFormat(t *testing.T) {
	for name := range modules(t) {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		want, err := format.SourceWithOpts(name, text, format.Opts{RegoVersion: ast.RegoV1})
		if err != nil {
			t.Fatal(err)
		}
		if bytes.Equal(text, want) {
			continue
		}
		if !*write {
			t.Errorf("%s is not formatted; run go test ./rules -run TestFormat -write", name)
			continue
		}
		if err := os.WriteFile(name, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
