package judge

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"sync"

	"github.com/open-policy-agent/opa/v1/ast"

	"trysquare/checker/facts"
)

// toValue builds the engine's value of a Go value straight, without JSON text
// between: structs by their json tags (embedded ones spread out, omitempty
// kept), slices, pointers, strings, booleans and numbers. Whole numbers become
// whole numbers, which compare several times faster.
func toValue(v any) (*ast.Term, error) { return term(reflect.ValueOf(v)) }

// toInput is toValue for facts of which only some lists are needed; nil is all.
func toInput(f *facts.Facts, needs map[string]bool) (*ast.Term, error) {
	v := reflect.ValueOf(f).Elem()
	var pairs [][2]*ast.Term
	for _, field := range fields(v.Type()) {
		fv := v.FieldByIndex(field.index)
		name := string(field.key.Value.(ast.String))
		if needs != nil && !needs[name] || field.omitempty && fv.IsZero() {
			continue
		}
		t, err := term(fv)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
		pairs = append(pairs, [2]*ast.Term{field.key, t})
	}
	return ast.NewTerm(ast.NewObject(pairs...)), nil
}

type field struct {
	index     []int
	key       *ast.Term
	omitempty bool
}

// fieldsOf is worked out once a type.
var fieldsOf sync.Map // reflect.Type -> []field

func fields(t reflect.Type) []field {
	if got, ok := fieldsOf.Load(t); ok {
		return got.([]field)
	}
	var out []field
	for _, f := range reflect.VisibleFields(t) {
		name, options, _ := strings.Cut(f.Tag.Get("json"), ",")
		if f.Anonymous || name == "" || name == "-" {
			continue
		}
		out = append(out, field{f.Index, ast.InternedTerm(name), strings.Contains(options, "omitempty")})
	}
	fieldsOf.Store(t, out)
	return out
}

func term(v reflect.Value) (*ast.Term, error) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return ast.NullTerm(), nil
		}
		return term(v.Elem())
	case reflect.Struct:
		all := fields(v.Type())
		pairs := make([][2]*ast.Term, 0, len(all))
		for _, f := range all {
			fv := v.FieldByIndex(f.index)
			if f.omitempty && fv.IsZero() {
				continue
			}
			t, err := term(fv)
			if err != nil {
				return nil, err
			}
			pairs = append(pairs, [2]*ast.Term{f.key, t})
		}
		return ast.NewTerm(ast.NewObject(pairs...)), nil
	case reflect.Slice:
		terms := make([]*ast.Term, v.Len())
		for i := range terms {
			t, err := term(v.Index(i))
			if err != nil {
				return nil, err
			}
			terms[i] = t
		}
		return ast.ArrayTerm(terms...), nil
	case reflect.String:
		return ast.StringTerm(v.String()), nil
	case reflect.Bool:
		return ast.InternedTerm(v.Bool()), nil
	case reflect.Int:
		return ast.InternedTerm(int(v.Int())), nil
	case reflect.Float64:
		return number(v.Float())
	}
	return nil, fmt.Errorf("facts cannot hold a %s", v.Type())
}

func number(f float64) (*ast.Term, error) {
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return nil, fmt.Errorf("facts hold a number that is none: %v", f)
	}
	if f == math.Trunc(f) && math.Abs(f) < 1<<53 {
		return ast.InternedTerm(int(f)), nil
	}
	return ast.NewTerm(ast.Number(strconv.FormatFloat(f, 'f', -1, 64))), nil
}
