package plan_test

import (
	"math"
	"strings"
	"testing"

	"trysquare/checker/fault"
	"trysquare/checker/plan"
	"trysquare/checker/source"
	"trysquare/checker/validate"
	"trysquare/schema"
)

// minimal is the least that a plan may say; a test changes the stretch that it is about.
const minimal = `{
"title": "Instrument store, Larch Lane community hall",
"units": "mm",
"panels": {"oak": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 9}}},
"walls": {"back": {"width": 3000, "height": 2390}},
"runs": [{"id": "A", "on": "back", "panel": "oak"}]
}`

// changed puts pairs of old and new text into the minimal plan.
func changed(t *testing.T, pairs ...string) string {
	t.Helper()
	return replaced(t, minimal, pairs...)
}

func replaced(t *testing.T, text string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if strings.Count(text, pairs[i]) != 1 {
			t.Fatalf("%q does not stand once in the plan", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

func document(t *testing.T, text string) *source.Document {
	t.Helper()
	d, err := source.Parse("p", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if err := validate.Document(d, schema.Plan); err != nil {
		t.Fatal(err)
	}
	return d
}

func decode(t *testing.T, text string) *plan.Plan {
	t.Helper()
	p, err := plan.Decode(document(t, text))
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// faults gives what Decode finds wrong, a line a fault without its place.
func faults(t *testing.T, text string) string {
	t.Helper()
	_, err := plan.Decode(document(t, text))
	var lines []string
	for _, f := range fault.All(err) {
		lines = append(lines, f.Place.Pointer+": "+f.Message)
	}
	return strings.Join(lines, "\n")
}

// equal holds a length to far less than facts keep: a product of two floats is seldom the decimal itself.
func equal(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9 {
		t.Errorf("%s is %v mm, want %v", what, got, want)
	}
}

func stated(t *testing.T, what string, got *float64, want float64) {
	t.Helper()
	if got == nil {
		t.Errorf("%s is unsaid, want %v", what, want)
		return
	}
	equal(t, what, *got, want)
}
