package main

import (
	"fmt"
	"io"
	"os"
	"time"

	"golang.org/x/term"

	"sawbill/nest/cutplan"
	"sawbill/stock/job"
)

// progress keeps one line on the terminal up to date while a plan is sought.
// Where standard error is no terminal it says nothing.
type progress struct {
	w     io.Writer // nil to say nothing
	start time.Time
	shown bool
}

func (in *invocation) progress() *progress {
	p := &progress{start: time.Now()}
	if f, ok := in.stderr.(*os.File); ok && !in.quiet && term.IsTerminal(int(f.Fd())) {
		p.w = f
	}
	return p
}

func (p *progress) show(now cutplan.Progress) {
	if p.w == nil {
		return
	}
	state := "cost " + now.Cost.String() + ", no plan costs less than " + now.Bound.String()
	if !now.Complete {
		state = "not every blank is placed yet"
	}
	fmt.Fprintf(p.w, "\r\x1b[Kplanning: %s (%.1f s)", state, time.Since(p.start).Seconds())
	p.shown = true
}

// end takes the line off again.
func (p *progress) end() {
	if p.shown {
		fmt.Fprint(p.w, "\r\x1b[K")
	}
}

// warn tells of what is worth reading in a job.
func (in *invocation) warn(warnings []job.Fault) {
	if in.quiet {
		return
	}
	for _, w := range warnings {
		fmt.Fprintln(in.stderr, "warning:", w)
	}
}
