package cutting

import (
	"context"
	"testing"
)

// The tests' own judge must see what is wrong, or it proves nothing.
func TestASpoiltLayoutIsSeen(t *testing.T) {
	blanks := []Blank{
		{ID: "A", Left: 0, Right: 200, Height: 2000, LeftEdge: true},
		{ID: "B", Left: 80, Right: 180, Height: 1000},
		{ID: "C", Left: 0, Right: 600, Height: 350, LeftEdge: true, RightEdge: true, End: true},
	}
	for name, spoil := range map[string]func(*Layout){
		"nothing":                    func(*Layout) {},
		"off the pattern":            func(l *Layout) { p := &l.Stocks[0].Lengths[1].Pieces[1]; p.Left++; p.Right++ },
		"no edge":                    func(l *Layout) { p := &l.Stocks[0].Lengths[1].Pieces[0]; p.Left += 40; p.Right += 40 },
		"on each other":              func(l *Layout) { p := &l.Stocks[0].Lengths[1].Pieces[1]; p.Left -= 80; p.Right -= 80 },
		"cut twice":                  func(l *Layout) { l.Stocks[0].Lengths[1].Pieces[1].Blank = "A" },
		"turned":                     func(l *Layout) { l.Stocks[0].Lengths[1].Pieces[1].Turned = true },
		"narrow":                     func(l *Layout) { l.Stocks[0].Lengths[1].Pieces[1].Right-- },
		"a length that is too high":  func(l *Layout) { l.Stocks[0].Lengths[1].Top++ },
		"lengths without a kerf":     func(l *Layout) { l.Stocks[0].Lengths[0].Top += 2 },
		"a remainder that is gone":   func(l *Layout) { l.Stocks[0].Left = l.Stocks[0].Left[1:] },
		"a remainder with an edge":   func(l *Layout) { l.Stocks[0].Left[0].LeftEdge = !l.Stocks[0].Left[0].LeftEdge },
		"a remainder called usable":  func(l *Layout) { l.Stocks[0].Left[0].Usable = !l.Stocks[0].Left[0].Usable },
		"a claim that is not proven": func(l *Layout) { l.Least = 0 },
		"another number of boards":   func(l *Layout) { l.Boards++ },
	} {
		l, err := Plan(context.Background(), slatted, blanks, nil, Usual(2))
		if err != nil {
			t.Fatal(err)
		}
		spoil(&l)
		if lines := append(wrong(slatted, blanks, nil, 2, l), sawnAsListed(l)...); (len(lines) == 0) != (name == "nothing") {
			t.Errorf("%s: %q", name, lines)
		}
	}
}
