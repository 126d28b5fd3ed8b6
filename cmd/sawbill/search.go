package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"
)

// search does what is to be done until the limit is over, where no iterations rule, or
// until Ctrl-C, of which it tells with what has been found.
func (in *invocation) search(found string, do func(context.Context) error) error {
	interrupted, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	limited := interrupted
	if in.iterations == 0 {
		var cancel context.CancelFunc
		limited, cancel = context.WithTimeout(interrupted, in.limit)
		defer cancel()
	}
	err := do(limited)
	if err == nil && interrupted.Err() != nil {
		fmt.Fprintln(in.stderr, "interrupted: "+found)
	}
	return err
}
