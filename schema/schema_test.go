package schema_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/schema"
)

// tree reads a schema file as plain values.
func tree(t *testing.T, file string) map[string]any {
	t.Helper()
	b, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var m map[string]any
	if err := json.Unmarshal(b, &m); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	return m
}

func schemaFiles(t *testing.T) []string {
	t.Helper()
	files, err := filepath.Glob("*.schema.json")
	if err != nil || len(files) < 5 {
		t.Fatalf("found only %v: %v", files, err)
	}
	return files
}

func TestEverySchemaFileCompilesAndIsListed(t *testing.T) {
	for _, file := range schemaFiles(t) {
		name := schema.Name(strings.TrimSuffix(file, ".schema.json"))
		if name == "basis" {
			continue // a part of others; it compiles where they do
		}
		if !slices.Contains(schema.Names(), name) {
			t.Errorf("%s is in no list", file)
		}
		s, err := schema.Get(name)
		if err != nil {
			t.Error(err)
			continue
		}
		if again, _ := schema.Get(name); again != s {
			t.Errorf("%s is compiled a second time", name)
		}
	}
}

func TestTextIsTheFileAsItStands(t *testing.T) {
	for _, file := range schemaFiles(t) {
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		got, err := schema.Text(schema.Name(strings.TrimSuffix(file, ".schema.json")))
		if err != nil || string(got) != string(want) {
			t.Errorf("%s: the text differs from the file: %v", file, err)
		}
	}
}

func TestAnUnknownSchemaIsAnError(t *testing.T) {
	if s, err := schema.Get("ladder"); err == nil || err.Error() != `there is no schema "ladder"` {
		t.Errorf("Get gave %v, %v", s, err)
	}
	if b, err := schema.Text("ladder"); err == nil || err.Error() != `there is no schema "ladder"` {
		t.Errorf("Text gave %q, %v", b, err)
	}
}

func TestEverySchemaIsOfTheDraftOf2020AndNamedAsItsFile(t *testing.T) {
	for _, file := range schemaFiles(t) {
		m := tree(t, file)
		if m["$schema"] != "https://json-schema.org/draft/2020-12/schema" {
			t.Errorf("%s has the draft %v", file, m["$schema"])
		}
		if m["$id"] != "https://trysquare.invalid/schema/"+file {
			t.Errorf("%s calls itself %v", file, m["$id"])
		}
	}
}

// walk calls visit with every schema object of a tree. What stands under if, then,
// else only adds to what is described elsewhere, so it is left out.
func walk(at string, v any, visit func(at string, m map[string]any)) {
	switch v := v.(type) {
	case map[string]any:
		visit(at, v)
		for key, below := range v {
			if key != "if" && key != "then" && key != "else" {
				walk(at+"/"+key, below, visit)
			}
		}
	case []any:
		for _, below := range v {
			walk(at+"/-", below, visit)
		}
	}
}

// deref follows a $ref within the file or to another of the files.
func deref(t *testing.T, file string, m map[string]any) map[string]any {
	t.Helper()
	ref, ok := m["$ref"].(string)
	if !ok {
		return m
	}
	other, pointer, _ := strings.Cut(ref, "#")
	if other == "" {
		other = file
	}
	at := tree(t, other)
	for _, token := range strings.Split(strings.TrimPrefix(pointer, "/"), "/") {
		if token != "" {
			at, _ = at[token].(map[string]any)
		}
	}
	if at == nil {
		t.Fatalf("%s: %s leads nowhere", file, ref)
	}
	return at
}

func TestEveryPropertyIsDescribedAndNoOtherIsLetIn(t *testing.T) {
	for _, file := range schemaFiles(t) {
		described := 0
		walk("", any(tree(t, file)), func(at string, m map[string]any) {
			props, ok := m["properties"].(map[string]any)
			if !ok || strings.HasSuffix(at, "/properties") { // a property may be called "properties"
				return
			}
			if m["additionalProperties"] != false {
				t.Errorf("%s#%s lets in properties that it does not list", file, at)
			}
			for name, p := range props {
				prop, _ := p.(map[string]any)
				text, _ := prop["description"].(string)
				if text == "" {
					text, _ = deref(t, file, prop)["description"].(string)
				}
				if text == "" || !strings.HasSuffix(text, ".") {
					t.Errorf("%s#%s/properties/%s is described as %q, want a sentence", file, at, name, text)
				}
				described++
			}
		})
		if described == 0 {
			t.Errorf("%s has no properties", file)
		}
	}
}

func TestEveryLengthOfAPlanNamesItsUnit(t *testing.T) {
	lengths := 0
	walk("", any(tree(t, "plan.schema.json")), func(at string, m map[string]any) {
		if m["$ref"] != "#/$defs/length" {
			return
		}
		lengths++
		if text, _ := m["description"].(string); !strings.Contains(text, "mm or the plan's units") {
			t.Errorf("%s does not name its unit: %q", at, text)
		}
	})
	if lengths < 40 {
		t.Errorf("only %d lengths were looked at", lengths)
	}
}

// A message quotes the schema at the place that an error names; a limits file's
// bases are described in another file than its limits.
func TestKeywordFollowsAnErrorIntoTheSchemaThatItNames(t *testing.T) {
	s, err := schema.Get(schema.Limits)
	if err != nil {
		t.Fatal(err)
	}
	const here, basis = "https://trysquare.invalid/schema/limits.schema.json#", "https://trysquare.invalid/schema/basis.schema.json#"
	tests := []struct {
		absolute string
		value    any
		in       string // description of the schema object around it
	}{
		{here + "/required", []any{"limits"}, "Every number that a rule compares with or that geometry assumes, by id, each with its basis."},
		{here + "/properties/limits/additionalProperties/properties/value/type", "number", "The number, in the unit."},
		{basis + "/then/required", []any{"source", "read"}, ""},
		{basis + "/required", []any{"kind"}, "On whose authority a number or a check stands."},
		{basis + "/properties/note/minLength", 1.0, "What else the reader should know of it."},
		{"https://trysquare.invalid/schema/ladder.schema.json#/required", nil, ""},
	}
	for _, tt := range tests {
		value, in := s.Keyword(tt.absolute)
		if diff := cmp.Diff(tt.value, value); diff != "" {
			t.Errorf("%s (- want, + got):\n%s", tt.absolute, diff)
		}
		if text, _ := in["description"].(string); text != tt.in {
			t.Errorf("%s stands in a schema described as %q, want %q", tt.absolute, text, tt.in)
		}
	}
}
