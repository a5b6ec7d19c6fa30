package judge_test

import (
	"context"
	"io/fs"
	"os"
	"testing"

	"trysquare/checker/facts"
	"trysquare/checker/judge"
	"trysquare/checker/limits"
	"trysquare/checker/plan"
	"trysquare/checker/setout"
	"trysquare/checker/source"
	"trysquare/rules"
)

// shippedLimits are those of the rules that ship with the program.
func shippedLimits(t testing.TB) limits.Set {
	t.Helper()
	text, err := fs.ReadFile(rules.Files, rules.LimitsFile)
	if err != nil {
		t.Fatal(err)
	}
	set, err := limits.Parse(rules.LimitsFile, text)
	if err != nil {
		t.Fatal(err)
	}
	return set
}

func shipped(t testing.TB, o judge.Options) *judge.Engine {
	t.Helper()
	e, err := judge.Load(context.Background(), rules.Files, shippedLimits(t), o)
	if err != nil {
		t.Fatal(err)
	}
	return e
}

func planFacts(t testing.TB, file string) *facts.Facts {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return setOut(t, file, text)
}

// setOut takes a plan's text the way that the program does, as far as its facts.
func setOut(t testing.TB, name string, text []byte) *facts.Facts {
	t.Helper()
	d, err := source.Parse(name, text)
	if err != nil {
		t.Fatal(err)
	}
	p, err := plan.Decode(d)
	if err != nil {
		t.Fatal(err)
	}
	f, err := setout.Plan(context.Background(), p, setout.Assumptions{CableStrip: 150, Kerf: 3})
	if err != nil {
		t.Fatal(err)
	}
	return f
}
