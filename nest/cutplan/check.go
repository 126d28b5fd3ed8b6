package cutplan

import (
	"fmt"

	"sawbill/nest"
	"sawbill/stock"
)

// Check checks a plan that was read from a file or joined from layouts of other plans. Its
// bill must hold its parts, nest.Verify must accept every layout, and the stock and the
// money must add up.
func (p *Plan) Check() error {
	if err := verify(p.Job, p.Bill); err != nil {
		return err
	}
	placed, used := make([]int, len(p.Bill)), map[stock.Stock]int{}
	for i, l := range p.Layouts {
		problem, answer := p.singleLayout(l)
		for _, n := range l.Leaves() {
			if n.Use == Part {
				placed[n.Blank] += l.Repeat
			}
		}
		if l.Root.Use == Split || l.Root.Use == Part {
			if err := nest.Verify(problem, answer); err != nil {
				return fmt.Errorf("layout %d: %w", i+1, err)
			}
		}
		used[l.Stock] += l.Repeat
	}
	for _, u := range p.Unplaced {
		placed[u.Blank] += u.Count
	}
	for _, e := range p.Estimates {
		for _, w := range e.Blanks {
			placed[w.Blank] += w.Count
		}
	}
	for i, b := range p.Bill {
		if placed[i] != b.Count {
			return fmt.Errorf("blank %s is told of %d times, wanted are %d", b.Mark, placed[i], b.Count)
		}
	}
	return p.checkStock(used)
}

// singleLayout returns one layout as a problem and a plan of its own. The time depends
// only on the size of the layout.
func (p *Plan) singleLayout(l Layout) (nest.Problem, nest.Plan) {
	job := p.Job
	l.Stock.Count = l.Repeat
	job.Stock = []stock.Stock{l.Stock}
	at := map[int]int{} // index in the layout's bill, by index in the plan's bill
	var bill []Blank
	for _, n := range l.Leaves() {
		if n.Use != Part {
			continue
		}
		i, listed := at[n.Blank]
		if !listed {
			i = len(bill)
			at[n.Blank] = i
			bill = append(bill, p.Bill[n.Blank])
			bill[i].Count = 0
		}
		bill[i].Count += l.Repeat
	}
	problem := toProblem(job, bill, sourcesIn(job))
	if l.Stock.Kind == stock.Board { // any blank of the plan may free the first cut
		problem.Stock[0].FirstCut = firstCut(boardFirstCut(job, p.Bill, 0))
	}
	problem.Stock[0].OnHand, problem.Stock[0].Price = true, 0
	return problem, nest.Plan{Layouts: []nest.Layout{{Repeat: l.Repeat, Root: renumbered(toNode(l.Root), at)}}}
}

// renumbered returns n for another bill, in which blank i has index at[i].
func renumbered(n nest.Node, at map[int]int) nest.Node {
	if n.Use == nest.Part {
		n.Blank = at[n.Blank]
	}
	for i, c := range n.Children {
		n.Children[i] = renumbered(c, at)
	}
	return n
}

// toNode converts n to a node of the solver.
func toNode(n Node) nest.Node {
	out := nest.Node{Length: int64(n.Length), Width: int64(n.Width), Use: nest.Use(n.Use), Blank: n.Blank, Turned: n.Turned}
	if n.Use == Split {
		out.Cut = nest.Rip
		if n.Cut == Crosscut {
			out.Cut = nest.Crosscut
		}
	}
	for _, c := range n.Children {
		out.Children = append(out.Children, toNode(c))
	}
	return out
}

// checkStock checks that the layouts cut no more stock than there is, and that the
// purchases add up to the cost.
func (p *Plan) checkStock(used map[stock.Stock]int) error {
	if len(p.AtSeller) > 0 || p.Job.Transport.Limited() {
		return p.CheckSellerCuts()
	}
	cost := stock.Money(0)
	for _, b := range p.Buy {
		if used[b.Stock] != b.Count || b.Cost != b.Stock.Price.Times(b.Count) {
			return fmt.Errorf("%d of %q are bought for %v, %d are cut", b.Count, b.Stock.Name, b.Cost, used[b.Stock])
		}
		cost += b.Cost
	}
	for _, s := range p.Job.Stock {
		if n := used[s]; s.Count > 0 && n > s.Count {
			return fmt.Errorf("%d of %q are cut, there are %d", n, s.Name, s.Count)
		}
	}
	if cost != p.Cost {
		return fmt.Errorf("what is bought costs %v, the plan says %v", cost, p.Cost)
	}
	if p.Complete() && p.Bound > p.Cost {
		return fmt.Errorf("the plan costs %v, its bound is %v", p.Cost, p.Bound)
	}
	return nil
}

// Recompute sets Totals and Cover from the layouts. Call it on a plan joined from layouts
// of other plans.
func (p *Plan) Recompute() {
	p.Totals = totals(p)
	job, used := p.Job, map[stock.Stock]int{}
	for _, l := range p.Layouts {
		used[l.Stock] += l.Repeat
	}
	job.Stock = nil
	for _, s := range p.Job.Stock {
		if s.OnHand && used[s] < s.Count {
			s.Count -= used[s]
			job.Stock = append(job.Stock, s)
		}
	}
	var answer nest.Plan
	for _, l := range p.Layouts {
		l.Stock.Count = l.Repeat
		answer.Layouts = append(answer.Layouts, nest.Layout{Stock: len(job.Stock), Repeat: l.Repeat, Root: toNode(l.Root)})
		job.Stock = append(job.Stock, l.Stock)
	}
	p.Cover = cover(p, nest.CoverOf(toProblem(job, p.Bill, sourcesIn(job)), answer))
}
