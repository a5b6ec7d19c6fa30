// Package limits reads the numbers that rules compare with, each with its basis.
package limits

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/go-json-experiment/json"

	"trysquare/checker/fault"
	"trysquare/checker/source"
	"trysquare/checker/validate"
	"trysquare/schema"
)

// Basis is on whose authority a number or a check stands; basis.schema.json
// says what each property means.
type Basis struct {
	Kind    string   `json:"kind"`
	Source  string   `json:"source,omitempty"`
	Clause  string   `json:"clause,omitempty"`
	Edition string   `json:"edition,omitempty"`
	Read    string   `json:"read,omitempty"`
	Country []string `json:"country,omitempty"`
	Note    string   `json:"note,omitempty"`
}

// howRead says how sure we are of a source, in words.
var howRead = map[string]string{
	"read":     "read in the source",
	"quoted":   "quoted from another page",
	"reported": "reported, not read in the source",
	"memory":   "from memory, not checked",
}

// Text writes a basis on one line for a plan in a country.
func (b Basis) Text(country string) string {
	if b.Kind != "published" {
		if b.Read == "memory" {
			return b.Kind + ", " + howRead["memory"]
		}
		return b.Kind
	}
	words := b.Source
	if b.Clause != "" {
		words += ", " + b.Clause
	}
	if b.Edition != "" {
		words += " (" + b.Edition + ")"
	}
	words += "; " + howRead[b.Read]
	if len(b.Country) > 0 && !slices.Contains(b.Country, country) {
		words += "; of " + strings.Join(b.Country, ", ") + ", a pointer here: local code governs"
	}
	return words
}

// Limit is one number.
type Limit struct {
	Value float64 `json:"value"`
	Unit  string  `json:"unit"` // "mm", "ml", "count", "h", "share"
	Means string  `json:"means"`
	Least float64 `json:"least"` // what a house may set it to
	Most  float64 `json:"most"`
	Basis Basis   `json:"basis"`
}

// Set is limits by id.
type Set map[string]Limit

// IDs gives the ids in order.
func (s Set) IDs() []string { return slices.Sorted(maps.Keys(s)) }

// Parse reads a limits file. Its errors are faults at their places.
func Parse(name string, b []byte) (Set, error) {
	d, err := source.Parse(name, b)
	if err != nil {
		return nil, err
	}
	if err := validate.Document(d, schema.Limits); err != nil {
		return nil, err
	}
	var doc struct {
		Limits Set `json:"limits"`
	}
	if err := json.Unmarshal(b, &doc); err != nil {
		return nil, fmt.Errorf("reading the limits in %s: %w", name, err)
	}
	var bad fault.List
	for id, l := range doc.Limits {
		if l.Value < l.Least || l.Value > l.Most {
			bad = append(bad, fault.New(fault.Rule, d.Place("/limits/"+source.Escape(id)+"/value"), "the limit is %v, outside its own range of %v to %v", l.Value, l.Least, l.Most))
		}
	}
	return doc.Limits, bad.Sorted()
}
