package search

import (
	"math"
	"math/rand/v2"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/luby"
	"sawbill/nest/internal/pool"
)

// walk is one ruin-and-recreate walk over cutting trees: Schrimpf et al., J. Comput. Phys.
// 159, 2000; on guillotine trees with a shrinking goal, Gardeyn and Wauters, Eur. J. Oper.
// Res. 301, 2022, arXiv:2508.19306. It accepts by late acceptance.
type walk struct {
	e        *env
	rng      *rand.PCG
	state    *state
	steps    int64
	recorder *pool.Recorder // nil if patterns are not recorded

	goal        instance.Cost // every state costs less
	maxPieces   []int         // per stock: no state cuts more
	best        *instance.Plan
	bestMissing int64 // area; used while no complete plan is known

	acceptance lateAcceptance
	progress   progress
	insertion  insertion
}

// progress says when a walk stagnates.
type progress struct {
	bestScore  int64 // since the last restart
	stagnation int64 // steps since then
	restarts   int
}

// insertion is what recreate remembers between insertions.
type insertion struct {
	pass       int64   // number of the present recreate
	failedPass []int64 // per kind: the last pass in which no place was found
	// unplacedStep holds, per kind, the last step that began with it missing. Such a part
	// fits only in trees that the step changed.
	unplacedStep []uint64
	missingTried bool // every missing part was tried everywhere
	blinks       bool
	nextBlink    int          // placements until the next one is skipped
	avoidCut     instance.Dir // as the first of two cuts; None avoids neither
}

// Tuned on the published two-dimensional instances; see DEVELOPERS.md.
const (
	shortHistory     = 256  // at first, for what comes easily
	longHistory      = 8192 // later; so many times as Luby's sequence says
	maxHistory       = 16 * longHistory
	stagnationFactor = 80 // steps without a better score, for each score in the history
	meanRuin         = 25
	meanBlink        = 64
	missingWeight    = 4
)

func abs(x int64) int64 { return max(x, -x) }

// noGoal is undercut by every plan.
var noGoal = instance.Cost{Price: math.MaxInt64}

func newWalk(e *env, seed, number uint64) *walk {
	l := &walk{
		e: e, rng: rand.NewPCG(seed, number), state: newState(e), goal: noGoal, maxPieces: make([]int, len(e.stock)),
		acceptance: newLateAcceptance(shortHistory),
		insertion:  insertion{failedPass: make([]int64, len(e.kinds)), unplacedStep: make([]uint64, len(e.kinds))},
	}
	l.clearLimits()
	return l
}

// clearLimits lets plans cut all there is.
func (l *walk) clearLimits() {
	for s, st := range l.e.in.Stock {
		l.maxPieces[s] = st.Limit
	}
}

// construct places everything once, largest first, as a first plan.
func (l *walk) construct() {
	l.sort(byArea)
	l.recreate(l.goal)
	l.insertion.blinks = true
}

func (l *walk) random() uint64 { return l.rng.Uint64() }

// below returns a number from 0 to n-1; the bias of the multiplication is
// below n / 2^32.
func (l *walk) below(n int) int { return int(l.random() >> 32 * uint64(n) >> 32) }

// blink reports whether a spot is overlooked: on average one in meanBlink.
func (l *walk) blink() bool {
	l.insertion.nextBlink--
	if l.insertion.nextBlink > 0 {
		return false
	}
	l.insertion.nextBlink = 1 + l.below(2*meanBlink-1)
	return true
}

// score of the state: less is better.
func (l *walk) score() int64 {
	return missingWeight*l.state.missingArea - l.state.value
}

// resetAcceptance prepares for a walk from the present state towards the present goal.
func (l *walk) resetAcceptance() {
	l.state.begin()
	l.meetGoal()
	l.insertion.missingTried = false
	score := l.score()
	l.acceptance.reset(score, score)
	l.progress.bestScore, l.progress.stagnation = score, 0
}

// run takes n steps, or fewer if stop returns true. Each complete plan that it finds
// becomes best, and its cost the goal.
func (l *walk) run(n int64, stop func() bool) {
	for i := int64(0); i < n; i++ {
		if i&31 == 0 && stop() {
			return
		}
		l.step()
		l.updateBest()
	}
}

func (l *walk) step() {
	l.steps++
	s := l.state
	s.begin()
	if l.insertion.missingTried {
		for _, k := range s.missing {
			l.insertion.unplacedStep[k] = s.step
		}
	}
	l.ruin()
	o := order(l.below(int(orderCount) + 2)) // by area oftener
	if o >= orderCount {
		o = byArea
	}
	l.sort(o)
	l.recreate(l.goal)
	l.recordPatterns()
	if l.acceptance.accept(l.score(), len(s.missing) == 0) {
		l.insertion.missingTried = true
		s.commit()
	} else {
		s.undo()
	}
	if l.progress.stagnation++; l.acceptance.current < l.progress.bestScore {
		l.progress.bestScore, l.progress.stagnation = l.acceptance.current, 0
	}
}

// updateBest keeps the state if it is the best so far, and sets the next goal. While no
// complete plan is known, the one that leaves out the least area is the best.
func (l *walk) updateBest() {
	s := l.state
	switch {
	case len(s.missing) == 0:
		l.best, l.goal = s.plan(), s.cost
		l.clearLimits()
		l.resetAcceptance()
	case !l.best.Complete() && s.missingArea < l.bestMissing:
		l.best, l.bestMissing = s.plan(), s.missingArea
	}
}

// migrateTo takes plan p over and looks for cheaper ones.
func (l *walk) migrateTo(p *instance.Plan) {
	s := l.state
	s.load(p)
	l.best, l.bestMissing = p, s.missingArea
	l.goal, l.insertion.blinks = p.Cost, true
	if !p.Complete() {
		l.goal = noGoal
	}
	l.clearLimits()
	l.resetAcceptance()
}

// restart starts a walk from plan p, which may lack parts, towards plans that are
// cheaper than goal and cut no more than most pieces of each stock; nil is all
// there is.
func (l *walk) restart(p *instance.Plan, goal instance.Cost, most []int) {
	l.state.load(p)
	l.goal = goal
	l.clearLimits()
	for i, n := range most {
		if !l.e.in.Stock[i].OnHand {
			l.maxPieces[i] = min(n, l.maxPieces[i])
		}
	}
	l.progress.restarts++
	l.acceptance.resize(min(maxHistory, longHistory*luby.Term(l.progress.restarts)))
	l.resetAcceptance()
}

// stagnant reports whether the lane gets no further.
func (l *walk) stagnant() bool {
	return l.progress.stagnation >= stagnationFactor*int64(len(l.acceptance.history))
}
