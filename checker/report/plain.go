package report

import (
	"fmt"
	"strings"
	"unicode"
)

// Plain makes a text from a plan harmless on a terminal: control characters,
// and those that turn the direction of writing, are spelled out; a line break
// becomes a space.
func Plain(s string) string {
	var b strings.Builder
	for _, r := range s {
		switch {
		case r == '\n' || r == '\t' || r == '\r':
			b.WriteByte(' ')
		case unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' || r == unicode.ReplacementChar:
			fmt.Fprintf(&b, "<U+%04X>", r)
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}
