package cutplan

import (
	"slices"

	"sawbill/stock"
)

// reblank replaces resawn blanks that boards on hand do not give. Their replacements come
// from rough lumber for sale, which may need another number of layers. All blanks are then
// renumbered. Marks are renewed too, unless they are written on pieces already; then only
// new blanks get new marks.
func (p *Plan) reblank(marked bool, marks int) {
	toBuy := p.Job
	toBuy.Stock = nil
	missing := make([]int, len(p.Bill))
	for _, u := range p.Unplaced {
		missing[u.Blank] += u.Count
	}
	var bill []Blank
	var added []Unplaced
	at := make([]int, len(p.Bill)) // index in the new bill
	left := 0                      // parts in the replaced blanks
	for i, b := range p.Bill {
		at[i] = len(bill)
		if missing[i] > 0 && b.Part.Resaw && givesOne(toBuy, b.Part) {
			left += missing[i] * b.Holds()
			b.Count -= missing[i]
			missing[i] = 0
		}
		if b.Count > 0 {
			bill = append(bill, b)
		}
		if i+1 < len(p.Bill) && p.Bill[i+1].Part.Name == b.Part.Name {
			continue
		}
		replaced := b.Part
		replaced.Count, left = left, 0
		for _, b := range toBuy.BlanksOf(replaced) {
			added = append(added, Unplaced{Blank: len(bill), Count: b.Count})
			bill = append(bill, Blank{Blank: b, Turnable: turnable(p.Job, b)})
		}
	}
	next := max(marks, NextMark(p.Bill))
	for i := range bill {
		switch {
		case !marked:
			bill[i].Mark = Mark(i)
		case bill[i].Mark == "":
			bill[i].Mark = Mark(next)
			next++
		}
	}
	var unplaced []Unplaced
	for _, u := range p.Unplaced {
		if missing[u.Blank] > 0 {
			u.Blank = at[u.Blank]
			unplaced = append(unplaced, u)
		}
	}
	for i := range p.Layouts {
		p.Layouts[i].Root.Renumber(at)
	}
	for i := range p.Cover.Uncovered {
		p.Cover.Uncovered[i].Blank = at[p.Cover.Uncovered[i].Blank]
	}
	unplaced = append(unplaced, added...)
	slices.SortStableFunc(unplaced, func(a, b Unplaced) int { return a.Blank - b.Blank })
	p.Bill, p.Unplaced = bill, unplaced
}

// givesOne reports whether the rough lumber of job gives p in any number of layers.
func givesOne(job stock.Job, p stock.Part) bool {
	p.Resaw = false
	_, found := job.RoughFor(p.Blank(stock.Board))
	return found
}
