package judge

import (
	"context"
	"maps"
	"slices"
	"testing"
	"testing/fstest"

	"trysquare/checker/facts"
	"trysquare/checker/limits"
)

// Only the lists that rules name are given to the engine; a rule that takes
// the input as a whole gets all of them.
func TestOnlyNeededFactsAreGiven(t *testing.T) {
	rule := func(body string) fstest.MapFS {
		return fstest.MapFS{"site/probe/rule.rego": {Data: []byte(`# METADATA
# title: A probe
# description: It looks at what is there.
# custom:
#   subject: piece
#   level: note
#   basis: {kind: common practice}
#   matters: It does not.
#   says: Something.
#   do: Nothing.
#   example: None.
package rules.site.probe

results contains {"kind": "pass", "subject": piece.id} if {
	some piece in input.pieces
	` + body + `
}
`)}}
	}
	f := &facts.Facts{Pieces: []facts.Piece{{About: facts.About{ID: "E1"}}}, Joints: []facts.Joint{{About: facts.About{ID: "E1 | E2"}}}}
	for body, want := range map[string][]string{
		"piece.in_view == false":          {"pieces"},
		"count(input.joints) == 1":        {"joints", "pieces"},
		"not input.adhesive":              {"adhesive", "pieces"},
		"count(object.keys(input)) >= 15": nil,
	} {
		e, err := Load(context.Background(), rule(body), limits.Set{}, Options{})
		if err != nil {
			t.Fatalf("%s: %v", body, err)
		}
		got := slices.Sorted(maps.Keys(e.needs))
		if !slices.Equal(got, want) || (e.needs == nil) != (want == nil) {
			t.Errorf("%s: needs %v, want %v", body, got, want)
		}
		results, faults, err := e.Judge(context.Background(), f)
		if err != nil || len(faults) > 0 || len(results) != 1 || results[0].Kind != Pass {
			t.Errorf("%s: %v, %v, %v", body, results, faults, err)
		}
	}
}
