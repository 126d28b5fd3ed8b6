package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"github.com/spf13/pflag"

	"sawbill/nest/choice"
	"sawbill/nest/shop/planfile"
	"sawbill/report"
	"sawbill/stock/fault"
	"sawbill/stock/job"
	"sawbill/stock/store"
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
	if in.output != "" && store.FolderAt(in.output, comparisonKind).There() {
		if err := in.comparisonFolder(store.Folder.Look, func(h *store.Held) error { return h.Check(nil) }); err != nil {
			return 0, err
		}
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
		warn(in, warnings)
		files := []store.File{
			{Name: "compare.pdf", Data: pdf},
			{Name: "cost.svg", Data: report.CostSVG(made, options)},
			{Name: "yield.svg", Data: report.YieldSVG(made, options)},
			{Name: "compare.csv", Data: report.ComparisonCSV(made)},
			{Name: "shopping-list.txt", Data: list.Bytes()},
			{Name: "shopping-list.csv", Data: report.ShoppingListCSV(made)},
		}
		if err := in.comparisonFolder(store.Folder.Change, func(h *store.Held) error { return h.Replace(files) }); err != nil {
			return 0, err
		}
	}
	if err := report.Comparison(in.stdout, made, options); err != nil {
		if in.output == "" {
			return 0, err
		}
		return 0, printed(err)
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

// comparisonKind names the contents of the folder in a refusal.
const comparisonKind = "comparison"

// comparisonFiles are the names of the files of a comparison.
var comparisonFiles = []string{"compare.pdf", "cost.svg", "yield.svg", "compare.csv", "shopping-list.txt", "shopping-list.csv"}

// comparisonFolder does something with the folder of the comparison. Version 1 kept no list
// of its files, of a plan neither: there plan.sawbill stands for a plan, and a compare.pdf of
// the program's own for a comparison.
func (in *invocation) comparisonFolder(hold func(store.Folder, context.Context, func(*store.Held) error) error, do func(*store.Held) error) error {
	return in.patiently(func(ctx context.Context) error {
		return hold(store.FolderAt(in.output, comparisonKind), ctx, func(h *store.Held) error {
			if _, err := os.Lstat(filepath.Join(in.output, planfile.Name)); err == nil && !h.Listed() {
				return fault.Faults{{File: in.output, Cause: "the folder holds a plan, which would be replaced", Remedy: "name another folder with -o"}}
			}
			pdf, err := os.ReadFile(filepath.Join(in.output, "compare.pdf"))
			if err == nil && report.WroteComparison(pdf) && !h.Listed() {
				if err := h.Adopt(func(name string) bool { return slices.Contains(comparisonFiles, name) }); err != nil {
					return err
				}
			}
			return do(h)
		})
	})
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
