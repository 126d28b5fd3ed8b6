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
	// Anew are the pieces that are cut otherwise than was planned, GoesOn counts those
	// that go on.
	Anew   []progress.Piece
	GoesOn int
	// Made are the blanks that are there, for the plan after this one to begin with; Saved
	// are those of them that were spoiled and are good by the new sizes.
	Made  []progress.Made
	Saved []cutplan.Blank
	// Thoughts lists the changes of the job and their effect on finished blanks.
	Thoughts
	// Waiting tells what cannot be cut now, where something is missing.
	Waiting *Waiting
}

// Of the time, in percent, the search that leaves all as it is ends at the first, that
// which may change everything at the second. The rest is for changing less.
const (
	untilKept  = 30
	untilFreed = 70
)

// mostTries is how often it is tried to change less.
const mostTries = 40

// Make plans the rest of the job of a state: the best plan found until it is proven or
// ctx ends. The error is that of [cutplan.Make], or a fault of this program.
func Make(ctx context.Context, s *progress.State, o Options) (*Result, error) {
	start := time.Now()
	r := restOf(s, o)
	found := &Result{Made: append(r.good, r.saved...), Thoughts: r.thoughts, Saved: r.savedBlanks(), Anew: r.anew}
	for i, n := range r.lacking() {
		if b := r.bill[i]; n > 0 && !r.more(b.Part.Name) {
			b.Count = n
			found.Lacking = append(found.Lacking, b)
		}
	}
	best, err := r.search(ctx, o.Options)
	if err != nil {
		return nil, err
	}
	found.Plan = best.plan
	found.GoesOn = len(r.pieces) - len(best.anew)
	for i, p := range r.pieces {
		if best.anew[i] {
			found.Anew = append(found.Anew, p.Piece)
		}
	}
	if len(o.Missing) > 0 {
		if found.Waiting, err = wait(best.plan, o.Missing); err != nil {
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
	first, stop := clock.Until(ctx, untilKept)
	defer stop()
	kept, err := r.try(first, nil, o)
	if err != nil || kept.plan.Complete() && kept.plan.Cost == 0 && len(kept.plan.Unpriced) == 0 {
		return kept, err
	}
	touched := r.touched(kept.plan)
	if len(touched) == 0 {
		return r.settled(ctx, kept, kept, o)
	}
	second, stop := clock.Until(ctx, untilFreed)
	defer stop()
	freed, err := r.try(second, touched, o)
	if err != nil {
		return kept, err
	}
	best := kept
	if freed.better(kept) {
		if best, err = r.fewer(ctx, kept, freed, clock, o); err != nil {
			return best, err
		}
	}
	return r.settled(ctx, best, freed, o)
}

// settled is the attempt with what is on hand used first, and the bound of another that
// may change more.
func (r *rest) settled(ctx context.Context, best, by attempt, o cutplan.Options) (attempt, error) {
	bound := *by.plan
	best, err := r.onHandFirst(ctx, best, o)
	if err != nil {
		return best, err
	}
	return best.bounded(&bound)
}

// touched are the pieces of materials of which something is bought or lacks.
func (r *rest) touched(p *cutplan.Plan) map[int]bool {
	short := map[string]bool{}
	for _, b := range p.Buy {
		short[b.Stock.Material] = true
	}
	for _, u := range p.Unplaced {
		short[p.Bill[u.Blank].Part.Material] = true
	}
	touched := map[int]bool{}
	for i, p := range r.pieces {
		if short[p.Stock.Material] {
			touched[i] = true
		}
	}
	return touched
}

// fewer changes as few pieces as it finds enough for what freed reaches, one more at a
// time, each time the one that helps most.
func (r *rest) fewer(ctx context.Context, kept, freed attempt, clock cutplan.Clock, o cutplan.Options) (attempt, error) {
	base, tries := kept, 0
	for len(base.anew)+1 < len(freed.anew) {
		next := attempt{}
		for i := range r.pieces {
			if !freed.anew[i] || base.anew[i] {
				continue
			}
			if tries++; tries > mostTries || ctx.Err() != nil {
				return freed, nil
			}
			anew := maps.Clone(base.anew)
			if anew == nil {
				anew = map[int]bool{}
			}
			anew[i] = true
			limited, stop := clock.Share(ctx, 4)
			tried, err := r.try(limited, anew, o)
			stop()
			switch {
			case err != nil:
				return freed, err
			case tried.reaches(freed):
				return tried, nil
			case next.plan == nil || tried.better(next):
				next = tried
			}
		}
		base = next
	}
	return freed, nil
}
