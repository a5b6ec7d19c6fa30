package judge_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"trysquare/checker/facts"
	"trysquare/checker/fault"
	"trysquare/checker/judge"
	"trysquare/schema"
)

// sound is a rule that gives one result, whatever befalls the others.
var sound = spec{name: "sound", body: `results contains {"kind": "pass", "subject": "E1"}`}

func TestARuleThatBreaksTheContractOfResultsIsAFaultAndTheOthersResultsCome(t *testing.T) {
	const asks = "#   asks: {who: The hall's keeper, evidence: A note}"
	cases := []struct {
		name string
		rule spec
		want string
	}{
		{"unknown subject", spec{body: `results contains {"kind": "pass", "subject": "E9"}`}, `it names the piece "E9", which is not in the facts`},
		{"subject of another kind", spec{subject: "wall", body: `results contains {"kind": "pass", "subject": "E1"}`}, `it names the wall "E1", which is not in the facts`},
		{"no subject", spec{body: `results contains {"kind": "pass"}`}, `it names the piece "", which is not in the facts`},
		{"unknown kind", spec{body: `results contains {"kind": "warn", "subject": "E1"}`}, `"warn" is no kind of result`},
		{"kind that only the engine gives", spec{body: `results contains {"kind": "notApplicable", "subject": "E1"}`}, `"notApplicable" is no kind of result`},
		{"no kind", spec{body: `results contains {"subject": "E1"}`}, `"" is no kind of result`},
		{"limit not named", spec{custom: "#   limits: [hall.lowest]", body: `results contains {"kind": "pass", "subject": "E1", "limit": concat(".", ["hall", "widest"])} if data.limits["hall.lowest"]`},
			`it compares with the limit "hall.widest", which its metadata does not name`},
		{"review without asks", spec{body: `results contains {"kind": "review", "subject": "E1"}`}, `it asks, and its metadata does not say whom`},
		{"open without missing", spec{body: `results contains {"kind": "open", "subject": "E1"}`}, `it is open and does not say what is missing`},
		{"two results for one subject", spec{body: "results contains {\"kind\": \"pass\", \"subject\": \"E1\"}\n\nresults contains {\"kind\": \"fail\", \"subject\": \"E1\"}"}, `it gives two results for the piece "E1"`},
		{"says wants a value", spec{says: "It is {depth:mm} deep.", body: `results contains {"kind": "fail", "subject": "E1"}`}, `the text wants {depth:mm}, which the result does not bring`},
		{"says wants what was measured", spec{says: "It is {measured} deep.", body: `results contains {"kind": "fail", "subject": "E1"}`}, `the text wants {measured}, which the result does not bring`},
		{"says wants the limit", spec{says: "Up to {limit}.", body: `results contains {"kind": "fail", "subject": "E1"}`}, `the text wants {limit}, which the result does not bring`},
		{"do wants a value", spec{do: "Take off {excess:mm}.", body: `results contains {"kind": "fail", "subject": "E1"}`}, `the text wants {excess:mm}, which the result does not bring`},
		{"question wants a value", spec{says: "Who made {door}?", custom: asks, body: `results contains {"kind": "review", "subject": "E1"}`}, `the text wants {door}, which the result does not bring`},
		{"unknown key", spec{body: `results contains {"kind": "pass", "subject": "E1", "colour": "oak"}`}, `its results break the contract: a result has no "colour"`},
		{"key in capitals", spec{body: `results contains {"kind": "pass", "subject": "E1", "Measured": 3}`}, `its results break the contract: a result has no "Measured"`},
		{"related piece that does not exist", spec{body: `results contains {"kind": "pass", "subject": "E1", "related": ["E2", "E7"]}`}, `it relates the piece "E7", which is not in the facts`},
		{"related that is no list", spec{body: `results contains {"kind": "pass", "subject": "E1", "related": "E2"}`}, `its results break the contract: "related": "E2" is no list`},
		{"measured in words", spec{body: `results contains {"kind": "pass", "subject": "E1", "measured": "low"}`}, `its results break the contract: measured is no number`},
		{"missing that is a number", spec{body: `results contains {"kind": "open", "subject": "E1", "missing": 3}`}, `its results break the contract: "missing": 3 is no text`},
		{"value that nothing can show", spec{body: `results contains {"kind": "pass", "subject": "E1", "values": {"hidden": true}}`}, `its results break the contract: "values": "hidden": true is neither a number, a text nor a list of texts`},
		{"result that is no object", spec{body: `results contains "E1"`}, `its results break the contract: a result is no object`},
		{"list in place of a set", spec{body: `results := [{"kind": "pass", "subject": "E1"}]`}, `its results are no set`},
		{"results that are undefined", spec{body: `results := set() if count(input.pieces) > 7`}, `it gave no set of results`},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			c.rule.name = "bad"
			results, faults := judged(t, load(t, tree(c.rule, sound), judge.Options{}), stage())
			if len(faults) != 1 {
				t.Fatalf("%d faults, want 1: %v", len(faults), faults)
			}
			f := faults[0]
			if f.Kind != fault.Engine || f.Place.File != "hall/bad/rule.rego" {
				t.Errorf("the fault is %q in %q, want %q in hall/bad/rule.rego", f.Kind, f.Place.File, fault.Engine)
			}
			if want := "the rule hall.bad did not run to its end: " + c.want; f.Message != want {
				t.Errorf("it says %s\nwant    %s", f.Message, want)
			}
			if len(results) != 1 || results[0].Rule.ID != "hall.sound" || results[0].Kind != judge.Pass || results[0].Subject.ID != "E1" {
				t.Errorf("beside it come %v, want the one of hall.sound", results)
			}
		})
	}
}

