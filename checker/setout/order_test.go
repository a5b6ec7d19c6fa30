package setout_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/facts"
	"trysquare/checker/setout"
)

// fixing gives the order of fixing in few words: the piece, then what it meets fixed earlier on its left and right, "=" where they interlock.
func fixing(installs []facts.Install) []string {
	var out []string
	for i, one := range installs {
		text := one.Piece
		if b := one.LeftMeets; b != nil {
			text = b.Piece + map[bool]string{true: "=", false: "-"}[b.Interlocks] + text
		}
		if b := one.RightMeets; b != nil {
			text += map[bool]string{true: "=", false: "-"}[b.Interlocks] + b.Piece
		}
		if one.HooksBoth {
			text += " both"
		}
		if one.Position != i+1 || one.ID != one.Piece {
			text += fmt.Sprintf(" at %d, called %s", one.Position, one.ID)
		}
		out = append(out, text)
	}
	return out
}

func TestPiecesAreFixedInOrder(t *testing.T) {
	const window = `, "openings": {"win": {"kind": "window", "x": 600, "width": 600, "sill": 900, "head": 2000}}`
	for name, c := range map[string]struct {
		wall, run string
		want      []string
	}{
		"from the left":  {`"width": 2400`, ``, []string{"E1", "E1=E2", "E2=E3", "E3=E4"}},
		"from the right": {`"width": 2400`, `, "from": "right"`, []string{"E1", "E2=E1", "E3=E2", "E4=E3"}},
		// Joints at 0, 600, 1200: the two to the right of the middle, then the two to its left.
		"from the middle": {`"width": 2400`, `, "from": "middle"`, []string{"E3", "E3=E4", "E2=E3", "E1=E2"}},
		// The panel from 1200 to 1800 stands on the middle of 3000: it goes first.
		"from the middle of a panel": {`"width": 3000`, `, "from": "middle", "centre": "panel"`, []string{"E3", "E3=E4", "E4=E5", "E2=E3", "E1=E2"}},
		// A joint at 2300: pieces to 500, 1100, 1700, 2300, 2400.
		"from a line":        {`"width": 2400`, `, "from": "line", "start": 2300`, []string{"E5", "E4=E5", "E3=E4", "E2=E3", "E1=E2"}},
		"from its right end": {`"width": 2400`, `, "from": "line", "start": 2400`, []string{"E4", "E3=E4", "E2=E3", "E1=E2"}},
		"from its left end":  {`"width": 2400`, `, "from": "line"`, []string{"E1", "E1=E2", "E2=E3", "E3=E4"}},
		"as stated":          {`"width": 2400`, `, "fixed_in": ["E1", "E3", "E2", "E4"]`, []string{"E1", "E3", "E1=E2=E3 both", "E3=E4"}},
		// The second loses its recess: only the joint on its right hooks.
		"one side without": {`"width": 2400`, `, "pieces": [{"id": "A"}, {"id": "B", "width": 300, "cut": "left"}, {"id": "C"}], "fixed_in": ["A", "C", "B"]`, []string{"A", "C", "A-B=C"}},
		"course by course": {`"width": 1200`, `, "courses": [{"height": 1000}, {}]`, []string{"E1.1", "E1.1=E1.2", "E2.1", "E2.1=E2.2"}},
		// Each course from its own joint: at 600 below; at 900 above, so pieces to 300, 900, 1200.
		"courses from the middle": {`"width": 1200`, `, "from": "middle", "courses": [{"height": 1000}, {"start": 300}]`, []string{"E1.2", "E1.1=E1.2", "E2.3", "E2.2=E2.3", "E2.1=E2.2"}},
		"divided by a window":     {`"width": 1800` + window, ``, []string{"E1", "E1=E2 under", "E1=E2 over", "E2 under=E3"}},
		"a divided panel by name": {`"width": 1800` + window, `, "fixed_in": ["E2", "E1", "E3"]`, []string{"E2 under", "E2 over", "E1=E2 under", "E2 under=E3"}},
		"its parts by name":       {`"width": 1800` + window, `, "fixed_in": ["E2 over", "E1", "E2 under", "E3"]`, []string{"E2 over", "E1=E2 over", "E1=E2 under", "E2 over=E3"}},
	} {
		f := setOut(t, planOf(c.wall+`, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak"`+c.run+`}`))
		got := fixing(f.Installs)
		if name == "its parts by name" {
			got[3] = strings.Replace(got[3], "E2 under=", "E2 over=", 1) // both are fixed and hook: either may be named
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
		for _, one := range f.Installs {
			if one.Stated != strings.Contains(c.run, "fixed_in") || one.Run != "E" || one.On != "w" {
				t.Errorf("%s: %+v", name, one)
			}
		}
	}
}

func TestAnOrderThatDoesNotFitTheRunIsRefused(t *testing.T) {
	const at = "/runs/0/fixed_in"
	for fixedIn, want := range map[string]string{
		`["E1", "E5", "E2"]`:       at + `/1: there is no piece "E5" in the run "E"`,
		`["E1", "F1", "E2"]`:       at + `/1: there is no piece "F1" in the run "E"`, // of the other run
		`["E1", "E2", "E1"]`:       at + `/2: the piece "E1" is to be fixed a second time here`,
		`["E2"]`:                   at + `: the piece "E1" is left out of the order of fixing`,
		`[]`:                       at + `: the piece "E1" is left out of the order of fixing`,
		`["E2", "E9"]`:             at + `/1: there is no piece "E9" in the run "E"` + "\n" + at + `: the piece "E1" is left out of the order of fixing`,
		`["E2", "E2", "E1", "E1"]`: at + `/1: the piece "E2" is to be fixed a second time here` + "\n" + at + `/3: the piece "E1" is to be fixed a second time here`,
	} {
		p, err := decode("plan.json", []byte(planOf(`"width": 1200, "height": 2400}, "v": {"width": 600, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "fixed_in": `+fixedIn+`}, {"id": "F", "on": "v", "panel": "oak"}`)))
		if err != nil {
			t.Fatal(err)
		}
		if _, err = setout.Plan(context.Background(), p, assumed); err == nil || err.Error() != want {
			t.Errorf("%s: error %v, want %s", fixedIn, err, want)
		}
	}
}

// A panel has 15 slats: 6 + 14 x 40 + 28 = 594, and the next would begin at 606.
func TestSlatsOfAPieceAreCounted(t *testing.T) {
	for name, c := range map[string]struct {
		piece       string
		whole, part int
		interlocks  bool
	}{
		"a whole panel":                      {`{"id": "B"}`, 15, 0, true},
		"40 with its recess: 6 to 34":        {`{"id": "B", "width": 40, "cut": "right"}`, 1, 0, true},
		"30 with its recess: 6 to 30":        {`{"id": "B", "width": 30, "cut": "right"}`, 0, 1, true},
		"100: 6, 46, and 86 to 100":          {`{"id": "B", "width": 100, "cut": "right"}`, 2, 1, true},
		"100 without its recess: 500 to 600": {`{"id": "B", "width": 100, "cut": "left"}`, 2, 1, false}, // 486 to 514 in part, 526, 566
		"tapered, 40 below and 20 above":     {`{"id": "B", "width": 40, "width_top": 20, "cut": "right"}`, 0, 1, true},
		"tapered, 80 above and 40 below":     {`{"id": "B", "width": 40, "width_top": 80, "cut": "right"}`, 1, 1, true}, // 46 to 74 leans out of the piece
		"so narrow that it has none, 0 to 5": {`{"id": "B", "width": 5, "cut": "right"}`, 0, 0, true},
	} {
		f := setOut(t, planOf(`"width": 1200, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak", "pieces": [{"id": "A"}, `+c.piece+`]}`))
		got := find(t, f.Installs, "B")
		if got.WholeSlats != c.whole || got.PartSlats != c.part || got.Interlocks != c.interlocks {
			t.Errorf("%s: %d slats and %d in part, interlocks %t; want %d, %d, %t", name, got.WholeSlats, got.PartSlats, got.Interlocks, c.whole, c.part, c.interlocks)
		}
	}
}

func TestTheEndThatARunStartsAgainst(t *testing.T) {
	const leans = `, "measured": {"out_of_plumb": {"left": -5, "right": 7}}`
	left, right := &facts.FirstOnEnd{End: "left", OutOfPlumb: some(5)}, &facts.FirstOnEnd{End: "right", OutOfPlumb: some(7)}
	for name, c := range map[string]struct {
		wall, run string
		want      map[string]*facts.FirstOnEnd
	}{
		"left":                        {`"width": 1200` + leans, ``, map[string]*facts.FirstOnEnd{"E1": left}},
		"cut to it":                   {`"width": 1200` + leans, `, "start": -20`, map[string]*facts.FirstOnEnd{"E1": left}},
		"right":                       {`"width": 1200` + leans, `, "from": "right"`, map[string]*facts.FirstOnEnd{"E1": right}},
		"away from it":                {`"width": 1200` + leans, `, "start": 20`, nil},
		"from the middle":             {`"width": 2400` + leans, `, "from": "middle"`, nil},
		"fixed from the other side":   {`"width": 1200` + leans, `, "fixed_in": ["E2", "E1"]`, map[string]*facts.FirstOnEnd{"E2": right}},
		"unsaid":                      {`"width": 1200`, ``, map[string]*facts.FirstOnEnd{"E1": {End: "left"}}},
		"only the other's said":       {`"width": 1200, "measured": {"out_of_plumb": {"right": 7}}`, ``, map[string]*facts.FirstOnEnd{"E1": {End: "left"}}},
		"scribed":                     {`"width": 1200` + leans, `, "pieces": [{"id": "E1", "scribed": true}, {"id": "E2"}]`, map[string]*facts.FirstOnEnd{"E1": {End: "left", OutOfPlumb: some(5), Scribed: true}}},
		"each course":                 {`"width": 1200` + leans, `, "courses": [{"height": 1000}, {}]`, map[string]*facts.FirstOnEnd{"E1.1": left, "E2.1": left}},
		"between both, from the left": {`"width": 500` + leans, ``, map[string]*facts.FirstOnEnd{"E1": left}},
		"between both, from the middle: the end that leans more": {`"width": 500` + leans, `, "from": "middle", "centre": "panel"`, map[string]*facts.FirstOnEnd{"E1": right}},
	} {
		got := map[string]*facts.FirstOnEnd{}
		for _, one := range setOut(t, planOf(c.wall+`, "height": 2400`, `{"id": "E", "on": "w", "panel": "oak"`+c.run+`}`)).Installs {
			if one.FirstOnEnd != nil {
				got[one.Piece] = one.FirstOnEnd
			}
		}
		if len(got) == 0 {
			got = nil
		}
		if diff := cmp.Diff(c.want, got); diff != "" {
			t.Errorf("%s: want - got +\n%s", name, diff)
		}
	}
	// A leaf has no end that was measured.
	f := setOut(t, planOf(`"width": 3000, "height": 2400, "openings": {"d": {"kind": "door", "x": 0, "width": 768, "head": 2032, "leaf": {"width": 762, "height": 2024, "thickness": 40}}}`+leans, `{"id": "L", "on": "w/d/leaf", "panel": "oak"}`))
	if got := f.Installs[0].FirstOnEnd; got != nil {
		t.Errorf("a leaf starts against %+v", got)
	}
}
