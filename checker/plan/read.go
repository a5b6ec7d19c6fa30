package plan

import (
	"fmt"
	"math"
	"strconv"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"trysquare/checker/fault"
	"trysquare/checker/length"
	"trysquare/checker/source"
)

// decodeRaw reads a document that has passed its schema. Lengths come out in millimetres.
func decodeRaw(d *source.Document) (*rawPlan, error) {
	unit := length.Millimetre
	if u := d.Root.Member("units"); u != nil {
		unit = length.Unit(u.Text)
	}
	var bad fault.List
	lengths := json.UnmarshalFromFunc(func(dec *jsontext.Decoder, out *mm) error {
		tok, err := dec.ReadToken()
		if err != nil {
			return err
		}
		if tok.Kind() == '0' {
			n, err := strconv.ParseFloat(tok.String(), 64)
			*out = mm(unit.FromNumber(n))
			return err
		}
		v, err := length.Parse(tok.String())
		if err == nil && math.Abs(v) > longest {
			err = fmt.Errorf("%q is too large; the most is 1000000 in (25.4 km)", tok.String())
		}
		if err != nil {
			bad = append(bad, fault.New(fault.Schema, d.Place(string(dec.StackPointer())), "%v", err))
		}
		*out = mm(v)
		return nil
	})
	counts := json.UnmarshalFromFunc(func(dec *jsontext.Decoder, out *count) error {
		tok, err := dec.ReadToken()
		if err != nil {
			return err
		}
		n, err := strconv.ParseFloat(tok.String(), 64)
		*out = count(n)
		return err
	})
	var raw rawPlan
	if err := json.Unmarshal(d.Bytes, &raw, json.WithUnmarshalers(json.JoinUnmarshalers(lengths, counts))); err != nil {
		return nil, fault.New(fault.Schema, d.Place(""), "reading the plan: %v", err)
	}
	return &raw, bad.Sorted()
}

func optional(v *mm) *float64 {
	if v == nil {
		return nil
	}
	f := float64(*v)
	return &f
}

func or(v *mm, otherwise float64) float64 {
	if v == nil {
		return otherwise
	}
	return float64(*v)
}
