// Package length reads and writes lengths in millimetres and inches.
package length

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Unit is a unit of length that a plan may use for bare numbers.
type Unit string

const (
	Millimetre Unit = "mm"
	Inch       Unit = "in"
)

// Millimetres in one of each unit. An inch is 25.4 mm exactly (the international inch of 1959).
var inMM = map[string]float64{"mm": 1, "cm": 10, "m": 1000, "in": 25.4, "ft": 304.8}

// Round rounds millimetres to 0.01: what facts carry and what a tape can never show.
func Round(mm float64) float64 {
	r := math.Round(mm*100) / 100
	if r == 0 {
		return 0 // no negative zero
	}
	return r
}

// FromNumber gives a bare number of the unit in millimetres.
func (u Unit) FromNumber(n float64) float64 { return n * inMM[string(u)] }

// Parse reads a length that carries its own unit, such as "600 mm", "23 5/8 in"
// or "2 ft 6 in", and gives millimetres. Its errors say what was expected.
func Parse(s string) (float64, error) {
	fields := strings.Fields(separateUnits(s))
	sign := 1.0
	if len(fields) > 0 && strings.HasPrefix(fields[0], "-") {
		sign, fields[0] = -1, fields[0][1:]
	}
	total, pending, seen, wholes, unit := 0.0, 0.0, 0, 0, ""
	for i, f := range fields {
		if factor, ok := inMM[f]; ok {
			if seen == 0 || wholes > 0 && (unit != "ft" || f != "in") {
				return 0, bad(s)
			}
			total += pending * factor
			pending, seen, wholes, unit = 0, 0, wholes+1, f
			continue
		}
		v, err := number(f)
		if err != nil || seen == 2 || seen == 1 && (!strings.Contains(f, "/") || strings.ContainsAny(fields[i-1], "./")) {
			return 0, bad(s)
		}
		pending += v
		seen++
	}
	if seen != 0 || wholes == 0 {
		return 0, bad(s)
	}
	return sign * total, nil
}

func bad(s string) error {
	return fmt.Errorf("%q is not a length; write a number with mm, cm, m, in or ft, such as \"600 mm\" or \"23 5/8 in\"", s)
}

// separateUnits puts a space between a number and a unit written together ("600mm").
func separateUnits(s string) string {
	var b strings.Builder
	var last rune
	for _, r := range s {
		letter := r >= 'a' && r <= 'z'
		if letter && last >= '0' && last <= '9' {
			b.WriteByte(' ')
		}
		b.WriteRune(r)
		last = r
	}
	return b.String()
}

func number(s string) (float64, error) {
	if over, under, ok := strings.Cut(s, "/"); ok {
		n, err1 := strconv.ParseUint(over, 10, 32)
		d, err2 := strconv.ParseUint(under, 10, 32)
		if err1 != nil || err2 != nil || d == 0 {
			return 0, fmt.Errorf("%q is not a fraction", s)
		}
		return float64(n) / float64(d), nil
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil || v < 0 || math.IsInf(v, 0) || math.IsNaN(v) {
		return 0, fmt.Errorf("%q is not a number", s)
	}
	return v, nil
}

// Format writes millimetres for a reader who works in the unit: "118 mm",
// "118.5 mm", or in inches to the nearest 32nd with the millimetres behind it.
func (u Unit) Format(mm float64) string {
	metric := trim(mm, 1) + " mm"
	if u != Inch {
		return metric
	}
	return inches(mm) + " in (" + metric + ")"
}

func trim(v float64, digits int) string {
	s := strconv.FormatFloat(v, 'f', digits, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// inches writes to the nearest 32nd, the finest mark on most tapes.
func inches(mm float64) string {
	n := int64(math.Round(math.Abs(mm) / 25.4 * 32))
	sign := ""
	if mm < 0 && n > 0 {
		sign = "-"
	}
	whole, part, den := n/32, n%32, int64(32)
	for part != 0 && part%2 == 0 {
		part, den = part/2, den/2
	}
	switch {
	case part == 0:
		return fmt.Sprintf("%s%d", sign, whole)
	case whole == 0:
		return fmt.Sprintf("%s%d/%d", sign, part, den)
	}
	return fmt.Sprintf("%s%d %d/%d", sign, whole, part, den)
}
