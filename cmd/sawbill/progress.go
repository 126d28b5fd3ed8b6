package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"sawbill/nest/progress"
	"sawbill/nest/shop"
	"sawbill/report"
)

// progressFlags are the values of the flags that only this command has.
type progressFlags struct {
	told map[string]*[]string // by word
	undo bool
	date string
}

// happenings are the words, each with what it means.
var happenings = map[string]string{
	"cut":      "a `layout` is cut: 2, or one of its pieces: 2/1, or cuts\nof it: 2:5, 2/1:3-7; all of them: all",
	"good":     "a `blank` is good, wherever it came from: C, or C=2",
	"spoiled":  "a `blank` was cut and is no good: C; C=\"590 x 300 mm\" tells\nwhat of it can still be used, its length first; C:2: two of\nthe parts that such blanks hold are no good",
	"lost":     "a `blank` was cut and is not there: C, or C=2",
	"measured": "a piece has that size: `NAME=590 x 300 mm`, what is clear of\nit from its reference corner; a leftover, or one piece of\nstock of which nothing is cut",
	"missing":  "a piece of `stock` that was to be cut is not there: its name\nor material, or NAME=2",
}

func progressCommand() command {
	f := progressFlags{told: map[string]*[]string{}}
	return command{
		name:  "progress",
		args:  "PLAN",
		about: "how far a plan has come in the shop",
		more: `Keeps, beside the plan in its folder, which layouts and cuts are done and which
blanks are good, spoiled or lost, and tells what is still to be cut. Without flags it
only tells. What is said at once is noted at once, or none of it; --undo takes the last
time back. A blank that was cut is good until something else is said. Blanks go by
their mark or the name of their part. A cut takes those along that it cannot be made
without.
`,
		flags: func(set *pflag.FlagSet, s *settings) {
			for _, word := range progress.Words {
				f.told[word] = set.StringArray(word, nil, happenings[word])
			}
			set.BoolVar(&f.undo, "undo", false, "take back what was noted last")
			set.StringVar(&f.date, "date", "", "the `day` it was, 2026-03-05, if it is not today")
			s.printing(set)
			set.BoolVar(&s.quiet, "quiet", false, "note it and say nothing")
		},
		run: func(in *invocation) (int, error) { return exitDone, in.progressOf(&f) },
	}
}

func (in *invocation) progressOf(f *progressFlags) error {
	folder, err := in.openFolder()
	if err != nil {
		return err
	}
	if err := day(&f.date); err != nil {
		return err
	}
	sender := shop.Sender{Plan: folder.Plan().Code, Date: f.date}
	events := f.events(folder)
	said := ""
	err = in.patiently(func(ctx context.Context) error {
		switch {
		case f.undo && len(events) > 0:
			return usage("--undo goes alone", "take back first, and then tell what happened")
		case f.undo:
			undone, err := folder.Undo(ctx, sender)
			said = "Taken back: " + strings.Join(undone.Did, ", ") + ".\n"
			return err
		case len(events) > 0:
			noted, err := folder.Report(ctx, shop.Report{Events: events, Sender: sender})
			said = "Noted: " + strings.Join(noted.Did, ", ") + ".\n"
			return notTaken(err)
		}
		return nil
	})
	if err != nil || in.quiet {
		return err
	}
	fmt.Fprint(in.stdout, said)
	err = in.tellProgress(folder)
	if said != "" {
		return printed(err)
	}
	return err
}

// tellProgress prints how far a plan has come.
func (in *invocation) tellProgress(folder *shop.Folder) error {
	plan := folder.Plan()
	options := report.Options{Ruler: in.ruler(plan.Plan.Job.Units), WhatIf: plan.WhatIf}
	if err := report.Progress(in.stdout, folder.State(), plan.Code, options); err != nil {
		return err
	}
	ended, err := folder.Said()
	switch {
	case err != nil:
		return err
	case ended != "":
		fmt.Fprintf(in.stdout, "\n%s\n", ended)
	case folder.State().Lacks():
		fmt.Fprintf(in.stdout, "\nNot all blanks have a place any more: sawbill recut %s plans the rest.\n", folder.Path())
	}
	return nil
}

// events reads the flags, in the order of the words.
func (f *progressFlags) events(folder *shop.Folder) []progress.Event {
	var all []progress.Event
	for _, word := range progress.Words {
		for _, value := range *f.told[word] {
			if word == "cut" && value == "all" {
				for i := range folder.Plan().Plan.Layouts {
					all = append(all, progress.Event{Word: word, Value: fmt.Sprint(i + 1)})
				}
				continue
			}
			all = append(all, progress.Event{Word: word, Value: value})
		}
	}
	return all
}
