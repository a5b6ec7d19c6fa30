package cutting

// tree keeps a number for each place in a row and finds the first place from
// some place on whose number is large enough, in a time that grows with the
// logarithm of the row.
type tree struct {
	size int
	max  []unit // max[size+i] is place i's; max[i] is the greater of max[2i] and max[2i+1]
}

// none is less than any room, however short of it.
const none unit = -1 << 62

func newTree(places int) *tree {
	t := &tree{size: 1}
	for t.size < places {
		t.size *= 2
	}
	t.max = make([]unit, 2*t.size)
	for i := range t.max {
		t.max[i] = none
	}
	return t
}

func (t *tree) set(place int, v unit) {
	i := t.size + place
	t.max[i] = v
	for i /= 2; i > 0; i /= 2 {
		m := max(t.max[2*i], t.max[2*i+1])
		if t.max[i] == m {
			return
		}
		t.max[i] = m
	}
}

// first gives the first place from a place on with a number of at least v, or -1.
func (t *tree) first(from int, v unit) int {
	if from >= t.size {
		return -1
	}
	i := t.size + from
	for t.max[i] < v {
		for i%2 == 1 { // the right half of something: go on after all of it
			i /= 2
		}
		if i == 0 {
			return -1
		}
		i++
	}
	for i < t.size {
		if i *= 2; t.max[i] < v {
			i++
		}
	}
	return i - t.size
}
