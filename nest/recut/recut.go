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
	// Code is the code of the plan to continue. It names leftovers and begun pieces.
	Code string
	// Marks is the number of marks given so far, if more than the state has.
	Marks int
	// Rack lists the usable stock on the rack, OnRack the names of all its pieces.
	Rack   []stock.Stock
	OnRack []string
	// Was and Is are the job before and after a change of its file; nil if it did not
	// change.
	Was, Is *stock.Job
	// Missing lists stocks or materials that cannot be bought now.
	Missing []string
}

// Result is the new plan for the rest of a job.
type Result struct {
	// Plan cuts all blanks still wanted. Its bound holds for plans that change everything.
	// Its marks continue the marks of the plan before.
	Plan *cutplan.Plan
	// Lacking lists the blanks without a source, with their counts.
	Lacking []cutplan.Blank
	// Replanned lists the pieces with a new layout; GoesOn counts the others.
	Replanned []progress.Piece
	GoesOn    int
	// Made lists the good blanks for the next plan to begin with. Saved lists spoiled
	// blanks that the new sizes make good.
	Made  []progress.Made
	Saved []cutplan.Blank
	// JobChanges lists the changes of the job and their effect on finished blanks.
	JobChanges
	// Waiting lists the blanks that wait for missing stock; nil if nothing is missing.
	Waiting *Waiting
}

// untilAsPlanned and untilReplanned are percentages of the time. The search without
// changes ends at the first, the search with any change at the second. The remainder is
// for smaller changes.
const (
	untilAsPlanned = 30
	untilReplanned = 70
)

// mostTries limits the attempts to change less.
const mostTries = 40

// Make plans the rest of a job. It returns the best plan found when the plan is proven or
// ctx ends. It returns the errors of [sellercuts.Make], or a fault of this program.
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

// search finds a plan that cuts the most, at the lowest cost, with the fewest changes.
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

// finish uses stock on hand first, and takes the bound of an attempt that may change more.
func (r *rest) finish(ctx context.Context, best, by attempt, o cutplan.Options) (attempt, error) {
	bound := *by.plan
	best, err := r.onHandFirst(ctx, best, o)
	if err != nil {
		return best, err
	}
	return best.bounded(&bound)
}

// candidates lists the pieces of materials that are bought or lack blanks.
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

// changeFewer looks for fewer changes that are as good as target. It adds one piece at a
// time, the one that helps most.
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
