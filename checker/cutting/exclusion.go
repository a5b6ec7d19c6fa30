package cutting

// byExclusion finds parts of which no board holds two: two that need the same
// edge, say, or that are too wide together, and too high. One board each, less
// one for each offcut. It looks at small jobs only.
func (j *job) byExclusion(parts []*part) int {
	if len(parts) > mostSearched {
		return 0
	}
	excludes := make([][]bool, len(parts))
	for i := range parts {
		excludes[i] = make([]bool, len(parts))
		for k := range i {
			e := !j.together(parts[i], parts[k])
			excludes[i][k], excludes[k][i] = e, e
		}
	}
	best := 0
	for first := range parts {
		found := []int{first}
		for i := range parts {
			if all(found, func(k int) bool { return excludes[i][k] }) {
				found = append(found, i)
			}
		}
		best = max(best, len(found))
	}
	return max(0, best-len(j.offcuts))
}

func all(places []int, is func(int) bool) bool {
	for _, p := range places {
		if !is(p) {
			return false
		}
	}
	return true
}

// together says whether a board holds two parts.
func (j *job) together(a, b *part) bool {
	if a.height+j.kerf+b.height <= j.height+near {
		return true // one above the other, a factory end each
	}
	if !j.adds(&j.board.shape, []*part{a, b}) {
		return false
	}
	_, ok := j.inOrder(&j.board.shape, []*part{a, b})
	if !ok {
		_, ok = j.inOrder(&j.board.shape, []*part{b, a})
	}
	return ok
}
