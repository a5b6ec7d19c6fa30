// Package validate holds a document against its schema and says what is wrong
// in the words of somebody who writes plans, each error at its place.
package validate

import (
	"errors"
	"fmt"
	"net/url"
	"sort"
	"strconv"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/santhosh-tekuri/jsonschema/v5"

	"trysquare/checker/fault"
	"trysquare/checker/source"
	"trysquare/schema"
)

// Most is how many errors are given at once; more would bury the first.
const Most = 10

// Document checks a document. The error is a fault.List in the order of the
// text, at most Most long, with a last entry that counts the rest.
func Document(d *source.Document, name schema.Name) error {
	s, err := schema.Get(name)
	if err != nil {
		return fmt.Errorf("validating %s: %w", d.Name, err)
	}
	if err := nameless(d, d.Root).Sorted(); err != nil {
		return err
	}
	err = s.Compiled.Validate(d.Root.Value())
	if err == nil {
		return nil
	}
	var ve *jsonschema.ValidationError
	if !errors.As(err, &ve) {
		return fault.New(fault.Schema, d.Place(""), "%v", err)
	}
	var list fault.List
	for _, leaf := range leaves(ve) {
		list = append(list, explain(d, s, leaf)...)
	}
	_ = list.Sorted()
	list = oneAPlace(list)
	if len(list) > Most {
		more := len(list) - Most
		list = append(list[:Most:Most], fault.New(fault.Schema, fault.Place{File: d.Name}, "%d more like these", more))
	}
	return list
}

// nameless finds keys without a letter. No document has them, and the library
// leaves them out of an error's place, which would then be a wrong one.
func nameless(d *source.Document, n *source.Node) fault.List {
	var list fault.List
	for i, v := range n.Members {
		if n.Kind == '{' && n.Names[i] == "" {
			list = append(list, fault.New(fault.Schema, d.KeyPlace(v), "a key must not be empty"))
		}
		list = append(list, nameless(d, v)...)
	}
	return list
}

// leaves gives the errors that have no cause below them.
func leaves(e *jsonschema.ValidationError) []*jsonschema.ValidationError {
	if len(e.Causes) == 0 {
		return []*jsonschema.ValidationError{e}
	}
	var out []*jsonschema.ValidationError
	for _, c := range e.Causes {
		out = append(out, leaves(c)...)
	}
	return out
}

// oneAPlace keeps the first message a place: a string that is not a length need
// not also be told that it is too long.
func oneAPlace(list fault.List) fault.List {
	seen := map[string]bool{}
	var out fault.List
	for _, f := range list {
		key := fmt.Sprint(f.Place.Start.Offset, f.Place.Pointer)
		if !seen[key] || strings.HasPrefix(f.Message, "the key") {
			out = append(out, f)
		}
		seen[key] = true
	}
	return out
}

func explain(d *source.Document, s *schema.Schema, e *jsonschema.ValidationError) fault.List {
	at, err := url.PathUnescape(e.InstanceLocation) // the library writes names as in a URL
	if err != nil {
		at = e.InstanceLocation
	}
	node, place := d.At(at), d.Place(at)
	value, in := s.Keyword(e.AbsoluteKeywordLocation)
	if node == nil {
		return fault.List{fault.New(fault.Schema, place, "%s", e.Message)}
	}
	what := found(node)
	if strings.Contains(e.KeywordLocation, "/propertyNames/") {
		place, what = d.KeyPlace(node), "the key "+quote(unescape.Replace(at[strings.LastIndexByte(at, '/')+1:]))
	}
	say := func(format string, args ...any) fault.List {
		return fault.List{fault.New(fault.Schema, place, format, args...)}
	}
	keyword := e.AbsoluteKeywordLocation[strings.LastIndexByte(e.AbsoluteKeywordLocation, '/')+1:]
	switch keyword {
	case "additionalProperties":
		return unknownKeys(d, node, in)
	case "required":
		return missingKeys(d, node, value)
	case "type":
		return say("%s is expected here, not %s", expected(in, value), what)
	case "enum":
		return say("%s is expected here, not %s", oneOf(value), what)
	case "pattern":
		if strings.HasSuffix(parent(e.AbsoluteKeywordLocation), "/name") {
			return say("%s cannot be a name; a name starts with a letter or a digit and goes on with letters, digits, space, dot, dash or underline", what)
		}
		if strings.HasSuffix(parent(e.AbsoluteKeywordLocation), "/length") {
			return say("%s is not a length; write a number in the plan's units, or one with mm, cm, m, in or ft, such as \"600 mm\" or \"23 5/8 in\"", what)
		}
		return say("%s does not have the form expected: %s", what, describe(in))
	case "minimum":
		return say("%s is too small; the least is %s", what, number(value))
	case "maximum":
		return say("%s is too large; the most is %s", what, number(value))
	case "exclusiveMinimum":
		return say("%s is too small; it must be more than %s", what, number(value))
	case "minLength", "minItems", "minProperties":
		return say("this must not be empty")
	case "maxLength":
		return say("this is too long; the most is %s characters", number(value))
	}
	if value == false { // a schema that refuses whatever stands there
		place = d.KeyPlace(node)
		return say("the key %s does not go with what else stands here", quote(keyword))
	}
	return say("%s", e.Message)
}

