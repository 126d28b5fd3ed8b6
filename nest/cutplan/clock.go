package cutplan

import (
	"context"
	"time"
)

// Clock shares out the time that a context leaves; where iterations rule, or there is
// no limit, there is nothing to share.
type Clock struct {
	start   time.Time
	total   time.Duration
	limited bool
}

// NewClock is of the time that ctx leaves from now on.
func NewClock(ctx context.Context, o Options) Clock {
	end, limited := ctx.Deadline()
	now := time.Now()
	return Clock{now, end.Sub(now), limited && o.Iterations == 0}
}

// Until ends when so much of the time is over, in percent.
func (c Clock) Until(ctx context.Context, percent int) (context.Context, context.CancelFunc) {
	if !c.limited {
		return context.WithCancel(ctx)
	}
	return context.WithDeadline(ctx, c.start.Add(c.total/100*time.Duration(percent)))
}

// Share ends when the nth part of what is left of the time is over.
func (c Clock) Share(ctx context.Context, n int) (context.Context, context.CancelFunc) {
	if !c.limited {
		return context.WithCancel(ctx)
	}
	return context.WithTimeout(ctx, (c.total-time.Since(c.start))/time.Duration(n))
}
