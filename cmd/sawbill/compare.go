package main

import (
	"bytes"
	"context"
	"fmt"

	"github.com/spf13/pflag"

	"sawbill/nest/choice"
	"sawbill/report"
	"sawbill/stock/job"
)

func compareCommand() command {
	return command{
		name:  "compare",
		args:  "JOB",
		about: "the job under every choice of stock, side by side",
		more: `Reads the job file and plans each of its materials with every sensible set of what
is offered: each size alone, what one seller has, all together, with and without
what is on hand. Prints them by cost, the best first, with what to take where
something is sold out and the price at which another choice would be as good. With
-o it also writes to a folder
  compare.csv         the same table with the choices that give too little
  compare.pdf         the shopping list on paper, with tables and charts behind it
  cost.svg, yield.svg pictures of the choices
  shopping-list.txt   what the best choices buy, by seller, to carry along
  shopping-list.csv   the same for a spreadsheet
All is planned within one --limit.
`,
		flags: func(f *pflag.FlagSet, s *settings) {
			f.StringVarP(&s.output, "output", "o", "", "the `folder` to write to")
			s.asking(f)
			s.solving(f)
			s.printing(f)
			f.StringVar(&s.paper, "paper", "", "of compare.pdf, `a4|letter`: without it, letter for\nlengths in inches, else a4")
		},
		run: compareStock,
	}
}

func compareStock(in *invocation) (int, error) {
	file, err := in.read()
	if err != nil {
		return 0, err
	}
	made, err := in.choices(file)
	if err != nil {
		return 0, err
	}
	ruler := in.ruler(file.Units)
	options := report.Options{Ruler: ruler, Paper: in.paperFor(ruler), WhatIf: in.changes.Said(file.Units)}
	if in.output != "" {
		var list bytes.Buffer
		if err := report.ShoppingList(&list, made, options); err != nil {
			return 0, err
		}
		pdf, warnings, err := report.ComparisonPDF(made, options)
		if err != nil {
			return 0, err
		}
		if !in.quiet {
			for _, w := range warnings {
				fmt.Fprintln(in.stderr, "warning:", w)
			}
		}
		if err := writeAll(in.output, []output{
			{"compare.pdf", pdf},
			{"cost.svg", report.CostSVG(made, options)},
			{"yield.svg", report.YieldSVG(made, options)},
			{"compare.csv", report.ComparisonCSV(made)},
			{"shopping-list.txt", list.Bytes()},
			{"shopping-list.csv", report.ShoppingListCSV(made)},
		}); err != nil {
			return 0, err
		}
	}
	if err := report.Comparison(in.stdout, made, options); err != nil {
		return 0, err
	}
	if in.output != "" {
		fmt.Fprintf(in.stdout, "\nWritten to %s: compare.pdf, compare.csv, cost.svg, yield.svg, shopping-list.txt and shopping-list.csv.\n", in.output)
	}
	for _, m := range made.Materials {
		if !m.Best().Plan.Complete() {
			return exitIncomplete, nil
		}
	}
	return exitDone, nil
}

// choices compares within the limits.
func (in *invocation) choices(file *job.File) (made *choice.Comparison, err error) {
	shown := in.statusLine()
	err = in.search("these are the best plans found so far", func(ctx context.Context) error {
		made, err = choice.Compare(ctx, file.Job, choice.Options{
			Seed: in.seed, Iterations: in.iterations, Worth: int64(file.Worth),
			Density:  func(material string) float64 { return float64(file.Densities[material]) },
			Progress: shown.choice,
		})
		shown.end()
		return err
	})
	return made, err
}
