package cutplan

import "sawbill/stock"

// StepRows returns the steps of layout i as rows. Equal cuts that follow one another share
// a row: along one piece, or one in each of several equal pieces.
func (p *Plan) StepRows(i int) []Row {
	steps := p.Steps(p.Layouts[i])
	w := p.rower(i, steps)
	var rows []Row
	for _, s := range steps {
		row := w.single(s)
		last := len(rows) - 1
		switch {
		case last < 0:
		case rows[last].takes(row):
			rows[last].add(row)
			continue
		default:
			row.Stays = rows[last].stays(row)
		}
		rows = append(rows, row)
	}
	return rows
}

// takes reports whether r, a row of one layout, takes the single cut of b as well.
func (r Row) takes(b Row) bool {
	if r.Trim || !r.sameSaw(b) || !r.Off.alike(b.Off) {
		return false
	}
	first, last, next := r.Pieces[0], r.Pieces[len(r.Pieces)-1], b.Pieces[0]
	if last.goesOn(next) {
		return len(r.Pieces) == 1
	}
	return len(last.Cuts) == 1 && next.By != last.Cuts[0].Number && next.Rest == first.Rest && next.Stock == first.Stock && next.Size == first.Size &&
		next.Cuts[0].Mark == first.Cuts[0].Mark && next.Cuts[0].Left.alike(first.Cuts[0].Left)
}

// add adds the single cut of b to r.
func (r *Row) add(b Row) {
	r.Count += b.Count
	last := &r.Pieces[len(r.Pieces)-1]
	if last.goesOn(b.Pieces[0]) {
		last.extend(b.Pieces[0])
		return
	}
	r.Pieces = append(r.Pieces, b.Pieces[0])
}

// SetupRows returns the setups of g as rows, each setup with one row or several. A cut
// joins an earlier row that frees the like of it, unless the row of the cut before it in
// its piece is later. So rows can be worked from the top down.
func (p *Plan) SetupRows(g Gathered) []Row {
	w := setupRower{plan: p, makers: map[int]*rower{}}
	for _, setup := range g.Setups {
		w.made, w.same = map[cutOf]spot{}, map[likeness]int{}
		for _, c := range setup.Cuts {
			w.add(setup.Round, c)
		}
	}
	return w.rows
}

// setupRower makes the rows of setups.
type setupRower struct {
	plan   *Plan
	makers map[int]*rower // by layout
	rows   []Row
	made   map[cutOf]spot   // the cuts of this setup
	same   map[likeness]int // the last row of a kind in this setup
}

// spot is a piece of a row.
type spot struct{ row, piece int }

func (w *setupRower) add(round int, c SetupCut) {
	row := w.row(c)
	row.Round = round
	held := row.Pieces[0]
	before, here := w.made[cutOf{c.Layout, held.By}]
	at, found := w.same[row.likeness()]
	switch {
	case !found || here && at < before.row:
		found = false
	case here && at == before.row:
		of := &w.rows[at].Pieces[before.piece]
		if found = !row.Trim && of.goesOn(held); found {
			of.extend(held)
			w.rows[at].Count += row.Count
			w.made[c.id()] = before
			return
		}
	}
	if !found {
		at = len(w.rows)
		if at > 0 {
			row.Stays = w.rows[at-1].stays(row)
		}
		w.rows = append(w.rows, row)
		w.same[row.likeness()] = at
	} else {
		w.rows[at].Count += row.Count
		w.rows[at].Pieces = append(w.rows[at].Pieces, held)
	}
	w.made[c.id()] = spot{at, len(w.rows[at].Pieces) - 1}
}

// row returns c as a row of its own.
func (w *setupRower) row(c SetupCut) Row {
	l := w.plan.Layouts[c.Layout]
	maker := w.makers[c.Layout]
	if maker == nil {
		of := w.plan.rower(c.Layout, w.plan.Steps(l))
		maker, w.makers[c.Layout] = &of, &of
	}
	row := maker.single(c.Step)
	row.Count = l.Repeat
	if row.Trim && row.Off.Node == nil {
		row.Off = Freed{} // sizes differ, and the last trim cut tells them
	}
	return row
}

// likeness is what all cuts of a row have in common.
type likeness struct {
	cut          Cut
	guide        Guide
	waste        Side
	setting      stock.Length
	trim, sawOff bool
	off          Size
	use          Use // -1 if the piece is cut further in the same direction
	blank        int
	turned       bool
}

func (r Row) likeness() likeness {
	k := likeness{cut: r.Cut, guide: r.Guide, waste: r.Waste, setting: r.Setting, trim: r.Trim, sawOff: r.SawOff, off: r.Off.Size, use: -1}
	if n := r.Off.Node; n != nil {
		k.use, k.blank, k.turned = n.Use, n.Blank, n.Turned
	}
	return k
}
