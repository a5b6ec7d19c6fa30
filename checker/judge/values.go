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
	t, list, err := object(reflect.ValueOf(f).Elem(), needs)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", list, err)
	}
	return t, nil
}

// object builds a struct's value, of its fields those that are needed; nil is
// all. Beside an error stands the field that it is of.
func object(v reflect.Value, needs map[string]bool) (*ast.Term, string, error) {
	all := fields(v.Type())
	pairs := make([][2]*ast.Term, 0, len(all))
	for _, f := range all {
		fv := v.FieldByIndex(f.index)
		if f.omitempty && fv.IsZero() || needs != nil && !needs[f.name] {
			continue
		}
		t, err := term(fv)
		if err != nil {
			return nil, f.name, err
		}
		pairs = append(pairs, [2]*ast.Term{f.key, t})
	}
	return ast.NewTerm(ast.NewObject(pairs...)), "", nil
}

type field struct {
	index     []int
	name      string
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
		out = append(out, field{f.Index, name, ast.InternedTerm(name), strings.Contains(options, "omitempty")})
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
		t, _, err := object(v, nil)
		return t, err
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
