package recut

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// rest is what is left to do of a job, and of what it can be done.
type rest struct {
	job    stock.Job // parts still wanted; the stock there is, and the offers
	bill   []cutplan.Blank
	marks  int           // given so far, those of the bill too
	pieces []piece       // with blanks to come from them
	free   []stock.Stock // of which no blank is to come by the plan: on hand
	offers []stock.Stock

	state        *progress.State
	now          map[string]stock.Part // the parts of the job as it is wanted now, by name
	sizes        map[string]stock.Part // those of them that have another size
	onRack       map[string]bool       // names of pieces on the rack
	jobUnchanged bool                  // no second thoughts
	replanAll    bool                  // another kerf or other rules: no piece can go on
	changes      JobChanges
	good         []progress.Made  // blanks that are there
	goodParts    map[string]int   // parts in them, by name
	saved        []progress.Made  // spoiled blanks that are good by these sizes
	replanned    []progress.Piece // pieces that cannot go on, since a blank of theirs has another size
}

// piece is one piece that is planned to be cut further.
type piece struct {
	progress.Piece
	holds []int // blanks of the rest's bill, counted
}

// newRest gathers what is left of the plan of a state. The rack is what is on it now,
// but for pieces that the plan has or has begun.
func newRest(s *progress.State, o Options) *rest {
	plan := s.Plan()
	r := &rest{job: plan.Job, state: s}
	parts := s.Parts()
	if o.Is != nil {
		r.job, parts = *o.Is, o.Is.Parts
	}
	r.job.Stock, r.job.Parts, r.job.Kinds = nil, nil, map[string]stock.Kind{}
	for _, p := range s.Parts() {
		r.job.Kinds[p.Material] = plan.Job.KindOf(p.Material)
	}
	if o.Is != nil {
		for _, p := range parts {
			r.job.Kinds[p.Material] = o.Is.KindOf(p.Material)
		}
	}
	r.compareJobs(o, parts)
	r.sortGood(o.Code)
	standing := s.Blanks()
	r.sortPieces(s, o.Code, r.stillOpen(standing))
	r.free = append(r.free, r.changes.Unused...)
	r.offers = r.offersNow(plan, o)
	if o.Is != nil {
		r.free = append(r.free, r.newOnHand(plan, o)...)
	}
	for _, p := range o.Rack {
		if !slices.ContainsFunc(plan.Job.Stock, func(held stock.Stock) bool { return held.Name == p.Name }) {
			r.free = append(r.free, p)
		}
	}
	r.job.Stock = merged(slices.Concat(r.stockOfPieces(), r.free, r.offers))
	r.setWanted(parts, standing, max(o.Marks, cutplan.NextMark(s.Bill())))
	return r
}

// sortPieces sorts the pieces that there are into those to be cut as planned, as far as
// their blanks are still wanted, and the others.
func (r *rest) sortPieces(s *progress.State, code string, open []int) {
	for _, p := range s.Pieces(code) {
		if r.salvage(p) {
			continue
		}
		if p.Root.Use != cutplan.Split && p.Root.Use != cutplan.Part {
			r.free = append(r.free, r.measured(p.Stock))
			continue
		}
		if !r.goesOn(p) {
			r.free = append(r.free, r.measured(p.Stock))
			r.replanned = append(r.replanned, p)
			continue
		}
		copies := p.Stock.Count
		for range copies {
			one := piece{Piece: p}
			one.Stock = r.measured(p.Stock)
			one.Stock.Count = 1
			one.Root = withoutSurplus(p.Root, open, s.Plan().Job.Offcut, nil)
			one.holds = make([]int, len(open))
			count(one.Root, one.holds)
			if slices.Max(one.holds) == 0 {
				r.free = append(r.free, one.Stock)
				continue
			}
			r.pieces = append(r.pieces, one)
		}
	}
}

// stillOpen counts, of each blank, those that may still come as planned.
func (r *rest) stillOpen(standing []progress.Blank) []int {
	open := make([]int, len(standing))
	for i, b := range standing {
		open[i] = b.Open
	}
	if len(r.changes.Changed) == 0 {
		return open
	}
	for name, q := range r.now { // no blank is in two of them
		wanted := q.Count - r.goodParts[name]
		for i, b := range standing {
			if b.Part.Name == name {
				open[i] = min(open[i], max(0, wanted+b.Holds()-1)/b.Holds())
				wanted -= open[i] * b.Holds()
			}
		}
	}
	for i, b := range standing {
		if _, wanted := r.now[b.Part.Name]; !wanted {
			open[i] = 0
		}
	}
	return open
}

