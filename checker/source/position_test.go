package source

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/fault"
)

func parse(t *testing.T, text string) *Document {
	t.Helper()
	d, err := Parse("plan.json", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestPositionsCountBytesCodePointsAndUTF16Units(t *testing.T) {
	// é takes 2 bytes and 1 unit, the emoji 4 bytes and 2 units:
	//    {  "  a  "  :     "  é    😀      x  "  }  CR LF
	//    0  1  2  3  4  5  6  7    9       13 14 15 16 17
	const accents = "{\"a\": \"é😀x\"}\r\n"
	const gaps = "[\n\n\n1]" // lines start at 0, 2, 3 and 4
	tests := []struct {
		name, text string
		at         int
		want       fault.Position
	}{
		{"first byte", accents, 0, fault.Position{Offset: 0, Line: 1, Byte: 1, Rune: 1, UTF16: 1}},
		{"before the first wide letter", accents, 7, fault.Position{Offset: 7, Line: 1, Byte: 8, Rune: 8, UTF16: 8}},
		{"behind two bytes", accents, 9, fault.Position{Offset: 9, Line: 1, Byte: 10, Rune: 9, UTF16: 9}},
		{"behind an emoji", accents, 13, fault.Position{Offset: 13, Line: 1, Byte: 14, Rune: 10, UTF16: 11}},
		{"carriage return belongs to its line", accents, 16, fault.Position{Offset: 16, Line: 1, Byte: 17, Rune: 13, UTF16: 14}},
		{"line feed belongs to its line", accents, 17, fault.Position{Offset: 17, Line: 1, Byte: 18, Rune: 14, UTF16: 15}},
		{"behind the last byte", accents, 18, fault.Position{Offset: 18, Line: 2, Byte: 1, Rune: 1, UTF16: 1}},
		{"before the text", accents, -3, fault.Position{Offset: 0, Line: 1, Byte: 1, Rune: 1, UTF16: 1}},
		{"far behind the text", accents, 99, fault.Position{Offset: 18, Line: 2, Byte: 1, Rune: 1, UTF16: 1}},
		{"end of a line", gaps, 1, fault.Position{Offset: 1, Line: 1, Byte: 2, Rune: 2, UTF16: 2}},
		{"first empty line", gaps, 2, fault.Position{Offset: 2, Line: 2, Byte: 1, Rune: 1, UTF16: 1}},
		{"second empty line", gaps, 3, fault.Position{Offset: 3, Line: 3, Byte: 1, Rune: 1, UTF16: 1}},
		{"value behind empty lines", gaps, 4, fault.Position{Offset: 4, Line: 4, Byte: 1, Rune: 1, UTF16: 1}},
		{"last byte", gaps, 5, fault.Position{Offset: 5, Line: 4, Byte: 2, Rune: 2, UTF16: 2}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, parse(t, tt.text).Position(tt.at)); diff != "" {
				t.Errorf("position of byte %d (- want, + got):\n%s", tt.at, diff)
			}
		})
	}
}

func TestEveryLineOfAWindowsFileIsCounted(t *testing.T) {
	d := parse(t, "{\r\n  \"a\": 1,\r\n\r\n  \"b\": 2\r\n}")
	// Line 1 has 3 bytes, line 2 has 11, line 3 has 2: line 4 starts at 16 and its value stands 7 further on.
	want := fault.Position{Offset: 23, Line: 4, Byte: 8, Rune: 8, UTF16: 8}
	if diff := cmp.Diff(want, d.Place("/b").Start); diff != "" {
		t.Errorf("place of /b (- want, + got):\n%s", diff)
	}
}

func TestNodesKnowWhereTheyAndTheirNamesStand(t *testing.T) {
	//              0         1         2
	//              0123456789012345678901234567
	const text = ` {"a" : [10, {}] , "b":"x" }`
	type spot struct {
		Pointer                      string
		Start, End, KeyStart, KeyEnd int
	}
	want := []spot{
		{"", 1, 28, 1, 1},
		{"/a", 8, 16, 2, 5},
		{"/a/0", 9, 11, 9, 9},
		{"/a/1", 13, 15, 13, 13},
		{"/b", 23, 26, 19, 22},
	}
	d := parse(t, text)
	for _, w := range want {
		n := d.At(w.Pointer)
		if n == nil {
			t.Errorf("no node %q", w.Pointer)
			continue
		}
		if diff := cmp.Diff(w, spot{n.Pointer, n.Start, n.End, n.KeyStart, n.KeyEnd}); diff != "" {
			t.Errorf("node %q (- want, + got):\n%s", w.Pointer, diff)
		}
	}
	if got := d.KeyPlace(d.At("/b")); got.Start.Offset != 19 || got.End.Offset != 22 || got.Pointer != "/b" {
		t.Errorf("the name of /b stands at %d to %d (%s), want 19 to 22", got.Start.Offset, got.End.Offset, got.Pointer)
	}
}

func TestPlaceOfWhatIsNotThereIsTheNearestValueAroundIt(t *testing.T) {
	//            0         1         2
	//            012345678901234567890123456
	const text = `{"walls": {"back": {"w": 3}}}`
	d := parse(t, text)
	tests := []struct {
		pointer    string
		start, end int
	}{
		{"/walls/back/w", 25, 26},
		{"/walls/back/height", 19, 27},
		{"/walls/back/openings/door/x", 19, 27},
		{"/walls/east", 10, 28},
		{"/job", 0, 29},
		{"", 0, 29},
		{"/", 0, 29},
		{"no pointer at all", 0, 29},
	}
	for _, tt := range tests {
		got := d.Place(tt.pointer)
		if got.Start.Offset != tt.start || got.End.Offset != tt.end {
			t.Errorf("%q stands at %d to %d, want %d to %d", tt.pointer, got.Start.Offset, got.End.Offset, tt.start, tt.end)
		}
		if got.Pointer != tt.pointer || got.File != "plan.json" {
			t.Errorf("%q became %q in %q", tt.pointer, got.Pointer, got.File)
		}
	}
}
