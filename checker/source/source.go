// Package source reads a JSON document and keeps, for every value, where it
// stands: offset, line, columns and JSON Pointer. It is the first step of a
// plan's way; nothing behind it opens a file.
package source

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"sort"
	"strconv"
	"strings"
	"unicode/utf16"
	"unicode/utf8"

	"github.com/go-json-experiment/json/jsontext"

	"trysquare/checker/fault"
)

// Largest is how many bytes a document may have: room for more
// pieces spelled out than a plan may come to, and an end to a stream that never ends.
const Largest = 64 << 20

// Deepest is how far values may lie within one another; a plan needs ten.
const Deepest = 100

// Document is a JSON text with its values in place.
type Document struct {
	Name  string // the file's name as the user gave it
	Bytes []byte
	Root  *Node
	lines []int // offset of each line's first byte
	kept  []width
	nodes map[string]*Node
}

// Node is a value of the document.
type Node struct {
	Kind             jsontext.Kind // '{' '[' '"' '0' 't' 'f' 'n'
	Pointer          string
	Start, End       int     // offsets of the value
	KeyStart, KeyEnd int     // offsets of the name in front of it, or Start where there is none
	Text             string  // a string's text, a number's literal
	Members          []*Node // an object's values in the order of the text, or an array's
	Names            []string
}

// Member gives an object's value by name, or nil.
func (n *Node) Member(name string) *Node {
	if n == nil {
		return nil
	}
	for i, got := range n.Names {
		if got == name {
			return n.Members[i]
		}
	}
	return nil
}

// Value gives the node as Go values: map[string]any, []any, string, float64, bool and nil.
func (n *Node) Value() any {
	switch n.Kind {
	case '{':
		m := make(map[string]any, len(n.Members))
		for i, v := range n.Members {
			m[n.Names[i]] = v.Value()
		}
		return m
	case '[':
		a := make([]any, len(n.Members))
		for i, v := range n.Members {
			a[i] = v.Value()
		}
		return a
	case '"':
		return n.Text
	case '0':
		f, _ := strconv.ParseFloat(n.Text, 64) // read once already, in Parse
		return f
	case 't', 'f':
		return n.Kind == 't'
	}
	return nil
}

// ReadFile reads the file at path, or r where path is "-". Its errors are faults.
func ReadFile(path string, stdin io.Reader) (*Document, error) {
	name, r := path, stdin
	if path == "-" {
		name = "standard input"
	} else {
		f, err := os.Open(path)
		if err != nil {
			return nil, cannotRead(name, err)
		}
		defer f.Close()
		r = f
	}
	b, err := io.ReadAll(io.LimitReader(r, Largest+1))
	if err != nil {
		return nil, cannotRead(name, err)
	}
	if len(b) > Largest {
		return nil, cannotRead(name, fmt.Errorf("it is larger than %d MiB", Largest>>20))
	}
	return Parse(name, b)
}

func cannotRead(name string, err error) error {
	cause := err
	var pathErr *os.PathError
	if errors.As(err, &pathErr) {
		cause = pathErr.Err // the name stands in front already
	}
	f := fault.New(fault.Unreadable, fault.Place{File: name}, "cannot be read: %v", cause)
	f.Err = err
	return f
}

// Parse reads a JSON text. The errors are faults with their places: not JSON, a
// name twice in one object, a number too large, values nested too deep.
func Parse(name string, b []byte) (*Document, error) {
	d := &Document{Name: name, Bytes: b, lines: lineStarts(b), nodes: map[string]*Node{}}
	d.keepWidths()
	if bytes.HasPrefix(b, []byte("\xef\xbb\xbf")) {
		return nil, d.fault(fault.Syntax, 0, 3, "", "the file starts with a byte order mark; save it as UTF-8 without one")
	}
	dec := jsontext.NewDecoder(bytes.NewReader(b), jsontext.AllowDuplicateNames(true))
	root, err := d.read(dec, "", 0)
	if err != nil {
		return nil, err
	}
	d.Root = root
	if _, err := dec.ReadToken(); !errors.Is(err, io.EOF) {
		at := len(b) - len(bytes.TrimLeft(b[root.End:], " \t\r\n"))
		return nil, d.fault(fault.Syntax, at, at, "", "something stands behind the end of the document")
	}
	return d, nil
}

