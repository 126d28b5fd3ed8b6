package recut

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// Second thoughts: the job is changed while it is under way. Uncut stock is planned by the
// new job. Finished blanks are trimmed if they are too large; if they do not fit, their wood
// is on hand.

// JobChanges lists the changes of a job and their effect on finished blanks.
type JobChanges struct {
	// Changed are the parts that are added (Was has no count), dropped (Is has none), or
	// wanted in another number or size.
	Changed []Changed
	// Trim lists parts that became smaller after Good of them were cut.
	Trim []Changed
	// Unfit lists finished blanks that cannot give their part in its new size or grain.
	Unfit []Unfit
	// Unused is the wood of unfit and unwanted blanks, as stock on hand.
	Unused []stock.Stock
	// Thicker lists materials whose thickness changed. Kerf is the new kerf and WasKerf the
	// old one; both are 0 if the kerf did not change.
	Thicker       []Thicker
	WasKerf, Kerf stock.Length
}

// Unfit are blanks that are cut, Count of them, and the part as it is wanted now.
type Unfit struct {
	cutplan.Blank
	Is stock.Part
}

// Thicker is a material that measures otherwise than was said.
type Thicker struct {
	Material string
	Was, Is  stock.Length
}

// compareJobs compares the job as it was with what it is now.
func (r *rest) compareJobs(o Options, parts []stock.Part) {
	r.now, r.sizes, r.onRack = map[string]stock.Part{}, map[string]stock.Part{}, map[string]bool{}
	for _, p := range parts {
		r.now[p.Name] = p
	}
	for _, name := range o.OnRack {
		r.onRack[name] = true
	}
	if r.jobUnchanged = o.Is == nil; r.jobUnchanged {
		return
	}
	r.changes.Changed = changedParts(o.Was.Parts, o.Is.Parts)
	for i, c := range r.changes.Changed {
		r.changes.Changed[i].Good = goodOf(r.state, c.Was.Name)
	}
	for _, was := range o.Was.Stock {
		for _, is := range o.Is.Stock {
			t := Thicker{was.Material, was.Thickness, is.Thickness}
			if is.Name == was.Name && is.Material == was.Material && is.Thickness != was.Thickness && !slices.Contains(r.changes.Thicker, t) {
				r.changes.Thicker = append(r.changes.Thicker, t)
			}
		}
	}
	if o.Was.Saw.Kerf != o.Is.Saw.Kerf {
		r.changes.WasKerf, r.changes.Kerf = o.Was.Saw.Kerf, o.Is.Saw.Kerf
	}
	rules := func(j *stock.Job) any { return [...]any{j.Saw, j.Offcut, j.Shortest} }
	r.replanAll = rules(o.Was) != rules(o.Is)
	for _, p := range r.state.Parts() {
		q, wanted := r.now[p.Name]
		if wanted && (p.Length != q.Length || p.Width != q.Width || p.Thickness != q.Thickness) {
			r.sizes[p.Name] = q
		}
	}
}

// changedParts are the parts that differ between two jobs, by name.
func changedParts(was, is []stock.Part) []Changed {
	var all []Changed
	named := func(in []stock.Part, name string) stock.Part {
		if i := slices.IndexFunc(in, func(p stock.Part) bool { return p.Name == name }); i >= 0 {
			return in[i]
		}
		return stock.Part{Name: name}
	}
	for _, p := range was {
		if q := named(is, p.Name); p.Count != q.Count || cutDifferently(p, q) {
			all = append(all, Changed{Was: p, Is: q})
		}
	}
	for _, q := range is {
		if p := named(was, q.Name); p.Count == 0 {
			all = append(all, Changed{Was: p, Is: q})
		}
	}
	return all
}

// needsMore reports whether blanks of a part lack since more of it are wanted, or since what is
// cut is no longer good.
func (r *rest) needsMore(name string) bool {
	return slices.ContainsFunc(r.changes.Changed, func(c Changed) bool { return c.Is.Name == name && c.Is.Count > c.Was.Count }) ||
		slices.ContainsFunc(r.changes.Unfit, func(u Unfit) bool { return u.Is.Name == name })
}

// cutDifferently reports whether two parts are cut differently.
func cutDifferently(p, q stock.Part) bool {
	return p.Length != q.Length || p.Width != q.Width || p.Thickness != q.Thickness || p.Material != q.Material ||
		p.Grain != q.Grain || p.Allowance != q.Allowance || p.Resaw != q.Resaw || p.Alone != q.Alone
}

// measured is s as it really measures. The pieces on the rack were measured one by one.
func (r *rest) measured(s stock.Stock) stock.Stock {
	for _, t := range r.changes.Thicker {
		if t.Material == s.Material && t.Was == s.Thickness && !r.onRack[s.Name] {
			s.Thickness = t.Is
			break
		}
	}
	return s
}

