package nest

import (
	"slices"

	"sawbill/nest/internal/instance"
)

// Last is an earlier problem and its plan by Solve: mostly the same job before somebody changed
// it. What fits of the plan is the first plan of the next search, which improves it. What holds
// of its proof holds from the start; the rest is proven anew. If the old layouts hold every
// blank, no plan of the search costs more than they do.
type Last struct {
	Problem Problem
	Plan    Plan
}

// usable reports whether l holds a plan of its problem.
func (l *Last) usable() bool {
	return l != nil && l.Problem.check() == nil && Verify(l.Problem, l.Plan) == nil
}

// adapt makes a plan of d from the layouts of an earlier one. The parts keep their places
// between the cuts, and what was cut off there is left over, as far as there is stock.
func (d *subproblem) adapt(last *Last) *instance.Plan {
	a := adapter{subproblem: d, last: last, placed: make([]int, len(d.in.Kinds)), used: make([]int, len(d.in.Stock)), plan: &instance.Plan{}}
	a.changed = a.changedBlanks()
	for _, lay := range last.Plan.Layouts {
		for range lay.Repeat {
			a.layout(lay)
		}
	}
	for k, kd := range d.in.Kinds {
		a.plan.Missing = append(a.plan.Missing, kd.Demand-a.placed[k])
	}
	return a.plan
}

type adapter struct {
	*subproblem
	last    *Last
	plan    *instance.Plan
	placed  []int // per kind
	used    []int // per stock
	changed []int // per blank of the last problem: the kind that has taken its place, or -1
}

// changedBlanks finds the kind of a blank that is still in its place in the list, but has
// another size, which the last problem did not know.
func (a *adapter) changedBlanks() []int {
	changed := make([]int, len(a.last.Problem.Blanks))
	for b := range changed {
		changed[b] = -1
		if b >= len(a.problem.Blanks) {
			continue
		}
		now := a.problem.Blanks[b]
		if slices.ContainsFunc(a.last.Problem.Blanks, func(o Blank) bool { return o.Length == now.Length && o.Width == now.Width }) {
			continue
		}
		changed[b] = slices.IndexFunc(a.kinds, func(of []int) bool {
			return slices.ContainsFunc(of, func(i int) bool { return a.items[i].group < 0 && a.items[i].blank == b })
		})
	}
	return changed
}

// layout adds a layout, unless no part of it is left or there is no such stock.
func (a *adapter) layout(lay Layout) {
	s := a.findStock(lay.Stock)
	if s < 0 {
		return
	}
	st := a.in.Stock[s]
	for _, resized := range []bool{true, false} { // with the parts that changed, or without
		counts := slices.Clone(a.placed)
		p := a.piece(s, lay.Root, resized, counts)
		if slices.Equal(counts, a.placed) {
			return
		}
		if p, ok := instance.Fit(p, st.L, st.W); ok && a.in.Allows(s, p) {
			a.in.AddLayout(a.plan, s, p, a.placed)
			a.used[s]++
			return
		}
	}
}

// findStock returns the stock of d that is as large as a stock of the last problem and has
// pieces left, or -1.
func (a *adapter) findStock(old int) int {
	want, kerf := a.last.Problem.Stock[old], a.problem.Kerf
	best := -1
	for s, st := range a.in.Stock {
		if u := want.Usable(); st.L*a.unit != u.Length+kerf || st.W*a.unit != u.Width+kerf || a.used[s] >= st.Limit {
			continue
		}
		if best < 0 || st.OnHand == want.OnHand && st.Price == want.Price {
			best = s
		}
	}
	return best
}

// piece returns node n with parts of their present sizes; see [instance.Fit]. counts are of the
// parts placed, and are updated.
func (a *adapter) piece(s int, n Node, resized bool, counts []int) instance.Piece {
	p := instance.Piece{Kind: instance.Leftover}
	switch n.Use {
	case Split:
		p.Dir = dirOf(n.Cut)
		for i := 0; i < len(n.Children); i++ {
			if run, members, ok := a.run(s, n, i, counts); ok {
				p.Children = append(p.Children, run)
				i += members - 1
				continue
			}
			p.Children = append(p.Children, a.piece(s, n.Children[i], resized, counts))
		}
	case Part:
		k := a.kindOf(s, n, counts)
		if k < 0 && resized {
			k = a.changed[n.Blank]
		}
		if k < 0 {
			break
		}
		kd := &a.in.Kinds[k]
		as := instance.Upright
		if n.Turned {
			as = instance.Turned
		}
		if counts[k] == kd.Demand || kd.Orientations[s]&as == 0 {
			break
		}
		counts[k]++
		p = instance.Piece{L: kd.L, W: kd.W, Kind: k, Turned: n.Turned}
		if n.Turned {
			p.L, p.W = p.W, p.L
		}
	}
	return p
}

// kindOf returns the kind of the size of part n with demand left, or -1.
func (a *adapter) kindOf(s int, n Node, counts []int) int {
	b := a.last.Problem.Blanks[n.Blank]
	as := instance.Upright
	if n.Turned {
		as = instance.Turned
	}
	for k, kd := range a.in.Kinds {
		if kd.Run == instance.None && kd.L*a.unit == b.Length+a.problem.Kerf && kd.W*a.unit == b.Width+a.problem.Kerf && counts[k] < kd.Demand && kd.Orientations[s]&as != 0 {
			return k
		}
	}
	return -1
}

// run returns the run that begins with child i of a split, and how many children it has; not ok
// unless there is still such a run to cut.
func (a *adapter) run(s int, n Node, i int, counts []int) (p instance.Piece, members int, ok bool) {
	turned := n.Children[i].Turned
	as := instance.Upright
	if turned {
		as = instance.Turned
	}
	for k, kd := range a.in.Kinds {
		if kd.Run == instance.None || counts[k] == kd.Demand || kd.Orientations[s]&as == 0 || kd.RunIn(turned) != dirOf(n.Cut) {
			continue
		}
		blanks := a.problem.Groups[a.items[a.kinds[k][0]].group].Blanks
		if i+len(blanks) > len(n.Children) {
			continue
		}
		same := true
		for m, b := range blanks {
			c := n.Children[i+m]
			same = same && c.Use == Part && c.Turned == turned
			if same {
				old, now := a.last.Problem.Blanks[c.Blank], a.problem.Blanks[b]
				same = old.Length == now.Length && old.Width == now.Width
			}
		}
		if !same {
			continue
		}
		counts[k]++
		p = instance.Piece{L: kd.L, W: kd.W, Kind: k, Turned: turned}
		if turned {
			p.L, p.W = p.W, p.L
		}
		return p, len(blanks), true
	}
	return p, 0, false
}
