package recut

import (
	"context"
	"maps"
	"time"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// Options steer Make.
type Options struct {
	cutplan.Options
	// Code is that of the plan whose rest it is: leftovers and pieces that were begun
	// are named after it.
	Code string
	// Marks is how many marks were given so far, if more than the state knows of.
	Marks int
	// Rack is the stock on the rack that can be used, OnRack the names of all pieces there.
	Rack   []stock.Stock
	OnRack []string
	// Was and Is are the job as its file had it and as it is wanted now; nil without
	// second thoughts.
	Was, Is *stock.Job
	// Missing are stocks or materials that cannot be bought now.
	Missing []string
}

// Result is the rest of a job planned anew.
type Result struct {
	// Plan cuts all that is still wanted. Its bound is that of a plan that changes
	// everything; its marks are those of the plan before.
	Plan *cutplan.Plan
	// Lacking are the blanks that had no place any more, each as often as it lacked.
	Lacking []cutplan.Blank
	// Replanned are the pieces that are cut otherwise than was planned, GoesOn counts those
	// that go on.
	Replanned []progress.Piece
	GoesOn    int
	// Made are the blanks that are there, for the plan after this one to begin with; Saved
	// are those of them that were spoiled and are good by the new sizes.
	Made  []progress.Made
	Saved []cutplan.Blank
	// JobChanges lists the changes of the job and their effect on finished blanks.
	JobChanges
	// Waiting tells what cannot be cut now, where something is missing.
	Waiting *Waiting
}

// Of the time, in percent, the search that leaves all as it is ends at the first, that
// which may change everything at the second. The rest is for changing less.
const (
	untilAsPlanned = 30
	untilReplanned = 70
)

// mostTries is how often it is tried to change less.
const mostTries = 40

// Make plans the rest of the job of a state: the best plan found until it is proven or
// ctx ends. The error is that of [cutplan.Make], or a fault of this program.
func Make(ctx context.Context, s *progress.State, o Options) (*Result, error) {
	start := time.Now()
	r := newRest(s, o)
	found := &Result{Made: append(r.good, r.saved...), JobChanges: r.changes, Saved: r.savedBlanks(), Replanned: r.replanned}
	for i, n := range r.lacking() {
		if b := r.bill[i]; n > 0 && !r.needsMore(b.Part.Name) {
			b.Count = n
			found.Lacking = append(found.Lacking, b)
		}
	}
	best, err := r.search(ctx, o.Options)
	if err != nil {
		return nil, err
	}
	found.Plan = best.plan
	found.GoesOn = len(r.pieces) - len(best.replanned)
	for i, p := range r.pieces {
		if best.replanned[i] {
			found.Replanned = append(found.Replanned, p.Piece)
		}
	}
	if len(o.Missing) > 0 {
		if found.Waiting, err = postpone(best.plan, o.Missing); err != nil {
			return nil, err
		}
	}
	if o.Iterations == 0 {
		best.plan.Seconds = time.Since(start).Seconds()
	}
	return found, nil
}

// search looks for the plan that cuts most, for the least, and changes least.
func (r *rest) search(ctx context.Context, o cutplan.Options) (attempt, error) {
	clock := cutplan.NewClock(ctx, o)
	first, stop := clock.Until(ctx, untilAsPlanned)
	defer stop()
	asPlanned, err := r.try(first, nil, o)
	if err != nil || asPlanned.plan.Complete() && asPlanned.plan.Cost == 0 && len(asPlanned.plan.Unpriced) == 0 {
		return asPlanned, err
	}
	candidates := r.candidates(asPlanned.plan)
	if len(candidates) == 0 {
		return r.finish(ctx, asPlanned, asPlanned, o)
	}
	second, stop := clock.Until(ctx, untilReplanned)
	defer stop()
	replanned, err := r.try(second, candidates, o)
	if err != nil {
		return asPlanned, err
	}
	best := asPlanned
	if replanned.better(asPlanned) {
		if best, err = r.changeFewer(ctx, asPlanned, replanned, clock, o); err != nil {
			return best, err
		}
	}
	return r.finish(ctx, best, replanned, o)
}

// finish is the attempt with what is on hand used first, and the bound of another that
// may change more.
func (r *rest) finish(ctx context.Context, best, by attempt, o cutplan.Options) (attempt, error) {
	bound := *by.plan
	best, err := r.onHandFirst(ctx, best, o)
	if err != nil {
		return best, err
	}
	return best.bounded(&bound)
}

// candidates are the pieces of materials of which something is bought or lacks.
func (r *rest) candidates(p *cutplan.Plan) map[int]bool {
	short := map[string]bool{}
	for _, b := range p.Buy {
		short[b.Stock.Material] = true
	}
	for _, u := range p.Unplaced {
		short[p.Bill[u.Blank].Part.Material] = true
	}
	candidates := map[int]bool{}
	for i, p := range r.pieces {
		if short[p.Stock.Material] {
			candidates[i] = true
		}
	}
	return candidates
}

// changeFewer changes as few pieces as it finds enough for what freed reaches, one more at a
// time, each time the one that helps most.
func (r *rest) changeFewer(ctx context.Context, asPlanned, target attempt, clock cutplan.Clock, o cutplan.Options) (attempt, error) {
	base, tries := asPlanned, 0
	for len(base.replanned)+1 < len(target.replanned) {
		next := attempt{}
		for i := range r.pieces {
			if !target.replanned[i] || base.replanned[i] {
				continue
			}
			if tries++; tries > mostTries || ctx.Err() != nil {
				return target, nil
			}
			trial := maps.Clone(base.replanned)
			if trial == nil {
				trial = map[int]bool{}
			}
			trial[i] = true
			limited, stop := clock.Share(ctx, 4)
			tried, err := r.try(limited, trial, o)
			stop()
			switch {
			case err != nil:
				return target, err
			case tried.reaches(target):
				return tried, nil
			case next.plan == nil || tried.better(next):
				next = tried
			}
		}
		base = next
	}
	return target, nil
}
