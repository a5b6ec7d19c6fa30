package source

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"

	"trysquare/checker/fault"
)

func TestWhatIsNoPlainJSONIsRefusedAtItsPlace(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"empty file", "", "f:1:1: the file is empty"},
		{"nothing but space", " \n\t\r\n", "f:3:1: the file is empty"},
		{"cut off in a list", "[1,", "f:1:4: at /1: the document ends before it is complete"},
		{"cut off in a text", "{\"a\": \"oa", "f:1:10: at /a: the document ends before it is complete"},
		{"cut off in a word", "tru", "f:1:4: the document ends before it is complete"},
		{"cut off behind a key", "{\n\"a\"", "f:2:4: at /a: the document ends before it is complete"},
		{"trailing text", "{} {}", "f:1:4: something stands behind the end of the document"},
		{"trailing comma", "{},", "f:1:3: something stands behind the end of the document"},
		{"trailing byte that is not UTF-8", "{}\n\xff", "f:2:1: something stands behind the end of the document"},
		{"byte order mark", "\xef\xbb\xbf{}", "f:1:1: the file starts with a byte order mark; save it as UTF-8 without one"},
		{"invalid UTF-8 in a text", "{\"é\": \"\xff\"}", "f:1:8: at /é: not JSON: this letter is not in UTF-8; save the file as UTF-8"},
		{"invalid UTF-8 in a name", "{\"\xff\": 1}", "f:1:3: not JSON: this letter is not in UTF-8; save the file as UTF-8"},
		{"number too large", "[0, 1e999]", "f:1:5: at /1: the number 1e999 is too large"},
		{"number too far below", "[-1e999]", "f:1:2: at /0: the number -1e999 is too large"},
		{"long number too large", "[1" + strings.Repeat("0", 400) + "]", "f:1:2: at /0: the number 1" + strings.Repeat("0", 39) + "… is too large"},
		{"key twice", "{\"a\": 1,\n \"b\": 2,\n \"a\": 3}", `f:3:2: at /a: the key "a" stands here a second time; the first is in line 1`},
		{"key twice, once escaped", "{\"a\": 1,\n\"\\u0061\": 2}", `f:2:1: at /a: the key "a" stands here a second time; the first is in line 1`},
		{"empty key twice", `{"": 1, "": 2}`, `f:1:9: at /: the key "" stands here a second time; the first is in line 1`},
		{"key with a slash twice", `{"x": [{"a/b": 1, "a/b": 2}]}`, `f:1:19: at /x/0/a~1b: the key "a/b" stands here a second time; the first is in line 1`},
		{"comma with nothing behind it", "[1,]", "f:1:3: at /1: not JSON: there is a comma too many here, or something is missing beside it"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			d, err := Parse("f", []byte(tt.text))
			if d != nil || err == nil {
				t.Fatalf("accepted: %v", d)
			}
			if err.Error() != tt.want {
				t.Errorf("got  %s\nwant %s", err, tt.want)
			}
			var f *fault.Fault
			if !errors.As(err, &f) || f.Kind != fault.Syntax {
				t.Errorf("%T is not a fault of kind %q", err, fault.Syntax)
			}
		})
	}
}

func TestADoubledKeyIsMarkedFromItsFirstQuoteToItsLast(t *testing.T) {
	_, err := Parse("f", []byte(`{"ab": 1, "ab": 2}`))
	var f *fault.Fault
	if !errors.As(err, &f) {
		t.Fatal(err)
	}
	if f.Place.Start.Offset != 10 || f.Place.End.Offset != 14 {
		t.Errorf("marked from %d to %d, want 10 to 14", f.Place.Start.Offset, f.Place.End.Offset)
	}
}

func TestTheSameKeyInDifferentObjectsIsNotDoubled(t *testing.T) {
	d := parse(t, `{"a": {"a": 1}, "b": [{"a": 2}, {"a": 3}], "A": 4}`)
	for pointer, want := range map[string]float64{"/a/a": 1, "/b/0/a": 2, "/b/1/a": 3, "/A": 4} {
		if got := d.At(pointer).Value(); got != want {
			t.Errorf("%s is %v, want %v", pointer, got, want)
		}
	}
}