// sortGood parts the good blanks into those that are good still and the others, whose wood is
// then on hand.
func (r *rest) sortGood(code string) {
	var fit, beyond []progress.Made
	trim := map[string]int{}
	for _, m := range r.state.Good() {
		if r.jobUnchanged {
			fit = append(fit, m)
			continue
		}
		m.From = r.measured(m.From)
		q, wanted := r.now[m.Part.Name]
		if !wanted {
			beyond = append(beyond, m)
			continue
		}
		is, ok := r.fits(m, q)
		if !ok {
			r.changes.Unfit = append(r.changes.Unfit, Unfit{m.Blank, q})
			beyond = append(beyond, m)
			continue
		}
		if is.Length < m.Length || is.Width < m.Width || is.Thickness < m.Thickness && m.From.Kind == stock.Board {
			trim[m.Part.Name] += m.Count * is.Holds()
		}
		fit = append(fit, is)
	}
	counts := map[string]int{}
	for name, q := range r.now {
		counts[name] = q.Count
	}
	made, more := progress.Allocate(fit, counts)
	r.good, r.goodParts = made, map[string]int{}
	for _, m := range made {
		r.goodParts[m.Part.Name] += m.Count * m.Holds()
	}
	for _, c := range r.changes.Changed {
		if c.Good = min(trim[c.Is.Name], r.goodParts[c.Is.Name]); c.Good > 0 {
			r.changes.Trim = append(r.changes.Trim, c)
		}
	}
	for _, m := range progress.Indistinct(append(beyond, more...), func(progress.Made) bool { return true }) {
		r.changes.Unused = append(r.changes.Unused, unused(m, fmt.Sprintf("%s %s unused (%d)", code, m.Mark, len(r.changes.Unused)+1)))
	}
}

// fits is a good blank as its part is wanted now; false where it cannot be made of it. It
// may have been milled, so nothing of its allowances is counted on.
func (r *rest) fits(m progress.Made, q stock.Part) (progress.Made, bool) {
	p := m.Part
	is := m
	is.Blank = resized(m.Blank, r.sizes)
	if n := is.Gang; n > 1 { // it is parted by the blade that there is now
		wider := stock.Length(n-1) * (r.changes.Kerf - r.changes.WasKerf)
		for need := is.Length + wider; need > m.Length && is.Holds() > 0; need -= q.Length {
			is.Spare++
		}
		is.Length = min(is.Length, m.Length)
	}
	upright := q.Grain == p.Grain
	if !upright {
		grain := m.From.Grain
		if m.Turned {
			grain = grain.Quarter()
		}
		upright, _ = q.Grain.Lies(grain)
	}
	thick := m.From.Thickness == q.Thickness
	if m.From.Kind == stock.Board {
		thick = q.Thickness <= p.Thickness && q.Thickness <= m.From.Thickness
	}
	return is, upright && thick && p.Material == q.Material && is.Length <= m.Length && is.Width <= m.Width && is.Holds() > 0
}

// unused is the wood of a blank that is good and that nobody wants: its parts, lying as it
// did in its stock.
func unused(m progress.Made, name string) stock.Stock {
	s := stock.Stock{Name: name, Kind: m.From.Kind, Material: m.From.Material, Thickness: m.From.Thickness, Grain: m.From.Grain,
		Length: m.Part.Length, Width: m.Part.Width, Count: m.Count * m.Holds(), OnHand: true, Next: stock.NextAny}
	if s.Kind == stock.Board {
		s.Thickness = min(s.Thickness, m.Part.Thickness)
	}
	if m.Turned {
		s.Length, s.Width = s.Width, s.Length
	}
	return s
}

// goesOn reports whether a piece can be cut as planned: every blank that is still wanted
// of it is cut so still.
func (r *rest) goesOn(p progress.Piece) bool {
	if r.replanAll {
		return false
	}
	s := r.measured(p.Stock)
	return !slices.ContainsFunc(p.Root.Leaves(), func(leaf cutplan.Node) bool {
		if leaf.Use != cutplan.Part {
			return false
		}
		b := r.state.Bill()[leaf.Blank]
		q, wanted := r.now[b.Part.Name]
		if !wanted {
			return false
		}
		is := resized(b, r.sizes)
		return is.Length != b.Length || is.Width != b.Width || b.Part.Grain != q.Grain || b.Part.Material != q.Material ||
			b.Part.Allowance != q.Allowance || b.Part.Resaw != q.Resaw || b.Part.Alone != q.Alone || !s.Serves(is.Blank)
	})
}
