package judge

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"

	"trysquare/checker/facts"
)

// filler fills a value of any of the facts' types. Lists are never nil, as in
// facts that geometry has worked out.
type filler struct {
	rand *rand.Rand
	// full gives every list members and every pointer something to point at; without it, each is left out now and then.
	full bool
}

func (f filler) skips() bool { return !f.full && f.rand.IntN(2) == 0 }

func (f filler) fill(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer:
		if !f.skips() {
			v.Set(reflect.New(v.Type().Elem()))
			f.fill(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			f.fill(v.Field(i))
		}
	case reflect.Slice:
		n := f.rand.IntN(3)
		if f.full {
			n = 2
		}
		v.Set(reflect.MakeSlice(v.Type(), n, n))
		for i := range n {
			f.fill(v.Index(i))
		}
	case reflect.String:
		if !f.skips() {
			v.SetString(words[f.rand.IntN(len(words))])
		}
	case reflect.Bool:
		v.SetBool(f.full || f.rand.IntN(2) == 0)
	case reflect.Int:
		if !f.skips() {
			v.SetInt(int64(1 + f.rand.IntN(100_000)))
		}
	case reflect.Float64:
		if !f.skips() {
			v.SetFloat(f.number())
		}
	default:
		panic(fmt.Sprintf("nobody said how to fill a %s", v.Type()))
	}
}

// words are such as stand in plans, with what JSON text has to escape.
var words = []string{"E1", "east/door/leaf", "/walls/east~1west", "größe \"<&>\" \\ \u2028\t", "石", "🪚", "0", "true", "null"}

// number gives lengths: whole, to a hundredth, very small, very large, and as
// they come; never 0, so that a filled fact is never left out.
func (f filler) number() float64 {
	whole := float64(1 + f.rand.IntN(1_000_000))
	switch f.rand.IntN(6) {
	case 0:
		return whole
	case 1:
		return -whole
	case 2:
		return math.Round(whole) / 100
	case 3:
		return whole * 1e-12
	case 4:
		return whole * 1e17
	}
	return whole * (f.rand.Float64() + 0.001)
}

func filled(seed uint64, full bool) *facts.Facts {
	var f facts.Facts
	filler{rand.New(rand.NewPCG(seed, 0)), full}.fill(reflect.ValueOf(&f).Elem())
	return &f
}
