package shop

import (
	"context"
	"path"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/nest/shop/planfile"
	"sawbill/stock"
	"sawbill/stock/fault"
	"sawbill/stock/job"
	"sawbill/stock/store"
)

// Rest is the beginning of a rest: the plan as its record has it, and the rack as it is
// now. Its methods change neither.
type Rest struct {
	of    *Folder
	state *progress.State
	// Gone are the pieces of the rack that the plan counts on and that are not there any
	// more; they count as missing.
	Gone []string

	onRack  []stock.Piece
	there   []stock.Stock // of the rack, what can be cut
	missing []string
	file    *job.File
	changes job.Changes
	changed bool // the job is another than the plan's
}

// Rest begins the rest of the plan. It is refused where the plan takes no more reports. The
// error is of type [fault.Faults].
func (f *Folder) Rest(ctx context.Context) (*Rest, error) {
	if err := f.Refresh(ctx); err != nil {
		return nil, err
	}
	if err := f.going(); err != nil {
		return nil, err
	}
	r := &Rest{of: f, state: f.replay(), file: f.plan.File, changes: f.plan.Changes}
	var err error
	if r.onRack, err = f.rackNow(); err != nil {
		return nil, err
	}
	r.Gone = r.goneFrom(r.onRack)
	r.there = f.plan.RackStock(r.onRack, r.state.Parts())
	return r, nil
}

// State is how far the plan has come, less what is missing.
func (r *Rest) State() *progress.State { return r.state }

// File is the job, with what was made smaller.
func (r *Rest) File() *job.File { return r.file }

// Options are the options to plan the rest with.
func (r *Rest) Options() recut.Options {
	o := recut.Options{Code: r.of.plan.Code, Marks: r.of.plan.Marks, Rack: r.there, Missing: r.missing}
	for _, piece := range r.onRack {
		o.OnRack = append(o.OnRack, piece.ID)
	}
	if r.changed {
		o.Was, o.Is = &r.of.plan.File.Job, &r.file.Job
	}
	return o
}

// Folder is where the rest goes, and its number in the lineage. An empty name is the folder
// of the plan with the next number that was never used. A folder that may not be written is
// refused, as [Free] does.
func (r *Rest) Folder(ctx context.Context, name string) (folder string, number int, err error) {
	if name == "" {
		folder, number, err = r.of.nextFolder(ctx)
		return folder, number, err
	}
	if samePlace(name, r.of.path) {
		return "", 0, fault.Faults{{File: name, Cause: "this is the folder of the plan itself", Remedy: "name another for its rest"}}
	}
	return name, r.of.nextNumber(), Free(ctx, name, r.of.from(r.of.jobPath()))
}

// Plan is the rest as it is kept in a folder. Its code is to be set.
func (r *Rest) Plan(made *recut.Result, folder string, number int) *planfile.Plan {
	of := r.of.plan
	p := &planfile.Plan{
		Plan: made.Plan, Number: number, Continues: append(slices.Clone(of.Continues), of.Code), Before: planfile.FromFolder(folder, r.of.path),
		Made: made.Made, Marks: max(of.Marks, cutplan.NextMark(made.Plan.Bill)),
		Job:  planfile.FromFolder(folder, r.of.from(r.of.jobPath())),
		File: r.file, Changes: r.changes, WhatIf: of.WhatIf,
		Rack: planfile.FromFolder(folder, r.of.RackPath()), Begun: r.begunOf(r.onRack),
	}
	for _, piece := range r.onRack {
		p.OnRack = append(p.OnRack, piece.ID)
	}
	return p
}

// Write writes the rest into its folder, and with it the plan goes on there. It is refused
// where the plan changed since the rest was begun, and where [Place] would be. The error is
// of type [fault.Faults] or [store.Waits]. Without the latter nothing was changed.
func (r *Rest) Write(ctx context.Context, folder string, p *planfile.Plan, pages []store.File, date string) error {
	of := r.of
	seen := of.entries
	return of.change(ctx, func() error {
		if err := of.going(); err != nil {
			return err
		}
		if !slices.EqualFunc(seen, of.entries, sameEntry) || of.plan.Code != p.Continues[len(p.Continues)-1] {
			return of.refuse("progress was reported while the rest was planned", "run recut again; nothing was written")
		}
		into := folderAt(folder)
		return into.files.Change(ctx, func(h *store.Held) error {
			if err := into.adopt(h); err != nil {
				return err
			}
			if err := h.Check(nil); err != nil {
				return err
			}
			if err := into.claim(h, p); err != nil {
				return err
			}
			says := Successor{Code: p.Code, Number: p.Number}.says(planfile.FromFolder(of.path, folder))
			once := store.Once{Record: path.Join(planfile.FromFolder(folder, of.path), RecordName), Says: says}
			files, err := into.withPlan(p, pages)
			if err != nil {
				return err
			}
			return h.ReplaceOnce(files, once, func() error {
				_, err := of.record.Add(store.Entry{Plan: of.plan.Code, Date: date, Did: []string{says}})
				return err
			})
		})
	})
}
