package cutplan

import (
	"context"
	"time"
)

// Clock divides the time until a context's deadline. It does nothing without a deadline,
// or if the number of iterations is limited.
type Clock struct {
	start   time.Time
	total   time.Duration
	limited bool
}

// NewClock starts a clock for the time from now until the deadline of ctx.
func NewClock(ctx context.Context, o Options) Clock {
	end, limited := ctx.Deadline()
	now := time.Now()
	return Clock{now, end.Sub(now), limited && o.Iterations == 0}
}

// Until returns a context that ends after a percentage of the time.
func (c Clock) Until(ctx context.Context, percent int) (context.Context, context.CancelFunc) {
	if !c.limited {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, c.start.Add(c.total/100*time.Duration(percent)))
}

// Share returns a context that ends after one nth of the remaining time.
func (c Clock) Share(ctx context.Context, n int) (context.Context, context.CancelFunc) {
	if !c.limited {
		return context.WithCancel(ctx)
	}
	return context.WithTimeout(ctx, (c.total-time.Since(c.start))/time.Duration(n))
}
