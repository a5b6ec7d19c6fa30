package checker_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"trysquare/checker"
	"trysquare/checker/report"
	"trysquare/rules"
)

// Packed rules say what the rules themselves say, on every plan there is.
func TestPackedRulesAgree(t *testing.T) {
	packed, err := checker.New(report.HoldNote)
	if err != nil {
		t.Fatal(err)
	}
	loaded, err := checker.WithRules(context.Background(), rules.Files, report.HoldNote)
	if err != nil {
		t.Fatal(err)
	}
	var plans []string
	for _, pattern := range []string{"../plans/*.json", "../testdata/setouts/*.json"} {
		found, err := filepath.Glob(pattern)
		if err != nil {
			t.Fatal(err)
		}
		plans = append(plans, found...)
	}
	judged := 0
	for _, path := range plans {
		if _, err := os.Stat(path[:len(path)-len(".json")] + ".txt"); err != nil && filepath.Dir(path) != "../plans" {
			continue // the facts wanted, no plan
		}
		a, b := results(t, packed, path), results(t, loaded, path)
		if a != b {
			t.Errorf("%s: packed and loaded rules differ:\n%s\n%s", path, a, b)
		}
		judged++
	}
	if judged < 8 {
		t.Errorf("only %d plans were judged", judged)
	}
}

func results(t *testing.T, c *checker.Checker, path string) string {
	t.Helper()
	p, err := c.CheckFile(context.Background(), path, nil)
	if err != nil {
		t.Fatal(err)
	}
	if p.Status == report.Unreadable {
		t.Fatalf("%s: %v", path, p.Faults)
	}
	text, err := json.Marshal(p)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
