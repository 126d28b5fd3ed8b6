package recut

import (
	"fmt"
	"reflect"
	"slices"

	"sawbill/nest/cutplan"
)

// join combines the pieces that go on with new plans, and checks the result. The last plan
// supplies the purchases and the unplaced blanks.
func (r *rest) join(replanned map[int]bool, leftovers []leftover, plans ...*cutplan.Plan) (*cutplan.Plan, error) {
	last := plans[len(plans)-1]
	p := *last
	p.Job, p.Layouts, p.Unplaced, p.Estimates = r.job, nil, nil, nil
	var plannedAt []int // index in the bill, by blank of the rest
	var madeAt [][]int  // index in the bill, by plan and blank
	p.Bill, plannedAt, madeAt = r.joinBills(r.plannedBlanks(replanned), plans)
	roots := make(map[int]cutplan.Node)
	for i, piece := range r.pieces {
		if !replanned[i] {
			root := piece.Root.Moved(0, 0)
			root.Renumber(plannedAt)
			roots[i] = root
		}
	}
	var newLayouts []cutplan.Layout
	for k, m := range plans {
		for _, l := range m.Layouts {
			l.Root = l.Root.Moved(0, 0)
			l.Root.Renumber(madeAt[k])
			if at := slices.IndexFunc(leftovers, func(f leftover) bool { return f.stock.Name == l.Stock.Name }); at >= 0 {
				f := leftovers[at]
				roots[f.piece] = grafted(roots[f.piece], f.path, l.Root)
				continue
			}
			newLayouts = append(newLayouts, l)
		}
	}
	for i, piece := range r.pieces {
		if root, on := roots[i]; on {
			p.Layouts = append(p.Layouts, cutplan.Layout{Stock: piece.Stock, Repeat: 1, Root: root})
		}
	}
	at := madeAt[len(plans)-1]
	for _, u := range last.Unplaced {
		u.Blank = at[u.Blank]
		p.Unplaced = append(p.Unplaced, u)
	}
	for _, e := range last.Estimates {
		e.Blanks = slices.Clone(e.Blanks)
		for k := range e.Blanks {
			e.Blanks[k].Blank = at[e.Blanks[k].Blank]
		}
		p.Estimates = append(p.Estimates, e)
	}
	p.Layouts = r.layouts(append(p.Layouts, newLayouts...))
	p.Recompute()
	if err := p.Check(); err != nil {
		return nil, fmt.Errorf("the rest of the job does not add up, which is a fault of this program, not of the job: %w", err)
	}
	return &p, nil
}

// plannedBlanks counts the blanks from pieces that go on as planned.
func (r *rest) plannedBlanks(replanned map[int]bool) []int {
	counts := make([]int, len(r.bill))
	for i, p := range r.pieces {
		if !replanned[i] {
			for b, n := range p.holds {
				counts[b] += n
			}
		}
	}
	return counts
}

// joinBills returns the joint bill, and the place in it of the blanks of the rest and of
// the new plans. New blanks may differ from those wanted: rough lumber gives some parts in
// other layers.
func (r *rest) joinBills(planned []int, plans []*cutplan.Plan) (bill []cutplan.Blank, plannedAt []int, madeAt [][]int) {
	plannedAt = make([]int, len(r.bill))
	at := map[string]int{} // by mark
	for _, part := range r.job.Parts {
		for i, b := range r.bill {
			if b.Part.Name != part.Name {
				continue
			}
			b.Count = planned[i]
			for k, m := range plans {
				b.Count += countIn(m, b.Mark, k == len(plans)-1)
			}
			if b.Count > 0 {
				plannedAt[i], at[b.Mark] = len(bill), len(bill)
				bill = append(bill, b)
			}
		}
		for _, m := range plans[len(plans)-1].Bill {
			if _, listed := at[m.Mark]; m.Part.Name == part.Name && !listed {
				at[m.Mark] = len(bill)
				bill = append(bill, m)
			}
		}
	}
	for _, m := range plans {
		to := make([]int, len(m.Bill))
		for i, b := range m.Bill {
			to[i] = at[b.Mark]
		}
		madeAt = append(madeAt, to)
	}
	return bill, plannedAt, madeAt
}

// countIn returns a plan's number of a blank. For the last plan it includes blanks that
// are not cut.
func countIn(p *cutplan.Plan, mark string, last bool) int {
	for i, b := range p.Bill {
		switch {
		case b.Mark != mark:
		case last:
			return b.Count
		default:
			return placed(p.Bill, p)[i]
		}
	}
	return 0
}

// layouts merges equal layouts, each with its stock as listed in the job.
func (r *rest) layouts(all []cutplan.Layout) []cutplan.Layout {
	var out []cutplan.Layout
	for _, l := range all {
		for _, s := range r.job.Stock {
			if same(s, l.Stock) {
				l.Stock = s
			}
		}
		i := slices.IndexFunc(out, func(o cutplan.Layout) bool { return o.Stock == l.Stock && reflect.DeepEqual(o.Root, l.Root) })
		if i < 0 {
			out = append(out, l)
			continue
		}
		out[i].Repeat += l.Repeat
	}
	return out
}
