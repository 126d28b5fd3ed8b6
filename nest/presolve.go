package nest

import (
	"errors"
	"fmt"
	"slices"

	"sawbill/nest/internal/instance"
)

// maxSide keeps the area of any piece within an int64.
const maxSide = 1 << 30

// check rejects a problem that no plan could satisfy.
func (p Problem) check() error {
	var errs []error
	bad := func(format string, args ...any) { errs = append(errs, fmt.Errorf("nest: "+format, args...)) }
	if p.Kerf < 0 || p.Stages < 0 || p.Keep.Length < 0 || p.Keep.Width < 0 {
		bad("kerf %d, stages %d and least offcut %v must not be negative", p.Kerf, p.Stages, p.Keep)
	}
	for i, s := range p.Stock {
		u := s.Usable()
		switch {
		case s.TrimLength < 0 || s.TrimWidth < 0 || u.Length <= 0 || u.Width <= 0:
			bad("stock %d: %d x %d leaves nothing inside its trim", i, s.Length, s.Width)
		case s.Price < 0 || s.Count < 0 || s.OnHand && s.Price != 0:
			bad("stock %d: price %d and count %d must not be negative, and stock on hand has no price", i, s.Price, s.Count)
		case slices.ContainsFunc(s.Defects, func(d Defect) bool {
			return d.X < 0 || d.Y < 0 || d.Length <= 0 || d.Width <= 0 || d.X > s.Length-d.Length || d.Y > s.Width-d.Width
		}):
			bad("stock %d: a defect does not lie within %d x %d, or has no size", i, s.Length, s.Width)
		case s.NarrowestRip < 0 || s.NarrowestRip > 0 && p.Keep.Width < s.NarrowestRip:
			bad("stock %d: the narrowest rip %d is more than the least offcut's width %d, so that some leftovers could not be ripped", i, s.NarrowestRip, p.Keep.Width)
		}
	}
	for i, b := range p.Blanks {
		if b.Length <= 0 || b.Width <= 0 || b.Count < 0 {
			bad("blank %d: %d x %d, %d times, cannot be cut", i, b.Length, b.Width, b.Count)
		}
		for _, f := range b.From {
			if f.Stock < 0 || f.Stock >= len(p.Stock) {
				bad("blank %d: there is no stock %d", i, f.Stock)
			}
		}
	}
	for i, g := range p.Groups {
		if err := p.checkGroup(i, g); err != nil {
			errs = append(errs, err)
		}
	}
	return errors.Join(errs...)
}

// subproblem is one instance and what postsolve needs to turn its plans back. The instance has
// no kerf and measures in units of the common divisor.
type subproblem struct {
	problem *Problem
	in      *instance.Instance
	unit    int64
	stock   []int // per stock of the instance: the problem's
	items   []item
	kinds   [][]int // per kind of the instance: the items in it
	// minimizesArea is set if nothing has a price. Areas then serve as prices, so that the area
	// bought is minimized and bounded. areaExact is set if no area was rounded.
	minimizesArea, areaExact bool
}

// presolve splits p into subproblems that share no stock, and lists the blanks that fit
// nowhere. It adds one kerf to every size, which turns a problem with kerf exactly into one
// without, and divides all sizes by their common divisor.
func presolve(p *Problem) (subproblems []*subproblem, unplaced []Unplaced, err error) {
	unit := p.Kerf
	for _, s := range p.Stock {
		u := s.Usable()
		unit = gcd(gcd(unit, u.Length+p.Kerf), u.Width+p.Kerf)
	}
	for _, b := range p.Blanks {
		unit = gcd(gcd(unit, b.Length+p.Kerf), b.Width+p.Kerf)
	}
	unit = p.refine(max(unit, 1))

	group := make([]int, len(p.Stock)) // union-find over stock that shares blanks
	for s := range group {
		group[s] = s
	}
	find := func(s int) int {
		for group[s] != s {
			s = group[s]
		}
		return s
	}
	items := p.items()
	fits := make([][]instance.Orientation, len(items))
	for i, b := range items {
		fits[i] = make([]instance.Orientation, len(p.Stock))
		first := -1
		for _, f := range b.From {
			orientations := p.itemOrientations(b, f)
			if orientations == 0 {
				continue
			}
			fits[i][f.Stock] |= orientations
			if first < 0 {
				first = f.Stock
			}
			group[find(f.Stock)] = find(first)
		}
		if first < 0 && b.Count > 0 {
			unplaced = p.leaveOut(unplaced, b, b.Count, p.unplacedReason(b.Blank))
		}
	}

	for root := range p.Stock {
		if find(root) != root {
			continue
		}
		d := &subproblem{problem: p, unit: unit, items: items, in: &instance.Instance{
			Stages:     p.Stages,
			Kerf:       p.Kerf / unit,
			KeepLength: ceilDiv(p.Keep.Length+p.Kerf, unit),
			KeepWidth:  ceilDiv(p.Keep.Width+p.Kerf, unit),
		}}
		if p.Stages == 0 {
			d.in.Stages = instance.NoLimit
		}
		for s := range p.Stock {
			if find(s) == root {
				d.addStock(s)
			}
		}
		for i := range items {
			d.addItem(i, fits[i])
		}
		if len(d.in.Kinds) == 0 {
			continue
		}
		for _, s := range d.in.Stock {
			if s.L > maxSide || s.W > maxSide {
				return nil, nil, fmt.Errorf("nest: stock %d x %d is too large in units of %d, the common divisor of all lengths", s.L, s.W, unit)
			}
		}
		d.in.Prepare()
		d.priceByArea()
		subproblems = append(subproblems, d)
	}
	return subproblems, unplaced, nil
}

