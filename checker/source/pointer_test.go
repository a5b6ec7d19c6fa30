package source

import (
	"encoding/json"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The document and the pointers are those of RFC 6901 section 5.
func TestPointersFollowTheStandardsOwnExamples(t *testing.T) {
	d := parse(t, `{
      "foo": ["bar", "baz"],
      "": 0,
      "a/b": 1,
      "c%d": 2,
      "e^f": 3,
      "g|h": 4,
      "i\\j": 5,
      "k\"l": 6,
      " ": 7,
      "m~n": 8
   }`)
	tests := []struct {
		pointer string
		want    any
	}{
		{"/foo", []any{"bar", "baz"}},
		{"/foo/0", "bar"},
		{"/", 0.0},
		{"/a~1b", 1.0},
		{"/c%d", 2.0},
		{"/e^f", 3.0},
		{"/g|h", 4.0},
		{`/i\j`, 5.0},
		{`/k"l`, 6.0},
		{"/ ", 7.0},
		{"/m~0n", 8.0},
	}
	for _, tt := range tests {
		n := d.At(tt.pointer)
		if n == nil {
			t.Errorf("%s names nothing", tt.pointer)
			continue
		}
		if diff := cmp.Diff(tt.want, n.Value()); diff != "" {
			t.Errorf("%s (- want, + got):\n%s", tt.pointer, diff)
		}
	}
	if d.At("") != d.Root {
		t.Error("the empty pointer does not name the whole document")
	}
	for _, pointer := range []string{"/foo/2", "/bar", "/a/b", "/m~n", "/foo/00"} {
		if d.At(pointer) != nil {
			t.Errorf("%s names a value", pointer)
		}
	}
}

// ~ goes first where a name has both, so that ~1 in a name does not become a slash (RFC 6901 section 3).
func TestEscapeKeepsTildeAndSlashApart(t *testing.T) {
	for name, want := range map[string]string{
		"oak": "oak", "": "", "a/b": "a~1b", "m~n": "m~0n", "~1": "~01", "~/": "~0~1", "//": "~1~1", "~0": "~00", "100%": "100%",
	} {
		if got := Escape(name); got != want {
			t.Errorf("Escape(%q) = %q, want %q", name, got, want)
		}
		d := parse(t, `{"`+name+`": true}`)
		if n := d.At("/" + want); n == nil || n != d.Root.Member(name) {
			t.Errorf("/%s does not name the value of %q", want, name)
		}
	}
}

func TestValuesAreThoseThatTheStandardLibraryReads(t *testing.T) {
	const text = `{"text": "a\n\u00e9\ud83d\ude00", "whole": 600, "part": -0.125e2, "yes": true, "no": false, "nothing": null,
	  "list": [[], {}, "", 0], "deep": {"a": {"b": [1]}}}`
	var want any
	if err := json.Unmarshal([]byte(text), &want); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, parse(t, text).Root.Value()); diff != "" {
		t.Errorf("values (- encoding/json, + Parse):\n%s", diff)
	}
}

func TestMemberGivesNilWhereThereIsNone(t *testing.T) {
	d := parse(t, `{"a": [1], "b": null}`)
	if n := d.Root.Member("b"); n == nil || n.Kind != 'n' {
		t.Error("a null is taken for a missing value")
	}
	var none *Node
	for what, n := range map[string]*Node{"missing name": d.Root.Member("c"), "list": d.Root.Member("a").Member("0"), "no node": none.Member("a")} {
		if n != nil {
			t.Errorf("%s: got the value %v", what, n.Value())
		}
	}
}
