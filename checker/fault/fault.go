// Package fault holds the one kind of error that the checker's packages give to
// their callers: what sort of thing went wrong, where, and a message for the
// person who wrote the file.
package fault

import (
	"errors"
	"fmt"
	"sort"
	"strconv"
	"strings"
)

// Kind says what sort of thing went wrong. Kinds are stable: scripts may compare them.
type Kind string

const (
	Unreadable Kind = "unreadable" // the file cannot be opened or read
	Syntax     Kind = "syntax"     // not JSON, or JSON that says a thing twice
	Schema     Kind = "schema"     // JSON, but not a document of the kind asked for
	Reference  Kind = "reference"  // a name that stands for nothing, or for two things
	Geometry   Kind = "geometry"   // lengths that no wall, door or panel can have
	Rule       Kind = "rule"       // a rule or limit that cannot be used
	Engine     Kind = "engine"     // a rule that failed or ran out of time
)

// Position is a place in a text. Line and the columns start at 1, Offset at 0.
type Position struct {
	Offset int `json:"offset"`
	Line   int `json:"line"`
	Byte   int `json:"byte"`  // column counted in bytes
	Rune   int `json:"rune"`  // column counted in Unicode code points
	UTF16  int `json:"utf16"` // column counted in UTF-16 code units
}

// Place is a stretch of a file: from Start up to, not including, End.
type Place struct {
	File    string   `json:"file"`
	Pointer string   `json:"pointer"` // RFC 6901; "" is the whole document
	Start   Position `json:"start"`
	End     Position `json:"end"`
}

// String gives FILE:LINE:COLUMN, the column in code points as editors count.
func (p Place) String() string {
	if p.Start.Line == 0 {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Start.Line, p.Start.Rune)
}

// Fault is an error with a kind and a place.
type Fault struct {
	Kind    Kind   `json:"kind"`
	Place   Place  `json:"place"`
	Message string `json:"message"`
	Err     error  `json:"-"` // the cause, where there is one
}

// Error gives the place, the pointer and the message on one line. What cannot
// be seen is spelled out: a pointer holds names as the file has them.
func (f *Fault) Error() string {
	var b strings.Builder
	b.WriteString(f.Place.String())
	b.WriteString(": ")
	if f.Place.Pointer != "" {
		b.WriteString("at ")
		b.WriteString(f.Place.Pointer)
		b.WriteString(": ")
	}
	b.WriteString(f.Message)
	return visible(b.String())
}

func visible(s string) string {
	var b strings.Builder
	for _, r := range s {
		if q := strconv.QuoteRune(r); !strconv.IsPrint(r) {
			b.WriteString(q[1 : len(q)-1])
			continue
		}
		b.WriteRune(r)
	}
	return b.String()
}

// Unwrap gives the cause.
func (f *Fault) Unwrap() error { return f.Err }

// New makes a fault.
func New(kind Kind, place Place, format string, args ...any) *Fault {
	return &Fault{Kind: kind, Place: place, Message: fmt.Sprintf(format, args...)}
}

// List is several faults as one error.
type List []*Fault

// Error gives a line a fault.
func (l List) Error() string {
	lines := make([]string, len(l))
	for i, f := range l {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the faults as errors.
func (l List) Unwrap() []error {
	errs := make([]error, len(l))
	for i, f := range l {
		errs[i] = f
	}
	return errs
}

// Sorted gives the list in the order of the file, and nil where it is empty, so
// that a caller can return it as an error at once.
func (l List) Sorted() error {
	if len(l) == 0 {
		return nil
	}
	sort.SliceStable(l, func(i, j int) bool {
		if l[i].Place.Start.Offset != l[j].Place.Start.Offset {
			return l[i].Place.Start.Offset < l[j].Place.Start.Offset
		}
		return l[i].Message < l[j].Message
	})
	return l
}

// All gives every fault in an error, or the error itself as one Unreadable fault.
func All(err error) List {
	if err == nil {
		return nil
	}
	var list List
	if errors.As(err, &list) {
		return list
	}
	var one *Fault
	if errors.As(err, &one) {
		return List{one}
	}
	return List{{Kind: Unreadable, Message: err.Error(), Err: err}}
}
