package simulate

import (
	"errors"
	"fmt"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Check saws the plan by the rows of its steps, layout by layout, and once more by the rows
// of its setups. A cut has one number in both. An error is a fault of this program.
func Check(p *cutplan.Plan) error {
	if err := apart(p); err != nil {
		return err
	}
	var made []numbered
	for i := range p.Layouts {
		of, err := steps(p, i, p.StepRows(i))
		if err != nil {
			return err
		}
		made = append(made, of)
	}
	return setups(p, p.Setups(), p.SetupRows, made)
}

// numbered is what comes off at the cuts of a layout, by their numbers.
type numbered map[int]corner

// steps saws layout i by rows.
func steps(p *cutplan.Plan, i int, rows []cutplan.Row) (numbered, error) {
	s := saw{plan: p, benches: map[int]*bench{i: newBench(p.Layouts[i])}, next: 1}
	if err := s.work(rows); err != nil {
		return nil, fmt.Errorf("the steps of layout %d, %w", i+1, err)
	}
	if err := s.benches[i].done(p, p.Layouts[i]); err != nil {
		return nil, fmt.Errorf("the steps of layout %d: %w", i+1, err)
	}
	return s.benches[i].cuts, nil
}

// setups saws all layouts by the rows of each group of setups.
func setups(p *cutplan.Plan, groups []cutplan.Gathered, rows func(cutplan.Gathered) []cutplan.Row, made []numbered) error {
	s := saw{plan: p, benches: map[int]*bench{}}
	for i, l := range p.Layouts {
		s.benches[i] = newBench(l)
	}
	for _, g := range groups {
		s.group, s.round = &g, 0
		if err := s.work(rows(g)); err != nil {
			return fmt.Errorf("the setups of %s, %w", g.Material, err)
		}
	}
	for i, l := range p.Layouts {
		if err := s.benches[i].done(p, l); err != nil {
			return fmt.Errorf("the setups, layout %d: %w", i+1, err)
		}
		for number, of := range s.benches[i].cuts {
			if made[i][number] != of {
				return fmt.Errorf("the setups, layout %d: cut %d is another one in the steps", i+1, number)
			}
		}
	}
	return nil
}

// saw follows rows.
type saw struct {
	plan    *cutplan.Plan
	benches map[int]*bench    // by layout
	group   *cutplan.Gathered // nil for the steps
	next    int               // of the steps: the number of the next cut
	round   int               // of the setups
	before  *cutplan.Row
}

func (s *saw) work(rows []cutplan.Row) error {
	s.before = nil
	for n := range rows {
		if err := s.row(&rows[n]); err != nil {
			return fmt.Errorf("row %d: %w", n+1, err)
		}
		s.before = &rows[n]
	}
	return nil
}

func (s *saw) row(r *cutplan.Row) error {
	if r.Setting <= 0 {
		return errors.New("there is nothing to set")
	}
	if r.SawOff && !r.Trim || r.Waste != cutplan.Far && !r.Trim {
		return errors.New("only trim falls off the reference side, or is sawn off by an amount")
	}
	if b := s.before; r.Stays && (b == nil || b.Guide != r.Guide || r.Guide == cutplan.Marked || b.Setting != r.Setting || b.SawOff || r.SawOff) {
		return fmt.Errorf("the %v does not stay", r.Guide)
	}
	if s.group != nil {
		if r.Round < s.round {
			return fmt.Errorf("round %d comes after round %d", r.Round, s.round)
		}
		s.round = r.Round
	}
	count := 0
	for i := range r.Pieces {
		h := &r.Pieces[i]
		if err := s.piece(r, h); err != nil {
			return err
		}
		times := 1
		if s.group != nil {
			times = s.plan.Layouts[h.Layout].Repeat
		}
		count += len(h.Cuts) * times
	}
	if count != r.Count || count == 0 {
		return fmt.Errorf("%d cuts are told, %d are made", r.Count, count)
	}
	return nil
}

// piece makes the cuts of a row in one piece.
func (s *saw) piece(r *cutplan.Row, h *cutplan.Held) error {
	b := s.benches[h.Layout]
	if b == nil {
		return fmt.Errorf("layout %d is not in work", h.Layout+1)
	}
	l := s.plan.Layouts[h.Layout]
	if g := s.group; g != nil && (g.Material != l.Stock.Material || g.Thickness != l.Stock.Thickness || g.Kind != l.Stock.Kind) {
		return fmt.Errorf("layout %d is of another material", h.Layout+1)
	}
	at := freedBy{h.By, h.Rest}
	in, there := b.lying[at]
	switch {
	case !there:
		return fmt.Errorf("layout %d: there is no %v", h.Layout+1, at)
	case in.size() != h.Size:
		return fmt.Errorf("layout %d: the %v is %v, told is %v", h.Layout+1, at, in.size(), h.Size)
	case in.named != nil && in.named.Use != cutplan.Split:
		return fmt.Errorf("layout %d: the %v is not to be cut", h.Layout+1, at)
	case h.Stock != in.stock:
		return fmt.Errorf("layout %d: the %v is the stock itself, or is not, other than told", h.Layout+1, at)
	case len(h.Cuts) == 0:
		return fmt.Errorf("layout %d: the %v is taken and not cut", h.Layout+1, at)
	}
	start := in.start(r.Cut)
	for i := range h.Cuts {
		c := &h.Cuts[i]
		if i > 0 {
			at = freedBy{h.Cuts[i-1].Number, true}
			if in, there = b.lying[at]; !there || in.named != nil {
				return fmt.Errorf("layout %d, cut %d: nothing is left to cut", h.Layout+1, c.Number)
			}
		}
		if s.group == nil {
			if c.Number != s.next {
				return fmt.Errorf("cut %d stands where cut %d belongs", c.Number, s.next)
			}
			s.next++
		}
		if err := s.cut(b, r, at, in, c, start); err != nil {
			return fmt.Errorf("layout %d, cut %d: %w", h.Layout+1, c.Number, err)
		}
	}
	return nil
}

// cut makes one cut in the piece that lies at a place. Start is where the piece began that
// the row took in hand.
func (s *saw) cut(b *bench, r *cutplan.Row, from freedBy, in piece, c *cutplan.RowCut, start stock.Length) error {
	kerf, whole := s.plan.Job.Saw.Kerf, in.extent(r.Cut)
	if _, taken := b.cuts[c.Number]; taken || c.Number < 1 {
		return errors.New("the number is taken")
	}
	if err := s.guide(r, in); err != nil {
		return err
	}
	if r.Setting >= whole {
		return fmt.Errorf("the piece is only %s", whole.Decimal())
	}
	keep := r.Setting // of the piece, opposite to the waste side
	if r.SawOff {
		keep = whole - r.Setting
		if !r.Trim || b.sawn(r.Cut, opposite(r.Waste)) {
			return errors.New("it is sawn off by an amount, though the other side is straight")
		}
	} else if r.Trim && !b.sawn(r.Cut, opposite(r.Waste)) {
		return errors.New("a raw side lies against fence or stop")
	}
	off, left := in.split(r.Cut, r.Waste, keep, kerf)
	switch {
	case r.Trim && (!in.stock || b.trimmed()):
		return errors.New("there is nothing to trim")
	case !r.Trim && !b.trimmed():
		return errors.New("the stock is not trimmed yet")
	case r.Trim && (c.Left != cutplan.Freed{} || c.Mark != 0 || c.Here != 0):
		return errors.New("trim leaves nothing and has no marks")
	}
	line := off.start(r.Cut) + off.extent(r.Cut)
	if !r.Trim && (c.Mark != line-in.origin(r.Cut) || c.Here != line-start) {
		return fmt.Errorf("the marks are at %s and %s, the line is at %s and %s", c.Mark.Decimal(), c.Here.Decimal(), (line - in.origin(r.Cut)).Decimal(), (line - start).Decimal())
	}
	b.cuts[c.Number] = corner{off.x, off.y, off.l, off.w}
	delete(b.lying, from)
	off.stock = r.Trim
	if r.Trim {
		b.trims[sideOf{r.Cut, r.Waste}] = true
	}
	if r.Trim && b.trimmed() != (c.Off.Node != nil) || !r.Trim && c.Off.Node == nil {
		return errors.New("it is not told what comes off")
	}
	if err := b.put(freedBy{c.Number, false}, off, c.Off); err != nil {
		return err
	}
	if r.Off.Size != (cutplan.Size{}) && r.Off.Size != off.size() || r.Off.Size == (cutplan.Size{}) && (!r.Trim || c.Off.Node != nil) || !same(r.Off.Node, c.Off.Node) {
		return errors.New("the row names another piece that comes off")
	}
	if r.Trim {
		return nil
	}
	if left.size() == (cutplan.Size{}) {
		if c.Left != (cutplan.Freed{}) {
			return errors.New("nothing is left")
		}
		return nil
	}
	if b.isNode(left) != (c.Left.Node != nil) {
		return errors.New("it is not told whether the rest is cut further along")
	}
	return b.put(freedBy{c.Number, true}, left, c.Left)
}

// guide checks that the piece can be held as the row says. The saw reaches so far; along a
// fence a piece is no shorter than it is wide; a long piece is not ripped across the saw.
func (s *saw) guide(r *cutplan.Row, in piece) error {
	run, across := in.l, in.w
	if r.Cut == cutplan.Crosscut {
		run, across = across, run
	}
	beyond := func(size, capacity stock.Length) bool { return capacity > 0 && size > capacity }
	switch {
	case r.Guide == cutplan.Fence && run < across:
		return errors.New("it is wider than it is long, and would turn at the fence")
	case r.Guide == cutplan.Fence && !r.SawOff && beyond(r.Setting, s.plan.Job.Saw.RipCapacity):
		return errors.New("the fence does not reach so far")
	case r.Guide == cutplan.Stop && beyond(run, s.plan.Job.Saw.CrosscutCapacity):
		return errors.New("it is wider than the saw crosscuts")
	case r.Guide == cutplan.Stop && r.Cut == cutplan.Rip && run >= across:
		return errors.New("a long piece is ripped across the saw")
	}
	return nil
}

// same reports whether two nodes are told in the same words.
func same(a, b *cutplan.Node) bool {
	if a == nil || b == nil {
		return a == b
	}
	return a.Use == b.Use && (a.Use != cutplan.Part || a.Blank == b.Blank && a.Turned == b.Turned)
}

func opposite(s cutplan.Side) cutplan.Side {
	if s == cutplan.Near {
		return cutplan.Far
	}
	return cutplan.Near
}
