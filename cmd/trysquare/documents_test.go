package main

import (
	"bytes"
	"context"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"trysquare/checker"
	"trysquare/checker/report"
	"trysquare/rules"
)

func document(t *testing.T, name string) string {
	t.Helper()
	text, err := os.ReadFile("../../" + name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// block gives the first fenced block of a language in a document, dedented.
func block(t *testing.T, text, language string) string {
	t.Helper()
	m := regexp.MustCompile("(?ms)^( *)```" + language + "\n(.*?)^ *```$").FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("there is no block of %q", language)
	}
	lines := strings.SplitAfter(m[2], "\n")
	for i := range lines {
		lines[i] = strings.TrimPrefix(lines[i], m[1])
	}
	return strings.Join(lines, "")
}

// What README shows of a report is in the report that its first command prints.
func TestReadmeShowsTheReport(t *testing.T) {
	var out bytes.Buffer
	if status := run(context.Background(), []string{"check", "../../plans/practice-room-first-try.json"}, nil, &out, &out); status != 1 {
		t.Errorf("exit status %d, want 1", status)
	}
	lines := strings.SplitN(block(t, document(t, "README.md"), ""), "\n", 2)
	heading, finding, _ := strings.Cut(out.String(), lines[0]+"\n")
	if !strings.Contains(heading, "Practice room") || !strings.Contains(finding, lines[1]) {
		t.Errorf("README shows\n%s\nwhich is not in the report\n%s", lines[1], out.String())
	}
}

// README names every command and option, and no other.
func TestReadmeNamesTheCommands(t *testing.T) {
	readme := document(t, "README.md")
	for _, command := range []string{"check", "takeoff", "rules", "why", "schema"} {
		var out bytes.Buffer
		if status := run(context.Background(), []string{command, "--help"}, nil, &out, &out); status != 0 {
			t.Errorf("%s --help: exit status %d", command, status)
		}
		if !strings.Contains(readme, "    trysquare "+command) {
			t.Errorf("README does not name %s", command)
		}
		for _, option := range regexp.MustCompile(`--[a-z]+`).FindAllString(out.String(), -1) {
			if option != "--help" && !strings.Contains(readme, option) {
				t.Errorf("README does not name %s of %s", option, command)
			}
		}
	}
	var out bytes.Buffer
	run(context.Background(), []string{"--help"}, nil, &out, &out)
	if n := len(regexp.MustCompile(`(?m)^  [a-z]+( |$)`).FindAllString(out.String(), -1)); n != 5 {
		t.Errorf("%d commands; this test and README know 5:\n%s", n, out.String())
	}
}

// The rule in DEVELOPERS.md loads.
func TestDevelopersRuleLoads(t *testing.T) {
	files := fstest.MapFS{"cuts/narrow_piece/rule.rego": {Data: []byte(block(t, document(t, "DEVELOPERS.md"), "rego"))}}
	for _, name := range []string{"lib/lib.rego", rules.LimitsFile} {
		text, err := fs.ReadFile(rules.Files, name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: text}
	}
	c, err := checker.WithRules(context.Background(), files, report.HoldError)
	if err != nil {
		t.Fatal(err)
	}
	p, err := c.CheckFile(context.Background(), "../../plans/practice-room-first-try.json", nil)
	if err != nil || p.Counts.Errors != 1 {
		t.Errorf("%v: %d errors, want the one narrow piece", err, p.Counts.Errors)
	}
}

// SAFETY.md names every rule that asks.
func TestSafetyNamesEveryQuestion(t *testing.T) {
	c, err := checker.New(report.HoldError)
	if err != nil {
		t.Fatal(err)
	}
	safety := document(t, "SAFETY.md")
	asking := 0
	for _, r := range c.Engine.Rules {
		if r.Asks == nil {
			continue
		}
		asking++
		if !strings.Contains(safety, r.ID) {
			t.Errorf("SAFETY.md does not name %s", r.ID)
		}
	}
	if asking < 3 {
		t.Errorf("only %d rules ask", asking)
	}
}