func (d *Document) read(dec *jsontext.Decoder, pointer string, depth int) (*Node, error) {
	start := d.skipSpace(int(dec.InputOffset()))
	if depth > Deepest {
		return nil, d.fault(fault.Syntax, start, start, pointer, "values are nested more than %d deep", Deepest)
	}
	tok, err := dec.ReadToken()
	if err != nil {
		return nil, d.syntax(err, pointer)
	}
	n := &Node{Kind: tok.Kind(), Pointer: pointer, Start: start, KeyStart: start, KeyEnd: start}
	d.nodes[pointer] = n
	switch n.Kind {
	case '{':
		err = d.readObject(dec, n, depth)
	case '[':
		for i := 0; err == nil && dec.PeekKind() != ']'; i++ {
			var v *Node
			if v, err = d.read(dec, pointer+"/"+strconv.Itoa(i), depth+1); err == nil {
				n.Members = append(n.Members, v)
			}
		}
		if err == nil {
			if _, e := dec.ReadToken(); e != nil {
				err = d.syntax(e, pointer)
			}
		}
	case '"':
		n.Text = tok.String()
	case '0':
		n.Text = tok.String()
		if f, e := strconv.ParseFloat(n.Text, 64); e != nil || math.IsInf(f, 0) {
			err = d.fault(fault.Syntax, start, int(dec.InputOffset()), pointer, "the number %s is too large", clip(n.Text))
		}
	}
	n.End = int(dec.InputOffset())
	return n, err
}

func (d *Document) readObject(dec *jsontext.Decoder, n *Node, depth int) error {
	seen := map[string]int{}
	for dec.PeekKind() != '}' {
		keyStart := d.skipSpace(int(dec.InputOffset()))
		tok, err := dec.ReadToken()
		if err != nil {
			return d.syntax(err, n.Pointer)
		}
		name, keyEnd := tok.String(), int(dec.InputOffset())
		pointer := n.Pointer + "/" + Escape(name)
		if first, twice := seen[name]; twice {
			return d.fault(fault.Syntax, keyStart, keyEnd, pointer, "the key %q stands here a second time; the first is in line %d", clip(name), d.Position(first).Line)
		}
		seen[name] = keyStart
		v, err := d.read(dec, pointer, depth+1)
		if err != nil {
			return err
		}
		v.KeyStart, v.KeyEnd = keyStart, keyEnd
		n.Names, n.Members = append(n.Names, name), append(n.Members, v)
	}
	if _, err := dec.ReadToken(); err != nil {
		return d.syntax(err, n.Pointer)
	}
	return nil
}

// syntax puts the decoder's error at its place in plain words.
func (d *Document) syntax(err error, pointer string) error {
	at, what := len(d.Bytes), "the document ends before it is complete"
	var se *jsontext.SyntacticError
	if errors.As(err, &se) && !errors.Is(err, io.ErrUnexpectedEOF) && !errors.Is(err, io.EOF) {
		at, what = int(se.ByteOffset), "not JSON: "+plainer.Replace(se.Err.Error())
	} else if d.skipSpace(0) == at {
		what = "the file is empty"
	}
	f := d.fault(fault.Syntax, at, at, pointer, "%s", what)
	f.Err = err
	return f
}

// plainer puts the commonest slips in a fitter's words.
var plainer = strings.NewReplacer("object member name must be a string", "a key in double quotes is expected here (a decimal takes a point, not a comma)",
	"invalid character ',' at start of value", "there is a comma too many here, or something is missing beside it", "invalid character '/' at start of value", "a plan has no comments", "invalid UTF-8", "this letter is not in UTF-8; save the file as UTF-8",
	`invalid character '\'' at start of value`, "text stands in double quotes", "invalid character '“' at start of value", "text stands in straight double quotes")

