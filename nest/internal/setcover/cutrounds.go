package setcover

// cutRounds is how the first programme comes to keep to odd sets, one separation after
// another.
type cutRounds struct {
	plain, tightened   *relaxation
	rounds, vainRounds int
	best               float64 // value so far
}

const (
	maxCutRounds     = 20
	maxVainCutRounds = 3 // once the gain is good
	// minGapClosed of what is left over is enough of a gain. Elsewhere odd sets are left out,
	// for they make programmes slow.
	minGapClosed = 0.25
)

// SeparateCuts has a search that roams look for odd sets that its first programme does not
// keep to.
func (s *Search) SeparateCuts() { s.randomized.wantsCuts = true }

// Cuts are the odd sets that the first programme keeps to, for others of the same kinds.
func (s *Search) Cuts() *Cuts {
	own := &s.stack[0].lpPrices.cuts
	if own.size == 0 {
		return nil
	}
	return &Cuts{own.clone()}
}

// Cuts of kinds that go in pairs only.
type Cuts struct{ zeroHalfCuts }

// startsCutRounds reports whether the programme is to be sharpened before all else.
func (s *Search) startsCutRounds(p *relaxation) bool {
	if s.randomized == nil || !s.randomized.wantsCuts || s.depth > 0 {
		return false
	}
	s.randomized.wantsCuts = false
	s.randomized.rounds = &cutRounds{plain: p, tightened: p}
	return true
}

// cutRound makes a separation, or settles the first state where none helps further.
func (s *Search) cutRound() (work int64) {
	r := s.randomized.rounds
	f := r.tightened.node
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
			r.tightened = s.newRelaxation(f, cuts)
			return s.generateColumns(r.tightened) + separationWork*int64(len(f.demand)*len(f.demand))
		}
	}
	s.randomized.rounds = nil
	if !good {
		r.tightened = r.plain
	}
	return s.applyDuals(f, r.tightened)
}

// separationWork for each pair of kinds.
const separationWork = 1 << 12

// CutWork is what the search has worked for that so far.
func (s *Search) CutWork() (work int64) { return s.randomized.cutWork }
