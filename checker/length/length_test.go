package length_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"trysquare/checker/length"
)

// tiny is far below what facts keep (0.01 mm) and above what a product of two floats loses.
const tiny = 1e-9

func TestParseGivesMillimetres(t *testing.T) {
	for text, want := range map[string]float64{
		"600 mm":         600,
		"600mm":          600,
		"  600  mm  ":    600,
		"0 mm":           0,
		"-12 mm":         -12,
		"60 cm":          600,
		"2.4 m":          2400,
		"2.5mm":          2.5,
		"1 in":           25.4,
		"1/2 in":         12.7,
		"5/8in":          15.875,   // 25.4 × 5 ÷ 8
		"23 5/8 in":      600.075,  // 23.625 × 25.4
		"-23 5/8 in":     -600.075, // the sign is for the whole
		"2 ft":           609.6,    // 2 × 304.8
		"2 ft 6 in":      762,      // 30 × 25.4
		"2ft 6in":        762,
		"-2 ft 6 in":     -762,
		"1 ft 0.5 in":    317.5,      // 12.5 × 25.4
		"7 ft 11 1/2 in": 2425.7,     // 95.5 × 25.4
		"10 ft 1/32 in":  3048.79375, // 3048 + 25.4 ÷ 32
	} {
		got, err := length.Parse(text)
		if err != nil || math.Abs(got-want) > tiny {
			t.Errorf("Parse(%q) = %v, %v; want %v mm", text, got, err, want)
		}
	}
}

func TestParseRefusesWhatCouldMeanTwoThings(t *testing.T) {
	for _, text := range []string{
		"", " ", "-", "600", "23 5/8", "mm", "mm 600", "600 mil", "600 MM", "six mm", "2,4 m", "1e3 mm", "0x10 mm", "NaN mm", "Inf mm", "--5 mm", "- 5 mm",
		"5/0 in", "5/-8 in", "1/2/3 in", "600 mm 5", "5 -3 mm", "2 ft -6 in",
		"600 600 mm", // not 1200
		"1/2 1/2 in", // not 1
		"5/8 23 in",  // the fraction stands behind
		"2.5 3/4 in", // a decimal and a fraction
		"1 2 3/4 in", // three numbers
		"6 in 2 ft",  // the feet stand in front
		"2 ft 3 ft", "5 mm 3 m", "600 mm 600 mm", "1 m 20 cm", "2 ft 6 mm", "1 ft 2 in 3 in",
	} {
		got, err := length.Parse(text)
		want := fmt.Sprintf(`%q is not a length; write a number with mm, cm, m, in or ft, such as "600 mm" or "23 5/8 in"`, text)
		if err == nil || err.Error() != want {
			t.Errorf("Parse(%q) = %v, %v\nwant the error %s", text, got, err, want)
		}
	}
}

func TestFormatWritesForAReaderOfEitherUnit(t *testing.T) {
	tests := []struct {
		unit length.Unit
		mm   float64
		want string
	}{
		{length.Millimetre, 118, "118 mm"},
		{length.Millimetre, 118.5, "118.5 mm"},
		{length.Millimetre, 118.04, "118 mm"},
		{length.Millimetre, 118.06, "118.1 mm"},
		{length.Millimetre, 1000, "1000 mm"},
		{length.Millimetre, 0, "0 mm"},
		{length.Millimetre, -12, "-12 mm"},
		{length.Millimetre, -0.04, "0 mm"},
		{length.Inch, 0, "0 in (0 mm)"},
		{length.Inch, 609.6, "24 in (609.6 mm)"},
		{length.Inch, 12.7, "1/2 in (12.7 mm)"},
		{length.Inch, 117.475, "4 5/8 in (117.5 mm)"}, // 4.625 × 25.4
		{length.Inch, -117.475, "-4 5/8 in (-117.5 mm)"},
		{length.Inch, -12.7, "-1/2 in (-12.7 mm)"},
		{length.Inch, 600, "23 5/8 in (600 mm)"}, // 755.9 thirty-seconds: 756 are 23 20/32
		{length.Inch, 1, "1/32 in (1 mm)"},       // 1.26 thirty-seconds
		{length.Inch, 1.25, "1/16 in (1.2 mm)"},  // 1.57 thirty-seconds
		{length.Inch, 25, "31/32 in (25 mm)"},    // 31.496 thirty-seconds
		{length.Inch, 25.2, "1 in (25.2 mm)"},    // 31.75 thirty-seconds
		{length.Inch, 0.3, "0 in (0.3 mm)"},      // 0.38 thirty-seconds
		{length.Inch, -0.3, "0 in (-0.3 mm)"},    // no sign on a nought
		{length.Inch, 3048, "120 in (3048 mm)"},  // 10 ft, written in inches as on a tape
		{length.Inch, 5, "3/16 in (5 mm)"},       // 6.3 thirty-seconds: 6/32
		{length.Inch, 2425.7, "95 1/2 in (2425.7 mm)"},
	}
	for _, tt := range tests {
		if got := tt.unit.Format(tt.mm); got != tt.want {
			t.Errorf("%v mm in %s: got %q, want %q", tt.mm, tt.unit, got, tt.want)
		}
	}
}

func TestFormattedInchesReadBackAsTheSameLength(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(-40_000, 40_000).Draw(t, "thirty-seconds")
		want := float64(n) * 25.4 / 32
		text, _, ok := strings.Cut(length.Inch.Format(want), " (")
		if !ok {
			t.Fatalf("%q has no millimetres behind it", text)
		}
		got, err := length.Parse(text)
		if err != nil || math.Abs(got-want) > tiny {
			t.Fatalf("%d/32 in is written %q and read back as %v, %v; want %v mm", n, text, got, err, want)
		}
	})
}

func TestFormattedMillimetresReadBackToATenth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := float64(rapid.IntRange(-100_000, 100_000).Draw(t, "tenths")) / 10
		text := length.Millimetre.Format(want)
		got, err := length.Parse(text)
		if err != nil || math.Abs(got-want) > tiny {
			t.Fatalf("%v mm is written %q and read back as %v, %v", want, text, got, err)
		}
	})
}

func TestRoundKeepsHundredthsAndNoNegativeZero(t *testing.T) {
	for mm, want := range map[float64]float64{
		0: 0, 118: 118, 600.075: 600.08, 20.6375: 20.64, 117.474: 117.47, 0.005: 0.01, 0.004: 0, -1.236: -1.24, -0.004: 0, 3048.0000000000005: 3048,
	} {
		if got := length.Round(mm); got != want || math.Signbit(got) != (want < 0) {
			t.Errorf("Round(%v) = %v, want %v", mm, got, want)
		}
	}
}

func TestBareNumbersTakeThePlansUnit(t *testing.T) {
	if got := length.Millimetre.FromNumber(600); got != 600 {
		t.Errorf("600 in a plan in mm is %v mm", got)
	}
	if got := length.Inch.FromNumber(23.625); math.Abs(got-600.075) > tiny {
		t.Errorf("23.625 in a plan in inches is %v mm, want 600.075", got)
	}
}
