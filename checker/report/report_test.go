package report_test

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"
	"testing"

	"github.com/rivo/uniseg"

	"trysquare/checker"
	"trysquare/checker/judge"
	"trysquare/checker/report"
	"trysquare/checker/source"
	"trysquare/checker/validate"
	"trysquare/schema"
)

func check(t *testing.T, hold report.Hold, path string) report.Plan {
	t.Helper()
	c, err := checker.New(hold)
	if err != nil {
		t.Fatal(err)
	}
	p, err := c.CheckFile(context.Background(), path, nil)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

var demos = []string{"../../plans/practice-room.json", "../../plans/practice-room-first-try.json", "../../plans/back-wall-inches.json", "no-such-file.json"}

// Every document that check --json writes is one that its schema describes.
func TestDocumentsValidate(t *testing.T) {
	for _, hold := range []report.Hold{report.HoldError, report.HoldWarning, report.HoldNote, report.HoldNever} {
		var plans []report.Plan
		for _, path := range demos {
			plans = append(plans, check(t, hold, path))
		}
		text, err := json.Marshal(report.Together(plans, hold))
		if err != nil {
			t.Fatal(err)
		}
		d, err := source.Parse("report", text)
		if err != nil {
			t.Fatal(err)
		}
		if err := validate.Document(d, schema.Report); err != nil {
			t.Errorf("hold %s: %v", hold, err)
		}
	}
}

// The apprentice's plan has exactly the mistakes that were put into it: each
// rule with the subjects that it must name, and no other failure.
func TestFirstTryShowsEveryPlantedMistake(t *testing.T) {
	want := map[string]string{
		"cuts.narrow_piece":             "E7",                                                       // 3,560 to 3,640: 80 mm is left
		"cuts.takes_interlock":          "E5 | E6",                                                  // E5 is ripped in the middle of the run
		"edges.cut_edge_in_view":        "E3 edge at the head of door, E4 edge at the head of door", // nothing covers the cuts over the door
		"edges.short_head_drop":         "east/door head, run E",                                    // 10 mm
		"fixing.bead_too_open":          "E1, E2, E3, E4, E5, E6, E7",                               // zigzag 600 mm
		"fixing.not_held_while_curing":  "E1, E2, E3, E4, E5, E6, E7",                               // one screw at each end
		"fixing.short_of_adhesive":      "adhesive",                                                 // 5 cartridges
		"fixing.through_the_leaf":       "L1, L2",                                                   // 60 mm screws in a 40 mm leaf
		"lines.broken_on_leaf":          "L1 under E3, L1 under E4, L2 under E4",                    // 1,399 - 4 against 0, by 40: 5 mm to the left
		"sequence.glued_before_dry_fit": "sequence",
		"services.not_traced":           "sequence",
		"stock.boards_short":            "oak", // 7
	}
	got := map[string][]string{}
	for _, r := range check(t, report.HoldError, demos[1]).Results {
		if r.Kind == judge.Fail {
			got[r.Rule] = append(got[r.Rule], r.Subject.ID)
		}
		if r.Kind == judge.Open {
			t.Errorf("%s is open: %s", r.Rule, r.Text)
		}
	}
	for rule, subjects := range want {
		if s := strings.Join(got[rule], ", "); s != subjects {
			t.Errorf("%s names %q, want %q", rule, s, subjects)
		}
		delete(got, rule)
	}
	if len(got) > 0 {
		t.Errorf("not planted: %v", got)
	}
}

// The lead's plan of the same wall has nothing wrong; it waits for answers.
func TestPracticeRoomOnlyAsks(t *testing.T) {
	for _, path := range []string{demos[0], demos[2]} {
		p := check(t, report.HoldError, path)
		asks := 0
		for _, r := range p.Results {
			switch r.Kind {
			case judge.Fail, judge.Open:
				t.Errorf("%s: %s: %s", path, r.Rule, r.Text)
			case judge.Review:
				asks++
				if !r.Holds || r.Asks == nil {
					t.Errorf("%s: %s asks, and neither holds nor says whom", path, r.Rule)
				}
			}
		}
		if asks == 0 || p.Status != report.Held {
			t.Errorf("%s: %d questions, %s", path, asks, p.Status)
		}
	}
}

func TestHoldSetsTheGate(t *testing.T) {
	// practice-room-first-try has failures of level error, two rules of level
	// warning on seven pieces each, and questions of rules of level error.
	count := map[report.Hold]int{}
	for _, hold := range []report.Hold{report.HoldError, report.HoldWarning, report.HoldNever} {
		count[hold] = check(t, hold, demos[1]).Counts.Holding
	}
	if count[report.HoldNever] != 0 || count[report.HoldError] == 0 || count[report.HoldWarning] != count[report.HoldError]+14 {
		t.Errorf("holding: %v", count)
	}
}

// A text from a plan cannot move the cursor, change colours or turn the direction of writing.
func TestTextIsHarmless(t *testing.T) {
	text := strings.NewReplacer(
		"Practice room, east wall and door, first try", `Wall\u001b[31m\u202ered\u0007\n\u009b2J`,
		"the apprentice", `x\u0000\u2028y`,
	).Replace(string(read(t, demos[1])))
	c, err := checker.New(report.HoldError)
	if err != nil {
		t.Fatal(err)
	}
	d, err := source.Parse("ev\x1bil.json", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	p, err := c.Check(context.Background(), d)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := report.Text(&out, p, report.Style{}); err != nil {
		t.Fatal(err)
	}
	first, rest, _ := strings.Cut(out.String(), "\n")
	second, _, _ := strings.Cut(rest, "\n")
	if want := "Wall<U+001B>[31m<U+202E>red<U+0007> <U+009B>2J"; first != want {
		t.Errorf("title %q, want %q", first, want)
	}
	if want := "ev<U+001B>il.json · Practice room, Larch Lane community hall · 2026-09-07 · by x<U+0000><U+2028>y"; second != want {
		t.Errorf("about %q, want %q", second, want)
	}
	for _, r := range out.String() {
		if r != '\n' && (r < ' ' || r == 0x7f || r >= 0x80 && r < 0xa0 || r == 0x202e || r == 0x2028) {
			t.Fatalf("the report holds U+%04X", r)
		}
	}
}

// No line is wider than the terminal, whatever its width, and colour adds
// nothing but escape sequences.
func TestWidthAndColour(t *testing.T) {
	p := check(t, report.HoldError, demos[1])
	for _, width := range []int{60, 80, 100, 120} {
		var plain, coloured bytes.Buffer
		if err := report.Text(&plain, p, report.Style{Width: width}); err != nil {
			t.Fatal(err)
		}
		if err := report.Text(&coloured, p, report.Style{Width: width, Colour: true}); err != nil {
			t.Fatal(err)
		}
		for _, line := range strings.Split(plain.String(), "\n") {
			if w := uniseg.StringWidth(line); w > width {
				t.Errorf("width %d: a line of %d: %q", width, w, line)
			}
		}
		if !strings.Contains(coloured.String(), "\x1b[1;35mPut right\x1b[0m    The piece is cut") {
			t.Errorf("width %d: no colour, or the label's column is off", width)
		}
		if got := uncoloured(coloured.String()); got != plain.String() {
			t.Errorf("width %d: colour changes the text", width)
		}
	}
}

func uncoloured(s string) string {
	var b strings.Builder
	for {
		before, after, ok := strings.Cut(s, "\x1b[")
		b.WriteString(before)
		if !ok {
			return b.String()
		}
		_, s, _ = strings.Cut(after, "m")
	}
}

// A fingerprint stays when the file is laid out otherwise, and no two results of a plan share one.
func TestFingerprints(t *testing.T) {
	var tree any
	if err := json.Unmarshal(read(t, demos[1]), &tree); err != nil {
		t.Fatal(err)
	}
	squeezed, err := json.Marshal(tree)
	if err != nil {
		t.Fatal(err)
	}
	c, err := checker.New(report.HoldError)
	if err != nil {
		t.Fatal(err)
	}
	d, err := source.Parse("squeezed.json", squeezed)
	if err != nil {
		t.Fatal(err)
	}
	other, err := c.Check(context.Background(), d)
	if err != nil {
		t.Fatal(err)
	}
	p := check(t, report.HoldError, demos[1])
	if len(p.Results) != len(other.Results) {
		t.Fatalf("%d and %d results", len(p.Results), len(other.Results))
	}
	seen := map[string]string{}
	for i, r := range p.Results {
		if r.Fingerprint != other.Results[i].Fingerprint {
			t.Errorf("%s %v: the fingerprint follows the layout", r.Rule, r.Subject)
		}
		if first, twice := seen[r.Fingerprint]; twice {
			t.Errorf("%s and %s have one fingerprint", first, r.Rule)
		}
		seen[r.Fingerprint] = r.Rule
	}
}