// fineUnits are as many as a side should have where defects are rounded to units, outward.
const fineUnits = 256

// refine makes unit small enough that defects lose little as they are rounded.
func (p *Problem) refine(unit int64) int64 {
	for _, s := range p.Stock {
		for _, d := range s.Defects {
			if unit > min(s.Length, s.Width)/fineUnits {
				unit = gcd(gcd(unit, d.X-s.TrimLength), d.Y-s.TrimWidth)
				unit = gcd(gcd(unit, d.Length), d.Width)
			}
		}
	}
	return max(unit, -unit)
}

// defects returns the defects of stock s inside the trim, in units.
func (d *subproblem) defects(s Stock) (all []instance.Rect) {
	u := s.Usable()
	for _, f := range s.Defects {
		x, y := f.X-s.TrimLength, f.Y-s.TrimWidth
		if x+f.Length <= 0 || y+f.Width <= 0 || x >= u.Length || y >= u.Width {
			continue // in the trim
		}
		all = append(all, instance.Rect{
			X0: max(0, x) / d.unit, Y0: max(0, y) / d.unit,
			X1: ceilDiv(min(x+f.Length, u.Length), d.unit), Y1: ceilDiv(min(y+f.Width, u.Width), d.unit),
		})
	}
	return all
}

func (d *subproblem) addStock(s int) {
	st, kerf := d.problem.Stock[s], d.problem.Kerf
	u := st.Usable()
	limit := st.Count
	if limit == 0 {
		limit = instance.NoLimit
	}
	d.stock = append(d.stock, s)
	d.in.Stock = append(d.in.Stock, instance.Stock{
		L: (u.Length + kerf) / d.unit, W: (u.Width + kerf) / d.unit,
		Price: st.Price, Limit: limit, OnHand: st.OnHand,
		FirstCut:     dirOf(st.FirstCut),
		NarrowestRip: ceilDiv(st.NarrowestRip+kerf, d.unit),
		Defects:      d.defects(st),
	})
}

// addItem adds item i to the kind of its size and orientations, if it fits the subproblem's
// stock. A run is a kind of its own.
func (d *subproblem) addItem(i int, fits []instance.Orientation) {
	bl := d.items[i]
	k := instance.Kind{
		L:      (bl.Length + d.problem.Kerf) / d.unit,
		W:      (bl.Width + d.problem.Kerf) / d.unit,
		Demand: bl.Count,
		Run:    d.problem.runDir(bl),
	}
	var any instance.Orientation
	for _, s := range d.stock {
		k.Orientations = append(k.Orientations, fits[s])
		any |= fits[s]
	}
	if any == 0 || bl.Count == 0 {
		return
	}
	for n := range d.in.Kinds {
		o := &d.in.Kinds[n]
		if o.Run == instance.None && k.Run == instance.None && o.L == k.L && o.W == k.W && slices.Equal(o.Orientations, k.Orientations) {
			o.Demand += k.Demand
			d.kinds[n] = append(d.kinds[n], i)
			return
		}
	}
	d.in.Kinds = append(d.in.Kinds, k)
	d.kinds = append(d.kinds, []int{i})
}

// orientations returns the ways in which blank b can be cut from a piece of source f.
func (p *Problem) orientations(b Blank, f Source, piece Size) instance.Orientation {
	var orientations instance.Orientation
	s := p.Stock[f.Stock]
	if f.Upright && p.canCut(s, piece, b.Length, b.Width) {
		orientations |= instance.Upright
	}
	if f.Turned && p.canCut(s, piece, b.Width, b.Length) {
		orientations |= instance.Turned
	}
	return orientations
}

// canCut reports whether l x w can be cut from a whole piece of stock s, or from an offcut of
// it. Stages and first cut then start again.
func (p *Problem) canCut(s Stock, piece Size, l, w int64) bool {
	if l > piece.Length || w > piece.Width {
		return false
	}
	rip, cross := w < piece.Width, l < piece.Length
	switch {
	case rip && w < s.NarrowestRip:
		return false
	case rip && cross && p.Stages == 1:
		return false
	case rip != cross: // the only cut is the first
		return s.FirstCut == AnyCut || rip == (s.FirstCut == Rip)
	}
	return true
}

// bought counts the pieces of stock that plan buys.
func (d *subproblem) bought(plan *instance.Plan) int {
	n := 0
	for _, l := range plan.Layouts {
		if !d.in.Stock[l.Stock].OnHand {
			n++
		}
	}
	return n
}

func (p *Problem) unplacedReason(b Blank) Reason {
	for _, f := range b.From {
		u := p.Stock[f.Stock].Usable()
		if f.Upright && b.Length <= u.Length && b.Width <= u.Width ||
			f.Turned && b.Width <= u.Length && b.Length <= u.Width {
			return AgainstRules
		}
	}
	return TooLarge
}

func dirOf(c Cut) instance.Dir {
	switch c {
	case Rip:
		return instance.Rip
	case Crosscut:
		return instance.Crosscut
	}
	return instance.None
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func ceilDiv(a, b int64) int64 { return (a + b - 1) / b }
