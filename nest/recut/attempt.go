package recut

import (
	"context"
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// attempt is a plan of the rest in which some pieces are planned anew and the others
// go on.
type attempt struct {
	anew map[int]bool // pieces, by index
	plan *cutplan.Plan
}

// better reports whether a is to be preferred: what cuts more, then what costs less,
// then what changes less.
func (a attempt) better(b attempt) bool {
	if x, y := uncut(a.plan), uncut(b.plan); x != y {
		return x < y
	}
	if a.plan.Cost != b.plan.Cost {
		return a.plan.Cost < b.plan.Cost
	}
	return len(a.anew) < len(b.anew)
}

// reaches reports whether a cuts as much as b for no more.
func (a attempt) reaches(b attempt) bool {
	return uncut(a.plan) <= uncut(b.plan) && a.plan.Cost <= b.plan.Cost
}

func uncut(p *cutplan.Plan) int {
	n := 0
	for _, u := range p.Unplaced {
		n += u.Count * p.Bill[u.Blank].Holds()
	}
	return n
}

// try plans the rest with some pieces anew. The error is that of [cutplan.Make], or a
// fault of this program.
func (r *rest) try(ctx context.Context, anew map[int]bool, o cutplan.Options) (attempt, error) {
	wanted := r.wanted(anew)
	plan := &cutplan.Plan{}
	leaves := r.leaves(anew, wanted)
	if job := r.jobFor(anew, wanted, leaves); len(job.Parts) > 0 {
		for i, b := range r.bill {
			if b.Count = wanted[i]; b.Count > 0 {
				o.Bill = append(o.Bill, b)
			}
		}
		var err error
		if plan, err = cutplan.Make(ctx, job, o); err != nil {
			return attempt{}, err
		}
	}
	joined, err := r.join(plan, anew, wanted, leaves)
	if err != nil {
		return attempt{}, fmt.Errorf("the rest of the job does not add up, which is a fault of this program, not of the job: %w", err)
	}
	return attempt{anew, joined}, nil
}

// wanted counts the blanks that the pieces which go on do not give.
func (r *rest) wanted(anew map[int]bool) []int {
	wanted := make([]int, len(r.bill))
	for i, b := range r.bill {
		wanted[i] = b.Count
	}
	for i, p := range r.pieces {
		if !anew[i] {
			for b, n := range p.holds {
				wanted[b] -= n
			}
		}
	}
	return wanted
}

// jobFor is the job of what is wanted, of the stock that is free for it.
func (r *rest) jobFor(anew map[int]bool, wanted []int, leaves []leaf) stock.Job {
	job := r.job
	job.Parts = nil
	for _, p := range r.job.Parts {
		p.Count = 0
		for i, b := range r.bill {
			if b.Part.Name == p.Name {
				p.Count += wanted[i] * b.Holds()
			}
		}
		if p.Count > 0 {
			job.Parts = append(job.Parts, p)
		}
	}
	all := slices.Clone(r.free)
	for i, p := range r.pieces {
		if anew[i] {
			all = append(all, p.Stock)
		}
	}
	for _, l := range leaves {
		all = append(all, l.stock)
	}
	job.Stock = merged(slices.Concat(all, r.offers))
	job.Stock = slices.DeleteFunc(job.Stock, func(s stock.Stock) bool {
		return !slices.ContainsFunc(job.Parts, func(p stock.Part) bool { return p.Material == s.Material })
	})
	return job
}
