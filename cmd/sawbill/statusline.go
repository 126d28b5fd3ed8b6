package main

import (
	"fmt"
	"io"
	"os"
	"sync"
	"time"

	"golang.org/x/term"

	"sawbill/nest/cutplan"
)

// statusLine keeps one line on the terminal up to date while a plan is sought.
// Where standard error is no terminal it says nothing.
type statusLine struct {
	start time.Time

	mu    sync.Mutex
	w     io.Writer // nil to say nothing
	state string    // empty until there is a plan
}

func (in *invocation) statusLine() *statusLine {
	p := &statusLine{start: time.Now()}
	if f, ok := in.stderr.to.(*os.File); ok && !in.quiet && term.IsTerminal(int(f.Fd())) {
		p.w = f
		go p.run()
	}
	return p
}

// run lets the seconds go on between two plans, so that a long search does not
// look like a program that hangs.
func (p *statusLine) run() {
	for range time.Tick(time.Second) {
		if !p.draw() {
			return
		}
	}
}

// show shows how good the plan is by now.
func (p *statusLine) show(now cutplan.Progress) {
	state := fmt.Sprintf("%d to buy, cost %s, no plan costs less than %s", now.Pieces, now.Cost, now.Bound)
	switch {
	case !now.Complete:
		state = "not every blank is placed yet"
	case now.Cost == 0: // or no prices are known
		state = fmt.Sprintf("%d to buy", now.Pieces)
	}
	p.tell(state)
}

// choice tells which of the choices is planned.
func (p *statusLine) choice(now, of int) {
	p.tell(fmt.Sprintf("choice %d of %d", now, of))
}

func (p *statusLine) tell(state string) {
	p.mu.Lock()
	p.state = state
	p.mu.Unlock()
	p.draw()
}

// draw writes the line over the one before, and reports whether there is still
// somebody to write for.
func (p *statusLine) draw() bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.w != nil && p.state != "" {
		fmt.Fprintf(p.w, "%splanning: %s (%.0f s)", wipe, visible(p.state), time.Since(p.start).Seconds())
	}
	return p.w != nil
}

// end takes the line off again.
func (p *statusLine) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.w != nil && p.state != "" {
		fmt.Fprint(p.w, wipe)
	}
	p.w = nil
}

// wipe goes to the beginning of the line and clears it.
const wipe = "\r\x1b[K"

// warn prints warnings, unless they are not wanted.
func warn[T any](in *invocation, warnings []T) {
	if in.quiet {
		return
	}
	for _, w := range warnings {
		fmt.Fprintln(in.stderr, "warning:", w)
	}
}
