package cutplan

import (
	"fmt"

	"sawbill/nest"
	"sawbill/stock"
)

// Check checks a plan that was not just made: read from where it was kept, or put
// together of layouts of others. Its bill must hold its parts, nest.Verify must accept
// every layout, and what is cut, bought and paid must add up.
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

// singleLayout is the problem and the plan of one layout, as if nothing else were to be cut. It
// takes as long as the layout is large, however many blanks the plan has.
func (p *Plan) singleLayout(l Layout) (nest.Problem, nest.Plan) {
	job := p.Job
	l.Stock.Count = l.Repeat
	job.Stock = []stock.Stock{l.Stock}
	at := map[int]int{} // in the bill of the layout, of blanks of the plan's
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

// renumbered is n by another bill, in which blank i is at[i].
func renumbered(n nest.Node, at map[int]int) nest.Node {
	if n.Use == nest.Part {
		n.Blank = at[n.Blank]
	}
	for i, c := range n.Children {
		n.Children[i] = renumbered(c, at)
	}
	return n
}

// toNode is the solver's node that n tells of.
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

// checkStock checks that no more is cut than there is, and that all is paid.
func (p *Plan) checkStock(used map[stock.Stock]int) error {
	if len(p.AtSeller) > 0 || p.Job.Transport.Limited() {
		return verifyCarried(p.Job, p)
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

// Recompute sets the shares and the cover of a plan that was put together of layouts of
// others.
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
