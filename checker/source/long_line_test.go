package source_test

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf16"
	"unicode/utf8"

	"trysquare/checker/source"
)

// Columns in one long line of mixed widths are those of counting from its
// start, whatever block of the text an offset falls into.
func TestColumnsInALongLine(t *testing.T) {
	text := `["` + strings.Repeat("aé€😀", 3000) + `"]`
	d, err := source.Parse("long", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	runes, units := 1, 1
	for offset, r := range text {
		p := d.Position(offset)
		if p.Rune != runes || p.UTF16 != units || p.Byte != offset+1 || p.Line != 1 {
			t.Fatalf("offset %d: %+v, want rune %d and UTF-16 unit %d", offset, p, runes, units)
		}
		runes, units = runes+1, units+utf16.RuneLen(r)
	}
	if runes-1 != utf8.RuneCountInString(text) {
		t.Fatal("the test counts wrongly")
	}
}

// BenchmarkPositions asks for a thousand places at the end of a document of one
// line. A place costs at most one stride of text (half a KiB, under 1 us), however
// long the line is; reading the whole line cost 500 us a place at 500 KB.
func BenchmarkPositions(b *testing.B) {
	for _, n := range []int{1_000, 100_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			text := "[" + strings.TrimSuffix(strings.Repeat("1234,", n), ",") + "]"
			d, err := source.Parse("long", []byte(text))
			if err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				for i := range 1000 {
					d.Position(len(text) - i)
				}
			}
		})
	}
}