func TestHalfAnEmojiIsRefused(t *testing.T) {
	for _, text := range []string{`"\ud83d"`, `"\ude00"`, `"\ud83dx"`, `{"\ude00\ud83d": 1}`} {
		if d, err := Parse("f", []byte(text)); err == nil {
			t.Errorf("%s was read as %q", text, d.Root.Value())
		}
	}
	if got := parse(t, `"\ud83d\ude00"`).Root.Text; got != "😀" {
		t.Errorf("a whole emoji was read as %q", got)
	}
}

// A value may have 100 others around it.
func TestDepthEndsAt100(t *testing.T) {
	nest := func(open, value, end string, n int) string {
		return strings.Repeat(open, n) + value + strings.Repeat(end, n)
	}
	for name, text := range map[string]string{
		"number in 100 lists":   nest("[", "1", "]", 100),
		"101 lists":             nest("[", "", "]", 101),
		"number in 100 objects": nest(`{"a":`, "1", "}", 100),
	} {
		if _, err := Parse("f", []byte(text)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, tt := range map[string]struct{ text, want string }{
		"number in 101 lists":   {nest("[", "1", "]", 101), "f:1:102: at " + strings.Repeat("/0", 101) + ": values are nested more than 100 deep"},
		"102 lists":             {nest("[", "", "]", 102), "f:1:102: at " + strings.Repeat("/0", 101) + ": values are nested more than 100 deep"},
		"number in 101 objects": {nest(`{"a":`, "1", "}", 101), "f:1:506: at " + strings.Repeat("/a", 101) + ": values are nested more than 100 deep"},
		"lists without an end":  {strings.Repeat("[", 100_000), "f:1:102: at " + strings.Repeat("/0", 101) + ": values are nested more than 100 deep"},
	} {
		if _, err := Parse("f", []byte(tt.text)); err == nil || err.Error() != tt.want {
			t.Errorf("%s: got %v\nwant %s", name, err, tt.want)
		}
	}
}

// endless gives spaces for ever, as a device or a pipe may.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = ' '
	}
	return len(p), nil
}

func TestReadFileSaysWhyAFileCannotBeRead(t *testing.T) {
	dir := t.TempDir()
	gone := filepath.Join(dir, "gone.json")
	broken := errors.New("the stick was pulled out")
	tests := []struct {
		name, path string
		stdin      io.Reader
		want       string
		is         error
	}{
		{"no such file", gone, nil, gone + ": cannot be read: no such file or directory", os.ErrNotExist},
		{"a folder", dir, nil, dir + ": cannot be read: is a directory", nil},
		{"a stream that breaks", "-", iotest.ErrReader(broken), "standard input: cannot be read: the stick was pulled out", broken},
		{"a stream without an end", "-", endless{}, "standard input: cannot be read: it is larger than 64 MiB", nil},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := ReadFile(tt.path, tt.stdin)
			if err == nil || err.Error() != tt.want {
				t.Fatalf("got  %v\nwant %s", err, tt.want)
			}
			var f *fault.Fault
			if !errors.As(err, &f) || f.Kind != fault.Unreadable {
				t.Errorf("%T is not a fault of kind %q", err, fault.Unreadable)
			}
			if tt.is != nil && !errors.Is(err, tt.is) {
				t.Errorf("the cause %v is lost", tt.is)
			}
		})
	}
}

func TestReadFileReadsAFileAndStandardInputAlike(t *testing.T) {
	path := filepath.Join(t.TempDir(), "plan.json")
	if err := os.WriteFile(path, []byte(`{"title": "Larch Lane"}`), 0o600); err != nil {
		t.Fatal(err)
	}
	for given, name := range map[string]string{path: path, "-": "standard input"} {
		d, err := ReadFile(given, strings.NewReader(`{"title": "Larch Lane"}`))
		if err != nil {
			t.Fatal(err)
		}
		if d.Name != name || d.At("/title").Text != "Larch Lane" {
			t.Errorf("%s: name %q, title %q", given, d.Name, d.At("/title").Text)
		}
	}
}
