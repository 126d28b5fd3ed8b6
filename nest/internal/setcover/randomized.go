package setcover

import (
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/luby"
)

// randomized is the state of a search for a solution by randomized restarts. It branches on
// large values of the relaxation, with noise, and restarts after a number of relaxations. A
// wrong first branch may take very long to refute: Gomes, Selman and Kautz on heavy tails, AAAI
// 1998; from memory. Nogoods survive restarts.
//
// Over the same 24,000 to 37,000 patterns of a job of 80 parts, a search in fixed order found
// no plan in 40 s. Restarts found one after 0.1 to 3 s.
//
// With a pricing callback the search restarts after each dead end, since patterns priced deep
// in the tree are of little use elsewhere.
type randomized struct {
	rng       *rand.PCG
	scores    []float64 // per pattern, while a node is expanded
	runs      int
	restartAt int // relaxations at which the next run begins
	price     PricingCallback
	// wantsCuts asks for rounds of cuts at the root; rounds is their state.
	wantsCuts    bool
	rounds       *cutRounds
	cutWork      int64 // work of the rounds of cuts
	rootPatterns int   // patterns in the root's list
}

// PricingCallback returns patterns of a stock that are worth more than above, by values and a
// bonus, or nil, for cuts. They respect demand. It also returns its work.
type PricingCallback func(stock int, demand []int, values []int64, bonus *CutBonus, above int64) (patterns []Pattern, work int64)

// relaxationsPerRun is multiplied by the terms of the Luby sequence.
const relaxationsPerRun = 100

// Randomize makes the search restart at random. callback, unless nil, prices patterns at every
// node. They follow those of New in the order in which they were made.
func (s *Search) Randomize(seed uint64, callback PricingCallback) {
	s.randomized = &randomized{rng: rand.NewPCG(seed, randomStream), price: callback, rootPatterns: len(s.patterns), scores: make([]float64, len(s.patterns))}
	s.patterns = slices.Clip(s.patterns)
	s.randomized.scheduleRestart(0)
}

// randomStream separates the random numbers from others.
const randomStream = 1 << 33

// scheduleRestart sets the length of the next run.
func (r *randomized) scheduleRestart(relaxed int) {
	r.runs++
	r.restartAt = relaxed + relaxationsPerRun*luby.Term(r.runs)
}

// randomizedStep takes one step.
func (s *Search) randomizedStep() (work int64) {
	r := s.randomized
	separating := r.rounds != nil
	switch {
	case !s.opened:
		work = s.openRoot()
	case separating:
		work = s.cutRound()
	case s.relaxations >= r.restartAt:
		work = s.restart()
	default:
		work = s.branch()
	}
	if separating || r.rounds != nil {
		r.cutWork += work
	}
	return work
}

// restart returns to the root. Branches refuted there stay excluded.
func (s *Search) restart() (work int64) {
	r := s.randomized
	r.scheduleRestart(s.relaxations)
	s.depth = 0
	nd := &s.stack[0]
	list := slices.Clone(nd.options[nd.nextBranch:])
	for ; r.rootPatterns < len(s.patterns); r.rootPatterns++ {
		list = append(list, optionOf(r.rootPatterns))
	}
	return s.expand(0, list)
}

// hasCallback reports whether there may be more patterns than listed.
func (s *Search) hasCallback() bool { return s.randomized != nil && s.randomized.price != nil }

// branchingKind picks the pattern with the largest value in the relaxation, with noise. It
// returns the kind in it that the fewest options hold, or kind if there is no such pattern.
func (s *Search) branchingKind(nd *node, kind int) int {
	r := s.randomized
	pick, most := int32(-1), 0.0
	for _, u := range nd.support {
		score := u.times * (minNoise + float64((1-minNoise)*float64(r.rng.Uint64()>>40)/(1<<24)))
		r.scores[u.pattern] = score
		if score > most {
			pick, most = u.pattern, score
		}
	}
	if pick < 0 {
		return kind
	}
	kind = -1
	for _, c := range s.patterns[pick].Counts { // each column has a kind with demand left
		if nd.demand[c.Kind] > 0 && (kind < 0 || s.coverers[c.Kind] < s.coverers[kind]) {
			kind = c.Kind
		}
	}
	return kind
}

// minNoise is the least factor of the noise.
const minNoise = 0.4

// clearScores resets the scores for the next node.
func (s *Search) clearScores(nd *node) {
	for _, u := range nd.support {
		s.randomized.scores[u.pattern] = 0
	}
}
