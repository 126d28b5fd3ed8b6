package setcover

import (
	"cmp"
	"slices"
)

// expand filters a list of options for the node at a depth, solves its relaxation, and chooses
// its branches.
func (s *Search) expand(depth int, list []option) (work int64) {
	f := &s.stack[depth]
	f.options, f.branches, f.nextBranch = f.options[:0], 0, 0
	f.parity = 0
	if len(f.prices) > 0 {
		f.parity = f.prices[len(f.prices)-1].cuts.parity(f.demand)
	}
	work = s.filter(f, list)
	kind, ok := s.scarcestKind(f)
	if (!ok || len(f.options) < minRelaxed) && !s.hasCallback() {
		if !ok {
			return work // no branches
		}
		return work + s.orderBranches(f, kind)
	}
	if !s.hasCallback() {
		work += s.reusePrices(f)
		if s.pruned(f) {
			return work
		}
	}
	p, solving := s.solveRelaxation(f)
	work += solving
	if s.startsCutRounds(p) {
		return work
	}
	return work + s.applyDuals(f, p)
}

// applyDuals filters a node's options by the duals of its relaxation, and chooses its branches.
func (s *Search) applyDuals(f *node, p *relaxation) (work int64) {
	p.saveSupport()
	p.roundDuals()
	work = s.evaluatePrices(f)
	if s.pruned(f) {
		return work // no branches
	}
	list := f.options
	f.options = f.options[:0] // overwrites the list while it is read
	work += s.filter(f, list)
	kind, ok := s.scarcestKind(f)
	if !ok {
		return work
	}
	if s.randomized != nil {
		kind = s.branchingKind(f, kind)
		defer s.clearScores(f)
	}
	return work + s.orderBranches(f, kind)
}

// filter keeps the options that may still be part of a solution.
func (s *Search) filter(f *node, list []option) (work int64) {
	clear(s.coverers)
	clear(s.maxContrib)
	for _, o := range list {
		p := &s.patterns[o.pattern]
		work++
		if f.pieces[p.Stock] == 0 {
			continue
		}
		work += int64(2 * len(p.Counts))
		if !s.affordable(f, p) {
			continue
		}
		some := false
		for n, c := range p.Counts {
			if s.contrib[n] > 0 {
				some = true
				s.coverers[c.Kind]++
				g := &s.maxContrib[c.Kind*len(f.pieces)+p.Stock]
				*g = max(*g, s.contrib[n])
			}
		}
		if some {
			f.options = append(f.options, option{o.pattern, s.losses[len(f.prices)-1]})
		}
	}
	return work
}

// scarcestKind returns the kind that the fewest options hold; not ok if all pieces together
// cannot meet the demand of some kind.
func (s *Search) scarcestKind(f *node) (kind int, ok bool) {
	kind = -1
	for k, n := range f.demand {
		if n == 0 {
			continue
		}
		most := 0
		for t, g := range s.maxContrib[k*len(f.pieces):][:len(f.pieces)] {
			most += g * f.pieces[t]
		}
		if most < n {
			return kind, false
		}
		if kind < 0 || s.coverers[k] < s.coverers[kind] {
			kind = k
		}
	}
	return kind, true
}

// orderBranches moves the options that hold a kind to the front. A randomized search tries
// those with the highest scores first; after that the least loss decides.
func (s *Search) orderBranches(f *node, kind int) (work int64) {
	for i := range f.options {
		if s.holds(f.options[i].pattern, kind) {
			f.options[i], f.options[f.branches] = f.options[f.branches], f.options[i]
			f.branches++
		}
	}
	slices.SortFunc(f.options[:f.branches], func(a, b option) int {
		if s.randomized != nil {
			if c := cmp.Compare(s.randomized.scores[b.pattern], s.randomized.scores[a.pattern]); c != 0 {
				return c
			}
		}
		return cmp.Or(cmp.Compare(a.loss, b.loss), cmp.Compare(a.pattern, b.pattern))
	})
	return int64(8*f.branches + 4*len(f.options))
}

func (s *Search) holds(pattern int32, kind int) bool {
	for _, c := range s.patterns[pattern].Counts {
		if c.Kind == kind {
			return true
		}
	}
	return false
}
