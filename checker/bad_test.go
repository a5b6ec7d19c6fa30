package checker_test

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker"
	"trysquare/checker/fault"
	"trysquare/checker/report"
)

// The corpus holds one mistake a file. Each NAME.want is written by hand: the
// place counted in the text, the words as a fitter should read them.
func TestEveryMistakeIsToldInPlainWordsAtItsPlace(t *testing.T) {
	c, err := checker.New(report.HoldError)
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(filepath.Join("..", "testdata", "bad")) // so that the files have their base names
	names, err := filepath.Glob("*.json")
	if err != nil {
		t.Fatal(err)
	}
	if len(names) < 40 {
		t.Fatalf("%d plans in testdata/bad, at least 40 wanted", len(names))
	}
	kinds := map[fault.Kind]bool{}
	for _, name := range names {
		t.Run(name, func(t *testing.T) {
			want, err := os.ReadFile(strings.TrimSuffix(name, ".json") + ".want")
			if err != nil {
				t.Fatal(err)
			}
			got, err := c.CheckFile(context.Background(), name, nil)
			if err != nil {
				t.Fatal(err)
			}
			if got.Status != report.Unreadable || len(got.Results) != 0 {
				t.Errorf("status %q with %d results, want %q with none", got.Status, len(got.Results), report.Unreadable)
			}
			text := got.Faults.Error() + "\n"
			if diff := cmp.Diff(string(want), text); diff != "" {
				t.Errorf("faults (- want, + got):\n%s", diff)
			}
			for _, f := range got.Faults {
				kinds[f.Kind] = true
				if f.Place.File != name {
					t.Errorf("the place is in %q", f.Place.File)
				}
			}
		})
	}
	for _, kind := range []fault.Kind{fault.Syntax, fault.Schema, fault.Reference, fault.Geometry} {
		if !kinds[kind] {
			t.Errorf("no plan in the corpus gives a fault of kind %q", kind)
		}
	}
}

// A .want without its plan would be a case that nobody runs.
func TestNoExpectationIsLeftWithoutItsPlan(t *testing.T) {
	wants, err := filepath.Glob(filepath.Join("..", "testdata", "bad", "*.want"))
	if err != nil || len(wants) == 0 {
		t.Fatalf("%d expectations found: %v", len(wants), err)
	}
	for _, want := range wants {
		if _, err := os.Stat(strings.TrimSuffix(want, ".want") + ".json"); err != nil {
			t.Error(err)
		}
	}
}

// A mistake must be the file's own: what the corpus starts from has to be sound.
func TestThePlanThatTheCorpusStartsFromCanBeUsed(t *testing.T) {
	c, err := checker.New(report.HoldError)
	if err != nil {
		t.Fatal(err)
	}
	const sound = `{
  "title": "Instrument store, back wall",
  "units": "mm",
  "panels": {"oak": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 9}}},
  "walls": {"back": {"width": 3000, "height": 2390, "openings": {"door": {"kind": "door", "x": 1000, "width": 800, "head": 2032}}}},
  "runs": [{"id": "A", "on": "back", "panel": "oak"}]
}`
	got, err := c.CheckFile(context.Background(), "-", strings.NewReader(sound))
	if err != nil {
		t.Fatal(err)
	}
	if len(got.Faults) != 0 || got.Status == report.Unreadable || len(got.Results) == 0 {
		t.Errorf("status %q, %d results, faults: %v", got.Status, len(got.Results), got.Faults)
	}
}
