package recut

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// rest is the remaining work of a job and the stock for it.
type rest struct {
	job    stock.Job // parts still wanted, stock on hand and offers
	bill   []cutplan.Blank
	marks  int           // number of marks given so far, with the bill's
	pieces []piece       // planned to give blanks
	free   []stock.Stock // stock on hand that is not planned to give a blank
	offers []stock.Stock

	state        *progress.State
	now          map[string]stock.Part // the parts of the job now, by name
	sizes        map[string]stock.Part // the parts with a new size
	onRack       map[string]bool       // names of pieces on the rack
	jobUnchanged bool                  // the job file did not change
	replanAll    bool                  // the kerf or the rules changed: no piece can go on
	changes      JobChanges
	good         []progress.Made  // good blanks
	goodParts    map[string]int   // number of parts in good blanks, by name
	saved        []progress.Made  // spoiled blanks that the new sizes make good
	replanned    []progress.Piece // pieces that cannot go on, since a blank changed
}

// piece is one piece with a plan for further cuts.
type piece struct {
	progress.Piece
	holds []int // number of each blank of the rest's bill
}

// newRest collects the remaining work of a state. The rack's stock is added, without
// pieces that the plan already has.
func newRest(s *progress.State, o Options) *rest {
	plan := s.Plan()
	r := &rest{job: plan.Job, state: s}
	parts := s.Parts()
	if o.Is != nil {
		o.Was, o.Is = asPrinted(parts, plan.Job, *o.Was, *o.Is)
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

// sortPieces separates the pieces that go on as planned from free stock. A piece goes on
// if some of its blanks are still wanted.
func (r *rest) sortPieces(s *progress.State, code string, open []int) {
	for _, p := range s.Pieces(code) {
		if r.salvage(p) {
			continue
		}
		if p.Root.Use != cutplan.Split && p.Root.Use != cutplan.Part {
			r.free = append(r.free, r.withThickness(p.Stock))
			continue
		}
		if !r.goesOn(p) {
			r.free = append(r.free, r.withThickness(p.Stock))
			r.replanned = append(r.replanned, p)
			continue
		}
		copies := p.Stock.Count
		for range copies {
			one := piece{Piece: p}
			one.Stock = r.withThickness(p.Stock)
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

// stillOpen counts the blanks that may still be cut as planned.
func (r *rest) stillOpen(standing []progress.Blank) []int {
	open := make([]int, len(standing))
	for i, b := range standing {
		open[i] = b.Open
	}
	if len(r.changes.Changed) == 0 {
		return open
	}
	for name, q := range r.now { // a blank belongs to one part only
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

// withoutSurplus returns n with at most the open number of each blank, and counts open
// down. A node without blanks becomes one piece. The last child of a parent then reaches
// the parent's edge.
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

// toEdge extends n, the last child of parent, to the parent's edge.
func toEdge(n, parent cutplan.Node) cutplan.Node {
	if parent.Cut == cutplan.Rip {
		n.Width = parent.Y + parent.Width - n.Y
	} else {
		n.Length = parent.X + parent.Length - n.X
	}
	return n
}

// count adds the blanks of n to the counts by blank.
func count(n cutplan.Node, of []int) {
	for _, leaf := range n.Leaves() {
		if leaf.Use == cutplan.Part {
			of[leaf.Blank]++
		}
	}
}

// setWanted sets the parts still wanted and the bill of their blanks. The bill has the
// blanks to be cut as planned, and new blanks for the other parts. A blank like an earlier
// one keeps its mark. New marks start at next.
func (r *rest) setWanted(parts []stock.Part, standing []progress.Blank, next int) {
	planned := make([]int, len(standing))
	for _, p := range r.pieces {
		for i, n := range p.holds {
			planned[i] += n
		}
	}
	at := make([]int, len(standing)) // index in the new bill
	for _, part := range parts {
		good, fromPlanned := r.goodParts[part.Name], 0
		first := len(r.bill)
		for i, b := range standing {
			if b.Part.Name != part.Name {
				continue
			}
			b.Blank = resized(b.Blank, r.sizes)
			fromPlanned += planned[i] * b.Holds()
			if planned[i] > 0 {
				at[i] = len(r.bill)
				b.Count = planned[i]
				r.bill = append(r.bill, b.Blank)
			}
		}
		wanted := part
		wanted.Count = max(fromPlanned, part.Count-good)
		if wanted.Count == 0 {
			continue
		}
		r.job.Parts = append(r.job.Parts, wanted)
		lacking := part
		lacking.Count = wanted.Count - fromPlanned
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

// addLacking adds blanks that no piece is planned to give. It returns the next mark.
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

// unfit reports whether cut blanks with this mark no longer give their part. New blanks
// then need another mark.
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

// merged returns the stock with equal pieces on hand merged, in the order of the first.
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

// same reports whether two stocks differ only in their counts.
func same(a, b stock.Stock) bool {
	a.Count = b.Count
	return a == b
}
