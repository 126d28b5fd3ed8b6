package main

import (
	"context"
	"fmt"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"sawbill/nest/cutplan"
		"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/nest/shop/planfile"
	"sawbill/report"
	"sawbill/stock"
	"sawbill/stock/job"
)

func recutCommand() command {
	var missing, smaller []string
	return command{
		name:  "recut",
		args:  "PLAN",
		about: "the rest of a plan from what is really there",
		more: `Plans what is still wanted of a plan anew, after a spoiled piece or a missing sheet:
from pieces that were begun, stock that was bought and not cut, leftovers, what spoiled
blanks can still give, the rack, and only then new purchases. What was planned goes on
as it was as far as it costs nothing more, and marks stay. Say first with sawbill
progress what happened. It is taken that all of the plan's list was bought; say with
sawbill progress --missing what was not.

Without -o the folder is named as that of the plan, with the next number behind it.
Go on with sawbill progress of the new folder.
`,
		flags: func(f *pflag.FlagSet, s *settings) {
			f.StringVarP(&s.output, "output", "o", "", "the `folder` to write to")
			f.StringArrayVar(&missing, "missing", nil, "a stock or `material` of which there is nothing more, uncut or\nfor sale: what can be cut now, and what must wait; NAME=1:\none less is there than was told, and none for sale")
			f.StringArrayVar(&smaller, "smaller", nil, "a case becomes less wide, high or deep, `height=6 mm`, or a part\nshorter, by its name: what is cut is trimmed to that")
			s.solving(f)
			s.printing(f)
			f.StringVar(&s.paper, "paper", "", "of plan.pdf, `a4|letter`: without it, letter for\nlengths in inches, else a4")
		},
		run: func(in *invocation) (int, error) { return in.recut(missing, smaller) },
	}
}

func (in *invocation) recut(missing, smaller []string) (int, error) {
	before, err := in.openFolder()
	if err != nil {
		return 0, err
	}
	onRack, err := before.rackNow()
	if err != nil {
		return 0, err
	}
	for _, id := range before.goneFrom(onRack) {
		if !in.quiet {
			fmt.Fprintf(in.stderr, "warning: %s is not on the rack any more, and taken to be missing\n", id)
		}
	}
	booked, err := before.booked(onRack)
	if err != nil {
		return 0, err
	}
	there := before.RackStock(onRack, before.state.Parts())
	for i, said := range missing {
		if missing[i], there, err = before.without(said, there); err != nil {
			return 0, err
		}
	}
	file, changes, trim, err := before.smaller(smaller)
	if err != nil {
		return 0, err
	}
	if before.state.Done() {
		fmt.Fprintf(in.stdout, "All blanks of plan %s are good: there is no rest.\n", before.Code)
		return exitDone, nil
	}
	made, err := in.solveRest(before, recut.Options{Code: before.Code, Marks: before.Marks, Rack: there, Booked: booked, Missing: missing, Sizes: sizesOf(trim)})
	if err != nil {
		return 0, err
	}
	ruler := in.ruler(before.Plan.Job.Units)
	options := report.Options{Ruler: ruler, Paper: in.paperFor(ruler), Case: file.Case,
		Rest: &report.Rest{Of: before.Code, Result: made, Trim: trim, Ways: recut.WaysToSave(before.state, before.Code, before.File, before.Smaller, made.Saved...)}}
	folder := in.output
	if folder == "" {
		folder = nextFolder(before.path)
	}
	if filepath.Clean(folder) == filepath.Clean(before.path) {
		return 0, usageError{"-o " + in.output + " is the folder of the plan itself", "name another for its rest"}
	}
	after := &planfile.Plan{Plan: made.Plan, Number: before.Number + 1, Continues: append(slices.Clone(before.Continues), before.Code), Before: planfile.FromFolder(folder, before.path), Made: made.Made, Marks: max(before.Marks, cutplan.NextMark(made.Plan.Bill)), File: file, Changes: changes,
		Job: planfile.FromFolder(folder, before.jobPath()), Rack: planfile.FromFolder(folder, before.rackPath()), Begun: before.begunOf(onRack), OnRack: idsOf(onRack)}
	return in.write(after, options, folder)
}

