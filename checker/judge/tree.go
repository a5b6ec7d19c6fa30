package judge

import (
	"bytes"
	"fmt"

	"github.com/go-json-experiment/json/jsontext"
	"github.com/open-policy-agent/opa/v1/ast"
)

// A packed module is its syntax tree as nested JSON lists, since reading that
// takes a quarter of the time and memory of parsing Rego:
//
//	term   ["n"] null  ["t"] ["f"]  ["0", "1.5"]  ["s", "text"]  ["v", "name"]
//	       ["r", term...] reference  ["a", term...] array  ["e", term...] set
//	       ["o", key, value, ...] object  ["c", term...] call
//	       ["A", term, body] ["E", term, body] ["O", key, value, body] comprehensions
//	body   [expr...]
//	expr   [negated, "t", term]  [negated, "c", operator, operand...]  [negated, "y", key, value, domain, body] every
//	rule   [default, assigns, ref, [arg...], key or ["-"], value or ["-"], body, rule or null (else)]

// encodeRule gives a compiled rule as a tree.
func encodeRule(r *ast.Rule) (any, error) {
	if r == nil {
		return nil, nil
	}
	var e encoder
	args := []any{}
	for _, a := range r.Head.Args {
		args = append(args, e.term(a))
	}
	otherwise, err := encodeRule(r.Else)
	if err != nil {
		return nil, err
	}
	tree := []any{r.Default, r.Head.Assign, e.term(ast.NewTerm(r.Head.Ref())), args, e.term(r.Head.Key), e.term(r.Head.Value), e.body(r.Body), otherwise}
	return tree, e.err
}

type encoder struct{ err error }

func (e *encoder) body(b ast.Body) []any {
	out := []any{}
	for _, expr := range b {
		if len(expr.With) > 0 {
			e.err = fmt.Errorf("with cannot be packed: %v", expr)
		}
		one := []any{expr.Negated}
		switch terms := expr.Terms.(type) {
		case *ast.Term:
			one = append(one, "t", e.term(terms))
		case []*ast.Term:
			one = append(append(one, "c"), e.terms(terms)...)
		case *ast.Every:
			one = append(one, "y", e.term(terms.Key), e.term(terms.Value), e.term(terms.Domain), e.body(terms.Body))
		default:
			e.err = fmt.Errorf("this cannot be packed: %v", expr)
		}
		out = append(out, one)
	}
	return out
}

func (e *encoder) terms(list []*ast.Term) []any {
	out := []any{}
	for _, t := range list {
		out = append(out, e.term(t))
	}
	return out
}

func (e *encoder) term(t *ast.Term) []any {
	if t == nil {
		return []any{"-"}
	}
	tagged := func(tag string, list []*ast.Term) []any { return append([]any{tag}, e.terms(list)...) }
	switch v := t.Value.(type) {
	case ast.Null:
		return []any{"n"}
	case ast.Boolean:
		if v {
			return []any{"t"}
		}
		return []any{"f"}
	case ast.Number:
		return []any{"0", string(v)}
	case ast.String:
		return []any{"s", string(v)}
	case ast.Var:
		return []any{"v", string(v)}
	case ast.Ref:
		return tagged("r", v)
	case ast.Call:
		return tagged("c", v)
	case *ast.Array:
		out := []any{"a"}
		v.Foreach(func(item *ast.Term) { out = append(out, e.term(item)) })
		return out
	case ast.Set:
		return tagged("e", v.Slice())
	case ast.Object:
		out := []any{"o"}
		v.Foreach(func(k, item *ast.Term) { out = append(out, e.term(k), e.term(item)) })
		return out
	case *ast.ArrayComprehension:
		return []any{"A", e.term(v.Term), e.body(v.Body)}
	case *ast.SetComprehension:
		return []any{"E", e.term(v.Term), e.body(v.Body)}
	case *ast.ObjectComprehension:
		return []any{"O", e.term(v.Key), e.term(v.Value), e.body(v.Body)}
	}
	e.err = fmt.Errorf("this cannot be packed: %v", t)
	return nil
}

