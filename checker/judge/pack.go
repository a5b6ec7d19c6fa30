package judge

import (
	"bytes"
	"cmp"
	"context"
	"fmt"
	"io/fs"
	"slices"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
	"github.com/open-policy-agent/opa/v1/ast"

	"trysquare/checker/limits"
)

// A pack is rules compiled at build time: their metadata read, their limits
// validated, their modules as the compiler leaves them. What is left to do at
// start-up is to read that and to index it, a sixth of the work. Rules that do
// not ship with the program are never packed: they are compiled and checked
// each time.
type pack struct {
	Limits  limits.Set     `json:"limits"`
	Modules []packedModule `json:"modules"`
}

type packedModule struct {
	File     string         `json:"file"`
	ID       string         `json:"id,omitempty"` // "" for what rules share
	Metadata *Metadata      `json:"metadata,omitempty"`
	Package  []string       `json:"package"` // below "data"
	Rules    jsontext.Value `json:"rules"`   // trees, see tree.go
}

// Pack checks the rules below the root of a file system as Load does, and packs them.
func Pack(ctx context.Context, files fs.FS, set limits.Set) ([]byte, error) {
	e, err := Load(ctx, files, set, Options{})
	if err != nil {
		return nil, err
	}
	var modules []packedModule
	for file, m := range e.compiler.Modules {
		p := packedModule{File: file}
		if i := slices.IndexFunc(e.Rules, func(r *Rule) bool { return r.File == file }); i >= 0 {
			p.ID, p.Metadata = e.Rules[i].ID, &e.Rules[i].Metadata
		}
		for _, t := range m.Package.Path[1:] {
			p.Package = append(p.Package, string(t.Value.(ast.String)))
		}
		trees := []any{}
		for _, r := range m.Rules {
			tree, err := encodeRule(r)
			if err != nil {
				return nil, fmt.Errorf("packing %s: %w", file, err)
			}
			trees = append(trees, tree)
		}
		if p.Rules, err = json.Marshal(trees); err != nil {
			return nil, fmt.Errorf("packing %s: %w", file, err)
		}
		modules = append(modules, p)
	}
	slices.SortFunc(modules, func(a, b packedModule) int { return cmp.Compare(a.File, b.File) })
	var text bytes.Buffer // a module a line, so that a change shows as one
	set0, err := json.Marshal(set, json.Deterministic(true))
	if err != nil {
		return nil, fmt.Errorf("packing the limits: %w", err)
	}
	fmt.Fprintf(&text, "{\"limits\": %s,\n\"modules\": [", set0)
	for i, m := range modules {
		one, err := json.Marshal(m)
		if err != nil {
			return nil, fmt.Errorf("packing %s: %w", m.File, err)
		}
		if i > 0 {
			text.WriteByte(',')
		}
		fmt.Fprintf(&text, "\n%s", one)
	}
	text.WriteString("\n]}\n")
	return text.Bytes(), nil
}

// packedStages are the compiler's stages that packed modules still need; the
// others have run, all of them, when the rules were packed. A test holds that
// packed rules give the results of the rules themselves.
var packedStages = []ast.StageID{ast.StageSetModuleTree, ast.StageSetRuleTree, ast.StageBuildRuleIndices}

// LoadPacked compiles packed rules.
func LoadPacked(text []byte, o Options) (*Engine, error) {
	var p pack
	if err := json.Unmarshal(text, &p); err != nil {
		return nil, fmt.Errorf("reading the packed rules: %w", err)
	}
	e := newEngine(p.Limits, o)
	modules := make(map[string]*ast.Module, len(p.Modules))
	for _, m := range p.Modules {
		if m.ID != "" && len(o.Only) > 0 && !slices.Contains(o.Only, m.ID) {
			continue
		}
		path := ast.Ref{ast.DefaultRootDocument}
		for _, name := range m.Package {
			path = append(path, ast.StringTerm(name))
		}
		parsed, err := decodeModule(&ast.Package{Path: path}, m.Rules)
		if err != nil {
			return nil, fmt.Errorf("reading the packed rule %s: %w", m.File, err)
		}
		modules[m.File] = parsed
		if m.ID != "" {
			e.Rules = append(e.Rules, &Rule{ID: m.ID, Metadata: *m.Metadata, File: m.File, pkg: parsed.Package})
		}
	}
	slices.SortFunc(e.Rules, byID)
	skip := slices.DeleteFunc(slices.Clone(ast.AllStages()), func(s ast.StageID) bool { return slices.Contains(packedStages, s) })
	return e, e.compile(modules, ast.NewCompiler().WithCapabilities(capabilities()).WithSkipStages(skip...))
}
