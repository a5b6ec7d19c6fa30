package judge_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"trysquare/checker/judge"
)

func TestRulesAreFoundByStandingInTheirFolders(t *testing.T) {
	files := tree(spec{name: "wide", body: "results := set()"})
	files[lowFile] = &fstest.MapFile{Data: []byte(lowRule)}
	// Below the folder of a house, a rule keeps the id that its last two folders give.
	files["house/stage/bare/rule.rego"] = &fstest.MapFile{Data: []byte(strings.Replace(spec{body: "results := set()"}.text(), "package rules.hall.", "package rules.stage.bare", 1))}
	files["lib/lib.rego"] = &fstest.MapFile{Data: []byte("package rules.lib\n\nhalf(x) := x / 2\n")}
	files["hall/low/rule_test.rego"] = &fstest.MapFile{Data: []byte("this is no Rego, and nobody reads it")}
	files["hall/low/notes.md"] = &fstest.MapFile{Data: []byte("nor this")}
	var got []string
	for _, r := range load(t, files, judge.Options{}).Rules {
		got = append(got, r.ID+" in "+r.File)
	}
	want := "hall.low in hall/low/rule.rego, hall.wide in hall/wide/rule.rego, stage.bare in house/stage/bare/rule.rego"
	if s := strings.Join(got, ", "); s != want {
		t.Errorf("rules %s\nwant  %s", s, want)
	}
}

func TestARuleKeepsWhatItsMetadataSays(t *testing.T) {
	e := load(t, fstest.MapFS{lowFile: {Data: []byte(lowRule)}}, judge.Options{})
	r := e.Rules[0]
	got := []string{
		r.Title, r.Description, r.Subject, r.Level, strings.Join(r.Limits, "+"), r.Unit, r.Basis.Kind,
		r.Matters, r.Says, r.Do, r.Example,
	}
	want := []string{
		"A piece is low", "The height of every piece.", "piece", "error", "hall.lowest", "mm", "common practice",
		"A low piece is soon kicked off.", "The piece is {measured} high; nothing under {limit} here.",
		"Take {subject} from a whole board.", "A piece of 40 mm.",
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("%q, want %q", got[i], want[i])
		}
	}
	if r.Asks != nil {
		t.Errorf("it asks %v, and its metadata names nobody", r.Asks)
	}
}