// decodeModule reads a module's rules from their trees.
func decodeModule(pkg *ast.Package, trees jsontext.Value) (m *ast.Module, err error) {
	d := decoder{dec: jsontext.NewDecoder(bytes.NewReader(trees))}
	m = &ast.Module{Package: pkg}
	d.list(func() { m.Rules = append(m.Rules, d.rule(m)) })
	return m, d.err
}

// decoder keeps the first error; after it, what it gives means nothing.
type decoder struct {
	dec *jsontext.Decoder
	err error
}

func (d *decoder) token() jsontext.Token {
	if d.err != nil {
		return jsontext.EndArray // ends every list
	}
	t, err := d.dec.ReadToken()
	if err != nil {
		d.err = fmt.Errorf("reading a packed rule: %w", err)
		return jsontext.EndArray
	}
	return t
}

// list reads a list whose items the function reads.
func (d *decoder) list(item func()) {
	if d.token().Kind() == '[' {
		d.items(item)
	}
}

// items reads what is left of a list that has begun.
func (d *decoder) items(item func()) {
	for d.err == nil && d.dec.PeekKind() != ']' {
		item()
	}
	d.token()
}

func (d *decoder) truth() bool { return d.token().Kind() == 't' }

func (d *decoder) rule(m *ast.Module) *ast.Rule {
	if d.token().Kind() != '[' {
		return nil // null: there is no else
	}
	r := &ast.Rule{Module: m, Default: d.truth(), Head: &ast.Head{Assign: d.truth()}}
	r.Head.Reference, _ = d.term().Value.(ast.Ref)
	if len(r.Head.Reference) == 1 {
		r.Head.Name, _ = r.Head.Reference[0].Value.(ast.Var)
	}
	d.list(func() { r.Head.Args = append(r.Head.Args, d.term()) })
	r.Head.Key, r.Head.Value, r.Body = d.term(), d.term(), d.body()
	r.Else = d.rule(m)
	d.token()
	return r
}

func (d *decoder) body() ast.Body {
	var out ast.Body
	d.list(func() {
		d.token() // the expression's own bracket
		expr := &ast.Expr{Negated: d.truth(), Index: len(out)}
		switch d.token().String() {
		case "t":
			expr.Terms = d.term()
			d.token()
		case "y":
			expr.Terms = &ast.Every{Key: d.term(), Value: d.term(), Domain: d.term(), Body: d.body()}
			d.token()
		default:
			var terms []*ast.Term
			d.items(func() { terms = append(terms, d.term()) })
			expr.Terms = terms
		}
		out = append(out, expr)
	})
	return out
}

// term reads a term; nil where there is none.
func (d *decoder) term() *ast.Term {
	d.token()
	tag := d.token().String()
	var value ast.Value
	switch tag {
	case "-":
		d.token()
		return nil
	case "n":
		value = ast.NullValue
	case "t", "f":
		value = ast.Boolean(tag == "t")
	case "0":
		value = ast.Number(d.token().String())
	case "s":
		value = ast.InternedValue(d.token().String())
	case "v":
		value = ast.Var(d.token().String())
	case "A":
		value = &ast.ArrayComprehension{Term: d.term(), Body: d.body()}
	case "E":
		value = &ast.SetComprehension{Term: d.term(), Body: d.body()}
	case "O":
		value = &ast.ObjectComprehension{Key: d.term(), Value: d.term(), Body: d.body()}
	default:
		return ast.NewTerm(d.collection(tag))
	}
	d.token()
	return ast.NewTerm(value)
}

func (d *decoder) collection(tag string) ast.Value {
	var terms []*ast.Term
	d.items(func() { terms = append(terms, d.term()) })
	switch tag {
	case "r":
		return ast.Ref(terms)
	case "c":
		return ast.Call(terms)
	case "a":
		return ast.NewArray(terms...)
	case "e":
		return ast.NewSet(terms...)
	case "o":
		pairs := make([][2]*ast.Term, 0, len(terms)/2)
		for i := 1; i < len(terms); i += 2 {
			pairs = append(pairs, [2]*ast.Term{terms[i-1], terms[i]})
		}
		return ast.NewObject(pairs...)
	}
	if d.err == nil {
		d.err = fmt.Errorf("reading a packed rule: there is no term %q", tag)
	}
	return ast.NullValue
}
