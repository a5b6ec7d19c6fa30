package judge

import (
	"cmp"
	"encoding/json"
	"fmt"
	"reflect"
	"runtime"
	"slices"
	"strings"

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
	Kind     Kind           `json:"kind"`
	Subject  string         `json:"subject"`
	Measured *float64       `json:"measured"`
	Limit    string         `json:"limit"`
	Values   map[string]any `json:"values"`
	Missing  string         `json:"missing"`
	Related  []string       `json:"related"` // ids of pieces
}

// read turns a rule's results into Results and holds them to the contract: a
// result that breaks it is a fault of the rule.
func (e *Engine) read(r *Rule, value any, index subjectIndex) ([]Result, error) {
	text, err := json.Marshal(value)
	if err != nil {
		return nil, fmt.Errorf("reading its results: %w", err)
	}
	dec := json.NewDecoder(strings.NewReader(string(text)))
	dec.DisallowUnknownFields()
	var list []raw
	if err := dec.Decode(&list); err != nil {
		return nil, fmt.Errorf("its results break the contract: %w", err)
	}
	if len(list) == 0 {
		return []Result{{Rule: r, Kind: NotApplicable}}, nil
	}
	out := make([]Result, len(list))
	seen := map[string]bool{}
	for i, raw := range list {
		if seen[raw.Subject] {
			return nil, fmt.Errorf("it gives two results for the %s %q", r.Subject, raw.Subject)
		}
		seen[raw.Subject] = true
		if out[i], err = e.accept(r, raw, index); err != nil {
			return nil, err
		}
	}
	slices.SortFunc(out, func(a, b Result) int { return cmp.Compare(a.Subject.ID, b.Subject.ID) })
	return out, nil
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

func parallel() int { return runtime.GOMAXPROCS(0) }
