package judge

import (
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/santhosh-tekuri/jsonschema/v5"

	"trysquare/checker/fault"
	"trysquare/checker/limits"
	"trysquare/schema"
)

// Metadata is what a rule says of itself; metadata.schema.json says what each property means.
type Metadata struct {
	Title       string       `json:"title"`
	Description string       `json:"description"`
	Subject     string       `json:"subject"`
	Level       string       `json:"level"`
	Limits      []string     `json:"limits,omitempty"`
	Unit        string       `json:"unit,omitempty"`
	Basis       limits.Basis `json:"basis"`
	Matters     string       `json:"matters"`
	Says        string       `json:"says"`
	Do          string       `json:"do"`
	Example     string       `json:"example"`
	Asks        *Asks        `json:"asks,omitempty"`
}

// Asks says who would normally answer a question, and with what.
type Asks struct {
	Who      string `json:"who"`
	Evidence string `json:"evidence"`
}

// Rule is one rule: its id is its package path below "rules".
type Rule struct {
	ID string
	Metadata
	File string
	pkg  *ast.Package
}

// newRule reads the metadata of a rule's module and refuses what its schema does.
func newRule(m *ast.Module, file string, known limits.Set) (*Rule, error) {
	r := &Rule{File: file, pkg: m.Package}
	refuse := func(line int, format string, args ...any) error {
		place := fault.Place{File: file, Start: fault.Position{Line: line, Byte: 1, Rune: 1, UTF16: 1}}
		return fault.New(fault.Rule, place, format, args...)
	}
	path := make([]string, 0, 3)
	for _, t := range m.Package.Path[1:] {
		path = append(path, string(t.Value.(ast.String)))
	}
	if len(path) != 3 || path[0] != "rules" {
		return nil, refuse(m.Package.Location.Row, "a rule's package is rules.FAMILY.NAME, not %s", strings.Join(path, "."))
	}
	r.ID = path[1] + "." + path[2]
	if want := path[1] + "/" + path[2] + "/rule.rego"; !strings.HasSuffix("/"+file, "/"+want) {
		return nil, refuse(m.Package.Location.Row, "the rule %s stands in %s; it belongs in %s", r.ID, file, want)
	}
	a := packageAnnotation(m)
	if a == nil {
		return nil, refuse(m.Package.Location.Row, "the rule %s has no METADATA comment in front of its package", r.ID)
	}
	line := a.Location.Row
	if err := r.decode(m, a); err != nil {
		return nil, refuse(line, "the METADATA of %s: %v", r.ID, err)
	}
	if err := cmp.Or(r.checkLimits(m, known), r.checkTexts()); err != nil {
		return nil, refuse(line, "the METADATA of %s: %v", r.ID, err)
	}
	if !slices.ContainsFunc(m.Rules, func(rule *ast.Rule) bool { return rule.Head.Name == "results" || rule.Head.Ref().String() == "results" }) {
		return nil, refuse(m.Package.Location.Row, "the rule %s gives no results", r.ID)
	}
	return r, nil
}

func packageAnnotation(m *ast.Module) *ast.Annotations {
	for _, a := range m.Annotations {
		if a.Scope == "package" {
			return a
		}
	}
	return nil
}

// rootKey is a line with a name at the outermost level of a METADATA comment; the parser drops names that it does not know.
var rootKey = regexp.MustCompile(`^ ?["']?([^\s"'#:-][^"':]*)["']?:`)

var rootKeys = []string{"scope", "title", "description", "custom"}

// decode validates an annotation by its schema and keeps it.
func (r *Rule) decode(m *ast.Module, a *ast.Annotations) error {
	doc := map[string]any{"custom": map[string]any(a.Custom)}
	if a.Title != "" {
		doc["title"] = a.Title
	}
	if a.Description != "" {
		doc["description"] = a.Description
	}
	for _, c := range m.Comments {
		key := rootKey.FindSubmatch(c.Text)
		if row := c.Location.Row; key != nil && row > a.Location.Row && row <= a.EndLoc().Row && !slices.Contains(rootKeys, string(key[1])) {
			doc[string(key[1])] = true // the schema refuses it by name
		}
	}
	text, err := json.Marshal(doc)
	if err != nil {
		return fmt.Errorf("reading it: %w", err)
	}
	var plain any
	if err := json.Unmarshal(text, &plain); err != nil {
		return fmt.Errorf("reading it: %w", err)
	}
	s, err := schema.Get(schema.Metadata)
	if err != nil {
		return err
	}
	if err := s.Compiled.Validate(plain); err != nil {
		return errors.New(firstCause(err))
	}
	var flat struct {
		Custom *Metadata `json:"custom"`
	}
	flat.Custom = &r.Metadata
	if err := json.Unmarshal(text, &flat); err != nil {
		return fmt.Errorf("reading it: %w", err)
	}
	r.Title, r.Description = a.Title, a.Description
	if r.Unit == "" {
		r.Unit = "mm"
	}
	return nil
}

// firstCause gives the innermost first message of a validation error with its place.
func firstCause(err error) string {
	var ve *jsonschema.ValidationError
	if !errors.As(err, &ve) {
		return err.Error()
	}
	for len(ve.Causes) > 0 {
		ve = ve.Causes[0]
	}
	where := strings.ReplaceAll(strings.TrimPrefix(ve.InstanceLocation, "/"), "/", ".")
	if where == "" {
		return ve.Message
	}
	return where + ": " + ve.Message
}

// limitID is the form of a limit's id; no other text in a rule has it.
var limitID = regexp.MustCompile(`^[a-z]+\.[a-z_]+$`)

// checkLimits sees that the limits a rule names exist, that it uses those it
// names, and that it uses no other: a misspelt limit would be undefined, and a
// rule that is undefined finds nothing.
func (r *Rule) checkLimits(m *ast.Module, known limits.Set) error {
	used := map[string]bool{}
	ast.WalkTerms(m, func(t *ast.Term) bool {
		if s, ok := t.Value.(ast.String); ok && limitID.MatchString(string(s)) {
			used[string(s)] = true
		}
		return false
	})
	for _, id := range r.Limits {
		if _, ok := known[id]; !ok {
			return fmt.Errorf("there is no limit %q", id)
		}
		if !used[id] {
			return fmt.Errorf("the limit %q is named and not used", id)
		}
		delete(used, id)
	}
	for _, id := range slices.Sorted(maps.Keys(used)) {
		return fmt.Errorf("the limit %q is used and not named", id)
	}
	return nil
}