func TestARuleWithNothingToLookAtGivesOneNotApplicable(t *testing.T) {
	e := load(t, tree(spec{name: "zones", subject: "zone", body: "results contains {\"kind\": \"pass\", \"subject\": z.id} if some z in input.zones"}), judge.Options{})
	results, faults := judged(t, e, stage())
	want := []judge.Result{{Rule: e.Rules[0], Kind: judge.NotApplicable}}
	if len(faults) > 0 || !reflect.DeepEqual(results, want) {
		t.Errorf("it gives %+v and the faults %v, want %+v", results, faults, want)
	}
}

func TestAResultCarriesWhatItsRuleGives(t *testing.T) {
	e := load(t, tree(spec{
		name: "all", custom: "#   limits: [hall.lowest]\n#   asks: {who: The hall's keeper, evidence: A note}",
		body: `results contains {
	"kind": "review", "subject": "E2", "measured": 2378.5, "limit": "hall.lowest",
	"values": {"share": 0.25, "why": "a switch", "pieces": ["E2", "E1"], "none": []}, "related": ["E2", "E1"],
}

results contains {"kind": "open", "subject": "E1", "missing": "how wide it is"}`,
	}), judge.Options{})
	results, faults := judged(t, e, stage())
	first := judge.Subject{About: facts.About{ID: "E1", At: "/runs/0/pieces/0", On: "east"}, Piece: "E1", Order: 0}
	second := judge.Subject{About: facts.About{ID: "E2", At: "/runs/0/pieces/1", On: "east"}, Piece: "E2", Order: 1}
	height := 2378.5
	want := []judge.Result{
		{Rule: e.Rules[0], Kind: judge.Open, Subject: first, Missing: "how wide it is"},
		{Rule: e.Rules[0], Kind: judge.Review, Subject: second, Measured: &height, LimitID: "hall.lowest",
			Values:  map[string]any{"share": 0.25, "why": "a switch", "pieces": []string{"E2", "E1"}, "none": []string{}},
			Related: []judge.Subject{second, first}},
	}
	if len(faults) > 0 || !reflect.DeepEqual(results, want) {
		t.Errorf("it gives %+v and the faults %v\nwant %+v", results, faults, want)
	}
}

func TestResultsComeByRuleAndThenBySubject(t *testing.T) {
	each := "results contains {\"kind\": \"pass\", \"subject\": p.id} if some p in input.pieces"
	e := load(t, tree(spec{name: "two", body: each}, spec{name: "one", body: each}), judge.Options{})
	f := &facts.Facts{}
	for _, id := range []string{"E3", "E1", "E2"} { // along the wall, from the right say
		f.Pieces = append(f.Pieces, facts.Piece{About: facts.About{ID: id}})
	}
	results, _ := judged(t, e, f)
	var got []string
	for _, r := range results {
		got = append(got, fmt.Sprint(r.Rule.ID, " ", r.Subject.ID, " ", r.Subject.Order))
	}
	want := "hall.one E1 1, hall.one E2 2, hall.one E3 0, hall.two E1 1, hall.two E2 2, hall.two E3 0"
	if s := strings.Join(got, ", "); s != want {
		t.Errorf("they come as %s\nwant         %s", s, want)
	}
}