// withoutSurplus is n with no more of a blank than are open, which it counts down. What
// holds no blank is left in one piece; the last child of a parent then reaches its edge.
func withoutSurplus(n cutplan.Node, open []int, keep stock.Offcut, parent *cutplan.Node) cutplan.Node {
	if n.Use == cutplan.Part && open[n.Blank] > 0 {
		open[n.Blank]--
		return n
	}
	of := n
	n.Children = slices.Clone(n.Children)
	for i, c := range n.Children {
		var last *cutplan.Node
		if i == len(n.Children)-1 {
			last = &of
		}
		n.Children[i] = withoutSurplus(c, open, keep, last)
	}
	if n.Use == cutplan.Split && slices.ContainsFunc(n.Children, holdsSome) {
		return n
	}
	n = cutplan.Node{X: n.X, Y: n.Y, Length: n.Length, Width: n.Width, Use: cutplan.Waste}
	if parent != nil {
		n = toEdge(n, *parent)
	}
	if keep.Keeps(n.Length, n.Width) {
		n.Use = cutplan.Offcut
	}
	return n
}

func holdsSome(n cutplan.Node) bool {
	return n.Use == cutplan.Part || slices.ContainsFunc(n.Children, holdsSome)
}

// toEdge is n, the last child of parent, as far as the parent's edge.
func toEdge(n, parent cutplan.Node) cutplan.Node {
	if parent.Cut == cutplan.Rip {
		n.Width = parent.Y + parent.Width - n.Y
	} else {
		n.Length = parent.X + parent.Length - n.X
	}
	return n
}

// count adds the blanks of n to those of each.
func count(n cutplan.Node, of []int) {
	for _, leaf := range n.Leaves() {
		if leaf.Use == cutplan.Part {
			of[leaf.Blank]++
		}
	}
}

// setWanted sets the parts that are still wanted and the bill of their blanks: those that
// are to come as planned, and blanks for the others. A blank like one that there was keeps
// its mark; new ones are marked from next on.
func (r *rest) setWanted(parts []stock.Part, standing []progress.Blank, next int) {
	planned := make([]int, len(standing))
	for _, p := range r.pieces {
		for i, n := range p.holds {
			planned[i] += n
		}
	}
	at := make([]int, len(standing)) // in the new bill
	for _, part := range parts {
		good, coming := r.goodParts[part.Name], 0
		first := len(r.bill)
		for i, b := range standing {
			if b.Part.Name != part.Name {
				continue
			}
			b.Blank = resized(b.Blank, r.sizes)
			coming += planned[i] * b.Holds()
			if planned[i] > 0 {
				at[i] = len(r.bill)
				b.Count = planned[i]
				r.bill = append(r.bill, b.Blank)
			}
		}
		still := part
		still.Count = max(coming, part.Count-good)
		if still.Count == 0 {
			continue
		}
		r.job.Parts = append(r.job.Parts, still)
		lacking := part
		lacking.Count = still.Count - coming
		if lacking.Count > 0 {
			for _, b := range cutplan.BlanksOf(r.job, lacking) {
				next = r.addLacking(b, first, standing, next)
			}
		}
	}
	r.marks = next
	for i := range r.pieces {
		r.pieces[i].Root.Renumber(at)
		r.pieces[i].holds = make([]int, len(r.bill))
		count(r.pieces[i].Root, r.pieces[i].holds)
	}
}

// addLacking adds blanks that no piece is to give by the plan. It returns the next mark.
func (r *rest) addLacking(b cutplan.Blank, first int, standing []progress.Blank, next int) int {
	for i := first; i < len(r.bill); i++ {
		if alike(r.bill[i], b) {
			r.bill[i].Count += b.Count
			return next
		}
	}
	b.Mark = ""
	for _, was := range standing {
		taken := slices.ContainsFunc(r.bill, func(other cutplan.Blank) bool { return other.Mark == was.Mark })
		if alike(resized(was.Blank, r.sizes), b) && !taken && !r.unfit(was.Mark) {
			b.Mark = was.Mark
		}
	}
	if b.Mark == "" {
		b.Mark = cutplan.Mark(next)
		next++
	}
	r.bill = append(r.bill, b)
	return next
}

// unfit reports whether blanks of a mark are cut that cannot be what they were: the mark
// stands on these.
func (r *rest) unfit(mark string) bool {
	return slices.ContainsFunc(r.changes.Unfit, func(u Unfit) bool { return u.Mark == mark })
}

// alike reports whether two blanks are of one part and the same in hand.
func alike(a, b cutplan.Blank) bool {
	return a.Part.Name == b.Part.Name && a.Length == b.Length && a.Width == b.Width && a.Thickness == b.Thickness &&
		a.Gang == b.Gang && a.Layers == b.Layers && a.Spare == b.Spare
}

func (r *rest) stockOfPieces() []stock.Stock {
	var all []stock.Stock
	for _, p := range r.pieces {
		all = append(all, p.Stock)
	}
	return all
}

// merged is the stock with alike pieces on hand as one, in the order of the first.
func merged(all []stock.Stock) []stock.Stock {
	var out []stock.Stock
	for _, s := range all {
		i := slices.IndexFunc(out, func(o stock.Stock) bool { return s.OnHand && same(o, s) })
		if i < 0 {
			out = append(out, s)
			continue
		}
		out[i].Count += s.Count
	}
	return out
}

// same compares stock but for how many there are.
func same(a, b stock.Stock) bool {
	a.Count = b.Count
	return a == b
}
