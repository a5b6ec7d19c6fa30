package judge_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"time"

	"trysquare/checker/facts"
	"trysquare/checker/fault"
	"trysquare/checker/judge"
)

// The engine's default makes such an error a silence, and the rule finds nothing.
func TestARuleWhoseFunctionFailsIsAFault(t *testing.T) {
	cases := map[string]struct{ body, want string }{
		"division by zero": {"results contains {\"kind\": \"pass\", \"subject\": p.id, \"measured\": 100 / (p.height - 40)} if some p in input.pieces", "div: divide by zero"},
		"negated division": {"results contains {\"kind\": \"pass\", \"subject\": p.id} if {\n\tsome p in input.pieces\n\tnot 1 / (p.height - 40) > 7\n}", "div: divide by zero"},
		"remainder of parts": {"results contains {\"kind\": \"pass\", \"subject\": p.id, \"measured\": p.height % 3} if some p in input.pieces",
			"rem: modulo on floating-point number"},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			results, faults := judged(t, load(t, tree(spec{name: "broken", body: c.body}, sound), judge.Options{}), stage())
			if len(faults) != 1 || faults[0].Kind != fault.Engine || faults[0].Place.File != "hall/broken/rule.rego" {
				t.Fatalf("faults %v, want one of kind engine in hall/broken/rule.rego", faults)
			}
			if m := faults[0].Message; !strings.HasPrefix(m, "the rule hall.broken did not run to its end: ") || !strings.HasSuffix(m, c.want) {
				t.Errorf("it says %q, want the rule's name first and %q last", m, c.want)
			}
			if len(results) != 1 || results[0].Rule.ID != "hall.sound" {
				t.Errorf("beside it come %v, want the one of hall.sound", results)
			}
		})
	}
}

// endless compares every three pieces: 2.7 thousand million times on the plan below.
var endless = spec{name: "endless", body: `results contains {"kind": "pass", "subject": "E0"} if {
	count([1 |
		some a in input.pieces
		some b in input.pieces
		some c in input.pieces
		a.height + b.height > c.height + 5000
	]) > 0
}`}

func longWall() *facts.Facts {
	f := &facts.Facts{}
	for i := range 1400 {
		f.Pieces = append(f.Pieces, facts.Piece{About: facts.About{ID: fmt.Sprint("E", i)}, Height: 2378})
	}
	return f
}

func TestARuleThatRunsOutOfTimeIsAFaultAndTheOthersResultsCome(t *testing.T) {
	quick := spec{name: "quick", body: `results contains {"kind": "pass", "subject": "E1399"}`}
	e := load(t, tree(endless, quick), judge.Options{Deadline: 20 * time.Millisecond})
	before := time.Now()
	results, faults := judged(t, e, longWall())
	if took := time.Since(before); took > 2*time.Second {
		t.Errorf("it took %v to give up a rule that had 20 ms", took)
	}
	if len(faults) != 1 || faults[0].Kind != fault.Engine || faults[0].Place.File != "hall/endless/rule.rego" ||
		faults[0].Message != "the rule hall.endless did not run to its end: it ran out of its 20ms" {
		t.Errorf("faults %v, want that hall.endless ran out of its 20ms", faults)
	}
	if len(results) != 1 || results[0].Rule.ID != "hall.quick" || results[0].Subject.ID != "E1399" {
		t.Errorf("beside it come %v, want the one of hall.quick", results)
	}
}

func TestACancelledContextIsAnErrorAndGivesNoResults(t *testing.T) {
	e := load(t, tree(endless, sound), judge.Options{})
	cancelled, cancel := context.WithCancel(context.Background())
	cancel()
	soon, stop := context.WithTimeout(context.Background(), 20*time.Millisecond)
	defer stop()
	for name, c := range map[string]struct {
		ctx  context.Context
		want error
	}{"before": {cancelled, context.Canceled}, "on the way": {soon, context.DeadlineExceeded}} {
		results, faults, err := e.Judge(c.ctx, longWall())
		if !errors.Is(err, c.want) || results != nil || faults != nil {
			t.Errorf("%s: %d results, faults %v and the error %v, want %v alone", name, len(results), faults, err, c.want)
		}
	}
}

func TestFactsThatHoldNoNumberAreAnError(t *testing.T) {
	e := shipped(t, judge.Options{}) // its rules need the pieces
	f := stage()
	f.Pieces[1].Narrowest.Width = math.NaN()
	results, faults, err := e.Judge(context.Background(), f)
	if err == nil || results != nil || faults != nil {
		t.Errorf("%v, %v and the error %v, want the error alone", results, faults, err)
	}
}

func TestTheSameFactsGiveEqualResultsTwentyTimesAndSideBySide(t *testing.T) {
	e := shipped(t, judge.Options{})
	f := planFacts(t, "../../plans/practice-room-first-try.json")
	first, faults := judged(t, e, f)
	if len(faults) > 0 {
		t.Fatalf("rules that ship with the program fail: %v", faults)
	}
	kinds := map[judge.Kind]int{}
	for _, r := range first {
		kinds[r.Kind]++
	}
	if kinds[judge.Pass] == 0 || kinds[judge.Fail] == 0 || kinds[judge.Review] == 0 || kinds[judge.NotApplicable] == 0 {
		t.Fatalf("the plan gives %v; results of too few kinds show nothing", kinds)
	}
	again := func() {
		if got, faults, err := e.Judge(context.Background(), f); err != nil || len(faults) > 0 || !reflect.DeepEqual(got, first) {
			t.Errorf("another time the results differ; faults %v, error %v", faults, err)
		}
	}
	for range 20 {
		again()
	}
	var wg sync.WaitGroup
	for range 4 {
		wg.Go(func() {
			for range 5 {
				again()
			}
		})
	}
	wg.Wait()
}

func TestOnlyTheRulesThatAreAskedForAreLoaded(t *testing.T) {
	files := tree(sound, spec{name: "other", body: "results := set()"})
	// Not asked for, it is not even read.
	files["hall/torn/rule.rego"] = &fstest.MapFile{Data: []byte("package rules.hall.torn\n\nresults contains")}
	e := load(t, files, judge.Options{Only: []string{"hall.sound"}})
	if len(e.Rules) != 1 || e.Rules[0].ID != "hall.sound" {
		t.Errorf("rules %v, want hall.sound alone", e.Rules)
	}
	results, faults := judged(t, e, stage())
	if len(results) != 1 || len(faults) > 0 || results[0].Rule.ID != "hall.sound" {
		t.Errorf("it gives %v and the faults %v, want the result of hall.sound", results, faults)
	}
}

// A check that did not run must not look like one that passed.
func TestARuleThatIsAskedForAndNotThereIsAnError(t *testing.T) {
	_, err := judge.Load(context.Background(), tree(sound), hallLimits(), judge.Options{Only: []string{"hall.sound", "hall.soudn"}})
	if err == nil || !strings.Contains(err.Error(), `there is no rule "hall.soudn"`) {
		t.Errorf("the error is %v, want that there is no rule hall.soudn", err)
	}
}

func TestALimitIsFoundByItsIDOnly(t *testing.T) {
	e := load(t, tree(sound), judge.Options{})
	if v := e.LimitValue("hall.widest"); v == nil || *v != 600 {
		t.Errorf("hall.widest is %v, want 600", v)
	}
	if v := e.LimitValue("hall.narrowest"); v != nil {
		t.Errorf("hall.narrowest is %v, and nobody set it", *v)
	}
}