// everyKind has one fact of each kind, with the kind as its id; those of a piece are E2's.
func everyKind() *facts.Facts {
	f := stage()
	about := func(kind string) facts.About { return facts.About{ID: kind, At: "/" + kind} }
	f.Pieces = append(f.Pieces, facts.Piece{About: about("piece")})
	f.Job.About, f.Sequence.About = about("job"), about("sequence")
	f.Walls = []facts.Wall{{About: about("wall")}}
	f.Openings = []facts.Opening{{About: about("opening")}}
	f.Leaves = []facts.Leaf{{About: about("leaf")}}
	f.Runs = []facts.Run{{About: about("run")}}
	f.Strips = []facts.Strip{{About: about("strip"), Piece: "E2"}}
	f.Legs = []facts.Leg{{About: about("leg"), Piece: "E2"}}
	f.Rips = []facts.Rip{{About: about("rip"), Piece: "E2"}}
	f.Edges = []facts.Edge{{About: about("edge"), Piece: "E2"}}
	f.Joints = []facts.Joint{{About: about("joint"), Left: "E1", Right: "E2"}}
	f.Jambs = []facts.Jamb{{About: about("jamb")}}
	f.Lines = []facts.LinePair{{About: about("line"), Piece: "E2"}}
	f.Headers = []facts.Header{{About: about("header")}}
	f.Fixings = []facts.Fixing{{About: about("fixing"), Piece: "E2"}}
	f.Zones = []facts.Zone{{About: about("zone")}}
	f.Boards = []facts.Boards{{About: about("boards")}}
	f.Adhesive = &facts.Adhesive{About: about("adhesive")}
	v := reflect.ValueOf(f).Elem()
	for _, field := range reflect.VisibleFields(v.Type()) {
		list, kind := v.FieldByIndex(field.Index), strings.TrimSuffix(field.Tag.Get("json"), "s")
		if list.Kind() == reflect.Struct && list.FieldByName("ID").String() == "" {
			list.FieldByName("About").Set(reflect.ValueOf(about(kind)))
		}
		if list.Kind() != reflect.Slice || list.Len() > 0 {
			continue
		}
		one := reflect.New(list.Type().Elem()).Elem()
		one.FieldByName("About").Set(reflect.ValueOf(about(kind)))
		if piece := one.FieldByName("Piece"); piece.IsValid() && piece.Kind() == reflect.String {
			piece.SetString("E2")
			ofPiece[kind] = "E2"
		}
		list.Set(reflect.Append(list, one))
	}
	return f
}

// ofPiece gives the piece that a kind's fact belongs to in everyKind.
var ofPiece = map[string]string{"strip": "E2", "leg": "E2", "rip": "E2", "edge": "E2", "line": "E2", "fixing": "E2", "piece": "piece"}

// The metadata schema lists kinds of subjects by name; each must find its facts.
func TestEveryKindOfSubjectThatMetadataMayNameIsFoundInTheFacts(t *testing.T) {
	text, err := schema.Text(schema.Metadata)
	if err != nil {
		t.Fatal(err)
	}
	var doc struct {
		Properties struct {
			Custom struct {
				Properties struct{ Subject struct{ Enum []string } }
			}
		}
	}
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	kinds := doc.Properties.Custom.Properties.Subject.Enum
	if lists := reflect.TypeFor[facts.Facts]().NumField(); len(kinds) != lists {
		t.Errorf("the schema names %d kinds, and the facts have %d", len(kinds), lists)
	}
	var specs []spec
	for _, kind := range kinds {
		specs = append(specs, spec{name: kind, subject: kind, body: fmt.Sprintf(`results contains {"kind": "pass", "subject": %q}`, kind)})
	}
	all := everyKind()
	results, faults := judged(t, load(t, tree(specs...), judge.Options{}), all)
	if len(faults) > 0 || len(results) != len(kinds) {
		t.Fatalf("%d results and the faults %v, want a result for each of %d kinds", len(results), faults, len(kinds))
	}
	for _, r := range results {
		// E1, E2 and the piece called piece stand in this order; a fact of no piece is the first of its list.
		order := map[string]int{"E2": 1, "piece": 2}[ofPiece[r.Subject.ID]]
		want := judge.Subject{About: facts.About{ID: r.Rule.Subject, At: "/" + r.Rule.Subject}, Piece: ofPiece[r.Rule.Subject], Order: order}
		if r.Subject != want {
			t.Errorf("%s: the subject is %+v, want %+v", r.Rule.ID, r.Subject, want)
		}
	}
}
