// Package planfile is the file that a plan's folder keeps for the program itself,
// plan.sawbill: all that is needed to note progress, to plan the rest of the job and to
// print the plan again as it was, long after the job file was changed or lost.
//
// A plan may be under way for weeks, through new versions of the program. So the file has
// a schema of its own, with a version, and what was printed stands in it: the code of the
// plan, its cuts with their numbers, marks, the numbers of its offcuts. Nothing of that is
// ever derived anew. Version 2 is written (v2.go); version 1 is read for ever (v1.go).
package planfile

import (
	"path"
	"path/filepath"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
	"sawbill/stock/job"
)

// Name is that of the file in the plan's folder.
const Name = "plan.sawbill"

// Plan is a plan under way, with the job that it is of. Its paths have slashes and begin at
// the plan's folder.
type Plan struct {
	Plan *cutplan.Plan
	// Code is what tells the plan from others.
	Code string
	// Number in its lineage: 1 of a job's first plan, one more of each rest. Continues are
	// the codes of the plans before it, the first one first, and Before is the folder of the
	// last of them; empty where it is not known.
	Number    int
	Continues []string
	Before    string
	// Made is what the plans before it made: blanks, each as often as its Count says.
	Made []progress.Made
	// Marks is how many marks were given so far.
	Marks int
	// Job is the path of the job file; empty where it is not known.
	Job string
	// File is the job, as it was read when it was planned first. Where Unread says why that
	// can be read no more, it has the sources and the stock and parts of Plan, and no case.
	File   *job.File
	Unread error
	// Changes are what if; WhatIf says them in words, as they were printed.
	Changes job.Changes
	WhatIf  []string
	// Rack is the path of the rack that the job names; empty where there is none.
	Rack string
	// OnRack are the pieces that were on the rack when this rest was planned; nil of a
	// plan that is no rest.
	OnRack []string
	// Begun are pieces of the rack that plans before cut, and that are still on it.
	Begun []string
}

// reread reads the job from its sources.
func (p *Plan) reread(sources []job.Source) {
	if p.File, p.Unread = job.Reread(sources, p.Changes); p.Unread != nil {
		p.File = &job.File{Job: p.Plan.Job, Sources: sources}
	}
}

// RackIDs are those of the pieces that were on the rack when the plan was made.
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

// RackStock is what of the pieces on a rack can be cut for parts, but for those that were
// begun.
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
func (p *Plan) Smaller(sizes ...string) (*job.File, job.Changes, error) {
	as := p.Changes
	as.Smaller = slices.Concat(as.Smaller, sizes)
	file, err := job.Reread(p.File.Sources, as)
	return file, as, err
}

// FromFolder is a path as it is written in a folder: with slashes, from there on. Only
// where no way leads from one to the other, as between two drives, it stays absolute.
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

// fromJob names the sources of a job from its own folder, as the job names them: the same
// job has the same sources wherever it lies, and [job.Reread] finds them.
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
