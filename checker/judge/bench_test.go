package judge_test

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"trysquare/checker/facts"
	"trysquare/checker/judge"
	"trysquare/rules"
)

// longPlan writes a plan of one wall of so many panels, glued and screwed, with
// a door in every 20 of them. Nobody has such a hall; it is to show what grows
// with the number of pieces.
func longPlan(panels int) []byte {
	var doors strings.Builder
	for i := range panels / 20 {
		if i > 0 {
			doors.WriteString(",\n")
		}
		// The jambs stand 300 mm and 468 mm into a panel, so that each door makes two notched pieces.
		fmt.Fprintf(&doors, `"door %d": {"kind": "door", "x": %d, "width": 768, "head": 2032,
          "frame": {"architrave": {"width": 60, "removed": true}}, "lining": {"clad": true, "thickness": 12},
          "leaf": {"width": 762, "height": 2024, "thickness": 40, "fire_rating": "none"}}`, i+1, 12000*i+5700)
	}
	return fmt.Appendf(nil, `{
  "title": "Larch Lane community hall, the long wall",
  "job": {"room": "Larch Lane community hall", "room_use": "assembly", "country": "GB-ENG"},
  "units": "mm",
  "panels": {"oak": {"width": 600, "height": 2400, "thickness": 21, "slats": {"pitch": 40, "width": 28, "first": 6},
      "backing": {"thickness": 9}, "edges": {"left": "recess", "right": "tongue", "overlap": 5}}},
  "walls": {"long": {"width": %d, "height": 2390,
      "background": {"kind": "plasterboard on studs", "stud_centres": 600, "first_stud": 300},
      "ends": {"left": {"corner": "internal"}, "right": {"corner": "internal"}},
      "openings": {%s},
      "services": [{"id": "S1", "kind": "switch", "x": 1250, "y": 1050, "width": 86, "height": 86}]}},
  "runs": [{"id": "E", "on": "long", "panel": "oak", "base": 6, "clear_top": 6, "head_drop": 22,
      "fix": {"adhesive": {"bead": 6, "zigzag": 300, "from_edge": 50, "around": "all four edges", "centre_line": true, "cartridge": 290},
              "screws": {"per_end": 2, "length": 35, "colour": "black"}}}],
  "sequence": [{"do": "trace cables"}, {"do": "dry fit"}, {"do": "glue"}, {"do": "screw"}],
  "order": {"boards": {"oak": %d}, "cartridges": %d}
}`, 600*panels, doors.String(), panels, 2*panels)
}

func longFacts(t testing.TB, panels int) *facts.Facts {
	t.Helper()
	f := setOut(t, "long.json", longPlan(panels))
	if len(f.Pieces) != panels || len(f.Openings) != panels/20 {
		t.Fatalf("the plan comes to %d pieces and %d doors, want %d and %d", len(f.Pieces), len(f.Openings), panels, panels/20)
	}
	return f
}

// The plans that are measured must be ones that the rules have something to say of.
func TestTheRulesLookAtEveryPieceOfALongWall(t *testing.T) {
	results, faults := judged(t, shipped(t, judge.Options{}), longFacts(t, 100))
	if len(faults) > 0 {
		t.Fatal(faults)
	}
	looked := map[string]bool{}
	for _, r := range results {
		if r.Subject.Piece != "" {
			looked[r.Subject.Piece] = true
		}
	}
	if len(looked) != 100 {
		t.Errorf("they look at %d pieces of 100", len(looked))
	}
}

// BenchmarkJudge on 2 cores, November 2026, with 40 rules, the best of three runs:
//
//	 100 pieces   15.2 ms   152 µs/piece    8.4 MB   162,000 allocations
//	 300 pieces   42.6 ms   142 µs/piece   25.0 MB   490,000
//	1000 pieces  149.9 ms   150 µs/piece   84.1 MB  1,694,000
//
// So it grows with the number of pieces and no faster.
func BenchmarkJudge(b *testing.B) {
	e := shipped(b, judge.Options{})
	for _, panels := range []int{100, 300, 1000} {
		b.Run(fmt.Sprint(panels), func(b *testing.B) {
			f := longFacts(b, panels)
			b.ReportAllocs()
			for b.Loop() {
				if _, faults, err := e.Judge(context.Background(), f); err != nil || len(faults) > 0 {
					b.Fatal(faults, err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(panels), "ns/piece")
		})
	}
}

// BenchmarkLoad on 2 cores, November 2026, the best of three runs: 17.7 ms for
// 40 rules, 0.44 ms a rule, 7.5 MB; the design counts on 0.15 ms.
func BenchmarkLoad(b *testing.B) {
	set := shippedLimits(b)
	count := 0
	b.ReportAllocs()
	for b.Loop() {
		e, err := judge.Load(context.Background(), rules.Files, set, judge.Options{})
		if err != nil {
			b.Fatal(err)
		}
		count = len(e.Rules)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(count), "ns/rule")
}
