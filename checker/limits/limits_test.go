package limits_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/fault"
	"trysquare/checker/limits"
)

// one writes a limits file with one limit, its basis in line 4.
func one(value, basis string) string {
	return `{"limits": {
  "cuts.narrowest": {
    "value": ` + value + `, "unit": "mm", "means": "Least width of a cut piece", "least": 20, "most": 600,
    "basis": ` + basis + `}
}}`
}

const practice = `{"kind": "common practice"}`

func TestALimitsFileIsReadAsItStands(t *testing.T) {
	const text = `{"limits": {
  "stock.kerf": {"value": 3.5, "unit": "mm", "means": "What a saw cut takes", "least": 0, "most": 10, "basis": {"kind": "house rule", "note": "our saw"}},
  "cuts.narrowest": {"value": 100, "unit": "mm", "means": "Least width", "least": 20, "most": 600,
    "basis": {"kind": "published", "source": "Handbook of the hall", "clause": "4.2", "edition": "2020", "read": "quoted", "country": ["IE", "US"]}}
}}`
	got, err := limits.Parse("limits.json", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	want := limits.Set{
		"stock.kerf": {Value: 3.5, Unit: "mm", Means: "What a saw cut takes", Least: 0, Most: 10, Basis: limits.Basis{Kind: "house rule", Note: "our saw"}},
		"cuts.narrowest": {Value: 100, Unit: "mm", Means: "Least width", Least: 20, Most: 600, Basis: limits.Basis{
			Kind: "published", Source: "Handbook of the hall", Clause: "4.2", Edition: "2020", Read: "quoted", Country: []string{"IE", "US"}}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("limits (- want, + got):\n%s", diff)
	}
	if diff := cmp.Diff([]string{"cuts.narrowest", "stock.kerf"}, got.IDs()); diff != "" {
		t.Errorf("ids (- want, + got):\n%s", diff)
	}
}

func TestBothEndsOfALimitsRangeAreAllowed(t *testing.T) {
	for text, want := range map[string]float64{"20": 20, "600": 600} {
		set, err := limits.Parse("limits.json", []byte(one(text, practice)))
		if err != nil || set["cuts.narrowest"].Value != want {
			t.Errorf("%s: %v, %v", text, set, err)
		}
	}
}

func TestWhatIsWrongInALimitsFileIsToldAtItsPlace(t *testing.T) {
	tests := []struct {
		name, text, want string
		kind             fault.Kind
	}{
		{"not JSON", "{\"limits\": {\n", "limits.json:2:1: at /limits: the document ends before it is complete", fault.Syntax},
		{"a limit twice", strings.Replace(one("100", practice), "}\n}}", "},\n  \"cuts.narrowest\": {}\n}}", 1),
			`limits.json:5:3: at /limits/cuts.narrowest: the key "cuts.narrowest" stands here a second time; the first is in line 2`, fault.Syntax},
		{"no limits at all", "{}", `limits.json:1:1: the key "limits" is missing here`, fault.Schema},
		{"value below its range", one("19.5", practice), "limits.json:3:14: at /limits/cuts.narrowest/value: the limit is 19.5, outside its own range of 20 to 600", fault.Rule},
		{"value above its range", one("601", practice), "limits.json:3:14: at /limits/cuts.narrowest/value: the limit is 601, outside its own range of 20 to 600", fault.Rule},
		{"value as a text", one(`"100 mm"`, practice), `limits.json:3:14: at /limits/cuts.narrowest/value: a number is expected here, not "100 mm"`, fault.Schema},
		{"id without a family", strings.Replace(one("100", practice), "cuts.narrowest", "narrowest", 1),
			`limits.json:2:3: at /limits/narrowest: the key "narrowest" does not have the form expected: The family's name, a dot, a name, in small letters, such as cuts.narrowest.`, fault.Schema},
		{"kind of basis unknown", one("100", `{"kind": "hearsay"}`),
			`limits.json:4:23: at /limits/cuts.narrowest/basis/kind: one of "published", "common practice", "worked out", "house rule" is expected here, not "hearsay"`, fault.Schema},
		{"key of basis unknown", one("100", `{"kind": "house rule", "notes": "x"}`),
			`limits.json:4:37: at /limits/cuts.narrowest/basis/notes: the key "notes" is not known here; did you mean "note"?`, fault.Schema},
		{"published where", one("100", `{"kind": "published", "read": "read"}`), `limits.json:4:14: at /limits/cuts.narrowest/basis: the key "source" is missing here`, fault.Schema},
		{"published, how sure", one("100", `{"kind": "published", "source": "Handbook"}`), `limits.json:4:14: at /limits/cuts.narrowest/basis: the key "read" is missing here`, fault.Schema},
		{"a source for common practice", one("100", `{"kind": "common practice", "source": "Handbook"}`),
			`limits.json:4:42: at /limits/cuts.narrowest/basis/source: the key "source" does not go with what else stands here`, fault.Schema},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := limits.Parse("limits.json", []byte(tt.text))
			if err == nil || err.Error() != tt.want {
				t.Fatalf("got  %v\nwant %s", err, tt.want)
			}
			var f *fault.Fault
			if !errors.As(err, &f) || f.Kind != tt.kind {
				t.Errorf("the fault is %+v, want kind %q", f, tt.kind)
			}
		})
	}
}

