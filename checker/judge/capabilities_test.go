package judge_test

import (
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/open-policy-agent/opa/v1/ast"

	"trysquare/checker/judge"
)

// allowed is what a rule may call, by what it is for. A name that is added to
// builtins.txt is added here by hand too, by somebody who has seen that it
// reads nothing but its arguments and cannot run for long on small ones.
var allowed = map[string]string{
	"comparing":   "eq equal neq lt lte gt gte",
	"assigning":   "assign",
	"arithmetic":  "plus minus mul div rem abs ceil floor round",
	"aggregates":  "count max min product sort sum",
	"sets":        "and or intersection union",
	"membership":  "internal.member_2 internal.member_3",
	"lists":       "array.concat array.reverse array.slice",
	"objects":     "object.filter object.get object.keys object.remove object.union",
	"texts":       "concat contains endswith indexof lower split startswith substring trim trim_prefix trim_space trim_suffix upper",
	"asking what": "is_array is_boolean is_null is_number is_object is_set is_string",
}

func TestTheListOfFunctionsIsTheOneThatWasLookedThrough(t *testing.T) {
	var want []string
	for _, names := range allowed {
		want = append(want, strings.Fields(names)...)
	}
	slices.Sort(want)
	if got := judge.Builtins(); !slices.Equal(got, want) {
		t.Errorf("a rule may call\n%v\nwant\n%v", got, want)
	}
	text, err := os.ReadFile("builtins.txt")
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSuffix(string(text), "\n"), "\n")
	if !slices.IsSorted(lines) || len(slices.Compact(slices.Clone(lines))) != len(lines) || len(lines) != len(want) {
		t.Errorf("builtins.txt is not %d names, one a line, sorted, none twice", len(want))
	}
}

func TestEveryFunctionThatARuleMayCallExistsAndIsDeterministic(t *testing.T) {
	known := map[string]*ast.Builtin{}
	for _, b := range ast.CapabilitiesForThisVersion().Builtins {
		known[b.Name] = b
	}
	for _, name := range judge.Builtins() {
		switch b := known[name]; {
		case b == nil:
			t.Errorf("%s: the engine has no such function", name)
		case b.IsDeprecated():
			t.Errorf("%s: the engine is to lose it", name)
		case b.Nondeterministic:
			t.Errorf("%s: it does not give the same twice", name)
		}
	}
}

func TestNothingOfTheOutsideWorldAndNothingThatRunsOnIsAllowed(t *testing.T) {
	banned := []string{
		"http.send", "net.", "time.", "opa.runtime", "rand.", "uuid.", "io.", "json.patch", "walk",
		"regex.", "crypto.", "graph.", "glob.", "rego.", "graphql.", "providers.",
	}
	is := func(name, ban string) bool {
		return name == ban || strings.HasSuffix(ban, ".") && strings.HasPrefix(name, ban)
	}
	for _, ban := range banned {
		// A ban that fits no function of the engine would be misspelt, and hold nothing.
		if !slices.ContainsFunc(ast.CapabilitiesForThisVersion().Builtins, func(b *ast.Builtin) bool { return is(b.Name, ban) }) {
			t.Errorf("%s: the engine has nothing of the name", ban)
		}
		for _, name := range judge.Builtins() {
			if is(name, ban) {
				t.Errorf("%s is allowed", name)
			}
		}
	}
}

func TestARuleThatCallsWhatIsNotAllowedDoesNotLoad(t *testing.T) {
	calls := map[string]string{
		"http.send":     `x := http.send({"method": "get", "url": "http://hall.invalid"}); x.status_code == 200`,
		"time.now_ns":   `time.now_ns() > 0`,
		"rand.intn":     `rand.intn("larch", 6) > 2`,
		"opa.runtime":   `x := opa.runtime(); x.env.HOME`,
		"json.patch":    `json.patch({"a": 1}, [{"op": "remove", "path": "/a"}]) == {}`,
		"walk":          `walk(input, [["title"], _])`,
		"regex.match":   `regex.match("^E", piece.id)`,
		"uuid.rfc4122":  `uuid.rfc4122("larch") != ""`,
		"numbers.range": `count(numbers.range(1, 1000000000)) > 0`,
	}
	for name, call := range calls {
		t.Run(name, func(t *testing.T) {
			text := replace(t, body, body+"; "+call)
			got := refused(t, fstest.MapFS{lowFile: {Data: []byte(text)}})
			if got.Message != "undefined function "+name || got.Place.File != lowFile || got.Place.Start.Line != 18 {
				t.Errorf("it is refused with %v, want an undefined function %s in line 18", got, name)
			}
		})
	}
}

// What rules share is held to the same list: a helper would be the way round it.
func TestWhatRulesShareMayNotCallMore(t *testing.T) {
	got := refused(t, fstest.MapFS{"lib/lib.rego": {Data: []byte("package rules.lib\n\nnow := time.now_ns()\n")}})
	if got.Message != "undefined function time.now_ns" || got.Place.String() != "lib/lib.rego:3:8" {
		t.Errorf("it is refused with %v, want time.now_ns at lib/lib.rego:3:8", got)
	}
}
