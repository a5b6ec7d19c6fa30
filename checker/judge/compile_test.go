package judge_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"trysquare/checker/judge"
)

// body is the line of lowRule that these tests put their mistakes behind; a tab
// and 26 characters, it is line 18 of the file, and what follows starts in column 30.
const body = "some piece in input.pieces"

func TestWhatDoesNotCompileIsRefusedAtItsPlace(t *testing.T) {
	cases := []struct {
		name, old, by, place string
		says                 string // what the message must say in one piece
	}{
		{"bracket too many", body, body + ")", "18:28", "unexpected"},
		{"operator without a right side", body, body + "; piece.height >", "19:1", "unexpected"},
		{"place counted in characters, not bytes", body, `"öö" != "é"; ` + body + ")", "18:41", "unexpected"},
		{"sum of a text and a number", body, body + "; piece.id + 1 == 2", "18:30", "plus: invalid argument(s)"},
		{"text where a list is wanted", body, body + `; concat("-", 7) == "7"`, "18:30", "concat: invalid argument(s)"},
		{"function that nobody wrote", body, body + "; hall.high(piece)", "18:30", "undefined function"},
		{"variable that nothing binds", body, body + "; depth > 2", "18:30", "depth"},
		{"import of nothing that is used", "package rules.hall.low", "package rules.hall.low\n\nimport data.rules.lib", "17:1", "lib"},
		{"misspelt list of facts", "input.pieces", "input.piecez", "18:16", "undefined ref: input.piecez"},
		{"misspelt fact on an item of a list", "piece.height", "piece.hieght", "17:68", "undefined ref: piece.hieght"},
		{"misspelt fact behind not", body, body + "; not piece.riped", "18:34", "undefined ref: piece.riped"},
		{"misspelt fact in an object in an item", body, body + "; piece.narrowest.widht < 3", "18:30", "undefined ref: piece.narrowest.widht"},
		{"misspelt fact that may be absent", body, body + "; some f in input.fixings; f.background.kindd", "18:55", "undefined ref: f.background.kindd"},
		{"misspelt fact in a list in an item", body, body + "; some f in input.fixings; some s in f.screws.places; s.inwall > 1", "18:82", "undefined ref: s.inwall"},
		{"fact of another kind", body, body + "; piece.jamb", "18:30", "undefined ref: piece.jamb"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := refused(t, fstest.MapFS{lowFile: {Data: []byte(replace(t, c.old, c.by))}})
			if place := got.Place.String(); place != lowFile+":"+c.place {
				t.Errorf("it stands at %s, want %s:%s; %s", place, lowFile, c.place, got.Message)
			}
			if !strings.Contains(got.Message, c.says) {
				t.Errorf("it says %q, which lacks %q", got.Message, c.says)
			}
			if strings.ContainsAny(got.Message, "\n^") || strings.Contains(got.Message, "  ") {
				t.Errorf("the message is not one line for a reader: %q", got.Message)
			}
		})
	}
}

func TestMetadataThatIsNoYAMLIsRefusedInOneLine(t *testing.T) {
	for name, by := range map[string]string{"bracket": "level: [error", "title": "level: {a: b} c"} {
		got := refused(t, fstest.MapFS{lowFile: {Data: []byte(replace(t, "level: error", by))}})
		if got.Place.File != lowFile || got.Place.Start.Line < 3 || got.Place.Start.Line > 14 {
			t.Errorf("%s: it stands at %v, want a line of the METADATA comment", name, got.Place)
		}
		if strings.ContainsAny(got.Message, "\n^") {
			t.Errorf("%s: the message is not one line: %q", name, got.Message)
		}
	}
}

// A misspelt fact is told together with what could have been meant.
func TestAMisspeltFactIsToldWithTheFactsThereAre(t *testing.T) {
	got := refused(t, fstest.MapFS{lowFile: {Data: []byte(replace(t, body, body+"; piece.narrowest.widht < 3"))}})
	if want := `want (one of): ["width" "x" "y"]`; !strings.HasSuffix(got.Message, want) {
		t.Errorf("it says %q, which does not end in %q", got.Message, want)
	}
}

// Every mistake is told at once, in the order of the file.
func TestAllThatDoesNotCompileIsToldAtOnce(t *testing.T) {
	text := replace(t, body, body+"\n\tpiece.riped\n\tpiece.notchd")
	_, err := judge.Load(t.Context(), fstest.MapFS{lowFile: {Data: []byte(text)}}, hallLimits(), judge.Options{})
	if err == nil {
		t.Fatal("the rule loads")
	}
	lines := strings.Split(err.Error(), "\n")
	if len(lines) != 2 || !strings.HasPrefix(lines[0], lowFile+":19:2: ") || !strings.HasPrefix(lines[1], lowFile+":20:2: ") {
		t.Errorf("it says\n%v\nwant a line each for lines 19 and 20", err)
	}
}
