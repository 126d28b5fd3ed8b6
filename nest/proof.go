package nest

import (
	"reflect"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
)

// Proof is what Solve has proven about a problem on the way to its bound. Part of it holds for
// other problems too; see [Last]. It has no exported contents, so that only Solve makes one.
type Proof struct{ groups []provenGroup }

// Equal reports whether two proofs say the same.
func (p *Proof) Equal(o *Proof) bool { return reflect.DeepEqual(p, o) }

// provenGroup is the proof for blanks that share stock. Sizes are the problem's, with one kerf
// more.
type provenGroup struct {
	kerf         int64
	stages       int
	stock        []provenStock
	kinds        []provenKind
	inequalities []lowerbound.Inequality // by values of the kinds
	excluded     [][]int                 // no plan has at most so many pieces of each stock
}

type provenStock struct {
	l, w         int64
	firstCut     Cut
	narrowestRip int64
}

type provenKind struct {
	l, w         int64
	demand       int
	orientations []instance.Orientation // per stock
}

// prove records what b proves.
func (d *subproblem) prove(b *lowerbound.Bound) provenGroup {
	g := provenGroup{kerf: d.problem.Kerf, stages: d.in.Stages}
	g.inequalities, g.excluded = b.Proof()
	for s, st := range d.in.Stock {
		own := d.problem.Stock[d.stock[s]]
		g.stock = append(g.stock, provenStock{st.L * d.unit, st.W * d.unit, own.FirstCut, own.NarrowestRip})
	}
	for _, kd := range d.in.Kinds {
		g.kinds = append(g.kinds, provenKind{kd.L * d.unit, kd.W * d.unit, kd.Demand, kd.Orientations})
	}
	return g
}

// carry adds to b what of g holds for d.
//
// Let v be the values of an inequality, and V(s) its coefficient: no pattern of stock s, in which
// each kind counts at most as often as it was demanded then, is worth more. That is still so if
// stock s has the same size and rules at least as strict, and no kind lies in more ways. A
// pattern without some of its parts is a pattern, and so is one with parts cut down. So kinds that
// are new may be worth nothing, a larger part what the old one was, and of a demand that has
// risen only the old part counts. Stock that is new may be worth all.
//
// If every demand is at least what it was, a plan within counts would have been one then.
func (d *subproblem) carry(g provenGroup, b *lowerbound.Bound) {
	if g.kerf != d.problem.Kerf || d.in.Stages > g.stages {
		return
	}
	source, same := d.matchStock(g)
	matched := d.matchKinds(g, source)
	for _, old := range g.inequalities {
		c := lowerbound.Inequality{
			Coef: make([]int64, len(source)), Values: make([]int64, len(matched)), Counted: make([]int, len(matched)),
		}
		for k, j := range matched {
			if j >= 0 {
				c.Values[k], c.Counted[k] = old.Values[j], min(d.in.Kinds[k].Demand, old.Counted[j])
				c.RHS += c.Values[k] * int64(c.Counted[k])
			}
		}
		for s, t := range source {
			if c.Coef[s] = c.RHS; t >= 0 {
				c.Coef[s] = min(c.RHS, old.Coef[t])
			}
		}
		if c.RHS > 0 {
			b.Add(c)
		}
	}
	met := make([]int, len(g.kinds))
	for k, j := range matched {
		if j >= 0 {
			met[j] = d.in.Kinds[k].Demand
		}
	}
	for j, kd := range g.kinds {
		if met[j] < kd.demand {
			return
		}
	}
	for _, limits := range g.excluded {
		counts := make([]int, len(same))
		for s, t := range same {
			if t >= 0 {
				counts[s] = limits[t]
			}
		}
		b.Exclude(counts)
	}
}

// matchStock returns, for each stock, a stock of g with its size and with rules no stricter, or
// -1: in source the same one perhaps for several, in same each once.
func (d *subproblem) matchStock(g provenGroup) (source, same []int) {
	used := make([]bool, len(g.stock))
	for s, st := range d.in.Stock {
		own := d.problem.Stock[d.stock[s]]
		source, same = append(source, -1), append(same, -1)
		for t, old := range g.stock {
			if old.l != st.L*d.unit || old.w != st.W*d.unit || old.narrowestRip > own.NarrowestRip ||
				old.firstCut != AnyCut && old.firstCut != own.FirstCut {
				continue
			}
			if source[s] < 0 {
				source[s] = t
			}
			if !used[t] {
				source[s], same[s], used[t] = t, t, true
				break
			}
		}
	}
	return source, same
}

// matchKinds returns, for each kind, the kind of g with its size, each once. Where none is left,
// it is one that can be cut from a part of the kind, if that may take two cuts more; else -1.
func (d *subproblem) matchKinds(g provenGroup, source []int) (matched []int) {
	used := make([]bool, len(g.kinds))
	take := func(fits func(k, j int) bool) {
		for k, kd := range d.in.Kinds {
			for j, old := range g.kinds {
				if matched[k] < 0 && !used[j] && fits(k, j) && liesNoFreer(kd.Orientations, old.orientations, source) {
					used[j], matched[k] = true, j
				}
			}
		}
	}
	l := func(k int) int64 { return d.in.Kinds[k].L * d.unit }
	w := func(k int) int64 { return d.in.Kinds[k].W * d.unit }
	matched = slices.Repeat([]int{-1}, len(d.in.Kinds))
	take(func(k, j int) bool { return g.kinds[j].l == l(k) && g.kinds[j].w == w(k) })
	if g.cutsAreFree() {
		take(func(k, j int) bool { return g.kinds[j].l <= l(k) && g.kinds[j].w <= w(k) })
	}
	return matched
}

// cutsAreFree reports whether neither stages nor first cuts limited the cuts.
func (g provenGroup) cutsAreFree() bool {
	return g.stages == instance.NoLimit && !slices.ContainsFunc(g.stock, func(s provenStock) bool { return s.firstCut != AnyCut })
}

// liesNoFreer reports whether a kind lies in no way, in stock that has a source, in which the
// old kind did not lie there.
func liesNoFreer(now, old []instance.Orientation, source []int) bool {
	for s, t := range source {
		if t >= 0 && now[s]&^old[t] != 0 {
			return false
		}
	}
	return true
}