func TestARuleThatBreaksTheContractIsRefused(t *testing.T) {
	const metadata, pkg = lowFile + ":3:1: the METADATA of hall.low: ", lowFile + ":15:1: "
	cases := []struct {
		name, old, by, want string
	}{
		{"package of another name", "package rules.hall.low", "package rules.hall.lower", pkg + "the rule hall.lower stands in hall/low/rule.rego; it belongs in hall/lower/rule.rego"},
		{"package of another family", "package rules.hall.low", "package rules.stage.low", pkg + "the rule stage.low stands in hall/low/rule.rego; it belongs in stage/low/rule.rego"},
		{"package outside rules", "package rules.hall.low", "package hall.low", pkg + "a rule's package is rules.FAMILY.NAME, not hall.low"},
		{"package too short", "package rules.hall.low", "package rules.low", pkg + "a rule's package is rules.FAMILY.NAME, not rules.low"},
		{"package too long", "package rules.hall.low", "package rules.hall.low.wall", pkg + "a rule's package is rules.FAMILY.NAME, not rules.hall.low.wall"},
		{"no METADATA", "# METADATA", "# NOTES", pkg + "the rule hall.low has no METADATA comment in front of its package"},
		{"unknown key beside the title", "# title:", "# titel: Low\n# title:", metadata + "additionalProperties 'titel' not allowed"},
		{"key that only the engine knows", "# title:", "# labels: {hall: large}\n# title:", metadata + "additionalProperties 'labels' not allowed"},
		{"key of others that write rules", "# title:", "# authors: [the lead fitter]\n# title:", metadata + "additionalProperties 'authors' not allowed"},
		{"empty key of others that write rules", "# title:", "# organizations: []\n# title:", metadata + "additionalProperties 'organizations' not allowed"},
		{"unknown key under custom", "#   level:", "#   colour: oak\n#   level:", metadata + "custom: additionalProperties 'colour' not allowed"},
		{"unknown key under basis", "{kind: common practice}", "{kind: common practice, page: 3}", metadata + "custom.basis: additionalProperties 'page' not allowed"},
		{"title missing", "# title: A piece is low\n", "#\n", metadata + "missing properties: 'title'"},
		{"description missing", "# description: The height of every piece.\n", "#\n", metadata + "missing properties: 'description'"},
		{"level missing", "#   level: error\n", "#\n", metadata + "custom: missing properties: 'level'"},
		{"basis without a kind", "{kind: common practice}", "{note: as ever}", metadata + "custom.basis: missing properties: 'kind'"},
		{"wrong level", "level: error", "level: grave", metadata + `custom.level: value must be one of "error", "warning", "note"`},
		{"wrong unit", "level: error", "level: error\n#   unit: in", lowFile + `:3:1: the METADATA of hall.low: custom.unit: value must be one of "mm", "ml", "count", "h"`},
		{"unknown limit", "[hall.lowest]", "[hall.lowest, hall.hihgest]", metadata + `there is no limit "hall.hihgest"`},
		{"limit named and not used", "[hall.lowest]", "[hall.lowest, hall.widest]", metadata + `the limit "hall.widest" is named and not used`},
		{"limit used and not named", "some piece in", "piece.cover_width < data.limits[\"hall.widest\"]\n\tsome piece in", metadata + `the limit "hall.widest" is used and not named`},
		{"no limits named, one used", "#   limits: [hall.lowest]\n", "#\n", metadata + `the limit "hall.lowest" is used and not named`},
		{"no results", "results contains", "findings contains", pkg + "the rule hall.low gives no results"},
		{"bad unit in says", "{measured}", "{measured:furlong}", metadata + `{measured:furlong}: there is no unit "furlong"`},
		{"bad unit in do", "{subject}", "{depth:in}", metadata + `{depth:in}: there is no unit "in"`},
		{"brace that opens nothing", "nothing under {limit} here.", "nothing under {limit here.", metadata + `a brace in "The piece is {measured} high; nothing under {limit here." belongs to no name`},
		{"brace that closes nothing", "Take {subject} from", "Take subject} from", metadata + `a brace in "Take subject} from a whole board." belongs to no name`},
		{"name in capitals", "{subject}", "{Subject}", metadata + `a brace in "Take {Subject} from a whole board." belongs to no name`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			files := fstest.MapFS{lowFile: {Data: []byte(replace(t, c.old, c.by))}}
			if got := refused(t, files).Error(); got != c.want {
				t.Errorf("it says %s\nwant    %s", got, c.want)
			}
		})
	}
}

// Only the METADATA comment is held to the names it may have, and one of them is the engine's own.
func TestOtherCommentsMaySayWhatTheyLike(t *testing.T) {
	text := replace(t, "# title:", "# scope: package\n# title:")
	text = "# hall: Larch Lane\n" + text + "\n# note: the stage is low too\n"
	e := load(t, fstest.MapFS{lowFile: {Data: []byte(text)}}, judge.Options{})
	if len(e.Rules) != 1 || e.Rules[0].Title != "A piece is low" {
		t.Errorf("rules %v, want hall.low", e.Rules)
	}
}

// METADATA behind the package is what its first rule says of itself.
func TestMetadataOfSomethingElseIsNoMetadataOfARule(t *testing.T) {
	text := strings.Replace(replace(t, "package rules.hall.low\n\n", ""), "# Larch Lane community hall", "package rules.hall.low", 1)
	got := refused(t, fstest.MapFS{lowFile: {Data: []byte(text)}}).Error()
	if want := lowFile + ":1:1: the rule hall.low has no METADATA comment in front of its package"; got != want {
		t.Errorf("it says %s\nwant    %s", got, want)
	}
}

// One rule in two folders would give each of its results twice.
func TestARuleThatStandsTwiceIsRefused(t *testing.T) {
	files := fstest.MapFS{lowFile: {Data: []byte(lowRule)}, "house/" + lowFile: {Data: []byte(lowRule)}}
	if got := refused(t, files); !strings.HasSuffix(got.Place.File, lowFile) || got.Place.Start.Line == 0 {
		t.Errorf("the fault names no file and line: %v", got)
	}
}
