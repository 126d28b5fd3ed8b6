package setcover

// cutRounds is the state of the rounds of cuts at the root.
type cutRounds struct {
	plain, tightened   *relaxation
	rounds, vainRounds int
	best               float64 // value of the relaxation
}

const (
	maxCutRounds     = 20
	maxVainCutRounds = 3 // in a row, once the gain is enough
	// The cuts must close minGapClosed of the gap to 1. Otherwise they are dropped, since they
	// slow relaxations.
	minGapClosed = 0.25
)

// SeparateCuts makes a randomized search separate cuts at the root.
func (s *Search) SeparateCuts() { s.randomized.wantsCuts = true }

// Cuts returns the cuts of the root's relaxation, for other searches over the same kinds; nil
// if there are none.
func (s *Search) Cuts() *Cuts {
	own := &s.stack[0].lpPrices.cuts
	if own.size == 0 {
		return nil
	}
	return &Cuts{own.clone()}
}

// Cuts are {0,1/2}-cuts of a search.
type Cuts struct{ zeroHalfCuts }

// startsCutRounds reports whether rounds of cuts follow the root's relaxation.
func (s *Search) startsCutRounds(p *relaxation) bool {
	if s.randomized == nil || !s.randomized.wantsCuts || s.depth > 0 {
		return false
	}
	s.randomized.wantsCuts = false
	s.randomized.rounds = &cutRounds{plain: p, tightened: p}
	return true
}

// cutRound separates once, or settles the root if cuts help no further.
func (s *Search) cutRound() (work int64) {
	r := s.randomized.rounds
	nd := r.tightened.node
	value, before := r.tightened.lp.Value(), r.plain.lp.Value()
	if value > r.best+epsilon {
		r.best, r.vainRounds = value, 0
	} else {
		r.vainRounds++
	}
	good := s.rootCuts.size > 0 || value-before >= minGapClosed*(1-before)
	if r.rounds < maxCutRounds && value < 1 && !(good && r.vainRounds > maxVainCutRounds) {
		if cuts, some := s.separate(r.tightened); some {
			r.rounds++
			r.tightened.saveSupport()
			clear(s.inLP)
			r.tightened = s.newRelaxation(nd, cuts)
			return s.generateColumns(r.tightened) + separationWork*int64(len(nd.demand)*len(nd.demand))
		}
	}
	s.randomized.rounds = nil
	if !good {
		r.tightened = r.plain
	}
	return s.applyDuals(nd, r.tightened)
}

// separationWork is the work for each pair of kinds.
const separationWork = 1 << 12

// CutWork returns the work of the rounds of cuts so far.
func (s *Search) CutWork() (work int64) { return s.randomized.cutWork }
