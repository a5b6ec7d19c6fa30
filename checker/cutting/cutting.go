// Package cutting plans how panels with upright slats are cut from boards: which
// blank comes from which board, where the saw goes, and what is left over. It
// knows nothing of walls or rules.
//
// A board lies with its slats upright: x runs from its left factory edge over
// the cover width, y from its bottom end. It is crosscut over its whole width
// into lengths, each length is ripped over its whole height, and a blank lower
// than its length is trimmed with one crosscut more. Between two parts, and
// between a blank and an offcut, the saw takes a kerf; at an edge or end that
// the board already has it takes nothing.
//
// The pattern is fixed to the board. A blank that needs no factory edge may be
// cut whole pitches away from its own stretch; one that needs an edge may not.
// It does no harm if a blank gets an edge or end that it does not need.
//
// A blank that needs a factory end gets either of the board's two: a board may
// be shortened at either end, so the bottom and the top length of every board
// have one, and a blank that is trimmed in such a length is trimmed at the
// other end. Lengths in between have none.
package cutting

import (
	"context"
	"fmt"
)

// Board is a product as it comes from the factory.
type Board struct {
	Width    float64 // mm; cover width
	Height   float64 // mm; along the slats
	Pitch    float64 // mm; from slat to slat, at least 1; 0 for a sheet without a pattern
	Turnable bool    // looks the same turned end for end in its plane: even pattern, like edges
}

// Blank is what a board must give for one piece on the wall.
type Blank struct {
	ID          string
	Left, Right float64 // mm; the stretch of the whole panel's cover width that it lies in: this fixes the pattern
	Height      float64 // mm
	LeftEdge    bool    // needs the left factory edge: Left is 0
	RightEdge   bool    // needs the right factory edge: Right is the board's width
	End         bool    // needs a factory end, either one
}

// Offcut is a rectangle left of a board, in stock before the job or after it.
type Offcut struct {
	ID                  string
	Left, Right         float64 // mm; the stretch of the whole panel's cover width that it has
	Height              float64 // mm
	LeftEdge, RightEdge bool    // side edges as from the factory
	BottomEnd, TopEnd   bool    // ends as from the factory
}

// Settings are numbers of the house. Usual gives the usual ones.
type Settings struct {
	Kerf        float64 // mm; what a saw cut takes
	LeastWidth  float64 // mm; an offcut narrower than this is waste
	LeastHeight float64 // mm; an offcut lower than this is waste
	Nodes       int     // steps that the exact search may take; 0 for none
}

// Usual gives the settings that are common practice for a kerf in mm: offcuts
// are kept from 50 mm x 300 mm. The steps of the search are a bound on time (a
// fraction of a second), and no clock, so that every run finds the same.
func Usual(kerf float64) Settings {
	return Settings{Kerf: kerf, LeastWidth: 50, LeastHeight: 300, Nodes: 200_000}
}

// Layout is a cutting plan.
type Layout struct {
	Stocks []Stock // offcuts used, then boards 1, 2, ...
	Kerf   float64 // mm; what it leaves for each saw cut
	Boards int     // new boards used
	Least  int     // no plan, with the same offcuts, uses fewer new boards than this
	Proven bool    // Boards is Least: no plan is better
}

// Stock is a board, or an offcut from stock, with what is cut from it.
type Stock struct {
	Board         int         // number of the new board, from 1; 0 for an offcut
	Offcut        string      // the offcut's ID; empty for a board
	Width, Height float64     // mm
	Lengths       []Length    // from the bottom end upwards
	Left          []Remainder // what is left of it, usable or not
}

// Length is a part of a board over its whole width.
type Length struct {
	Bottom, Top float64 // mm from the bottom end of the board or offcut
	Pieces      []Piece // from left to right
}

// Piece is a blank in its place.
type Piece struct {
	Blank       string
	Left, Right float64 // mm from the left edge of the board or offcut
	Bottom, Top float64 // mm from its bottom end
	Turned      bool    // goes on the wall turned end for end
}

// Remainder is an offcut in its place. Its own Left and Right are in the whole
// panel's cover width; X and Y say where it lies.
type Remainder struct {
	Offcut
	X, Y   float64 // mm; lower left corner, from the left edge and bottom end of the board or offcut
	Usable bool    // as wide and as high as the settings ask
}

// Plan finds a cutting plan that uses few new boards, offcuts first, and says
// whether fewer are possible. Small jobs are searched through, as far as the
// settings' steps go; large ones are cut first fit decreasing. The same input
// gives the same plan, in whatever order it lists blanks and offcuts.
//
// Its errors are InvalidErrors, several joined, or the context's.
func Plan(ctx context.Context, board Board, blanks []Blank, offcuts []Offcut, s Settings) (Layout, error) {
	j, err := newJob(board, blanks, offcuts, s.Kerf)
	if err != nil {
		return Layout{}, err
	}
	if err := s.check(); err != nil {
		return Layout{}, err
	}
	alone, parts := j.apart()
	best, err := j.firstFit(ctx, parts)
	if err != nil {
		return Layout{}, stopped(err)
	}
	least := j.least(parts)
	if used := boards(best); least < used && len(parts) <= mostSearched {
		if best, least, err = j.improve(ctx, parts, best, least, s.Nodes); err != nil {
			return Layout{}, stopped(err)
		}
	}
	layout := j.layout(append(alone, best...), s)
	layout.Least = least + len(alone)
	layout.Proven = layout.Least == layout.Boards
	return layout, nil
}

func stopped(err error) error { return fmt.Errorf("planning the cuts: %w", err) }
