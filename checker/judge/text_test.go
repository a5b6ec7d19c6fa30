package judge_test

import (
	"testing"

	"trysquare/checker/judge"
	"trysquare/checker/length"
)

// An inch is 25.4 mm: 600 mm are 23.622 in, nearest to 756/32 = 23 5/8.
func TestANumberIsWrittenInItsUnit(t *testing.T) {
	cases := []struct {
		v    float64
		kind string
		unit length.Unit
		want string
	}{
		{600, "mm", length.Millimetre, "600 mm"},
		{118.5, "mm", length.Millimetre, "118.5 mm"},
		{-6, "mm", length.Millimetre, "-6 mm"},
		{600, "mm", length.Inch, "23 5/8 in (600 mm)"},
		{12.7, "mm", length.Inch, "1/2 in (12.7 mm)"},
		{25.4, "mm", length.Inch, "1 in (25.4 mm)"},
		{290.4, "ml", length.Millimetre, "290 ml"},
		{290.4, "ml", length.Inch, "290 ml"},
		{48, "h", length.Inch, "48 h"},
		{1.5, "h", length.Millimetre, "1.5 h"},
		{0.155, "share", length.Millimetre, "15.5 %"},
		{0.07, "share", length.Millimetre, "7 %"}, // 7.000000000000001 in binary
		{1, "share", length.Inch, "100 %"},
		{7, "count", length.Inch, "7"},
		{7, "", length.Inch, "7"},
		{2.345678, "", length.Millimetre, "2.35"},
		{-0.001, "", length.Millimetre, "0"},
		{1234567, "count", length.Millimetre, "1234567"},
	}
	for _, c := range cases {
		if got := judge.Write(c.v, c.kind, c.unit); got != c.want {
			t.Errorf("%v as %q for a reader in %s: %q, want %q", c.v, c.kind, c.unit, got, c.want)
		}
	}
}

// spoken gives the result of a rule that measures 12.7 against 100 in the unit
// and brings a value of each sort.
func spoken(t *testing.T, unit string) (judge.Result, *float64) {
	t.Helper()
	e := load(t, tree(spec{
		name: "spoken", custom: "#   unit: " + unit + "\n#   limits: [hall.lowest]",
		body: `results contains {
	"kind": "fail", "subject": "E1", "measured": 12.7, "limit": "hall.lowest",
	"values": {"depth": 25.4, "part": 0.5, "why": "a switch {limit}", "pieces": ["E2", "E1"], "one": ["E1"], "none": []},
}`,
	}), judge.Options{})
	results, faults := judged(t, e, stage())
	if len(faults) > 0 || len(results) != 1 {
		t.Fatalf("%v and the faults %v, want one result", results, faults)
	}
	return results[0], e.LimitValue(results[0].LimitID)
}

func TestATextIsFilledWithWhatTheResultBrings(t *testing.T) {
	cases := []struct {
		text, rule string // the rule's unit
		unit       length.Unit
		want       string
	}{
		{"No words in braces.", "mm", length.Millimetre, "No words in braces."},
		{"{subject}: {measured}, at least {limit}", "mm", length.Millimetre, "E1: 12.7 mm, at least 100 mm"},
		{"{subject}: {measured}, at least {limit}", "mm", length.Inch, "E1: 1/2 in (12.7 mm), at least 3 15/16 in (100 mm)"},
		{"{measured} of {limit}", "ml", length.Inch, "13 ml of 100 ml"},
		{"{measured} of {limit}", "h", length.Inch, "12.7 h of 100 h"},
		{"{measured} of {limit}", "count", length.Inch, "12.7 of 100"},
		{"{depth:mm} or {depth}", "count", length.Millimetre, "25.4 mm or 25.4"},
		{"{depth:mm} or {depth}", "count", length.Inch, "1 in (25.4 mm) or 25.4"},
		{"{part:share}, {part:h}, {part:count}", "mm", length.Inch, "50 %, 0.5 h, 0.5"},
		{"by {pieces}", "mm", length.Millimetre, "by E2, E1"},
		{"by {one}, not {none}.", "mm", length.Millimetre, "by E1, not ."},
		{"{subject} {subject}", "mm", length.Millimetre, "E1 E1"},
		// A value is shown as it is: what comes from a plan must not be read as a text of the rule's.
		{"for {why}", "mm", length.Millimetre, "for a switch {limit}"},
	}
	for _, c := range cases {
		r, limit := spoken(t, c.rule)
		got, err := r.Fill(c.text, c.unit, limit)
		if err != nil || got != c.want {
			t.Errorf("%s in %s for a reader in %s: %q and the error %v, want %q", c.text, c.rule, c.unit, got, err, c.want)
		}
	}
}

func TestATextThatWantsWhatIsNotThereIsAnErrorThatNamesIt(t *testing.T) {
	r, limit := spoken(t, "mm")
	bare := r
	bare.Measured = nil
	cases := []struct {
		name, text string
		result     judge.Result
		limit      *float64
		want       string
	}{
		{"value", "{depth:mm} and {breadth:mm}", r, limit, "{breadth:mm}"},
		{"measure", "{measured} here", bare, limit, "{measured}"},
		{"limit", "{measured} of {limit}", r, nil, "{limit}"},
	}
	for _, c := range cases {
		_, err := c.result.Fill(c.text, length.Millimetre, c.limit)
		if want := "the text wants " + c.want + ", which the result does not bring"; err == nil || err.Error() != want {
			t.Errorf("%s: the error is %v, want %s", c.name, err, want)
		}
	}
}
