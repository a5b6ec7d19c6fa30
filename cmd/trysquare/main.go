// Command trysquare checks installation plans for slatted wall panels.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"

	"github.com/alecthomas/kong"

	"trysquare/checker/fault"
	"trysquare/checker/report"
)

// The exit statuses.
const (
	exitClear      = 0
	exitUnreadable = 2 // 1, held, comes from the report
)

// cli is the command line; each command is a type in a file of its own.
type cli struct {
	Check   checkCmd   `cmd:"" help:"Check plans and report what is wrong with them."`
	Takeoff takeoffCmd `cmd:"" help:"Print what a plan takes: boards, every cut with its mark, offcuts, adhesive, fixings."`
	Rules   rulesCmd   `cmd:"" help:"List the rules."`
	Why     whyCmd     `cmd:"" help:"Say what a rule means, why it matters and on whose authority it stands."`
	Schema  schemaCmd  `cmd:"" help:"Print the JSON Schema of a plan, of limits, of a rule's metadata, of a report, or of the facts."`
}

// streams is what a command reads from and writes to.
type streams struct {
	in       io.Reader
	out, err io.Writer
	status   int // what the process exits with
}

func main() {
	// One plan allocates some 8 MB: with the first collection at 16 MB instead of
	// 4 a short run has none, which is a third of its CPU time.
	debug.SetGCPercent(400)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
}

// run is main without the process: it gives the exit status.
func run(ctx context.Context, args []string, in io.Reader, out, errs io.Writer) int {
	s := &streams{in: in, out: out, err: errs}
	helped := false
	parser, err := kong.New(&cli{}, kong.Name("trysquare"), kong.Writers(out, errs),
		kong.Description("Checks installation plans for slatted wall panels before anyone cuts. Exit status: 0 clear, 1 held, 2 unreadable."),
		kong.Exit(func(int) { helped = true }), // --help has printed what it was asked for
		kong.Bind(s), kong.BindTo(ctx, (*context.Context)(nil)))
	if err != nil {
		fmt.Fprintln(errs, "trysquare:", err)
		return exitUnreadable
	}
	k, err := parser.Parse(args)
	if helped {
		return exitClear
	}
	if err != nil {
		fmt.Fprintf(errs, "trysquare: %s; see trysquare --help\n", report.Plain(err.Error()))
		return exitUnreadable
	}
	if err := k.Run(); err != nil {
		s.complain(err)
		return exitUnreadable
	}
	return s.status
}

// complain prints every fault in an error on a line of its own.
func (s *streams) complain(err error) {
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(s.err, "trysquare: stopped before the end; nothing was decided")
		return
	}
	for _, f := range fault.All(err) {
		fmt.Fprintf(s.err, "trysquare: %s\n", printable(f))
	}
}