func TestSeveralValuesOutOfRangeAreToldInTheOrderOfTheFile(t *testing.T) {
	const text = `{"limits": {
"b.b": {"value": 3, "unit": "h", "means": "x", "least": 0, "most": 2, "basis": {"kind": "worked out"}},
"a.a": {"value": -1, "unit": "h", "means": "x", "least": 0, "most": 2, "basis": {"kind": "worked out"}}}}`
	_, err := limits.Parse("l", []byte(text))
	const want = "l:2:18: at /limits/b.b/value: the limit is 3, outside its own range of 0 to 2\n" +
		"l:3:18: at /limits/a.a/value: the limit is -1, outside its own range of 0 to 2"
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

func TestBasisIsWrittenWithItsAuthorityForThePlansCountry(t *testing.T) {
	book := limits.Basis{Kind: "published", Source: "Approved text B", Clause: "table 1", Edition: "2019", Read: "read", Country: []string{"GB-ENG", "GB-WLS"}}
	with := func(change func(*limits.Basis)) limits.Basis {
		b := book
		change(&b)
		return b
	}
	tests := []struct {
		name, country, want string
		basis               limits.Basis
	}{
		{"published, at home", "GB-WLS", "Approved text B, table 1 (2019); read in the source", book},
		{"published, elsewhere", "IE", "Approved text B, table 1 (2019); read in the source; of GB-ENG, GB-WLS, a pointer here: local code governs", book},
		{"published, country unsaid", "other", "Approved text B, table 1 (2019); read in the source; of GB-ENG, GB-WLS, a pointer here: local code governs", book},
		{"published, of no country", "US", "Approved text B, table 1 (2019); read in the source", with(func(b *limits.Basis) { b.Country = nil })},
		{"without clause", "GB-ENG", "Approved text B (2019); read in the source", with(func(b *limits.Basis) { b.Clause = "" })},
		{"without edition", "GB-ENG", "Approved text B, table 1; read in the source", with(func(b *limits.Basis) { b.Edition = "" })},
		{"quoted", "GB-ENG", "Approved text B, table 1 (2019); quoted from another page", with(func(b *limits.Basis) { b.Read = "quoted" })},
		{"reported", "GB-ENG", "Approved text B, table 1 (2019); reported, not read in the source", with(func(b *limits.Basis) { b.Read = "reported" })},
		{"from memory", "GB-ENG", "Approved text B, table 1 (2019); from memory, not checked", with(func(b *limits.Basis) { b.Read = "memory" })},
		{"common practice", "GB-ENG", "common practice", limits.Basis{Kind: "common practice"}},
		{"common practice from memory", "US", "common practice, from memory, not checked", limits.Basis{Kind: "common practice", Read: "memory"}},
		{"worked out", "IE", "worked out", limits.Basis{Kind: "worked out"}},
		{"house rule", "other", "house rule", limits.Basis{Kind: "house rule", Note: "not printed"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := tt.basis.Text(tt.country); got != tt.want {
				t.Errorf("got  %q\nwant %q", got, tt.want)
			}
		})
	}
}
