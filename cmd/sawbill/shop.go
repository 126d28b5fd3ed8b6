package main

import (
	"context"
	"errors"
	"fmt"
	"time"

	"sawbill/nest/shop"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// openFolder opens the folder that is the command's only operand; a file in it means
// the same.
func (in *invocation) openFolder() (folder *shop.Folder, err error) {
	if len(in.operands) != 1 {
		return nil, usage(fmt.Sprintf("%s takes the folder of one plan, not %d", in.name, len(in.operands)), fmt.Sprintf("see \"sawbill help %s\"", in.name))
	}
	err = in.patiently(func(ctx context.Context) error {
		folder, err = shop.Open(ctx, in.operands[0])
		return err
	})
	return folder, err
}

// notTaken names the flag of each event that cannot have happened.
func notTaken(err error) error {
	var wrong shop.NotTaken
	if !errors.As(err, &wrong) {
		return err
	}
	var faults fault.Faults
	for _, w := range wrong {
		faults = append(faults, fault.Fault{File: "--" + w.Event.String(), Cause: w.Why.Cause, Remedy: w.Why.Remedy})
	}
	return faults
}

// day makes what --date says the day of a change: today if it says nothing.
func day(date *string) error {
	switch {
	case *date == "":
		*date = time.Now().Format(time.DateOnly)
	case !job.IsDay(*date):
		return usage(fmt.Sprintf("--date %q is no day", *date), "write it as year, month and day: 2026-03-05")
	}
	return nil
}
