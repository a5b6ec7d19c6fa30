package judge

import (
	"cmp"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/open-policy-agent/opa/v1/ast"

	"trysquare/checker/facts"
	"trysquare/checker/length"
)

// Kind is the outcome for one subject, in the words of SARIF 2.1.0.
type Kind string

const (
	Pass          Kind = "pass"
	Fail          Kind = "fail"
	Open          Kind = "open"          // the plan does not say
	Review        Kind = "review"        // only a competent person can say
	NotApplicable Kind = "notApplicable" // the plan has no such subject
)

// Result is what a rule found of one subject.
type Result struct {
	Rule     *Rule
	Kind     Kind
	Subject  Subject
	Measured *float64
	LimitID  string
	Values   map[string]any // what the rule's texts show besides
	Missing  string         // for Open: completes "the plan does not say ..."
	Related  []Subject
}

// Subject is a fact that a result is about.
type Subject struct {
	facts.About
	Piece string // the piece that it is or belongs to, "" where it is none's
	Order int    // its piece's place in the list of pieces, along the wall; where it is no piece's, its own place in its list
}

// subjectIndex finds a subject by its kind and id.
type subjectIndex map[string]map[string]Subject

// subjects gathers every fact that is a subject. A kind is the name of its list
// in the facts, without the plural.
func subjects(f *facts.Facts) subjectIndex {
	index := subjectIndex{"piece": {}}
	for _, p := range f.Pieces {
		index.add("piece", reflect.ValueOf(p)) // first: the others take their order from it
	}
	v := reflect.ValueOf(*f)
	for _, sf := range reflect.VisibleFields(v.Type()) {
		name, _, _ := strings.Cut(sf.Tag.Get("json"), ",")
		kind := singular(name)
		if kind == "piece" {
			continue
		}
		index[kind] = map[string]Subject{}
		fv := v.FieldByIndex(sf.Index)
		switch fv.Kind() {
		case reflect.Slice:
			for i := range fv.Len() {
				index.add(kind, fv.Index(i))
			}
		case reflect.Pointer:
			if !fv.IsNil() {
				index.add(kind, fv.Elem())
			}
		default:
			index.add(kind, fv)
		}
	}
	return index
}

func (x subjectIndex) add(kind string, v reflect.Value) {
	s, ok := v.Interface().(interface{ Subject() facts.About })
	if !ok {
		return
	}
	out := Subject{About: s.Subject(), Order: len(x[kind])}
	if piece := v.FieldByName("Piece"); piece.IsValid() && piece.Kind() == reflect.String {
		if p, ok := x["piece"][piece.String()]; ok {
			out.Piece, out.Order = p.ID, p.Order
		}
	}
	if kind == "piece" {
		out.Piece = out.ID
	}
	x[kind][out.ID] = out
}

func singular(name string) string {
	switch name {
	case "leaves":
		return "leaf"
	case "boards":
		return name
	}
	return strings.TrimSuffix(name, "s")
}

// raw is a result as a rule gives it.
type raw struct {
	Kind     Kind
	Subject  string
	Measured *float64
	Limit    string
	Values   map[string]any
	Missing  string
	Related  []string // ids of pieces
}

// read turns a rule's results into Results and holds them to the contract: a
// result that breaks it is a fault of the rule.
func (e *Engine) read(r *Rule, value ast.Value, index subjectIndex) ([]Result, error) {
	set, ok := value.(ast.Set)
	if !ok {
		return nil, errors.New("its results are no set")
	}
	if set.Len() == 0 {
		return []Result{{Rule: r, Kind: NotApplicable}}, nil
	}
	seen := map[string]bool{}
	out := make([]Result, 0, set.Len())
	for _, t := range set.Slice() {
		raw, err := readOne(t)
		if err != nil {
			return nil, fmt.Errorf("its results break the contract: %w", err)
		}
		if seen[raw.Subject] {
			return nil, fmt.Errorf("it gives two results for the %s %q", r.Subject, raw.Subject)
		}
		seen[raw.Subject] = true
		result, err := e.accept(r, raw, index)
		if err != nil {
			return nil, err
		}
		out = append(out, result)
	}
	slices.SortFunc(out, func(a, b Result) int { return cmp.Compare(a.Subject.ID, b.Subject.ID) })
	return out, nil
}

