// Package schema holds the JSON Schemas (2020-12) of the documents that the
// program reads and writes, embedded and compiled once each.
package schema

import (
	"embed"
	"encoding/json"
	"fmt"
	"strings"
	"sync"

	"github.com/santhosh-tekuri/jsonschema/v5"
)

//go:embed *.schema.json
var files embed.FS

// Name is a document kind with a schema.
type Name string

const (
	Plan     Name = "plan"     // a plan
	Limits   Name = "limits"   // limits.json: every number that a rule compares with
	Metadata Name = "metadata" // the annotations of a rule
	Report   Name = "report"   // what check --json writes
)

// basis is shared by the others and never asked for by itself.
const basis Name = "basis"

// Names lists the schemas in a fixed order.
func Names() []Name { return []Name{Plan, Limits, Metadata, Report} }

// Schema is a compiled schema with its text, so that a message can quote it.
type Schema struct {
	Text     []byte
	Compiled *jsonschema.Schema
	trees    func() map[string]any // by address (a $ref leads into the schema of a basis); read when a message first quotes one
}

type once struct {
	sync.Once
	schema *Schema
	err    error
}

var compiled = map[Name]*once{Plan: {}, Limits: {}, Metadata: {}, Report: {}}

// Text gives a schema as it is written.
func Text(name Name) ([]byte, error) {
	b, err := files.ReadFile(string(name) + ".schema.json")
	if err != nil {
		return nil, fmt.Errorf("there is no schema %q", name)
	}
	return b, nil
}

// Get compiles a schema the first time it is asked for.
func Get(name Name) (*Schema, error) {
	o, ok := compiled[name]
	if !ok {
		return nil, fmt.Errorf("there is no schema %q", name)
	}
	o.Do(func() { o.schema, o.err = compile(name) })
	return o.schema, o.err
}

// compile compiles a schema as draft 7: to hold a schema of 2020-12 against its
// metaschema, with its vocabularies, takes twice the time of all the rest of a
// start-up's schema work. Of what the two drafts read differently these schemas
// use nothing but the name of $defs; a test compiles them as 2020-12 and compares the verdicts.
func compile(name Name) (*Schema, error) {
	text, err := Text(name)
	if err != nil {
		return nil, err
	}
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft7
	s := &Schema{Text: text}
	texts := map[string]string{}
	for _, resource := range []Name{name, basis} {
		if resource == basis && !strings.Contains(string(text), string(basis)+".schema.json") {
			continue
		}
		text, err := Text(resource)
		if err != nil {
			return nil, err
		}
		url := base + string(resource) + ".schema.json"
		texts[url] = asDraft7.Replace(string(text))
		if err := c.AddResource(url, strings.NewReader(texts[url])); err != nil {
			return nil, fmt.Errorf("reading the schema of a %s: %w", name, err)
		}
	}
	if s.Compiled, err = c.Compile(base + string(name) + ".schema.json"); err != nil {
		return nil, fmt.Errorf("compiling the schema of a %s: %w", name, err)
	}
	s.trees = sync.OnceValue(func() map[string]any {
		trees := map[string]any{}
		for url, text := range texts {
			var tree any
			_ = json.Unmarshal([]byte(text), &tree) // it has compiled, so it is JSON
			trees[url] = tree
		}
		return trees
	})
	return s, nil
}

var asDraft7 = strings.NewReplacer("$defs", "definitions", "https://json-schema.org/draft/2020-12/schema", "http://json-schema.org/draft-07/schema#")

// base is a name only (RFC 2606 keeps .invalid free); nothing is fetched from it.
const base = "https://trysquare.invalid/schema/"

// Keyword gives the value of the keyword that a validation error names by its
// absolute location, and the schema object that the keyword stands in.
func (s *Schema) Keyword(absolute string) (value any, in map[string]any) {
	url, pointer, _ := strings.Cut(absolute, "#")
	value = s.trees()[url]
	for _, token := range strings.Split(strings.TrimPrefix(pointer, "/"), "/") {
		token = strings.ReplaceAll(strings.ReplaceAll(token, "~1", "/"), "~0", "~")
		obj, ok := value.(map[string]any)
		if !ok {
			return nil, in
		}
		in, value = obj, obj[token]
	}
	return value, in
}
