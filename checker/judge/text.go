package judge

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"trysquare/checker/length"
)

// placeholder is {name} or {name:unit} in a rule's text.
var placeholder = regexp.MustCompile(`\{([a-z_]+)(?::([a-z]+))?\}`)

// units that a text may ask for.
var units = map[string]bool{"": true, "mm": true, "ml": true, "count": true, "h": true, "share": true}

// checkTexts refuses a unit that nothing can be written in; a name that a
// result does not bring is found when the result comes.
func (r *Rule) checkTexts() error {
	for _, text := range []string{r.Says, r.Do} {
		for _, m := range placeholder.FindAllStringSubmatch(text, -1) {
			if !units[m[2]] {
				return fmt.Errorf("%s: there is no unit %q", m[0], m[2])
			}
			if m[2] != "" && (m[1] == "subject" || m[1] == "measured" || m[1] == "limit") {
				return fmt.Errorf("%s: {%s} has its unit already", m[0], m[1])
			}
		}
		if strings.ContainsAny(placeholder.ReplaceAllString(text, ""), "{}") {
			return fmt.Errorf("a brace in %q belongs to no name", text)
		}
	}
	return nil
}

// Fill puts a result's values into one of its rule's texts, lengths in the
// plan's units. Its error names what the result does not bring.
func (r Result) Fill(text string, unit length.Unit, limit *float64) (string, error) {
	var missing error
	out := placeholder.ReplaceAllStringFunc(text, func(word string) string {
		m := placeholder.FindStringSubmatch(word)
		switch {
		case m[1] == "subject":
			return r.Subject.ID
		case m[1] == "measured" && r.Measured != nil:
			return Write(*r.Measured, r.Rule.Unit, unit)
		case m[1] == "limit" && limit != nil:
			return Write(*limit, r.Rule.Unit, unit)
		}
		switch v := r.Values[m[1]].(type) {
		case float64:
			return Write(v, m[2], unit)
		case string:
			return v
		case []string:
			return strings.Join(v, ", ")
		}
		missing = fmt.Errorf("the text wants %s, which the result does not bring", word)
		return word
	})
	return out, missing
}

// Write writes a number in its unit: "mm", "ml", "h", "share", or a bare count.
func Write(v float64, kind string, unit length.Unit) string {
	plain := strconv.FormatFloat(length.Round(v), 'f', -1, 64)
	switch kind {
	case "mm":
		return unit.Format(v)
	case "ml":
		return strconv.FormatFloat(v, 'f', 0, 64) + " ml"
	case "h":
		return plain + " h"
	case "share":
		return strconv.FormatFloat(length.Round(v*100), 'f', -1, 64) + " %"
	}
	return plain
}
