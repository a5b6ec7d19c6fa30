package schema_test

import (
	"encoding/json"
	"errors"
	"os"
	"path"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/santhosh-tekuri/jsonschema/v5"

	"trysquare/schema"
)

// stock compiles a schema file as what it says it is, 2020-12, metaschema and all.
func stock(t *testing.T, name schema.Name) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	const base = "https://trysquare.invalid/schema/"
	for _, file := range schemaFiles(t) {
		f, err := os.Open(file)
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		if err := c.AddResource(base+file, f); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile(base + string(name) + ".schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// verdict gives what is wrong with a document, a line an error, in a fixed order.
func verdict(err error) []string {
	var ve *jsonschema.ValidationError
	if !errors.As(err, &ve) {
		return nil
	}
	var out []string
	var leaves func(e *jsonschema.ValidationError)
	leaves = func(e *jsonschema.ValidationError) {
		if len(e.Causes) == 0 {
			out = append(out, e.InstanceLocation+" breaks "+path.Base(e.KeywordLocation)) // messages list names in no order
		}
		for _, cause := range e.Causes {
			leaves(cause)
		}
	}
	leaves(ve)
	slices.Sort(out)
	return out
}

// documents gives every plan and limits file of the repository, mistakes
// included, and reports and metadata with and without mistakes.
func documents(t *testing.T) map[string]any {
	t.Helper()
	out := map[string]any{}
	for _, pattern := range []string{"../testdata/bad/*.json", "../plans/*.json", "../rules/limits.json"} {
		files, err := filepath.Glob(pattern)
		if err != nil || len(files) == 0 {
			t.Fatalf("%s finds nothing: %v", pattern, err)
		}
		for _, file := range files {
			b, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			var v any
			if json.Unmarshal(b, &v) == nil { // what is no JSON never reaches a schema
				out[file] = v
			}
		}
	}
	for name, text := range map[string]string{
		"metadata":                  `{"title": "t", "description": "d", "custom": {"subject": "wall", "level": "note", "basis": {"kind": "worked out"}, "matters": "m", "says": "s", "do": "d", "example": "e", "limits": ["a.b"]}}`,
		"metadata, a limit twice":   `{"title": "t", "description": "d", "custom": {"subject": "wall", "level": "note", "basis": {"kind": "worked out"}, "matters": "m", "says": "s", "do": "d", "example": "e", "limits": ["a.b", "a.b"]}}`,
		"metadata, basis half said": `{"title": "t", "description": "d", "custom": {"subject": "wall", "level": "note", "basis": {"kind": "published", "country": ["FR"]}, "says": ""}}`,
		"report":                    `{"version": 1, "hold": "error", "status": "clear", "plans": []}`,
		"report, wrong throughout":  `{"version": 2, "hold": "always", "status": "open", "plans": [{"file": "f", "counts": {"errors": -1}, "results": [{"basis": {"kind": "house rule", "source": "s"}}], "faults": null}]}`,
	} {
		var v any
		if err := json.Unmarshal([]byte(text), &v); err != nil {
			t.Fatal(err)
		}
		out[name] = v
	}
	return out
}

// The program compiles its schemas as draft 7, to start sooner; this holds that it makes no difference.
func TestTheQuickSchemasJudgeAsTheDraftOf2020Does(t *testing.T) {
	docs := documents(t)
	for _, name := range schema.Names() {
		quick, err := schema.Get(name)
		if err != nil {
			t.Fatal(err)
		}
		slow := stock(t, name)
		sound, unsound := 0, 0
		for file, doc := range docs {
			want := verdict(slow.Validate(doc))
			if diff := cmp.Diff(want, verdict(quick.Compiled.Validate(doc))); diff != "" {
				t.Errorf("%s as a %s (- 2020-12, + as compiled here):\n%s", file, name, diff)
			}
			if len(want) == 0 {
				sound++
			} else {
				unsound++
			}
		}
		if sound == 0 || unsound == 0 {
			t.Errorf("%s: %d sound documents and %d others show too little", name, sound, unsound)
		}
	}
}

// Beside a $ref draft 7 passes over every other keyword, where 2020-12 heeds them.
func TestBesideAReferenceStandsOnlyADescription(t *testing.T) {
	for _, file := range schemaFiles(t) {
		walk("", any(tree(t, file)), func(at string, m map[string]any) {
			if _, ok := m["$ref"]; !ok {
				return
			}
			for key := range m {
				if key != "$ref" && key != "description" {
					t.Errorf("%s#%s has %q beside its $ref", file, at, key)
				}
			}
		})
	}
}
