package validate_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"trysquare/checker/fault"
	"trysquare/checker/length"
	"trysquare/checker/source"
	"trysquare/checker/validate"
	"trysquare/schema"
)

// The plan has one wall, whose members stand from line 4 on.
const frame = `{"title": "Store", "units": "mm",
"panels": {"oak": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, "backing": {"thickness": 9}}},
"walls": {%s: {
%s}},
"runs": [{"id": "A", "on": "back", "panel": "oak"}]}`

func check(t testing.TB, name schema.Name, text string) error {
	t.Helper()
	d, err := source.Parse("p", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return validate.Document(d, name)
}

func wall(name, members string) string {
	return fmt.Sprintf(frame, strconv.Quote(name), members)
}

func TestASoundPlanHasNoFaults(t *testing.T) {
	if err := check(t, schema.Plan, wall("back", `"width": 3000, "height": "7 ft 10 1/8 in"`)); err != nil {
		t.Error(err)
	}
}

func TestMessagesNameTheRightPlaceWhateverThePartsAreCalled(t *testing.T) {
	// Each of these is written otherwise in a URL, as the schema library has them.
	for _, name := range []string{"back wall", "Bühne", "壁 2", "a.b-c_d", "L 1"} {
		err := check(t, schema.Plan, wall(name, "\"width\": 3000, \"height\": true,\n\"hight\": 2390"))
		want := `p:4:26: at /walls/` + name + `/height: a length (a number in the plan's units, or text such as "600 mm") is expected here, not true` +
			"\n" + `p:5:1: at /walls/` + name + `/hight: the key "hight" is not known here; did you mean "height"?`
		if err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

func TestNamesThatCannotBeAreToldAtTheName(t *testing.T) {
	long := strings.Repeat("a", 61)
	const rule = "; a name starts with a letter or a digit and goes on with letters, digits, space, dot, dash or underline"
	for name, want := range map[string]string{
		"_a":     `at /walls/_a: the key "_a" cannot be a name` + rule,
		"a/b":    `at /walls/a~1b: the key "a/b" cannot be a name` + rule,
		"~1":     `at /walls/~01: the key "~1" cannot be a name` + rule,
		"50%2F":  `at /walls/50%2F: the key "50%2F" cannot be a name` + rule,
		"a<b>&c": `at /walls/a<b>&c: the key "a<b>&c" cannot be a name` + rule,
		long:     `at /walls/` + long + `: this is too long; the most is 60 characters`,
	} {
		err := check(t, schema.Plan, wall(name, `"width": 3000, "height": 2390`))
		if want = "p:3:11: " + want; err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

// Inside such an object nothing has a place of its own, so nothing else is told.
func TestAKeyWithoutALetterIsToldAtItsPlace(t *testing.T) {
	for text, want := range map[string]string{
		wall("", `"width": true, "hight": 2390`):                        "p:3:11: at /walls/: a key must not be empty",
		wall("back", `"width": 3000, "": 2, "height": 2390`):            "p:4:16: at /walls/back/: a key must not be empty",
		wall("a/b", `"services": [{"": {"": 1}}]`):                      "p:4:15: at /walls/a~1b/services/0/: a key must not be empty\np:4:20: at /walls/a~1b/services/0//: a key must not be empty",
		strings.Replace(wall("back", ""), `"title"`, `"":1,"title"`, 1): "p:1:2: at /: a key must not be empty",
	} {
		if err := check(t, schema.Plan, text); err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

func TestAHintIsGivenOnlyForASlipOfTheHand(t *testing.T) {
	const known = "known here: background, ends, height, measured, openings, outline, reverse, services, skirting, thickness, width"
	for key, hint := range map[string]string{
		"hieght":      `did you mean "height"?`,
		"Services":    `did you mean "services"?`,
		"end":         `did you mean "ends"?`,
		"skirtng":     `did you mean "skirting"?`,
		"depth":       known,
		"e":           known,
		"heightwidth": known,
	} {
		err := check(t, schema.Plan, wall("back", `"width": 3000, "height": 2390, `+strconv.Quote(key)+`: 1`))
		want := fmt.Sprintf("p:4:32: at /walls/back/%s: the key %q is not known here; %s", key, key, hint)
		if err == nil || err.Error() != want {
			t.Errorf("got  %v\nwant %s", err, want)
		}
	}
}

func TestLongTextsAndNumbersAreCutShortInAMessage(t *testing.T) {
	forty := strings.Repeat("ü", 40)
	err := check(t, schema.Plan, wall("back", `"width": 3000, "height": "`+forty+forty+`"`))
	if want := `p:4:26: at /walls/back/height: "` + forty + `…" is not a length;`; err == nil || !strings.HasPrefix(err.Error(), want) {
		t.Errorf("got  %v\nwant %s and more", err, want)
	}
	err = check(t, schema.Plan, wall("back", `"width": 3000, "height": 2000000`+strings.Repeat("0", 200)))
	if want := "p:4:26: at /walls/back/height: the number 2000000" + strings.Repeat("0", 33) + "… is too large; the most is 1000000"; err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
}

func TestTenErrorsAreToldAndTheRestCounted(t *testing.T) {
	for errs, last := range map[int]string{1: "", 10: "", 11: "p: 1 more like these", 40: "p: 30 more like these"} {
		members := []string{`"width": 3000, "height": 2390`}
		for i := range errs {
			members = append(members, fmt.Sprintf(`"extra %d": 0`, i))
		}
		got := fault.All(check(t, schema.Plan, wall("back", strings.Join(members, ",\n"))))
		if want := min(errs, validate.Most); len(got) < want {
			t.Fatalf("%d errors: %d were told", errs, len(got))
		}
		for i, f := range got[:min(errs, validate.Most)] {
			if want := fmt.Sprintf("p:%d:1: at /walls/back/extra %d: ", 5+i, i); !strings.HasPrefix(f.Error(), want) || f.Kind != fault.Schema {
				t.Errorf("%d errors: number %d is %s (%s), want it to start with %s", errs, i, f, f.Kind, want)
			}
		}
		rest := got[min(errs, validate.Most):]
		if text := rest.Error(); text != last {
			t.Errorf("%d errors: behind the tenth stands %q, want %q", errs, text, last)
		}
	}
}

func TestOnePlaceGetsOneMessageButEveryKeyItsOwn(t *testing.T) {
	// The text is no length and too long for one: one message. Two keys are missing in one object: two.
	text := strings.Replace(wall("back", `"width": "`+strings.Repeat("9 ", 30)+`", "height": 2390`), `"thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6}, `, "", 1)
	got := fault.All(check(t, schema.Plan, text))
	want := []string{`the key "slats" is missing here`, `the key "thickness" is missing here`, `"9 9 9 9 9 9 9 9 9 9 9 9 9 9 9 9 9 9 9 9 …" is not a length`}
	if len(got) != len(want) {
		t.Fatalf("%d messages, want %d:\n%v", len(got), len(want), got)
	}
	for i, w := range want {
		if !strings.HasPrefix(got[i].Message, w) {
			t.Errorf("message %d is %s, want %s", i, got[i].Message, w)
		}
	}
}

func TestADocumentOfAnUnknownKindIsNoFaultOfTheFile(t *testing.T) {
	err := check(t, "ladder", "{}")
	var f *fault.Fault
	if err == nil || errors.As(err, &f) || err.Error() != `validating p: there is no schema "ladder"` {
		t.Errorf("got %v", err)
	}
}

// The schema and the reader of lengths each have a grammar: whatever the schema
// lets through must be read, but for what a pattern cannot tell.
func TestWhateverTheSchemaTakesForALengthCanBeRead(t *testing.T) {
	text, err := schema.Text(schema.Plan)
	if err != nil {
		t.Fatal(err)
	}
	var s struct {
		Defs struct {
			Length struct {
				Pattern   string
				MaxLength int
			}
		} `json:"$defs"`
	}
	if err := json.Unmarshal(text, &s); err != nil || s.Defs.Length.Pattern == "" {
		t.Fatalf("no pattern of a length: %v", err)
	}
	nought := regexp.MustCompile(`/0+([^0-9]|$)`)
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(s.Defs.Length.Pattern).Filter(func(s string) bool {
			return !nought.MatchString(s) && !regexp.MustCompile(`[0-9]{10}`).MatchString(s)
		}).Draw(t, "text")
		if _, err := length.Parse(text); err != nil {
			t.Fatalf("the schema lets through what is no length: %v", err)
		}
	})
}
