package main

import (
	"context"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

var write = flag.Bool("write", false, "write golden files and the scripts' expected output anew; look at the difference before you commit it")

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){
		"trysquare": main,
	})
}

// TestCommands runs the commands as a user would, each script in a folder with
// copies of the demo plans.
func TestCommands(t *testing.T) {
	plans, err := filepath.Abs("../../plans")
	if err != nil {
		t.Fatal(err)
	}
	reports, err := filepath.Abs("../../testdata/reports")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir:           "../../testdata/commands",
		UpdateScripts: *write,
		Setup: func(e *testscript.Env) error {
			e.Setenv("REPORTS", reports)
			return os.CopyFS(filepath.Join(e.WorkDir, "plans"), os.DirFS(plans))
		},
	})
}

// TestStopped sees that an interrupted check decides nothing.
func TestStopped(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, errs writer
	if status := run(ctx, []string{"check", "../../plans/practice-room.json"}, nil, &out, &errs); status != 2 {
		t.Errorf("exit status %d, want 2", status)
	}
	if len(out) != 0 || string(errs) != "trysquare: stopped before the end; nothing was decided\n" {
		t.Errorf("printed %q and %q", out, errs)
	}
}

type writer []byte

func (w *writer) Write(b []byte) (int, error) {
	*w = append(*w, b...)
	return len(b), nil
}