// readOne reads a result straight from the engine's value.
func readOne(t *ast.Term) (raw, error) {
	var out raw
	obj, ok := t.Value.(ast.Object)
	if !ok {
		return out, errors.New("a result is no object")
	}
	err := obj.Iter(func(k, v *ast.Term) error {
		name, _ := k.Value.(ast.String)
		var err error
		switch name {
		case "kind":
			out.Kind = Kind(text(v, &err))
		case "subject":
			out.Subject = text(v, &err)
		case "limit":
			out.Limit = text(v, &err)
		case "missing":
			out.Missing = text(v, &err)
		case "measured":
			n, ok := v.Value.(ast.Number)
			f, isFloat := n.Float64()
			if !ok || !isFloat {
				return fmt.Errorf("measured is no number")
			}
			out.Measured = &f
		case "values":
			out.Values, err = values(v)
		case "related":
			err = each(v, func(item *ast.Term) error {
				var err error
				out.Related = append(out.Related, text(item, &err))
				return err
			})
		default:
			return fmt.Errorf("a result has no %v", k)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
		return nil
	})
	return out, err
}

func text(t *ast.Term, err *error) string {
	s, ok := t.Value.(ast.String)
	if !ok {
		*err = fmt.Errorf("%v is no text", t)
	}
	return string(s)
}

func each(t *ast.Term, do func(*ast.Term) error) error {
	list, ok := t.Value.(*ast.Array)
	if !ok {
		return fmt.Errorf("%v is no list", t)
	}
	return list.Iter(do)
}

// values reads what a rule's texts show: numbers, texts, and lists of texts.
func values(t *ast.Term) (map[string]any, error) {
	obj, ok := t.Value.(ast.Object)
	if !ok {
		return nil, fmt.Errorf("%v is no object", t)
	}
	out := make(map[string]any, obj.Len())
	return out, obj.Iter(func(k, v *ast.Term) error {
		name, _ := k.Value.(ast.String)
		switch got := v.Value.(type) {
		case ast.String:
			out[string(name)] = string(got)
		case ast.Number:
			f, ok := got.Float64()
			if !ok {
				return fmt.Errorf("%s: %v is out of range", name, v)
			}
			out[string(name)] = f
		case *ast.Array:
			words := []string{}
			err := each(v, func(item *ast.Term) error {
				var err error
				words = append(words, text(item, &err))
				return err
			})
			if err != nil {
				return fmt.Errorf("%s: %w", name, err)
			}
			out[string(name)] = words
		default:
			return fmt.Errorf("%s: %v is neither a number, a text nor a list of texts", name, v)
		}
		return nil
	})
}

func (e *Engine) accept(r *Rule, raw raw, index subjectIndex) (Result, error) {
	about, ok := index[r.Subject][raw.Subject]
	switch {
	case !ok:
		return Result{}, fmt.Errorf("it names the %s %q, which is not in the facts", r.Subject, raw.Subject)
	case !slices.Contains([]Kind{Pass, Fail, Open, Review}, raw.Kind):
		return Result{}, fmt.Errorf("%q is no kind of result", raw.Kind)
	case raw.Limit != "" && !slices.Contains(r.Limits, raw.Limit):
		return Result{}, fmt.Errorf("it compares with the limit %q, which its metadata does not name", raw.Limit)
	case raw.Kind == Review && r.Asks == nil:
		return Result{}, fmt.Errorf("it asks, and its metadata does not say whom")
	case raw.Kind == Open && raw.Missing == "":
		return Result{}, fmt.Errorf("it is open and does not say what is missing")
	}
	out := Result{Rule: r, Kind: raw.Kind, Subject: about, Measured: raw.Measured, LimitID: raw.Limit, Values: raw.Values, Missing: raw.Missing}
	for _, id := range raw.Related {
		other, ok := index["piece"][id]
		if !ok {
			return Result{}, fmt.Errorf("it relates the piece %q, which is not in the facts", id)
		}
		out.Related = append(out.Related, other)
	}
	if raw.Kind == Fail || raw.Kind == Review {
		for _, text := range []string{r.Says, r.Do} {
			if _, err := out.Fill(text, length.Millimetre, e.LimitValue(raw.Limit)); err != nil {
				return Result{}, err
			}
		}
	}
	return out, nil
}

// LimitValue gives a limit's number, or nil where there is none of that id.
func (e *Engine) LimitValue(id string) *float64 {
	if l, ok := e.Limits[id]; ok {
		return &l.Value
	}
	return nil
}
