package setout_test

import (
	"context"
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"trysquare/checker/fault"
	"trysquare/checker/setout"
)

// corners reads pairs of 16 bits as places, moved so that the least x and y are 0.
func corners(data []byte, scale float64) (xs, ys []float64, width, height float64) {
	minX, minY := math.Inf(1), math.Inf(1)
	for ; len(data) >= 4 && len(xs) < 200; data = data[4:] {
		x, y := float64(binary.LittleEndian.Uint16(data))*scale, float64(binary.LittleEndian.Uint16(data[2:]))*scale
		xs, ys, minX, minY = append(xs, x), append(ys, y), min(minX, x), min(minY, y)
	}
	for i := range xs {
		xs[i], ys[i] = xs[i]-minX, ys[i]-minY
		width, height = max(width, xs[i]), max(height, ys[i])
	}
	return xs, ys, width, height
}

func places(xy ...uint16) []byte {
	var out []byte
	for _, v := range xy {
		out = binary.LittleEndian.AppendUint16(out, v)
	}
	return out
}

// comb is as many teeth as there may be corners, each so wide and so deep.
func comb(wide, deep uint16) []byte {
	out := places(0, 0, 99*2*wide, 0)
	for i := uint16(99); i > 0; i-- {
		out = append(out, places(i*2*wide, 2400, (i*2-1)*wide, 2400-deep)...)
	}
	return out[:200*4]
}

// FuzzOutline gives arbitrary corners to a wall. It is refused with a fault or
// set out, in under a second, without panic, and its facts are numbers.
func FuzzOutline(f *testing.F) {
	f.Add(places(0, 0, 3000, 0, 3000, 2400, 0, 2400), 1., 0., 0., 0., 0., 2400., "left")
	f.Add(places(0, 0, 3000, 48, 3000, 1800, 1500, 1800, 1500, 2400, 0, 2400), 1., 6., 4., 3., -140., 2400., "right")
	f.Add(places(0, 0, 3000, 2400, 3000, 0, 0, 2400), 1., 0., 0., 0., 0., 2400., "middle")
	f.Add(places(0, 0, 3000, 0, 1500, 1), 1., 0., 0., 0., 100., 2400., "line")
	f.Add(places(0, 0, 600, 0, 600, 1000, 601, 1000, 601, 0, 1800, 0, 1800, 2400, 0, 2400), 1., 10., 10., 0., 0., 900., "left")
	f.Add(places(0, 0, 600, 0, 600, 2399, 1200, 2399, 1200, 0, 1800, 0, 1800, 2400, 0, 2400), 1., 30., 0., 0., 0., 2400., "left")
	f.Add(places(0, 0, 65535, 1, 65535, 3, 0, 2), .001, 0., 0., 0., 0., 2400., "left")
	f.Add(comb(15, 300), 1., 6., 4., 0., 0., 2400., "left")
	f.Add(comb(3, 2390), 1., 40., 40., 3., 0., 600., "middle")
	f.Add(comb(300, 1), 1., 6., 4., 0., 0., 5., "right")
	f.Fuzz(func(t *testing.T, data []byte, scale, base, clear, gap, start, course float64, from string) {
		xs, ys, width, height := corners(data, scale)
		var outline []string
		for i := range xs {
			outline = append(outline, fmt.Sprintf(`{"x": %v, "y": %v}`, xs[i], ys[i]))
		}
		wall := fmt.Sprintf(`"width": %v, "height": %v, "outline": [%s], "skirting": {"height": %v, "thickness": 10},
			"openings": {"o": {"kind": "window", "x": %v, "width": %v, "sill": %v, "head": %v}}, "services": []`,
			width, height, strings.Join(outline, ", "), base/2, width/3, width/5, height/3, height/2)
		run := fmt.Sprintf(`{"id": "E", "on": "w", "panel": "oak", "from": %q, "start": %v, "base": %v, "clear_top": %v, "courses": [{"height": %v}, {"gap": %v}],
			"fix": {"adhesive": {"bead": 6, "zigzag": 300, "from_edge": 50, "around": "all four edges"}, "screws": {"per_end": 2, "rows_apart": 600, "length": 45}}}`,
			from, start, base, clear, course, gap)
		began := time.Now()
		p, err := decode("fuzz.json", []byte(planOf(wall, run)))
		if err != nil {
			for _, one := range fault.All(err) {
				if one.Kind == fault.Unreadable { // what is no fault is taken for one of this kind
					t.Errorf("no fault at a place: %v", err)
				}
			}
			return
		}
		out, err := setout.Plan(context.Background(), p, assumed)
		if took := time.Since(began); took > time.Second {
			t.Errorf("it took %v\n%s", took, planOf(wall, run))
		}
		if err != nil {
			var m *setout.Misfit
			if !errors.As(err, &m) {
				t.Errorf("no misfit: %v\n%s", err, planOf(wall, run))
			}
			return
		}
		if _, err := json.Marshal(out); err != nil {
			t.Errorf("facts that are no numbers: %v\n%s", err, planOf(wall, run))
		}
	})
}
