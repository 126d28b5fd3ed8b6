package setcover

import (
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/luby"
)

// randomized is how a search goes for a solution rather than for a proof that there is
// none. First to be cut is what the last programme is surest of, more or less; and
// after some programmes the search begins anew, for a wrong pattern among the first may
// take longer to be refuted than anybody waits (heavy tails, Gomes, Selman and Kautz,
// AAAI 1998; from memory). What was refuted stays so. Where patterns are made on the way,
// it begins anew after each dead end: what is left for a descent's last pieces is of little
// use to others.
type randomized struct {
	rng       *rand.PCG
	scores    []float64 // per pattern, while a state is opened
	runs      int
	restartAt int // programmes at which the next run begins
	price     PricingCallback
	// wantsCuts says that the first programme is to keep to odd sets, sharpening how
	// far that is.
	wantsCuts    bool
	rounds       *cutRounds
	cutWork      int64 // work that this took
	rootPatterns int   // patterns that the first state knows
}

// PricingCallback makes patterns of a stock that are worth more than above at values and a premium
// or nil, as many as are good, if it finds any: no kind of them oftener than it is wanted.
// It tells what that took.
type PricingCallback func(stock int, wanted []int, values []int64, premium *CutBonus, above int64) (patterns []Pattern, work int64)

// relaxationsPerRun, so many times as Luby's sequence says.
const relaxationsPerRun = 100

// Randomize makes a search that goes for a solution, by chance. More patterns are asked of
// supply, unless it is nil, wherever a programme might be bettered: they follow
// those of New in the order in which they were made.
func (s *Search) Randomize(seed uint64, callback PricingCallback) {
	s.randomized = &randomized{rng: rand.NewPCG(seed, randomStream), price: callback, rootPatterns: len(s.patterns), scores: make([]float64, len(s.patterns))}
	s.patterns = slices.Clip(s.patterns)
	s.randomized.scheduleRestart(0)
}

// randomStream keeps its random numbers apart from others'.
const randomStream = 1 << 33

// scheduleRestart says how long the next run may take.
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

// restart goes back to what is wanted in all, but for the patterns that were refuted.
func (s *Search) restart() (work int64) {
	r := s.randomized
	r.scheduleRestart(s.relaxations)
	s.depth = 0
	f := &s.stack[0]
	list := slices.Clone(f.options[f.nextBranch:])
	for ; r.rootPatterns < len(s.patterns); r.rootPatterns++ {
		list = append(list, optionOf(r.rootPatterns))
	}
	return s.expand(0, list)
}

// hasCallback reports whether there may be more patterns than are known.
func (s *Search) hasCallback() bool { return s.randomized != nil && s.randomized.price != nil }

// branchingKind is a kind of the pattern that the last programme is surest of, more or less:
// the one that the fewest patterns hold. Without such a pattern it is kind.
func (s *Search) branchingKind(f *node, kind int) int {
	r := s.randomized
	pick, most := int32(-1), 0.0
	for _, u := range f.support {
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
	for _, c := range s.patterns[pick].Counts { // a programme has none that holds nothing wanted
		if f.demand[c.Kind] > 0 && (kind < 0 || s.coverers[c.Kind] < s.coverers[kind]) {
			kind = c.Kind
		}
	}
	return kind
}

// minNoise is what chance leaves at least of how sure the programme is.
const minNoise = 0.4

// clearScores clears what the next state would take for its own.
func (s *Search) clearScores(f *node) {
	for _, u := range f.support {
		s.randomized.scores[u.pattern] = 0
	}
}
