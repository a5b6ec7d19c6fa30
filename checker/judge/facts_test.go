package judge

import (
	"bytes"
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"reflect"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v5"

	"trysquare/checker/facts"
)

func factsValidator(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := json.Marshal(facts.Schema())
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("facts.json", bytes.NewReader(text)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("facts.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plain gives facts as JSON has them.
func plain(t *testing.T, f *facts.Facts) map[string]any {
	t.Helper()
	text, err := json.Marshal(f)
	if err != nil {
		t.Fatal(err)
	}
	var out map[string]any
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestFilledFactsFitTheirSchema(t *testing.T) {
	s := factsValidator(t)
	for seed := range uint64(100) {
		if err := s.Validate(plain(t, filled(seed, seed%4 == 0))); err != nil {
			t.Fatalf("seed %d: %#v", seed, err)
		}
	}
}

func TestTheSchemaOfFactsRefusesWhatIsNone(t *testing.T) {
	s := factsValidator(t)
	first := func(f map[string]any, list string) map[string]any { return f[list].([]any)[0].(map[string]any) }
	for name, spoil := range map[string]func(map[string]any){
		"unknown list":           func(f map[string]any) { f["piecez"] = []any{} },
		"list left out":          func(f map[string]any) { delete(f, "walls") },
		"list that is null":      func(f map[string]any) { f["walls"] = nil },
		"id left out":            func(f map[string]any) { delete(first(f, "pieces"), "id") },
		"unknown fact":           func(f map[string]any) { first(f, "pieces")["hieght"] = 3.0 },
		"unknown fact in a fact": func(f map[string]any) { first(f, "fixings")["background"].(map[string]any)["kindd"] = "wood" },
		"length in words":        func(f map[string]any) { first(f, "joints")["gap"] = "12 mm" },
		"part of a count":        func(f map[string]any) { first(f, "zones")["screws"] = 1.5 },
		"number for yes or no":   func(f map[string]any) { first(f, "leaves")["clad"] = 1.0 },
		"item of a list of ids":  func(f map[string]any) { first(f, "zones")["pieces"] = []any{7.0} },
	} {
		f := plain(t, filled(1, true))
		if err := s.Validate(f); err != nil {
			t.Fatalf("before it is spoilt: %#v", err)
		}
		spoil(f)
		if s.Validate(f) == nil {
			t.Errorf("%s: it fits the schema all the same", name)
		}
	}
}

// What may be absent may be left out, and nothing else: a rule answers "open"
// where a fact is absent, and would where one had been forgotten.
func TestFactsThatAreLeftOutAreNotRequiredAndAllOthersAre(t *testing.T) {
	schema := facts.Schema()
	props := schema["properties"].(map[string]any)
	into := props["fixings"].(map[string]any)["items"].(map[string]any)["properties"].(map[string]any)["screws"].(map[string]any)["properties"].(map[string]any)["into"].(map[string]any)["items"].(map[string]any)
	if got, want := into["required"], []any{"what", "count"}; !reflect.DeepEqual(got, want) {
		t.Errorf("of what screws go into %v are required, want %v", got, want)
	}
	point := props["edges"].(map[string]any)["items"].(map[string]any)["properties"].(map[string]any)["from"].(map[string]any)
	want := map[string]any{
		"type": "object", "additionalProperties": false, "required": []any{"x", "y"},
		"properties": map[string]any{"x": map[string]any{"type": "number"}, "y": map[string]any{"type": "number"}},
	}
	if !reflect.DeepEqual(point, want) {
		t.Errorf("the schema of a point is %v, want %v", point, want)
	}
}

// A field without a tag would be in the JSON under its Go name, and in neither
// the schema nor what rules see.
func TestEveryFieldOfEveryFactHasAJSONName(t *testing.T) {
	names, err := filepath.Glob("../facts/*.go")
	if err != nil {
		t.Fatal(err)
	}
	form := regexp.MustCompile(`^[a-z]+(_[a-z]+)*(,omitempty)?$`)
	structs := 0
	look := func(n ast.Node) bool {
		spec, ok := n.(*ast.TypeSpec)
		if !ok {
			return true
		}
		fields, ok := spec.Type.(*ast.StructType)
		if !ok {
			return true
		}
		structs++
		seen := map[string]bool{}
		for _, f := range fields.Fields.List {
			switch {
			case len(f.Names) == 0:
				if id, ok := f.Type.(*ast.Ident); !ok || id.Name != "About" || f.Tag != nil {
					t.Errorf("%s embeds something other than a bare About", spec.Name)
				}
				seen["id"], seen["at"], seen["on"] = true, true, true
				continue
			case len(f.Names) > 1 || f.Tag == nil || !f.Names[0].IsExported():
				t.Errorf("%s.%v: each field stands alone, exported, with a tag", spec.Name, f.Names)
				continue
			}
			text, _ := strconv.Unquote(f.Tag.Value)
			tag := reflect.StructTag(text).Get("json")
			name, _, _ := strings.Cut(tag, ",")
			if !form.MatchString(tag) || seen[name] {
				t.Errorf("%s.%s has the JSON name %q, which is of another form or there already", spec.Name, f.Names[0], tag)
			}
			seen[name] = true
			if _, pointer := f.Type.(*ast.StarExpr); pointer && !strings.HasSuffix(tag, ",omitempty") {
				t.Errorf("%s.%s may be absent, and would be null", spec.Name, f.Names[0])
			}
		}
		return true
	}
	for _, name := range names {
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(file, look)
	}
	// Facts itself and a type for each of its fields are the least; two fields are pairs of lines.
	if least := reflect.TypeFor[facts.Facts]().NumField(); structs < least {
		t.Errorf("%d types were looked at, want at least %d", structs, least)
	}
}
