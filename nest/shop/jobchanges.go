package shop

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
)

// JobChanged reports whether the job of the rest is another than that of the plan.
func (r *Rest) JobChanged() bool { return r.changed }

// ChangeJob adds changes to those that the job of the rest has already. With again, it first
// reads the job file anew from its place, and returns its warnings. The error is of type
// [fault.Faults].
func (r *Rest) ChangeJob(more job.Changes, again bool) (warnings []fault.Fault, err error) {
	of := r.of.plan
	as := of.Changes
	for _, written := range more.Counts { // a part that was dropped is wanted again
		as.Without = slices.DeleteFunc(slices.Clone(as.Without), func(name string) bool { return name == nameOf(written) })
	}
	for _, written := range more.Sizes { // it says all of the size
		as.Smaller = without(as.Smaller, nameOf(written))
	}
	for _, name := range more.Without { // nothing that was said of it before counts
		as.Added, as.Counts, as.Sizes, as.Smaller = without(as.Added, name), without(as.Counts, name), without(as.Sizes, name), without(as.Smaller, name)
		if len(as.Added) == len(of.Changes.Added) {
			as.Without = append(slices.Clone(as.Without), name)
		}
	}
	nothing := len(more.Without)+len(more.Counts)+len(more.Thicknesses)+len(more.Smaller)+len(more.Sizes)+len(more.Added) == 0 && more.Kerf == ""
	if nothing && !again {
		return nil, nil
	}
	if of.Unread != nil && !again {
		return nil, of.Unread
	}
	read := func() (*job.File, error) { return job.Reread(of.File.Sources, as) }
	if again {
		path := r.of.from(r.of.jobPath())
		read = func() (*job.File, error) { return job.ReadChanged(path, as) }
		file, err := job.Read(path)
		if err != nil {
			return nil, err
		}
		r.overrule(&as, file)
		warnings = file.Warnings
	}
	as.Added = slices.Concat(as.Added, more.Added)
	as.Counts = slices.Concat(as.Counts, more.Counts)
	as.Thicknesses = slices.Concat(as.Thicknesses, more.Thicknesses)
	as.Smaller = slices.Concat(as.Smaller, more.Smaller)
	as.Sizes = slices.Concat(as.Sizes, more.Sizes)
	if more.Kerf != "" {
		as.Kerf = more.Kerf
	}
	file, err := read()
	if err != nil {
		return nil, err
	}
	for _, written := range more.Added {
		if name := nameOf(written); !slices.ContainsFunc(file.Parts, func(p stock.Part) bool { return p.Name == name }) {
			return nil, fault.Faults{{File: "--add " + written, Cause: fmt.Sprintf("part %q was dropped", name), Remedy: "give the new part another name"}}
		}
	}
	r.file, r.changes, r.changed = file, as, !reflect.DeepEqual(of.File.Job, file.Job)
	return warnings, nil
}

// overrule drops earlier changes that the job file overrules: it changed the same thing, it
// has lost the part, or it has the added part by now. The file is read without changes.
func (r *Rest) overrule(as *job.Changes, is *job.File) {
	was, err := job.Reread(r.of.plan.File.Sources, job.Changes{})
	for _, p := range is.Parts {
		as.Added = without(as.Added, p.Name)
		if err != nil {
			continue
		}
		for _, q := range was.Parts {
			if q.Name == p.Name && (q.Length != p.Length || q.Width != p.Width) {
				as.Sizes = without(as.Sizes, p.Name)
			}
			if q.Name == p.Name && q.Count != p.Count {
				as.Counts = without(as.Counts, p.Name)
			}
		}
	}
	if err != nil {
		return
	}
	for _, q := range was.Parts {
		if !slices.ContainsFunc(is.Parts, func(p stock.Part) bool { return p.Name == q.Name }) {
			as.Without = slices.DeleteFunc(slices.Clone(as.Without), func(name string) bool { return name == q.Name })
			as.Counts, as.Sizes, as.Smaller = without(as.Counts, q.Name), without(as.Sizes, q.Name), without(as.Smaller, q.Name)
		}
	}
	if was.Saw.Kerf != is.Saw.Kerf {
		as.Kerf = ""
	}
	for _, s := range is.Stock {
		for _, t := range was.Stock {
			if t.Name == s.Name && t.Thickness != s.Thickness {
				as.Thicknesses = without(as.Thicknesses, s.Material)
			}
		}
	}
}

// without returns the changes, but for those of one part.
func without(all []string, name string) []string {
	return slices.DeleteFunc(slices.Clone(all), func(written string) bool { return nameOf(written) == name })
}

// nameOf returns the part that a change is about, as in "shelf: 600 x 300, birch ply", "shelf=3".
func nameOf(written string) string {
	at := strings.LastIndexAny(written, ":=")
	return strings.TrimSpace(written[:max(0, at)])
}
