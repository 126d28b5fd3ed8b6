// Package planfile reads and writes plan.sawbill, the file from which the program goes on
// with a plan. It reports progress, plans the rest and prints the plan again from this file
// alone, so the job file may change or be lost.
//
// A plan may be under way for weeks, through new versions of the program. So the file has a
// schema of its own, with a version. It stores the plan as it was printed: code, cuts and
// their numbers, marks, numbers of offcuts. The reader never computes them again. The
// program writes version 2 (v2.go) and reads version 1 for ever (v1.go).
package planfile

import (
	"path"
	"path/filepath"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/casework"
	"sawbill/stock/job"
)

// Name is the name of the file in the plan's folder.
const Name = "plan.sawbill"

// Plan is a plan under way, with its job. Its paths have slashes and begin at the plan's
// folder.
type Plan struct {
	Plan *cutplan.Plan
	// Code tells the plan from others.
	Code string
	// Number counts the plans of a lineage: 1 for the first plan of a job, one more for each
	// rest. Continues lists the codes of the plans before it, oldest first. Before is the
	// folder of the last of them; empty if it is not known.
	Number    int
	Continues []string
	Before    string
	// Made lists the blanks that the plans before it made, each Count times.
	Made []progress.Made
	// Marks counts the marks given so far.
	Marks int
	// Job is the path of the job file; empty if it is not known.
	Job string
	// File is the job as it was read for the plan. Unread is the error if this program
	// refuses that text; File then holds the sources and the job of Plan, without a case.
	File   *job.File
	Unread error
	// Changes are the overrides of the job file; WhatIf states them in words, as printed.
	Changes job.Changes
	WhatIf  []string
	// Rack is the path of the rack that the job names; empty if it names none.
	Rack string
	// OnRack lists the pieces on the rack when this rest was planned; nil for a first plan.
	OnRack []string
	// Begun lists the pieces that earlier plans cut and that still stand on the rack.
	Begun []string
}

// reread reads the job from its sources.
func (p *Plan) reread(sources []job.Source) {
	if p.File, p.Unread = job.Reread(sources, p.Changes); p.Unread != nil {
		p.File = &job.File{Job: p.Plan.Job, Sources: sources}
	}
}

// RackIDs lists the pieces that were on the rack when the plan was made.
func (p *Plan) RackIDs() []string {
	ids := slices.Clone(p.OnRack)
	if len(p.Continues) > 0 {
		return ids
	}
	for _, s := range p.File.Sources {
		if s.Name != p.File.Rack {
			continue
		}
		if read, err := job.ParseRack(s.Name, []byte(s.Text)); err == nil {
			for _, piece := range read.Pieces {
				ids = append(ids, piece.ID)
			}
		}
	}
	return ids
}

// RackStock lists the pieces of a rack that can be cut for parts. Pieces that were begun are
// left out.
func (p *Plan) RackStock(on []stock.Piece, parts []stock.Part) []stock.Stock {
	var all []stock.Stock
	for _, piece := range on {
		for _, part := range parts {
			if part.Material == piece.Material && !slices.Contains(p.Begun, piece.ID) {
				all = append(all, piece.Stock())
				break
			}
		}
	}
	return all
}

// Smaller is the job as it would be with sizes less, each "height=6 mm", besides what is
// changed already.
func (p *Plan) Smaller(sizes ...string) (stock.Job, *casework.Case, error) {
	as := p.Changes
	as.Smaller = slices.Concat(as.Smaller, sizes)
	file, err := job.Reread(p.File.Sources, as)
	if err != nil {
		return stock.Job{}, nil, err
	}
	return file.Job, file.Case, nil
}

// FromFolder returns a path relative to a folder, with slashes. It stays absolute only if
// no relative path exists, as between two drives.
func FromFolder(folder, path string) string {
	if path == "" {
		return ""
	}
	from, wrong := filepath.Abs(folder)
	to, err := filepath.Abs(path)
	if err == nil && wrong == nil {
		if relative, err := filepath.Rel(from, to); err == nil {
			return filepath.ToSlash(relative)
		}
		return filepath.ToSlash(to)
	}
	return filepath.ToSlash(path)
}

// fromJob names the sources of a job as the job does, from its own folder. So a job has the
// same sources wherever it lies, and [job.Reread] finds them.
func fromJob(sources []job.Source) []job.Source {
	all := slices.Clone(sources)
	for i, s := range all {
		if i == 0 {
			all[i].Name = path.Base(filepath.ToSlash(s.Name))
			continue
		}
		if relative, err := filepath.Rel(filepath.Dir(sources[0].Name), s.Name); err == nil {
			all[i].Name = filepath.ToSlash(relative)
		}
	}
	return all
}
