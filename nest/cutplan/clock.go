package cutplan

import (
	"context"
	"time"
)

// clock shares out the time that a context leaves; where iterations rule, or there is
// no limit, there is nothing to share.
type clock struct {
	start   time.Time
	whole   time.Duration
	limited bool
}

func newClock(ctx context.Context, o Options) clock {
	end, limited := ctx.Deadline()
	now := time.Now()
	return clock{now, end.Sub(now), limited && o.Iterations == 0}
}

// until ends when so much of the time is over, in percent.
func (c clock) until(ctx context.Context, percent int) (context.Context, context.CancelFunc) {
	if !c.limited {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, c.start.Add(c.whole/100*time.Duration(percent)))
}

// share ends when the nth part of what is left of the time is over.
func (c clock) share(ctx context.Context, n int) (context.Context, context.CancelFunc) {
	if !c.limited {
		return context.WithCancel(ctx)
	}
	return context.WithTimeout(ctx, (c.whole-time.Since(c.start))/time.Duration(n))
}