// smaller reads the job with sizes less, and tells which parts that changes.
func (f *planFolder) smaller(sizes []string) (*job.File, job.Changes, []recut.Changed, error) {
	if len(sizes) == 0 {
		return f.File, f.Changes, nil, nil
	}
	file, changes, err := f.Smaller(sizes...)
	if err != nil {
		return nil, changes, nil, err
	}
	trim, wrong := recut.Differences(f.state, f.File, file)
	if wrong != "" {
		return nil, changes, nil, job.Faults{{File: "--smaller " + strings.Join(sizes, ", "), Cause: wrong, Remedy: "take another size, or cut the piece anew"}}
	}
	return file, changes, trim, nil
}

// sizesOf are the parts as they have become.
func sizesOf(changed []recut.Changed) map[string]stock.Part {
	sizes := map[string]stock.Part{}
	for _, c := range changed {
		sizes[c.Is.Name] = c.Is
	}
	return sizes
}

// solveRest plans within the limits, telling of the progress.
func (in *invocation) solveRest(before *planFolder, o recut.Options) (made *recut.Result, err error) {
	shown := in.statusLine()
	o.Options = cutplan.Options{Seed: in.seed, Iterations: in.iterations, Progress: shown.show}
	err = in.search("this is the best plan found so far", func(ctx context.Context) error {
		made, err = recut.Make(ctx, before.state, o)
		shown.end()
		return err
	})
	return made, err
}

// without notes that stock is missing, "NAME" or "NAME=2", and returns its name and what
// of the rack is there still.
func (f *planFolder) without(said string, there []stock.Stock) (string, []stock.Stock, error) {
	fault := func(cause, remedy string) (string, []stock.Stock, error) {
		return "", nil, job.Faults{{File: "--missing " + said, Cause: cause, Remedy: remedy}}
	}
	name, number, counted := said, "", false
	if !f.has(said) {
		if at := strings.LastIndex(said, "="); at >= 0 {
			name, number, counted = strings.TrimSpace(said[:at]), strings.TrimSpace(said[at+1:]), true
		}
	}
	if !f.has(name) {
		remedy := "take a stock or a material of the plan"
		var known []string
		for _, s := range f.Plan.Job.Stock {
			known = append(known, s.Name, s.Material)
		}
		if near, ok := stock.Nearest(name, known); ok {
			remedy = fmt.Sprintf("did you mean %q?", near)
		}
		return fault(fmt.Sprintf("there is no stock or material %q", name), remedy)
	}
	count := f.state.Uncut(name)
	if counted {
		n, err := strconv.Atoi(number)
		if err != nil || n < 0 {
			return fault(fmt.Sprintf("%q is no count", number), "give a whole number, or the name alone for all of it")
		}
		count = n
	} else {
		there = slices.DeleteFunc(there, func(s stock.Stock) bool { return progress.Called(s, name) })
	}
	if count > 0 {
		if err := f.state.Tell(progress.Event{Word: "missing", Value: fmt.Sprintf("%s=%d", name, count)}); err != nil {
			told := err.(progress.Wrong)
			return fault(told.Cause, told.Remedy)
		}
	}
	return name, there, nil
}

// has reports whether the plan has stock of a name or material.
func (f *planFolder) has(name string) bool {
	return slices.ContainsFunc(f.Plan.Job.Stock, func(s stock.Stock) bool { return progress.Called(s, name) })
}

// write writes a plan's folder and says what is in the plan.
func (in *invocation) write(k *planfile.Plan, o report.Options, folder string) (int, error) {
	k.Code = report.Identity(k.Plan, o)
	if err := unclaimed(folder, k.Code); err != nil {
		return 0, err
	}
	files, warnings, err := planFiles(k, o)
	if err != nil {
		return 0, err
	}
	if err := writeAll(folder, files); err != nil {
		return 0, err
	}
	if !in.quiet {
		for _, w := range warnings {
			fmt.Fprintln(in.stderr, "warning:", w)
		}
	}
	if err := report.Summary(in.stdout, k.Plan, o); err != nil {
		return 0, err
	}
	fmt.Fprintf(in.stdout, "\nWritten to %s: plan.pdf, plan.html, plan.json, cutting-bill.csv%s and %s.\n", filepath.ToSlash(folder), elevationsSaid(o), pictures(len(k.Plan.Layouts)))
	if !k.Plan.Complete() {
		return exitIncomplete, nil
	}
	return exitDone, nil
}

func elevationsSaid(o report.Options) string {
	if o.Case == nil || o.Rest != nil {
		return ""
	}
	return ", elevation-*.svg"
}
