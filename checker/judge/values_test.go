package judge

import (
	"encoding/json"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/open-policy-agent/opa/v1/ast"

	"trysquare/checker/facts"
)

// byJSON is the way round: through JSON text and the engine's own reading of it.
func byJSON(t *testing.T, v any) ast.Value {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	var plain any
	dec := json.NewDecoder(strings.NewReader(string(text)))
	dec.UseNumber()
	if err := dec.Decode(&plain); err != nil {
		t.Fatal(err)
	}
	out, err := ast.InterfaceToValue(plain)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// difference gives the first place where two values differ, or "".
func difference(at string, got, want ast.Value) string {
	switch w := want.(type) {
	case ast.Object:
		g, ok := got.(ast.Object)
		if !ok {
			break
		}
		for _, k := range w.Keys() {
			v := g.Get(k)
			if v == nil {
				return fmt.Sprintf("%s.%v is not there", at, k)
			}
			if d := difference(fmt.Sprintf("%s.%v", at, k), v.Value, w.Get(k).Value); d != "" {
				return d
			}
		}
		for _, k := range g.Keys() {
			if w.Get(k) == nil {
				return fmt.Sprintf("%s.%v is too much", at, k)
			}
		}
		return ""
	case *ast.Array:
		g, ok := got.(*ast.Array)
		if !ok || g.Len() != w.Len() {
			break
		}
		for i := range w.Len() {
			if d := difference(fmt.Sprint(at, "[", i, "]"), g.Elem(i).Value, w.Elem(i).Value); d != "" {
				return d
			}
		}
		return ""
	}
	if ast.Compare(got, want) != 0 {
		return fmt.Sprintf("%s is %.200v, want %.200v", at, got, want)
	}
	return ""
}

func TestFactsBecomeTheValueThatTheirJSONWouldBecome(t *testing.T) {
	for seed := range uint64(200) {
		f := filled(seed, seed%4 == 0)
		got, err := toValue(f)
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		want := byJSON(t, f)
		if d := difference("facts", got.Value, want); d != "" {
			t.Fatalf("seed %d: %s", seed, d)
		}
		// The engine looks things up by hash too.
		if ast.Compare(got.Value, want) != 0 || got.Value.Hash() != want.Hash() {
			t.Fatalf("seed %d: the values differ where their parts do not", seed)
		}
	}
}

func TestTheDifferenceOfTwoValuesIsFound(t *testing.T) {
	v := func(text string) ast.Value { return ast.MustParseTerm(text).Value }
	for text, want := range map[string]string{
		`{"a": [1, {"b": 2}]}`:          "",
		`{"a": [1, {"b": 2.0}]}`:        "",
		`{"a": [1, {"b": 3}]}`:          `f."a"[1]."b" is 3, want 2`,
		`{"a": [1, {}]}`:                `f."a"[1]."b" is not there`,
		`{"a": [1, {"b": 2}], "c": ""}`: `f."c" is too much`,
		`{"a": [1]}`:                    `f."a" is [1], want [1, {"b": 2}]`,
		`{"a": null}`:                   `f."a" is null, want [1, {"b": 2}]`,
	} {
		if got := difference("f", v(text), v(`{"a": [1, {"b": 2}]}`)); got != want {
			t.Errorf("%s: %q, want %q", text, got, want)
		}
	}
}

func TestWhatIsLeftOutAndWhatIsNothing(t *testing.T) {
	zero, none := 0.0, 0
	cases := []struct {
		name string
		fact any
		want string
	}{
		{"a length that the plan does not say is left out", facts.Into{What: "wood", Count: 2}, `{"count": 2, "what": "wood"}`},
		{"a length of nothing is said", facts.Into{What: "wood", Depth: &zero}, `{"count": 0, "depth": 0, "what": "wood"}`},
		{"nothing ordered is said", facts.Boards{Panel: "oak", Ordered: &none}, `{"at": "", "id": "", "kerf": 0, "least": 0, "needed": 0, "offcuts": 0, "on": "", "ordered": 0, "panel": "oak", "proven": false}`},
		{"an empty text is left out where it may be", facts.Job{About: facts.About{ID: "plan"}}, `{"at": "", "country": "", "id": "plan", "on": ""}`},
		{"a list that is nil is empty, as the schema has it", facts.Sequence{}, `{"at": "", "holes": false, "id": "", "on": "", "stated": false, "steps": [], "traced": false}`},
		{"what a fact embeds stands beside the rest", facts.Narrow{Width: 118.5, X: -6}, `{"width": 118.5, "x": -6, "y": 0}`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := toValue(c.fact)
			if err != nil {
				t.Fatal(err)
			}
			if d := difference("fact", got.Value, ast.MustParseTerm(c.want).Value); d != "" {
				t.Error(d)
			}
		})
	}
}

// The engine compares numbers that are written without a point as whole ones,
// several times faster.
func TestNumbersAreWrittenWholeWhereTheyAreWhole(t *testing.T) {
	for _, c := range []struct {
		f    float64
		want string
	}{
		{600, "600"}, {-6, "-6"}, {0, "0"}, {math.Copysign(0, -1), "0"}, {1e6, "1000000"}, {1 << 53, "9007199254740992"},
		{1e22, "10000000000000000000000"}, {118.5, "118.5"}, {0.01, "0.01"}, {-2378.25, "-2378.25"}, {1e-7, "0.0000001"},
	} {
		got, err := toValue(c.f)
		if err != nil {
			t.Errorf("%v: %v", c.f, err)
			continue
		}
		if got.String() != c.want {
			t.Errorf("%v is written %s, want %s", c.f, got, c.want)
		}
	}
}

func TestANumberThatIsNoneIsRefused(t *testing.T) {
	for name, f := range map[string]float64{"NaN": math.NaN(), "+Inf": math.Inf(1), "-Inf": math.Inf(-1)} {
		deep := filled(1, true)
		*deep.Pieces[1].Excess = f
		for what, v := range map[string]any{"itself": f, "in facts": deep} {
			got, err := toValue(v)
			if want := "facts hold a number that is none: " + name; err == nil || err.Error() != want {
				t.Errorf("%s %s: %v and the error %v, want the error %s", name, what, got, err, want)
			}
		}
	}
}

// A fact of a kind that nobody thought of must not go missing without a word.
func TestWhatFactsCannotHoldIsRefused(t *testing.T) {
	for want, v := range map[string]any{
		"facts cannot hold a map[string]int": map[string]int{"E1": 1},
		"facts cannot hold a uint":           []uint{3},
		"facts cannot hold a float32": struct {
			F float32 `json:"f"`
		}{2.5},
	} {
		if got, err := toValue(v); err == nil || err.Error() != want {
			t.Errorf("%v and the error %v, want the error %s", got, err, want)
		}
	}
}

func TestTheFillerFillsEverything(t *testing.T) {
	var empty []string
	var look func(at string, v reflect.Value)
	look = func(at string, v reflect.Value) {
		switch {
		case v.IsZero() || v.Kind() == reflect.Slice && v.Len() == 0:
			empty = append(empty, at)
		case v.Kind() == reflect.Pointer:
			look(at, v.Elem())
		case v.Kind() == reflect.Slice:
			look(at+"[]", v.Index(0))
		case v.Kind() == reflect.Struct:
			for i := range v.NumField() {
				look(at+"."+v.Type().Field(i).Name, v.Field(i))
			}
		}
	}
	if look("facts", reflect.ValueOf(*filled(1, true))); len(empty) > 0 {
		t.Errorf("these are left empty, and the tests above show nothing of them: %v", empty)
	}
}
