package setout

// stack gives a run's courses their heights, from the bottom up. The lowest is
// shortened at its lower end, where the floor hides the cut; the others at the
// upper one, so that ends from the factory meet. Heights count from the wall's
// lowest floor; where it rises, panels are cut to it.
func (s *setter) stack(l *laid) {
	bottom, ceiling := l.surface.bottom+l.run.Base, l.surface.top-l.run.ClearTop
	board := l.run.Panel.Height
	for i, spec := range l.run.Courses {
		if i > 0 {
			bottom += spec.Gap
		}
		room := ceiling - bottom
		if room <= near {
			s.misfit(spec.At, "there is no room for this course: those below reach the top")
			return
		}
		height := min(board, room)
		if spec.Height != nil {
			if spec.At != l.run.At { // a course of its own; a run's height is cut to what is there
				s.courseFits(spec.At+"/height", *spec.Height, board, room)
			}
			height = min(height, *spec.Height)
		}
		c := &course{bottom: bottom, top: bottom + height, start: spec.Start}
		if height < board-near {
			c.cutLower, c.cutUpper = i == 0, i > 0
		}
		if len(l.run.Courses) > 1 {
			c.number = i + 1
		}
		l.courses = append(l.courses, c)
		bottom = c.top
	}
}

// courseFits sees that a board reaches as high as a course is to be, and that the wall does.
func (s *setter) courseFits(at string, height, board, room float64) {
	switch {
	case height > board+near:
		s.misfit(at, "a course cannot be higher than a board, which is %s", s.write(board))
	case height > room+near:
		s.misfit(at, "the course does not fit: %s are left for it below the top", s.write(room))
	}
}