var unescape = strings.NewReplacer("~1", "/", "~0", "~") // RFC 6901 section 4

// number writes a schema's number as a fitter would: 1000000, not 1e+06.
func number(value any) string {
	f, _ := value.(float64)
	return strconv.FormatFloat(f, 'f', -1, 64)
}

func parent(location string) string { return location[:strings.LastIndexByte(location, '/')] }

// unknownKeys gives a fault for each name that the schema object does not list.
func unknownKeys(d *source.Document, node *source.Node, in map[string]any) fault.List {
	props, _ := in["properties"].(map[string]any)
	known := make([]string, 0, len(props))
	for name := range props {
		known = append(known, name)
	}
	sort.Strings(known)
	var list fault.List
	for i, name := range node.Names {
		if _, ok := props[name]; ok {
			continue
		}
		hint := "known here: " + strings.Join(known, ", ")
		if near := nearest(name, known); near != "" {
			hint = fmt.Sprintf("did you mean %q?", near)
		}
		list = append(list, fault.New(fault.Schema, d.KeyPlace(node.Members[i]), "the key %s is not known here; %s", quote(name), hint))
	}
	return list
}

// nearest gives the known name that a slip of the hand away is, or "".
func nearest(name string, known []string) string {
	best, distance := "", 3
	for _, k := range known {
		if d := levenshtein.ComputeDistance(strings.ToLower(name), k); d < distance && d < len(k) {
			best, distance = k, d
		}
	}
	return best
}

func missingKeys(d *source.Document, node *source.Node, value any) fault.List {
	names, _ := value.([]any)
	var list fault.List
	for _, n := range names {
		if name, _ := n.(string); node.Member(name) == nil {
			list = append(list, fault.New(fault.Schema, d.Place(node.Pointer), "the key %q is missing here", name))
		}
	}
	return list
}

// expected names what a type keyword asks for.
func expected(in map[string]any, value any) string {
	if list, ok := value.([]any); ok && len(list) == 2 {
		return "a length (a number in the plan's units, or text such as \"600 mm\")"
	}
	switch value {
	case "object":
		return "an object in braces"
	case "array":
		return "a list in brackets"
	case "string":
		return "text in quotes"
	case "number":
		return "a number"
	case "integer":
		return "a whole number"
	case "boolean":
		return "true or false"
	}
	return describe(in)
}

func describe(in map[string]any) string {
	s, _ := in["description"].(string)
	return s
}

func oneOf(value any) string {
	list, _ := value.([]any)
	words := make([]string, len(list))
	for i, v := range list {
		words[i] = fmt.Sprintf("%q", v)
	}
	if len(words) == 1 {
		return words[0]
	}
	return "one of " + strings.Join(words, ", ")
}

// found names what stands in the text.
func found(n *source.Node) string {
	if n == nil {
		return "this"
	}
	switch n.Kind {
	case '{':
		return "an object"
	case '[':
		return "a list"
	case '"':
		return quote(n.Text)
	case '0':
		return "the number " + clip(n.Text)
	case 'n':
		return "null"
	}
	return map[bool]string{true: "true", false: "false"}[n.Kind == 't']
}

// quote writes a text from the file in quotes, short enough for a message, and
// spells out what cannot be seen (a no-break space in a length, say).
func quote(s string) string { return strconv.Quote(clip(s)) }

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		s = string(r[:40]) + "…"
	}
	return s
}
