package report

import "testing"

// A spreadsheet takes a cell that begins so for a formula; a quote in front makes it text.
func TestCellsAreNoFormulas(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "oak": "oak", "=1+1": "'=1+1", "+44": "'+44", "-2": "'-2", "@SUM(A1)": "'@SUM(A1)", "\t=1": "'\t=1", "\r": "'\r", "a=b": "a=b",
	} {
		if got := cell(text); got != want {
			t.Errorf("%q becomes %q, want %q", text, got, want)
		}
	}
}
