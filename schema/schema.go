// Package schema holds the JSON Schemas (2020-12) of the documents that the
// program reads and writes, embedded and compiled once each.
package schema

import (
	"bytes"
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
	tree     any
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

func compile(name Name) (*Schema, error) {
	text, err := Text(name)
	if err != nil {
		return nil, err
	}
	c := jsonschema.NewCompiler()
	c.Draft = jsonschema.Draft2020
	url := base + string(name) + ".schema.json"
	for _, resource := range []Name{name, basis} {
		text, err := Text(resource)
		if err != nil {
			return nil, err
		}
		if err := c.AddResource(base+string(resource)+".schema.json", bytes.NewReader(text)); err != nil {
			return nil, fmt.Errorf("reading the schema of a %s: %w", name, err)
		}
	}
	s := &Schema{Text: text}
	if s.Compiled, err = c.Compile(url); err != nil {
		return nil, fmt.Errorf("compiling the schema of a %s: %w", name, err)
	}
	if err := json.Unmarshal(text, &s.tree); err != nil {
		return nil, fmt.Errorf("reading the schema of a %s: %w", name, err)
	}
	return s, nil
}

// base is a name only (RFC 2606 keeps .invalid free); nothing is fetched from it.
const base = "https://trysquare.invalid/schema/"

// Keyword gives the value of the keyword that a validation error names by its
// absolute location, and the schema object that the keyword stands in.
func (s *Schema) Keyword(absolute string) (value any, in map[string]any) {
	_, pointer, _ := strings.Cut(absolute, "#")
	value = s.tree
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