func (d *Document) fault(kind fault.Kind, start, end int, pointer, format string, args ...any) *fault.Fault {
	return fault.New(kind, d.place(start, end, pointer), format, args...)
}

func (d *Document) place(start, end int, pointer string) fault.Place {
	return fault.Place{File: d.Name, Pointer: pointer, Start: d.Position(start), End: d.Position(end)}
}

// skipSpace gives the offset of the next value or name at or behind the offset.
func (d *Document) skipSpace(at int) int {
	for at < len(d.Bytes) && strings.IndexByte(" \t\r\n,:", d.Bytes[at]) >= 0 {
		at++
	}
	return at
}

// At gives the node that a pointer names, or nil.
func (d *Document) At(pointer string) *Node { return d.nodes[pointer] }

// Place gives where a pointer's value stands. Where the document has no such
// value (a default, say), it is the place of the nearest value around it, and
// the pointer stays what was asked for.
func (d *Document) Place(pointer string) fault.Place {
	for p := pointer; ; p = p[:max(strings.LastIndexByte(p, '/'), 0)] {
		if n := d.nodes[p]; n != nil {
			return d.place(n.Start, n.End, pointer)
		}
		if p == "" {
			return fault.Place{File: d.Name, Pointer: pointer}
		}
	}
}

// KeyPlace gives where a value's name stands, for messages about the name itself.
func (d *Document) KeyPlace(n *Node) fault.Place { return d.place(n.KeyStart, n.KeyEnd, n.Pointer) }

// Position turns an offset in bytes into line and columns.
func (d *Document) Position(offset int) fault.Position {
	offset = min(max(offset, 0), len(d.Bytes))
	line := sort.SearchInts(d.lines, offset+1) // the first line that starts behind it
	start := d.lines[line-1]
	var w width
	if offset-start <= stride {
		measure(&w, d.Bytes[start:offset])
	} else {
		from, to := d.widths(start), d.widths(offset)
		w = width{to.runes - from.runes, to.units - from.units}
	}
	return fault.Position{Offset: offset, Line: line, Byte: offset - start + 1, Rune: w.runes + 1, UTF16: w.units + 1}
}

// width is how many code points and UTF-16 code units a stretch of text has.
type width struct{ runes, units int }

// stride is how far apart the places are at which widths are kept: without
// them, every position in a document of one long line would read all of it.
const stride = 512

// widths gives the width of the text before an offset.
func (d *Document) widths(offset int) width {
	at := offset / stride
	w := d.kept[at]
	measure(&w, d.Bytes[min(d.strideStart(at), offset):offset])
	return w
}

// strideStart is the first start of a code point at or behind a kept place.
func (d *Document) strideStart(at int) int {
	start := at * stride
	for start < len(d.Bytes) && start > 0 && !utf8.RuneStart(d.Bytes[start]) {
		start++
	}
	return min(start, len(d.Bytes))
}

func (d *Document) keepWidths() {
	d.kept = make([]width, len(d.Bytes)/stride+1)
	for at := 1; at < len(d.kept); at++ {
		d.kept[at] = d.kept[at-1]
		measure(&d.kept[at], d.Bytes[d.strideStart(at-1):d.strideStart(at)])
	}
}

func measure(w *width, text []byte) {
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		w.runes++
		w.units += max(utf16.RuneLen(r), 1)
		text = text[size:]
	}
}

func lineStarts(b []byte) []int {
	starts := []int{0}
	for i, c := range b {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

var escaper = strings.NewReplacer("~", "~0", "/", "~1")

// Escape writes a name as one token of a JSON Pointer (RFC 6901 section 3).
func Escape(name string) string { return escaper.Replace(name) }

// clip keeps a text from the file short enough for a message.
func clip(s string) string {
	if utf8.RuneCountInString(s) <= 40 {
		return s
	}
	return string([]rune(s)[:40]) + "…"
}
