package recut

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// The job may change while it is under way. Uncut stock is planned by the new job.
// Finished blanks that are too large are trimmed; the wood of blanks that do not fit is on
// hand.

// JobChanges lists the changes of a job and their effect on finished blanks.
type JobChanges struct {
	// Changed lists parts that are added (Was has no count), dropped (Is has none), or
	// wanted in another number or size.
	Changed []Changed
	// Trim lists parts that became smaller after Good of them were cut.
	Trim []Changed
	// Unfit lists finished blanks that cannot give their part in its new size or grain.
	Unfit []Unfit
	// Unused is the wood of unfit and surplus blanks, as stock on hand.
	Unused []stock.Stock
	// ThicknessChanges lists materials whose thickness changed. Kerf is the new kerf and
	// WasKerf the old one; both are 0 if the kerf did not change.
	ThicknessChanges []ThicknessChange
	WasKerf, Kerf    stock.Length
}

// Unfit is a kind of finished blank, Count of them, and the part as it is wanted now.
type Unfit struct {
	cutplan.Blank
	Is stock.Part
}

// ThicknessChange is the change of a material's thickness from the earlier job file.
type ThicknessChange struct {
	Material string
	Was, Is  stock.Length
}

// compareJobs compares the job before and after its change.
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
			t := ThicknessChange{was.Material, was.Thickness, is.Thickness}
			if is.Name == was.Name && is.Material == was.Material && is.Thickness != was.Thickness && !slices.Contains(r.changes.ThicknessChanges, t) {
				r.changes.ThicknessChanges = append(r.changes.ThicknessChanges, t)
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

// asPrinted returns a job before and after a change, both with the parts and the saw of the
// plan where the change leaves them alone. The two jobs are read by this program, and the
// plan may come from one that derived other sizes of the same case. Printed sizes stay.
func asPrinted(printed []stock.Part, plan, was, is stock.Job) (*stock.Job, *stock.Job) {
	derived := was.Parts
	was.Parts, is.Parts = slices.Clone(was.Parts), slices.Clone(is.Parts)
	for _, p := range printed {
		named := func(q stock.Part) bool { return q.Name == p.Name }
		i, k := slices.IndexFunc(was.Parts, named), slices.IndexFunc(is.Parts, named)
		if i < 0 {
			continue
		}
		if k >= 0 && !cutDifferently(derived[i], is.Parts[k]) {
			p.Count = is.Parts[k].Count
			is.Parts[k] = p
		}
		p.Count = derived[i].Count
		was.Parts[i] = p
	}
	if was.Saw == is.Saw {
		was.Saw, is.Saw = plan.Saw, plan.Saw
	}
	return &was, &is
}

// changedParts lists the parts that differ between two jobs, by name.
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

// needsMore reports whether the job wants more of a part, or some of its cut blanks no
// longer fit.
func (r *rest) needsMore(name string) bool {
	return slices.ContainsFunc(r.changes.Changed, func(c Changed) bool { return c.Is.Name == name && c.Is.Count > c.Was.Count }) ||
		slices.ContainsFunc(r.changes.Unfit, func(u Unfit) bool { return u.Is.Name == name })
}

// cutDifferently reports whether two parts are cut differently.
func cutDifferently(p, q stock.Part) bool {
	return p.Length != q.Length || p.Width != q.Width || p.Thickness != q.Thickness || p.Material != q.Material ||
		p.Grain != q.Grain || p.Allowance != q.Allowance || p.Resaw != q.Resaw || p.Alone != q.Alone
}

// withThickness returns s with its measured thickness. Pieces on the rack were measured
// one by one, so they stay as they are.
func (r *rest) withThickness(s stock.Stock) stock.Stock {
	for _, t := range r.changes.ThicknessChanges {
		if t.Material == s.Material && t.Was == s.Thickness && !r.onRack[s.Name] {
			s.Thickness = t.Is
			break
		}
	}
	return s
}

// sortGood separates blanks that are still good from the others, whose wood is then on
// hand.
func (r *rest) sortGood(code string) {
	var fit, surplus []progress.Made
	trim := map[string]int{}
	for _, m := range r.state.Good() {
		if r.jobUnchanged {
			fit = append(fit, m)
			continue
		}
		m.From = r.withThickness(m.From)
		q, wanted := r.now[m.Part.Name]
		if !wanted {
			surplus = append(surplus, m)
			continue
		}
		is, ok := r.fits(m, q)
		if !ok {
			r.changes.Unfit = append(r.changes.Unfit, Unfit{m.Blank, q})
			surplus = append(surplus, m)
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
	used, extra := progress.Allocate(fit, counts)
	r.good, r.goodParts = used, map[string]int{}
	for _, m := range used {
		r.goodParts[m.Part.Name] += m.Count * m.Holds()
	}
	for _, c := range r.changes.Changed {
		if c.Good = min(trim[c.Is.Name], r.goodParts[c.Is.Name]); c.Good > 0 {
			r.changes.Trim = append(r.changes.Trim, c)
		}
	}
	for _, m := range progress.Indistinct(append(surplus, extra...), func(progress.Made) bool { return true }) {
		r.changes.Unused = append(r.changes.Unused, unused(m, fmt.Sprintf("%s %s unused (%d)", code, m.Mark, len(r.changes.Unused)+1)))
	}
}

// fits returns a good blank for its part as wanted now; false if it cannot give it. The
// blank may be milled already, so its allowances do not count.
func (r *rest) fits(m progress.Made, q stock.Part) (progress.Made, bool) {
	p := m.Part
	is := m
	is.Blank = resized(m.Blank, r.sizes)
	if n := is.Gang; n > 1 { // today's blade separates the gang
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

// unused returns the wood of a surplus blank as stock: its parts, oriented as in the stock
// it came from.
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

// goesOn reports whether a piece can be cut as planned: all its wanted blanks are
// unchanged.
func (r *rest) goesOn(p progress.Piece) bool {
	if r.replanAll {
		return false
	}
	s := r.withThickness(p.Stock)
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
