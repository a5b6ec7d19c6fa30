package fault_test

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"trysquare/checker/fault"
)

// at gives a place in line and code point column; the other columns are wrong on purpose.
func at(line, column, offset int, pointer string) fault.Place {
	return fault.Place{File: "hall.json", Pointer: pointer, Start: fault.Position{Offset: offset, Line: line, Byte: 70, Rune: column, UTF16: 80}}
}

func TestErrorGivesPlacePointerAndMessage(t *testing.T) {
	tests := []struct {
		name  string
		place fault.Place
		want  string
	}{
		{"with a pointer", at(3, 7, 40, "/walls/east"), "hall.json:3:7: at /walls/east: too wide"},
		{"the whole document", at(1, 1, 0, ""), "hall.json:1:1: too wide"},
		{"the file as such", fault.Place{File: "hall.json"}, "hall.json: too wide"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if got := fault.New(fault.Geometry, tt.place, "too %s", "wide").Error(); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

// A pointer holds names as the file has them, and a file may be written to do harm on a terminal.
func TestErrorStaysOnOneLineAndSpellsOutWhatCannotBeSeen(t *testing.T) {
	f := fault.New(fault.Schema, at(2, 5, 9, "/walls/a\nb\x1b[2J\u202e\u009b/Bühne 😀"), "a no-break\u00a0space")
	const want = `hall.json:2:5: at /walls/a\nb\x1b[2J\u202e\u009b/Bühne 😀: a no-break\u00a0space`
	if got := f.Error(); got != want {
		t.Errorf("got  %q\nwant %q", got, want)
	}
	if got := (fault.List{f, f}).Error(); got != want+"\n"+want {
		t.Errorf("a list of two gives %q", got)
	}
}

func TestSortedGoesByPlaceThenByMessage(t *testing.T) {
	l := fault.List{
		fault.New(fault.Schema, at(2, 1, 20, ""), "d"),
		fault.New(fault.Schema, at(1, 1, 3, ""), "c"),
		fault.New(fault.Schema, at(1, 9, 12, ""), "b"),
		fault.New(fault.Schema, at(1, 1, 3, ""), "a"),
	}
	err := l.Sorted()
	if err == nil {
		t.Fatal("four faults are no error")
	}
	var got []string
	for _, f := range fault.All(err) {
		got = append(got, f.Message)
	}
	if diff := cmp.Diff([]string{"a", "c", "b", "d"}, got); diff != "" {
		t.Errorf("order (- want, + got):\n%s", diff)
	}
}

// A nil list in an error that is not nil would look like a fault without words.
func TestSortedGivesNoErrorForNoFaults(t *testing.T) {
	if err := (fault.List{}).Sorted(); err != nil {
		t.Errorf("an empty list gives %#v", err)
	}
	if err := (fault.List)(nil).Sorted(); err != nil {
		t.Errorf("a nil list gives %#v", err)
	}
}

func TestAllFindsTheFaultsInAnError(t *testing.T) {
	one, two := fault.New(fault.Reference, at(1, 2, 1, "/a"), "one"), fault.New(fault.Geometry, at(1, 3, 2, "/b"), "two")
	tests := []struct {
		name string
		err  error
		want fault.List
	}{
		{"none", nil, nil},
		{"one", one, fault.List{one}},
		{"one, wrapped", fmt.Errorf("checking: %w", one), fault.List{one}},
		{"a list, wrapped", fmt.Errorf("checking: %w", fault.List{one, two}), fault.List{one, two}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if diff := cmp.Diff(tt.want, fault.All(tt.err)); diff != "" {
				t.Errorf("(- want, + got):\n%s", diff)
			}
		})
	}
	foreign := errors.New("the disk is gone")
	got := fault.All(foreign)
	if len(got) != 1 || got[0].Kind != fault.Unreadable || got[0].Message != "the disk is gone" || !errors.Is(got[0], foreign) {
		t.Errorf("an error that is no fault becomes %+v", got)
	}
}

func TestTheCauseCanBeFoundThroughAFaultAndAList(t *testing.T) {
	f := fault.New(fault.Unreadable, fault.Place{File: "hall.json"}, "cannot be read")
	f.Err = fs.ErrPermission
	for name, err := range map[string]error{"fault": f, "list": fault.List{fault.New(fault.Rule, fault.Place{}, "another"), f}} {
		if !errors.Is(err, fs.ErrPermission) {
			t.Errorf("%s: the cause is lost", name)
		}
		if errors.Is(err, fs.ErrNotExist) {
			t.Errorf("%s: it is taken for another cause", name)
		}
	}
	if !strings.HasPrefix(f.Error(), "hall.json: ") {
		t.Errorf("%q does not name the file", f.Error())
	}
}
