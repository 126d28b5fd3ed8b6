package main

import (
	"cmp"
	"context"
	"fmt"
	"os"
	"os/signal"
	"syscall"
	"time"

	"github.com/spf13/pflag"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/cutplan/simulate"
	"sawbill/nest/shop"
	"sawbill/nest/shop/planfile"
	"sawbill/report"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

func planCommand() command {
	return command{
		name:  "plan",
		args:  "JOB",
		about: "what to buy, and how to cut it",
		more: `Reads the job file and plans it: prints the shopping list, and writes to a folder
  plan.pdf          what to buy, a case design from all sides, the cutting bill,
                    every diagram with its cuts in order, marks and assembly; more
                    with --pages
  plan.html         all that there is as one page for a phone or tablet in the shop
  plan.json         all of it for other programs
  cutting-bill.csv  the blanks, for a spreadsheet
  layout-01.svg ... a picture of each diagram
  elevation-*.svg   of a case design: front, side, section and plan
  plan.sawbill      what sawbill progress and recut go on from: leave it there
Without -o the folder is named after the job file, with -plan behind it, and made
where you are; a what-if gets a folder of its own, with -what-if- behind the name.
The files of an earlier plan of this job are replaced, all of them or none. A plan
with progress, the plan of another job and files of your own are never replaced.
Ctrl-C ends the search and keeps the best plan found so far.
`,
		flags: func(f *pflag.FlagSet, s *settings) {
			f.StringVarP(&s.output, "output", "o", "", "the `folder` to write to")
			s.asking(f)
			s.solving(f)
			s.printing(f)
			s.onPaper(f)
		},
		run: plan,
	}
}

func plan(in *invocation) (int, error) {
	file, err := in.read()
	if err != nil {
		return 0, err
	}
	folder := cmp.Or(in.output, shop.DefaultFolder(in.operands[0], in.changes, file.Units))
	if err := in.patiently(func(ctx context.Context) error { return shop.Free(ctx, folder, in.operands[0]) }); err != nil {
		return 0, err
	}
	made, err := in.solve(file)
	if err != nil {
		return 0, err
	}
	ruler := in.ruler(file.Units)
	options := report.Options{Ruler: ruler, Paper: in.paperFor(ruler), Pages: in.chosen(), Case: file.Case, Labels: file.Labels, WhatIf: in.changes.Said(file.Units)}
	if options.Instead, err = in.instead(made); err != nil {
		return 0, err
	}
	p := &planfile.Plan{
		Plan: made, Number: 1, Marks: cutplan.NextMark(made.Bill), File: file, Changes: in.changes, WhatIf: options.WhatIf,
		Job: planfile.FromFolder(folder, in.operands[0]), Rack: planfile.FromFolder(folder, file.Rack),
	}
	return in.write(p, options, folder, func(ctx context.Context, pages []store.File) error { return shop.Place(ctx, folder, p, pages) })
}

func pictures(n int) string {
	switch n {
	case 0:
		return "no diagrams"
	case 1:
		return pictureName(0)
	}
	return pictureName(0) + " to " + pictureName(n-1)
}

func pictureName(i int) string { return fmt.Sprintf("layout-%02d.svg", i+1) }

// elevationName is the file of a view of the case: "elevation-front.svg".
func elevationName(view string) string { return "elevation-" + view + ".svg" }

// solve plans the job within the limits, telling of the progress.
func (in *invocation) solve(file *job.File) (made *cutplan.Plan, err error) {
	shown := in.statusLine()
	err = in.search("this is the best plan found so far", func(ctx context.Context) error {
		made, err = sellercuts.Make(ctx, file.Job, cutplan.Options{Seed: in.seed, Iterations: in.iterations, Progress: shown.show})
		shown.end()
		return err
	})
	return made, err
}

// quick limits the search for what to buy instead: it is worth some seconds at the most.
const quick, quickIterations = 3 * time.Second, 2000

// instead is what to buy where something is sold out.
func (in *invocation) instead(p *cutplan.Plan) ([]choice.Replacement, error) {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	o := choice.Options{Seed: in.seed, Iterations: quickIterations}
	if in.iterations > 0 {
		o.Iterations = min(o.Iterations, in.iterations)
	} else {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, min(quick, in.limit))
		defer cancel()
	}
	return choice.Instead(ctx, p, o)
}

// planPages makes what is to be read in the plan's folder. It refuses a plan whose steps or
// setups, as they are printed, do not give its pieces.
func planPages(p *cutplan.Plan, o report.Options) (files []store.File, warnings []string, err error) {
	if err := simulate.Check(p); err != nil {
		return nil, nil, ownFault{fmt.Errorf("%w: sawn so, the plan does not come out", err)}
	}
	if _, err := simulate.Figures(p, o.Ruler); err != nil {
		return nil, nil, ownFault{fmt.Errorf("%w: sawn by these figures, the plan does not come out", err)}
	}
	pdf, warnings, err := report.PDF(p, o)
	if err != nil {
		return nil, nil, err
	}
	files = []store.File{
		{Name: "plan.pdf", Data: pdf},
		{Name: "plan.html", Data: report.HTML(p, o)},
		{Name: "plan.json", Data: report.JSON(p, o)},
		{Name: "cutting-bill.csv", Data: report.CuttingBill(p)},
	}
	for i, picture := range report.LayoutSVGs(p, o) {
		files = append(files, store.File{Name: pictureName(i), Data: picture})
	}
	if o.Rest != nil {
		return files, warnings, nil
	}
	for _, e := range report.Elevations(p, o) {
		files = append(files, store.File{Name: elevationName(e.View), Data: e.SVG})
	}
	return files, warnings, nil
}
