// Package judge holds facts against rules. Rules are Rego, found by standing in
// their folder; each gives results for the subjects it looks at. A rule that
// fails or runs out of time is a fault with the rule's name, never a silence.
package judge

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/open-policy-agent/opa/v1/ast"
	"github.com/open-policy-agent/opa/v1/storage"
	"github.com/open-policy-agent/opa/v1/storage/inmem"
	"github.com/open-policy-agent/opa/v1/topdown"

	"trysquare/checker/facts"
	"trysquare/checker/fault"
	"trysquare/checker/limits"
)

// DefaultDeadline is how long one rule may take on one plan: a hundred times
// what the slowest takes on a plan of a thousand pieces.
const DefaultDeadline = 10 * time.Second

// Options for an engine. The zero value is what the program uses.
type Options struct {
	Deadline time.Duration // for each rule; 0 is DefaultDeadline
	Only     []string      // ids of the rules to load; empty is all
}

// Engine is a set of rules, compiled once, that can judge any number of plans
// from several goroutines.
type Engine struct {
	Rules    []*Rule // by id
	Limits   limits.Set
	compiler *ast.Compiler
	store    storage.Store // the limits
	deadline time.Duration
	only     []string
	needs    map[string]bool // the lists of facts that some rule names; nil is all
}

// Load parses and compiles the rules below the root of a file system, and what
// they share. Its errors are faults that name the file and line.
func Load(ctx context.Context, files fs.FS, set limits.Set, o Options) (*Engine, error) {
	e := newEngine(set, o)
	modules, err := e.parse(files, o.Only)
	if err != nil {
		return nil, err
	}
	return e, e.compile(modules, ast.NewCompiler().WithCapabilities(capabilities()).WithStrict(true).WithSchemas(factsSchema()))
}

func newEngine(set limits.Set, o Options) *Engine {
	return &Engine{Limits: set, deadline: cmp.Or(o.Deadline, DefaultDeadline), only: o.Only}
}

// compile compiles the modules and puts the limits where rules look for them.
func (e *Engine) compile(modules map[string]*ast.Module, c *ast.Compiler) error {
	for _, id := range e.only {
		if !slices.ContainsFunc(e.Rules, func(r *Rule) bool { return r.ID == id }) {
			return fmt.Errorf("there is no rule %q", id)
		}
	}
	c.Compile(modules)
	if c.Failed() {
		return compileFaults(c.Errors)
	}
	values := make(map[string]any, len(e.Limits))
	for id, l := range e.Limits {
		values[id] = l.Value
	}
	e.compiler, e.needs = c, needed(c.Modules)
	e.store = inmem.NewFromObjectWithOpts(map[string]any{"limits": values}, inmem.OptReturnASTValuesOnRead(true), inmem.OptRoundTripOnWrite(false))
	return nil
}

// needed gives the names of the facts that rules read, so that the others need
// not be made into the engine's values. A rule that names the input as a whole
// needs them all: nil.
func needed(modules map[string]*ast.Module) map[string]bool {
	out, whole := map[string]bool{}, false
	for _, m := range modules {
		ast.WalkRefs(m, func(r ast.Ref) bool {
			if !r[0].Equal(ast.InputRootDocument) {
				return false
			}
			if len(r) > 1 {
				if name, ok := r[1].Value.(ast.String); ok {
					out[string(name)] = true
					return false
				}
			}
			whole = true
			return false
		})
	}
	if whole {
		return nil
	}
	return out
}

func byID(a, b *Rule) int { return strings.Compare(a.ID, b.ID) }

// parse reads every rule and the modules that rules share, leaving tests out.
func (e *Engine) parse(files fs.FS, only []string) (map[string]*ast.Module, error) {
	modules := map[string]*ast.Module{}
	err := fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || path.Ext(name) != ".rego" || strings.HasSuffix(name, "_test.rego") {
			return err
		}
		isRule := path.Base(name) == "rule.rego"
		if isRule && len(only) > 0 && !slices.Contains(only, ruleID(name)) {
			return nil
		}
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return fmt.Errorf("reading the rule %s: %w", name, err)
		}
		m, err := ast.ParseModuleWithOpts(name, string(text), ast.ParserOptions{Capabilities: capabilities(), ProcessAnnotation: isRule, RegoVersion: ast.RegoV1})
		if err != nil {
			var list ast.Errors
			if errors.As(err, &list) {
				return compileFaults(list)
			}
			return fmt.Errorf("parsing the rule %s: %w", name, err)
		}
		modules[name] = m
		if isRule {
			r, err := newRule(m, name, e.Limits)
			if err != nil {
				return err
			}
			e.Rules = append(e.Rules, r)
		}
		return nil
	})
	slices.SortFunc(e.Rules, byID)
	return modules, err
}

