package setout_test

import (
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"trysquare/checker/facts"
	"trysquare/checker/plan"
	"trysquare/checker/setout"
	"trysquare/checker/source"
	"trysquare/checker/validate"
	"trysquare/schema"
)

const setouts = "../../testdata/setouts"

// assumed is what the hand-worked cases reckon with.
var assumed = setout.Assumptions{CableStrip: 150, ThinWall: 100, Kerf: 2}

// decode takes a plan document as far as a plan.
func decode(name string, text []byte) (*plan.Plan, error) {
	d, err := source.Parse(name, text)
	if err != nil {
		return nil, err
	}
	if err := validate.Document(d, schema.Plan); err != nil {
		return nil, err
	}
	return plan.Decode(d)
}

// setOut takes a plan document as far as facts; t fails where it cannot be set out.
func setOut(t interface {
	Helper()
	Fatalf(string, ...any)
}, text string) *facts.Facts {
	t.Helper()
	p, err := decode("plan.json", []byte(text))
	if err != nil {
		t.Fatalf("reading the plan: %v\n%s", err, text)
	}
	f, err := setout.Plan(context.Background(), p, assumed)
	if err != nil {
		t.Fatalf("setting out: %v\n%s", err, text)
	}
	return f
}

// tree gives facts as a report's reader would get them.
func tree(t *testing.T, f *facts.Facts) any {
	t.Helper()
	b, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	var out any
	if err := json.Unmarshal(b, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// TestSetOutsWorkedByHand holds each plan in testdata/setouts against what the
// text beside it works out without the program. NAME.want.json is a part of the
// facts: a list of things with an id names those that it wants (and "counts"
// how many there are in all), any other list is wanted whole; null is wanted absent.
func TestSetOutsWorkedByHand(t *testing.T) {
	plans, err := filepath.Glob(filepath.Join(setouts, "*.json"))
	if err != nil {
		t.Fatal(err)
	}
	cases := 0
	for _, file := range plans {
		if strings.HasSuffix(file, ".want.json") {
			continue
		}
		cases++
		name := strings.TrimSuffix(filepath.Base(file), ".json")
		t.Run(name, func(t *testing.T) {
			got := tree(t, setOut(t, string(read(t, file)))).(map[string]any)
			want := wanted(t, name)
			counts, _ := want["counts"].(map[string]any)
			for _, list := range slices.Sorted(maps.Keys(counts)) {
				things, _ := got[list].([]any)
				if float64(len(things)) != counts[list] {
					t.Errorf("%s: %d of them, want %v: %v", list, len(things), counts[list], ids(things))
				}
			}
			delete(want, "counts")
			for _, difference := range hold("", want, got) {
				t.Error(difference)
			}
		})
	}
	if cases < 21 {
		t.Errorf("only %d cases in %s", cases, setouts)
	}
}

// A number that is wanted has to be worked out where a reader can follow it.
func TestEveryWantedNumberStandsInItsWorking(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(setouts, "*.want.json"))
	if err != nil || len(files) == 0 {
		t.Fatal("no cases: ", err)
	}
	number := regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)
	for _, file := range files {
		name := strings.TrimSuffix(filepath.Base(file), ".want.json")
		worked := map[float64]bool{}
		for _, n := range number.FindAllString(string(read(t, filepath.Join(setouts, name+".txt"))), -1) {
			v, _ := strconv.ParseFloat(n, 64)
			worked[v] = true
		}
		for _, n := range numbers(wanted(t, name)) {
			if !worked[n] {
				t.Errorf("%s.want.json wants %v, which %s.txt does not come to", name, n, name)
			}
		}
	}
}

func read(t *testing.T, file string) []byte {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func wanted(t *testing.T, name string) map[string]any {
	t.Helper()
	var want map[string]any
	if err := json.Unmarshal(read(t, filepath.Join(setouts, name+".want.json")), &want); err != nil {
		t.Fatalf("%s.want.json: %v", name, err)
	}
	if len(want) == 0 {
		t.Fatalf("%s.want.json wants nothing", name)
	}
	return want
}

func numbers(v any) []float64 {
	var out []float64
	switch v := v.(type) {
	case float64:
		out = append(out, v)
	case map[string]any:
		for _, m := range v {
			out = append(out, numbers(m)...)
		}
	case []any:
		for _, m := range v {
			out = append(out, numbers(m)...)
		}
	}
	return out
}

// hold gives where got lacks what want wants. Facts are rounded already (lengths
// to 0.01, areas to 0.0001), and so is what was worked out: numbers are compared exactly.
func hold(at string, want, got any) []string {
	switch want := want.(type) {
	case map[string]any:
		have, ok := got.(map[string]any)
		if !ok {
			return []string{fmt.Sprintf("%s: there is none", at)}
		}
		var out []string
		for _, key := range slices.Sorted(maps.Keys(want)) {
			out = append(out, hold(at+"/"+key, want[key], have[key])...)
		}
		return out
	case []any:
		have, _ := got.([]any)
		if len(want) > 0 && id(want[0]) != "" {
			return holdByID(at, want, have)
		}
		if len(want) != len(have) {
			return []string{fmt.Sprintf("%s: %d of them, want %d: %v", at, len(have), len(want), have)}
		}
		var out []string
		for i := range want {
			out = append(out, hold(fmt.Sprintf("%s/%d", at, i), want[i], have[i])...)
		}
		return out
	}
	if !reflect.DeepEqual(want, got) {
		return []string{fmt.Sprintf("%s: %v, want %v", at, got, want)}
	}
	return nil
}

func holdByID(at string, want, have []any) []string {
	var out []string
	for _, w := range want {
		i := slices.IndexFunc(have, func(h any) bool { return id(h) == id(w) })
		if i < 0 {
			out = append(out, fmt.Sprintf("%s: there is no %q among %q", at, id(w), ids(have)))
			continue
		}
		out = append(out, hold(at+"/"+id(w), w, have[i])...)
	}
	return out
}

func id(v any) string {
	m, _ := v.(map[string]any)
	s, _ := m["id"].(string)
	return s
}

func ids(things []any) []string {
	var out []string
	for _, v := range things {
		out = append(out, id(v))
	}
	return out
}
