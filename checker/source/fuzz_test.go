package source

import (
	"bytes"
	"encoding/json"
	"io"
	"reflect"
	"strconv"
	"strings"
	"testing"
	"unicode/utf8"

	"trysquare/checker/fault"
)

// FuzzParse holds Parse against encoding/json: the same texts are JSON, but for
// the refusals that Parse promises on top, and the same values stand in them.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{
		"", "{}", "[]", "null", "true", "600", `"oak"`, ` {"a" : [10, {}] , "b":"x" } `, "{\"a\":1,}", "[1 2]", "[1,,2]", "{,}", "{} x",
		`{"a":1,"a":2}`, `{"a":1,"\u0061":2}`, "1e999", "-1e-999", "0.10", "01", "-", "\xef\xbb\xbf{}", "\"\xff\"", `"\ud83d\ude00"`, `"\ud83d"`, `"\\ud83d"`,
		"{\r\n\"é😀\": \"~/\"\r\n}", strings.Repeat("[", 101) + strings.Repeat("]", 101), strings.Repeat("[", 102) + strings.Repeat("]", 102),
		`{"width": "23 5/8 in", "x": [1, -0.5, 2E3, null, false]}`, "\"a\tb\"", "\"\u2028\"", "[1]\x00", ":1", "{\"a\"::1}",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		if len(b) > 4096 {
			t.Skip("long texts take long to judge and show nothing new")
		}
		d, err := Parse("f", b)
		why := refused(b)
		if (err == nil) != (why == "") {
			t.Fatalf("Parse says %v, the judge says %q", err, why)
		}
		if err != nil {
			for _, f := range fault.All(err) {
				if f.Place.Start.Line < 1 || f.Place.End.Offset > len(b) || f.Place.End.Offset < f.Place.Start.Offset {
					t.Errorf("the place of %v is outside the text: %+v", f, f.Place)
				}
			}
			return
		}
		for pointer, n := range d.nodes {
			var want any
			if err := json.Unmarshal(b[n.Start:n.End], &want); err != nil {
				t.Fatalf("%q does not stand at %d to %d: %v", pointer, n.Start, n.End, err)
			}
			if got := n.Value(); !reflect.DeepEqual(got, want) { // a diff of lists 100 deep would take for ever
				t.Errorf("%q is %v, encoding/json says %v", pointer, got, want)
			}
			if line := d.Position(n.Start).Line; line != 1+bytes.Count(b[:n.Start], []byte("\n")) {
				t.Errorf("%q stands in line %d", pointer, line)
			}
			if n.KeyEnd > n.KeyStart {
				var name string
				if err := json.Unmarshal(b[n.KeyStart:n.KeyEnd], &name); err != nil || !strings.HasSuffix(pointer, "/"+Escape(name)) {
					t.Errorf("the name of %q does not stand at %d to %d: %q, %v", pointer, n.KeyStart, n.KeyEnd, name, err)
				}
			}
		}
	})
}

// refused says why a text is not to be read, or "". It works from encoding/json alone.
func refused(b []byte) string {
	switch {
	case !utf8.Valid(b):
		return "invalid UTF-8"
	case !json.Valid(b): // a byte order mark among them
		return "not JSON"
	case halfPair(b):
		return "half an emoji"
	}
	dec := json.NewDecoder(bytes.NewReader(b))
	dec.UseNumber()
	type level struct {
		names map[string]bool // nil in a list
		key   bool            // a name comes next
	}
	var levels []level
	for {
		tok, err := dec.Token()
		if err == io.EOF {
			return ""
		} else if err != nil {
			panic(err) // json.Valid has said otherwise
		}
		if delim, ok := tok.(json.Delim); ok && (delim == '}' || delim == ']') {
			levels = levels[:len(levels)-1]
			continue
		}
		if len(levels) > Deepest {
			return "too deep"
		}
		if len(levels) > 0 {
			top := &levels[len(levels)-1]
			if name, ok := tok.(string); ok && top.key {
				if top.names[name] {
					return "key twice"
				}
				top.names[name], top.key = true, false
				continue
			}
			top.key = top.names != nil
		}
		switch v := tok.(type) {
		case json.Delim:
			next := level{}
			if v == '{' {
				next = level{map[string]bool{}, true}
			}
			levels = append(levels, next)
		case json.Number:
			if _, err := v.Float64(); err != nil {
				return "number too large"
			}
		}
	}
}

// halfPair finds a \u escape that is one half of a surrogate pair without the other (RFC 8259 section 8.2).
func halfPair(b []byte) bool {
	unit := func(i int) uint64 {
		if i+6 > len(b) || b[i] != '\\' || b[i+1] != 'u' {
			return 0
		}
		v, _ := strconv.ParseUint(string(b[i+2:i+6]), 16, 32)
		return v
	}
	for i := 0; i < len(b); i++ {
		if b[i] != '\\' {
			continue
		}
		switch v := unit(i); {
		case v >= 0xd800 && v < 0xdc00 && unit(i+6) >= 0xdc00 && unit(i+6) < 0xe000:
			i += 11
		case v >= 0xd800 && v < 0xe000:
			return true
		default:
			i++ // over the escaped letter, which may be a backslash
		}
	}
	return false
}
