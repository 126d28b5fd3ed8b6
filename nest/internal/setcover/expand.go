package setcover

import (
	"cmp"
	"slices"
)

// expand filters a list of options for the node at a depth, solves its relaxation, and chooses
// its branches.
func (s *Search) expand(depth int, list []option) (work int64) {
	nd := &s.stack[depth]
	nd.options, nd.branches, nd.nextBranch = nd.options[:0], 0, 0
	nd.parity = 0
	if len(nd.prices) > 0 {
		nd.parity = nd.prices[len(nd.prices)-1].cuts.parity(nd.demand)
	}
	work = s.filter(nd, list)
	kind, ok := s.scarcestKind(nd)
	if (!ok || len(nd.options) < minRelaxed) && !s.hasCallback() {
		if !ok {
			return work // no branches
		}
		return work + s.orderBranches(nd, kind)
	}
	if !s.hasCallback() {
		work += s.reusePrices(nd)
		if s.pruned(nd) {
			return work
		}
	}
	p, solving := s.solveRelaxation(nd)
	work += solving
	if s.startsCutRounds(p) {
		return work
	}
	return work + s.applyDuals(nd, p)
}

// applyDuals filters a node's options by the duals of its relaxation, and chooses its branches.
func (s *Search) applyDuals(nd *node, p *relaxation) (work int64) {
	p.saveSupport()
	p.roundDuals()
	work = s.evaluatePrices(nd)
	if s.pruned(nd) {
		return work // no branches
	}
	list := nd.options
	nd.options = nd.options[:0] // overwrites the list while it is read
	work += s.filter(nd, list)
	kind, ok := s.scarcestKind(nd)
	if !ok {
		return work
	}
	if s.randomized != nil {
		kind = s.branchingKind(nd, kind)
		defer s.clearScores(nd)
	}
	return work + s.orderBranches(nd, kind)
}

// filter keeps the options that may still be part of a solution.
func (s *Search) filter(nd *node, list []option) (work int64) {
	clear(s.coverers)
	clear(s.maxContrib)
	for _, o := range list {
		p := &s.patterns[o.pattern]
		work++
		if nd.pieces[p.Stock] == 0 {
			continue
		}
		work += int64(2 * len(p.Counts))
		if !s.affordable(nd, p) {
			continue
		}
		some := false
		for n, c := range p.Counts {
			if s.contrib[n] > 0 {
				some = true
				s.coverers[c.Kind]++
				g := &s.maxContrib[c.Kind*len(nd.pieces)+p.Stock]
				*g = max(*g, s.contrib[n])
			}
		}
		if some {
			nd.options = append(nd.options, option{o.pattern, s.losses[len(nd.prices)-1]})
		}
	}
	return work
}

// scarcestKind returns the kind that the fewest options hold; not ok if all pieces together
// cannot meet the demand of some kind.
func (s *Search) scarcestKind(nd *node) (kind int, ok bool) {
	kind = -1
	for k, n := range nd.demand {
		if n == 0 {
			continue
		}
		most := 0
		for t, g := range s.maxContrib[k*len(nd.pieces):][:len(nd.pieces)] {
			most += g * nd.pieces[t]
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
func (s *Search) orderBranches(nd *node, kind int) (work int64) {
	for i := range nd.options {
		if s.holds(nd.options[i].pattern, kind) {
			nd.options[i], nd.options[nd.branches] = nd.options[nd.branches], nd.options[i]
			nd.branches++
		}
	}
	slices.SortFunc(nd.options[:nd.branches], func(a, b option) int {
		if s.randomized != nil {
			if c := cmp.Compare(s.randomized.scores[b.pattern], s.randomized.scores[a.pattern]); c != 0 {
				return c
			}
		}
		return cmp.Or(cmp.Compare(a.loss, b.loss), cmp.Compare(a.pattern, b.pattern))
	})
	return int64(8*nd.branches + 4*len(nd.options))
}

func (s *Search) holds(pattern int32, kind int) bool {
	for _, c := range s.patterns[pattern].Counts {
		if c.Kind == kind {
			return true
		}
	}
	return false
}
