package cutplan

import (
	"slices"

	"sawbill/nest"
	"sawbill/stock"
)

// fromPlan translates the solver's answer into a plan of the job.
func fromPlan(job stock.Job, bill []Blank, problem nest.Problem, answer nest.Plan) *Plan {
	p := &Plan{Job: job, Bill: bill, Cost: stock.Money(answer.Cost), Bound: stock.Money(answer.Bound)}
	used := make([]int, len(job.Stock))
	for _, l := range answer.Layouts {
		s := job.Stock[l.Stock]
		used[l.Stock] += l.Repeat
		p.Layouts = append(p.Layouts, Layout{
			Stock:  s,
			Repeat: l.Repeat,
			Root:   fromNode(l.Root, s.Trims().NearEnd, s.Trims().NearEdge, job.Saw.Kerf),
		})
	}
	slices.SortStableFunc(p.Layouts, func(a, b Layout) int { return p.waits(a) - p.waits(b) })
	for i, s := range job.Stock {
		if used[i] > 0 && !s.OnHand {
			p.Buy = append(p.Buy, Purchase{Stock: s, Count: used[i], Cost: s.Price.Times(used[i])})
		}
	}
	for _, u := range answer.Unplaced {
		p.Unplaced = append(p.Unplaced, Unplaced{Blank: u.Blank, Count: u.Count, Reason: reason(u.Reason, bill[u.Blank])})
	}
	for _, u := range answer.Unpriced {
		p.Unpriced = append(p.Unpriced, unpriced(job, u))
	}
	p.Totals = totals(p)
	p.Cover = cover(p, nest.CoverOf(problem, answer))
	return p
}

// waits is 1 if all parts of a layout are best cut after a dry fit, so that it comes last;
// else 0.
func (p *Plan) waits(l Layout) int {
	for _, n := range l.Leaves() {
		if n.Use == Part && !p.Bill[n.Blank].Part.DryFit {
			return 0
		}
	}
	return 1
}

func unpriced(job stock.Job, u nest.Unpriced) Unpriced {
	out := Unpriced{Area: u.Area, Bound: u.Bound, OneSize: true}
	first := job.Stock[u.Stock[0]]
	for _, i := range u.Stock {
		s := job.Stock[i]
		out.Stock = append(out.Stock, s)
		out.OneSize = out.OneSize && s.Length == first.Length && s.Width == first.Width
	}
	return out
}

// reason explains why a blank is not cut, and what helps.
func reason(r nest.Reason, b Blank) string {
	switch r {
	case nest.TooLarge:
		return "larger than any " + b.Part.Material + " there is, allowances and grain counted in: make it smaller or offer larger stock"
	case nest.AgainstRules:
		return "fits, but not within the saw's stages, first_cut, board_first_cut and narrowest_rip: allow more"
	}
	return "not enough " + b.Part.Material + ": offer more of it"
}

// fromNode converts n and its children, with n at x, y.
func fromNode(n nest.Node, x, y, kerf stock.Length) Node {
	out := Node{
		X: x, Y: y,
		Length: stock.Length(n.Length), Width: stock.Length(n.Width),
		Use: Use(n.Use), Blank: n.Blank, Turned: n.Turned,
	}
	if n.Cut == nest.Crosscut {
		out.Cut = Crosscut
	}
	for _, c := range n.Children {
		child := fromNode(c, x, y, kerf)
		out.Children = append(out.Children, child)
		if out.Cut == Rip {
			y += child.Width + kerf
		} else {
			x += child.Length + kerf
		}
	}
	return out
}

// Thicknesses lists the thicknesses of the stock for each blank of the bill. It covers the
// layouts and the rough lumber, each thickness once, from the thinnest.
func (p *Plan) Thicknesses() [][]stock.Length {
	all := make([][]stock.Length, len(p.Bill))
	add := func(blank int, thickness stock.Length) {
		if at, found := slices.BinarySearch(all[blank], thickness); !found {
			all[blank] = slices.Insert(all[blank], at, thickness)
		}
	}
	for _, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == Part {
				add(n.Blank, l.Stock.Thickness)
			}
		}
	}
	for _, e := range p.Estimates {
		for _, w := range e.Blanks {
			add(w.Blank, e.Rough.Quarter.Rough())
		}
	}
	return all
}
