package main

import (
	"encoding/json"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"sort"
	"strings"
	"testing"
	"time"

	"trysquare/checker"
	"trysquare/checker/report"
	"trysquare/checker/source"
	"trysquare/rules"
)

// BenchmarkAgainstStock runs the whole process `trysquare check` on the demo
// plan and the stock engine's own command, built from the same module version,
// evaluating the same rules on the same facts, in turn, and reports the CPU time
// (user and system) of each and the median of the ratios, pair by pair:
//
//	go test ./cmd/trysquare -run '^$' -bench AgainstStock -benchtime 40x
//
// History, medians on 2 cores (check / stock / ratio):
//
//	rules parsed, typed and compiled at each start        62 / 45 ms / 1.38
//	  without the rego layer over topdown                 57
//	packed: comments and metadata taken out at build      46
//	packed: as the compiler leaves them, 4 stages left    38
//	first garbage collection at 16 MB instead of 4        25 / 44 ms / 0.57
//	workers in place of a goroutine a rule                24 / 44 ms / 0.54
//	schemas compiled as draft 7                           22 / 43 ms / 0.50
//	no comprehension index, sides worked out once         20 / 41 ms / 0.48
//	profile-guided build                                  20 (nothing; left out)
//	packed as syntax trees instead of Rego text           20 / 46 ms / 0.44 (machine busier)
func BenchmarkAgainstStock(b *testing.B) {
	dir := b.TempDir()
	build := func(env []string, args ...string) {
		cmd := exec.Command("go", args...)
		cmd.Env = append(os.Environ(), env...)
		if out, err := cmd.CombinedOutput(); err != nil {
			b.Skipf("go %s: %v: %s", strings.Join(args, " "), err, out)
		}
	}
	build(nil, "build", "-o", filepath.Join(dir, "trysquare"), ".")
	build([]string{"GOBIN=" + dir, "GOFLAGS="}, "install", "github.com/open-policy-agent/opa@v1.22.2")
	stockInputs(b, dir)
	plan, err := filepath.Abs("../../plans/practice-room.json")
	if err != nil {
		b.Fatal(err)
	}
	ours := func() time.Duration { return cpuTime(b, dir, 1, "trysquare", "check", plan) }
	stock := func() time.Duration {
		return cpuTime(b, dir, 0, "opa", "eval", "-d", "rules", "-d", "data.json", "-i", "facts.json", "data.rules")
	}
	ours()
	stock()
	var a, c, ratios []float64
	for b.Loop() {
		x, y := ours(), stock()
		a, c, ratios = append(a, ms(x)), append(c, ms(y)), append(ratios, float64(x)/float64(y))
	}
	b.ReportMetric(median(a), "check-cpu-ms")
	b.ReportMetric(median(c), "stock-cpu-ms")
	b.ReportMetric(median(ratios), "ratio")
}

// stockInputs writes what the stock engine reads: the rules without their
// tests, the limits' values, and the facts.
func stockInputs(b *testing.B, dir string) {
	err := fs.WalkDir(rules.Files, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(name) != ".rego" {
			return err
		}
		text, err := rules.Files.ReadFile(name)
		if err != nil {
			return err
		}
		to := filepath.Join(dir, "rules", name)
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		return os.WriteFile(to, text, 0o644)
	})
	if err != nil {
		b.Fatal(err)
	}
	c, err := checker.New(report.HoldError)
	if err != nil {
		b.Fatal(err)
	}
	d, err := source.ReadFile("../../plans/practice-room.json", nil)
	if err != nil {
		b.Fatal(err)
	}
	_, f, err := c.SetOut(b.Context(), d)
	if err != nil {
		b.Fatal(err)
	}
	limits := map[string]float64{}
	for id, l := range c.Engine.Limits {
		limits[id] = l.Value
	}
	for name, v := range map[string]any{"facts.json": f, "data.json": map[string]any{"limits": limits}} {
		text, err := json.Marshal(v)
		if err == nil {
			err = os.WriteFile(filepath.Join(dir, name), text, 0o644)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
}

func cpuTime(b *testing.B, dir string, status int, name string, args ...string) time.Duration {
	cmd := exec.Command(filepath.Join(dir, name), args...)
	cmd.Dir = dir
	out, _ := cmd.Output()
	if cmd.ProcessState == nil || cmd.ProcessState.ExitCode() != status || len(out) < 100 {
		b.Fatalf("%s: %v, %d bytes", name, cmd.ProcessState, len(out))
	}
	return cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()
}

func ms(d time.Duration) float64 { return float64(d.Microseconds()) / 1000 }

func median(v []float64) float64 {
	sort.Float64s(v)
	return v[len(v)/2]
}