// ruleID gives the id that a rule's place asks for: FAMILY/NAME/rule.rego.
func ruleID(file string) string {
	parts := strings.Split(path.Dir(file), "/")
	if len(parts) < 2 {
		return file
	}
	return strings.Join(parts[len(parts)-2:], ".")
}

func factsSchema() *ast.SchemaSet {
	set := ast.NewSchemaSet()
	set.Put(ast.SchemaRootRef, facts.Schema())
	return set
}

// compileFaults gives the compiler's errors with their places, in order.
func compileFaults(errs ast.Errors) error {
	var list fault.List
	for _, err := range errs {
		f := fault.New(fault.Rule, fault.Place{}, "%s", err.Message)
		if l := err.Location; l != nil {
			at := fault.Position{Offset: l.Offset, Line: l.Row, Byte: l.Col, Rune: l.Col, UTF16: l.Col}
			f.Place = fault.Place{File: l.File, Start: at, End: at}
		}
		if err.Details != nil {
			f.Message += "; " + strings.Join(err.Details.Lines(), " ")
		}
		words := slices.DeleteFunc(strings.Fields(f.Message), func(w string) bool { return strings.Trim(w, "^") == "" })
		f.Message = strings.Join(words, " ") // one line, in which a caret would point at nothing
		list = append(list, f)
	}
	return list.Sorted()
}

// Judge runs every rule on the facts, side by side. Results come sorted by
// rule and subject. Faults are rules that did not run to their end; the others'
// results are given all the same. The error is the context's.
func (e *Engine) Judge(ctx context.Context, f *facts.Facts) ([]Result, fault.List, error) {
	input, err := toInput(f, e.needs)
	if err != nil {
		return nil, nil, fmt.Errorf("giving the facts to the rules: %w", err)
	}
	index := subjects(f)
	txn, err := e.store.NewTransaction(ctx)
	if err != nil {
		return nil, nil, fmt.Errorf("giving the limits to the rules: %w", err)
	}
	defer e.store.Abort(ctx, txn)
	results := make([][]Result, len(e.Rules))
	faults := make([]*fault.Fault, len(e.Rules))
	var next atomic.Int64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		// A worker takes rule after rule: a goroutine a rule would grow its stack anew each time.
		workers.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(e.Rules); i = int(next.Add(1)) - 1 {
				r := e.Rules[i]
				got, err := e.judgeOne(ctx, r, input, txn, index)
				if err != nil {
					faults[i] = fault.New(fault.Engine, fault.Place{File: r.File}, "the rule %s did not run to its end: %v", r.ID, err)
				}
				results[i] = got
			}
		})
	}
	workers.Wait()
	if err := ctx.Err(); err != nil {
		return nil, nil, fmt.Errorf("judging: %w", err)
	}
	var list fault.List
	for _, f := range faults {
		if f != nil {
			list = append(list, f)
		}
	}
	return slices.Concat(results...), list, nil
}

// found is the variable that a rule's results are bound to.
var found = ast.VarTerm("found")

func (e *Engine) judgeOne(ctx context.Context, r *Rule, input *ast.Term, txn storage.Transaction, index subjectIndex) ([]Result, error) {
	ctx, done := context.WithTimeout(ctx, e.deadline)
	defer done()
	cancel := topdown.NewCancel()
	defer context.AfterFunc(ctx, cancel.Cancel)()
	query := ast.NewBody(ast.Equality.Expr(found, ast.NewTerm(r.pkg.Path.Append(ast.StringTerm("results")))))
	answers, err := topdown.NewQuery(query).WithCompiler(e.compiler).WithStore(e.store).WithTransaction(txn).
		WithInput(input).WithCancel(cancel).WithStrictBuiltinErrors(true).Run(ctx)
	switch {
	case errors.Is(ctx.Err(), context.DeadlineExceeded):
		return nil, fmt.Errorf("it ran out of its %v", e.deadline)
	case err != nil:
		return nil, err
	case len(answers) != 1:
		return nil, errors.New("it gave no set of results")
	}
	return e.read(r, answers[0][found.Value.(ast.Var)].Value, index)
}
