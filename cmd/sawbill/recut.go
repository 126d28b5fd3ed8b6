package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"sawbill/nest/cutplan"
	"sawbill/nest/recut"
	"sawbill/nest/shop"
	"sawbill/report"
	"sawbill/stock/store"
)

func recutCommand() command {
	var missing []string
	var changes jobChanges
	var back bool
	var date string
	var set *pflag.FlagSet
	return command{
		name:  "recut",
		args:  "PLAN",
		about: "the rest of a plan from what is really there",
		more: `Plans the rest of a plan, after a spoiled piece, a missing sheet or a second thought:
from begun pieces, stock that was bought and not cut, leftovers, what spoiled blanks can
still give, the rack, and only then new purchases. It keeps to the plan where a change
saves nothing, and marks stay. Report first with sawbill progress what happened. This
assumes that everything on the plan's list was bought; report with --missing of sawbill
progress what was not.

Without -o the folder is named as that of the plan, with the next number behind it.
From then on the plan before takes no more reports: go on with sawbill progress of the
new folder. As long as nothing was reported there, --withdraw of the new folder takes
the rest back; its folder stays, and its number is not used again.
`,
		flags: func(f *pflag.FlagSet, s *settings) {
			set = f
			f.StringVarP(&s.output, "output", "o", "", "the `folder` to write to")
			f.StringArrayVar(&missing, "missing", nil, "a stock or `material` of which there is nothing more, uncut or\nfor sale: what can be cut now, and what must wait; NAME=1:\none less is there than was told, and none for sale")
			changes.flags(f)
			f.BoolVar(&back, "withdraw", false, "PLAN is a rest of which nothing was reported: take it back,\nthe plan before goes on")
			f.StringVar(&date, "date", "", "the `day` it is, 2026-03-05, if it is not today")
			s.solving(f)
			s.printing(f)
			s.onPaper(f)
		},
		run: func(in *invocation) (int, error) {
			if err := day(&date); err != nil {
				return 0, err
			}
			if back {
				var other string
				set.Visit(func(flag *pflag.Flag) {
					if !slices.Contains([]string{"withdraw", "date", "quiet"}, flag.Name) {
						other = flag.Name
					}
				})
				if other != "" {
					return 0, usage("--withdraw goes without --"+other, "take the rest back first, and then plan another")
				}
				return in.withdraw(date)
			}
			return in.recut(missing, &changes, date)
		},
	}
}

func (in *invocation) recut(missing []string, changes *jobChanges, date string) (int, error) {
	before, err := in.openFolder()
	if err != nil {
		return 0, err
	}
	var rest *shop.Rest
	var folder string
	var number int
	err = in.patiently(func(ctx context.Context) error {
		if rest, err = before.Rest(ctx); err == nil {
			folder, number, err = rest.Folder(ctx, in.output)
		}
		return err
	})
	if err != nil {
		return 0, err
	}
	for _, id := range rest.Gone {
		if !in.quiet {
			fmt.Fprintf(in.stderr, "warning: %s is not on the rack any more, and taken to be missing\n", id)
		}
	}
	for _, said := range missing {
		if err := rest.Missing(said); err != nil {
			return 0, err
		}
	}
	if err := in.changeJob(rest, changes); err != nil {
		return 0, err
	}
	plan := before.Plan()
	if rest.State().Done() && !rest.JobChanged() {
		fmt.Fprintf(in.stdout, "All blanks of plan %s are good: there is no rest.\n", plan.Code)
		return exitDone, nil
	}
	made, err := in.solveRest(rest, rest.Options())
	if err != nil {
		return 0, err
	}
	ruler := in.ruler(plan.Plan.Job.Units)
	options := report.Options{Ruler: ruler, Paper: in.paperFor(ruler), Pages: in.chosen(), Case: rest.File().Case, Labels: rest.File().Labels, WhatIf: plan.WhatIf,
		Rest: &report.Rest{Of: plan.Code, Result: made, Ways: recut.WaysToSave(rest.State(), plan.Code, recut.Design{Job: plan.File.Job, Case: plan.File.Case}, plan.Smaller, made.Saved...)}}
	after := rest.Plan(made, folder, number)
	return in.write(after, options, folder, func(ctx context.Context, pages []store.File) error {
		return rest.Write(ctx, folder, after, pages, date)
	})
}

// withdraw takes a rest back, or that of a plan whose rest has lost its folder.
func (in *invocation) withdraw(date string) (int, error) {
	rest, err := in.openFolder()
	if err != nil {
		return 0, err
	}
	return exitDone, in.patiently(func(ctx context.Context) error {
		on, code, err := rest.Withdraw(ctx, date)
		if err != nil {
			return err
		}
		fmt.Fprintf(in.stdout, "Plan %s is withdrawn: plan %s in %s goes on. Throw the pages of %s away.\n", code, on.Plan().Code, filepath.ToSlash(on.Path()), code)
		return nil
	})
}

// solveRest plans within the limits, telling of the progress.
func (in *invocation) solveRest(rest *shop.Rest, o recut.Options) (made *recut.Result, err error) {
	shown := in.statusLine()
	o.Options = cutplan.Options{Seed: in.seed, Iterations: in.iterations, Progress: shown.show}
	err = in.search("this is the best plan found so far", func(ctx context.Context) error {
		made, err = recut.Make(ctx, rest.State(), o)
		shown.end()
		return err
	})
	return made, err
}
