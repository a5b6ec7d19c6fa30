package setout

import "trysquare/checker/facts"

// sequence gives the order of the work.
func (s *setter) sequence(f *facts.Facts) {
	out := facts.Sequence{About: facts.About{ID: "sequence", At: "/sequence"}, Stated: s.plan.StepsStated, Steps: []facts.Step{}}
	holeSeen, tracedBefore := false, false
	for _, step := range s.plan.Steps {
		out.Steps = append(out.Steps, facts.Step{Do: step.Do, Hours: step.Hours})
		switch step.Do {
		case "trace cables":
			tracedBefore = tracedBefore || !holeSeen
		case "drill", "screw":
			holeSeen = true
		}
	}
	out.Traced, out.Holes = tracedBefore, holeSeen
	for _, p := range s.parts {
		out.Holes = out.Holes || len(p.screws) > 0
	}
	f.Sequence = out
}
