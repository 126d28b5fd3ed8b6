package main

import (
	"github.com/spf13/pflag"

	"sawbill/report"
)

func partsCommand() command {
	return command{
		name:  "parts",
		args:  "JOB",
		about: "the part list and cutting bill, and how each size came about",
		more: `Reads the job file and prints every part with its finished size, the blank that is
cut for it and, for the parts of a case design, the arithmetic behind each size. Of
a case it also tells weight, finish, edging and hardware, and checks how it will
stand and sag.
Nothing is planned or written.
`,
		flags: func(f *pflag.FlagSet, s *settings) {
			s.asking(f)
			s.printing(f)
			f.BoolVar(&s.quiet, "quiet", false, "no warnings")
		},
		run: parts,
	}
}

func parts(in *invocation) (int, error) {
	file, err := in.read()
	if err != nil {
		return 0, err
	}
	return exitDone, report.PartList(in.stdout, file.Job, report.Options{Ruler: in.ruler(file.Units), Case: file.Case, WhatIf: in.changes.Said(file.Units)})
}
