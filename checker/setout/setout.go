// Package setout works out what a plan amounts to: where every panel, joint,
// cut, slat line, screw and bead falls. It turns a plan into facts and has no
// opinion on them.
package setout

import (
	"context"
	"errors"
	"fmt"
	"math"

	"trysquare/checker/facts"
	"trysquare/checker/length"
	"trysquare/checker/plan"
	"trysquare/checker/planar"
)

// Assumptions are numbers of the house or of a standard that geometry needs to
// draw something at all. They are limits, so their basis stands beside them
// there; the caller passes them in.
type Assumptions struct {
	CableStrip float64 // mm; width of the strips below the ceiling and beside corners in which cables are likely
	ThinWall   float64 // mm; thickness of a wall up to which cables on its reverse count on this face too
	Kerf       float64 // mm; what a saw cut takes
}

// Misfit is a plan that is well formed and cannot be set out.
type Misfit struct {
	At      string // JSON Pointer of the place in the plan
	Message string
}

func (m *Misfit) Error() string { return m.At + ": " + m.Message }

// Most is how many pieces a plan may come to: a bound for plans whose sizes
// are a slip of the unit, far above any real job.
const Most = 12_000

// near is what two lengths may differ by and still be the same, in millimetres;
// it absorbs what converting inches leaves behind the comma.
const near = 0.005

func same(a, b float64) bool { return math.Abs(a-b) <= near }

var round = length.Round

// Plan sets a plan out. Its errors are Misfits, several joined, or the context's.
func Plan(ctx context.Context, p *plan.Plan, a Assumptions) (*facts.Facts, error) {
	s := &setter{plan: p, assume: a, ids: map[string]bool{}, fields: map[clearance][]planar.Polygon{}}
	for _, r := range p.Runs {
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("setting out run %s: %w", r.ID, err)
		}
		if err := s.run(r); err != nil {
			return nil, err
		}
		if s.full {
			break
		}
	}
	s.bound()
	s.fixedIn()
	s.index()
	s.overlaps()
	if len(s.misfits) > 0 {
		return nil, errors.Join(s.misfits...)
	}
	f := &facts.Facts{Job: facts.Job{About: facts.About{ID: "plan", At: ""}, Country: p.Job.Country, RoomUse: p.Job.RoomUse}}
	s.pairs = s.pairUp()
	s.surfaces(f)
	s.doors(f)
	s.pieces(f)
	s.edges(f)
	s.joints(f)
	s.crossJoints(f)
	s.lines(f)
	s.headers(f)
	s.revealLines(f)
	s.corners(f)
	s.measurements(f)
	s.surveys(f)
	s.closings(f)
	s.installs(f) // looks at joints
	s.fixings(f)
	s.screwPaths(f)
	s.plugs(f)
	s.jambs(f) // looks at screws and beads
	if err := s.holes(f); err != nil {
		return nil, err
	}
	s.zones(f)
	s.sequence(f)
	if err := s.stock(ctx, f); err != nil {
		return nil, err
	}
	s.counts(f) // looks at adhesive
	return f, nil
}

type setter struct {
	plan    *plan.Plan
	assume  Assumptions
	runs    []*laid
	cells   int  // laid so far
	full    bool // more than the bound
	fields  map[clearance][]planar.Polygon
	parts   []*part
	pairs   []pair
	on      map[string]*shelfOf
	ids     map[string]bool
	misfits []error
}

func (s *setter) write(mm float64) string { return length.Unit(s.plan.Units).Format(mm) }

func (s *setter) misfit(at, format string, args ...any) {
	s.misfits = append(s.misfits, &Misfit{at, fmt.Sprintf(format, args...)})
}
