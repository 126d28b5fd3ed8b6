package recut

import (
	"reflect"
	"slices"

	"sawbill/nest/cutplan"
)

// join puts together what goes on and what was made anew, and checks it.
func (r *rest) join(made *cutplan.Plan, anew map[int]bool, wanted []int, leaves []leaf) (*cutplan.Plan, error) {
	p := *made
	p.Job, p.Layouts = r.job, nil
	var goesOn, isMade []int // where the blanks of either are in the bill
	p.Bill, goesOn, isMade = r.joinBills(made.Bill, wanted)
	roots := make(map[int]cutplan.Node)
	for i, piece := range r.pieces {
		if !anew[i] {
			root := moved(piece.Root, 0, 0)
			renumber(&root, goesOn)
			roots[i] = root
		}
	}
	var rest []cutplan.Layout
	for _, l := range made.Layouts {
		renumber(&l.Root, isMade)
		if at := slices.IndexFunc(leaves, func(f leaf) bool { return f.stock.Name == l.Stock.Name }); at >= 0 {
			f := leaves[at]
			roots[f.piece] = grafted(roots[f.piece], f.path, l.Root)
			continue
		}
		rest = append(rest, l)
	}
	for i, piece := range r.pieces {
		if root, on := roots[i]; on {
			p.Layouts = append(p.Layouts, cutplan.Layout{Stock: piece.Stock, Repeat: 1, Root: root})
		}
	}
	p.Unplaced = slices.Clone(made.Unplaced)
	for i := range p.Unplaced {
		p.Unplaced[i].Blank = isMade[p.Unplaced[i].Blank]
	}
	p.Estimates = slices.Clone(made.Estimates)
	for i, e := range p.Estimates {
		p.Estimates[i].Blanks = slices.Clone(e.Blanks)
		for k := range e.Blanks {
			p.Estimates[i].Blanks[k].Blank = isMade[e.Blanks[k].Blank]
		}
	}
	p.Layouts = r.layouts(append(p.Layouts, rest...))
	p.Reckon()
	return &p, p.Check()
}

// joinBills is the bill of all, and where the blanks of either bill are in it. The
// blanks that were made may be others than were wanted: rough lumber gives some parts in
// other layers.
func (r *rest) joinBills(made []cutplan.Blank, wanted []int) (bill []cutplan.Blank, goesOn, isMade []int) {
	goesOn, isMade = make([]int, len(r.bill)), make([]int, len(made))
	for _, part := range r.job.Parts {
		for i, b := range r.bill {
			if b.Part.Name != part.Name {
				continue
			}
			b.Count -= wanted[i]
			for k, m := range made {
				if m.Mark == b.Mark {
					b.Count += m.Count
					isMade[k] = len(bill)
				}
			}
			if b.Count > 0 {
				goesOn[i] = len(bill)
				bill = append(bill, b)
			}
		}
		for k, m := range made {
			if m.Part.Name == part.Name && !slices.ContainsFunc(r.bill, func(b cutplan.Blank) bool { return b.Mark == m.Mark }) {
				isMade[k] = len(bill)
				bill = append(bill, m)
			}
		}
	}
	return bill, goesOn, isMade
}

// layouts puts alike ones together, each with its stock as the job has it.
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
