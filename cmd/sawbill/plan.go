package main

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"sawbill/nest/cutplan"
	"sawbill/nest/shop/planfile"
	"sawbill/report"
	"sawbill/stock/job"
)

func planCommand() command {
	return command{
		name:  "plan",
		args:  "JOB",
		about: "what to buy, and how to cut it",
		more: `Reads the job file and plans it: prints the shopping list, and writes to a folder
  plan.pdf          what to buy, the cutting bill, labels for the pieces, every
                    diagram with its cuts in order, a case design's elevations,
                    marks and assembly
  plan.html         the same as one page for a phone or tablet in the shop
  plan.json         the same for other programs
  cutting-bill.csv  the blanks, for a spreadsheet
  layout-01.svg ... a picture of each diagram
  elevation-*.svg   of a case design: front, side, section and plan
  plan.sawbill      what sawbill progress and recut go on from: leave it there
Without -o the folder is named after the job file, with -plan behind it, and made
where you are; files in it that have these names are replaced. Ctrl-C ends the
search and keeps the best plan found so far.
`,
		flags: func(f *pflag.FlagSet, s *settings) {
			f.StringVarP(&s.output, "output", "o", "", "the `folder` to write to")
			s.asking(f)
			s.solving(f)
			s.printing(f)
			f.StringVar(&s.paper, "paper", "", "of plan.pdf, `a4|letter`: without it, letter for\nlengths in inches, else a4")
		},
		run: plan,
	}
}

func plan(in *invocation) (int, error) {
	file, err := in.read()
	if err != nil {
		return 0, err
	}
	made, err := in.solve(file)
	if err != nil {
		return 0, err
	}
	ruler := in.ruler(file.Units)
	options := report.Options{Ruler: ruler, Paper: in.paperFor(ruler), Case: file.Case, WhatIf: in.changes.Said(file.Units)}
	folder := in.output
	if folder == "" {
		folder = strings.TrimSuffix(filepath.Base(in.operands[0]), filepath.Ext(in.operands[0])) + "-plan"
	}
	return in.write(&planfile.Plan{Plan: made, Number: 1, Marks: cutplan.NextMark(made.Bill), File: file, Changes: in.changes, WhatIf: options.WhatIf,
		Job: planfile.FromFolder(folder, in.operands[0]), Rack: planfile.FromFolder(folder, file.Rack)}, options, folder)
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
		made, err = cutplan.Make(ctx, file.Job, cutplan.Options{Seed: in.seed, Iterations: in.iterations, Progress: shown.show})
		shown.end()
		return err
	})
	return made, err
}

// planFiles makes the contents of the plan's folder.
func planFiles(k *planfile.Plan, o report.Options) (files []output, warnings []string, err error) {
	pdf, warnings, err := report.PDF(k.Plan, o)
	if err != nil {
		return nil, nil, err
	}
	files = []output{
		{"plan.pdf", pdf},
		{"plan.html", report.HTML(k.Plan, o)},
		{"plan.json", report.JSON(k.Plan, o)},
		{"cutting-bill.csv", report.CuttingBill(k.Plan)},
		{planfile.Name, k.Bytes()},
	}
	for i, picture := range report.LayoutSVGs(k.Plan, o) {
		files = append(files, output{pictureName(i), picture})
	}
	if o.Rest != nil {
		return files, warnings, nil
	}
	for _, e := range report.Elevations(k.Plan, o) {
		files = append(files, output{elevationName(e.View), e.SVG})
	}
	return files, warnings, nil
}
