package judge_test

import (
	"cmp"
	"context"
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"trysquare/checker/facts"
	"trysquare/checker/fault"
	"trysquare/checker/judge"
	"trysquare/checker/limits"
)

// lowRule is a rule that keeps the contract. Its METADATA stands in line 3 and
// its package in line 15, so that no expectation of a line holds by chance.
const lowRule = `# Larch Lane community hall

# METADATA
# title: A piece is low
# description: The height of every piece.
# custom:
#   subject: piece
#   level: error
#   limits: [hall.lowest]
#   basis: {kind: common practice}
#   matters: A low piece is soon kicked off.
#   says: "The piece is {measured} high; nothing under {limit} here."
#   do: Take {subject} from a whole board.
#   example: A piece of 40 mm.
package rules.hall.low

results contains {"kind": "fail", "subject": piece.id, "measured": piece.height, "limit": "hall.lowest"} if {
	some piece in input.pieces
}
`

// lowFile is where lowRule belongs.
const lowFile = "hall/low/rule.rego"

// hallLimits are the limits of the tests' own rules.
func hallLimits() limits.Set {
	return limits.Set{
		"hall.lowest": {Value: 100, Unit: "mm"},
		"hall.widest": {Value: 600, Unit: "mm"},
	}
}

// spec is a rule of a test, with what differs from the usual case.
type spec struct {
	name    string // the rule is hall.NAME
	subject string // "" is piece
	custom  string // more lines under custom, each "#   key: value"
	says    string
	do      string
	body    string
}

func (s spec) text() string {
	lines := []string{
		"# METADATA",
		"# title: Something is not as it should be",
		"# description: A rule of a test.",
		"# custom:",
		"#   subject: " + cmp.Or(s.subject, "piece"),
		"#   level: warning",
		"#   basis: {kind: house rule}",
		"#   matters: It matters in the hall.",
		`#   says: "` + cmp.Or(s.says, "It is so.") + `"`,
		`#   do: "` + cmp.Or(s.do, "Put it right.") + `"`,
		"#   example: The wall by the stage.",
	}
	if s.custom != "" {
		lines = append(lines, s.custom)
	}
	return strings.Join(append(lines, "package rules.hall."+s.name, "", s.body), "\n") + "\n"
}

// tree lays rules out as their folders ask.
func tree(specs ...spec) fstest.MapFS {
	files := fstest.MapFS{}
	for _, s := range specs {
		files["hall/"+s.name+"/rule.rego"] = &fstest.MapFile{Data: []byte(s.text())}
	}
	return files
}

func load(t testing.TB, files fstest.MapFS, o judge.Options) *judge.Engine {
	t.Helper()
	e, err := judge.Load(context.Background(), files, hallLimits(), o)
	if err != nil {
		t.Fatalf("the rules do not load: %v", err)
	}
	return e
}

// refused wants that loading fails, and gives the first fault.
func refused(t *testing.T, files fstest.MapFS) *fault.Fault {
	t.Helper()
	_, err := judge.Load(context.Background(), files, hallLimits(), judge.Options{})
	if err == nil {
		t.Fatal("the rules load; they should be refused")
	}
	var list fault.List
	var one *fault.Fault
	if errors.As(err, &list) {
		one = list[0]
	} else if !errors.As(err, &one) {
		t.Fatalf("the error is no fault: %v", err)
	}
	if one.Kind != fault.Rule {
		t.Errorf("the fault is of kind %q, want %q", one.Kind, fault.Rule)
	}
	return one
}

// replace changes lowRule in one place and sees that the place is there.
func replace(t *testing.T, old, by string) string {
	t.Helper()
	if strings.Count(lowRule, old) != 1 {
		t.Fatalf("%q stands in the rule %d times, want once", old, strings.Count(lowRule, old))
	}
	return strings.Replace(lowRule, old, by, 1)
}

func judged(t testing.TB, e *judge.Engine, f *facts.Facts) ([]judge.Result, fault.List) {
	t.Helper()
	results, faults, err := e.Judge(context.Background(), f)
	if err != nil {
		t.Fatalf("judging fails: %v", err)
	}
	return results, faults
}

// stage has two pieces, E1 and E2, one above the other in the list.
func stage() *facts.Facts {
	return &facts.Facts{Pieces: []facts.Piece{
		{About: facts.About{ID: "E1", At: "/runs/0/pieces/0", On: "east"}, Height: 40},
		{About: facts.About{ID: "E2", At: "/runs/0/pieces/1", On: "east"}, Height: 2378.5},
	}}
}
