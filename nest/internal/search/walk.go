package search

import (
	"math"
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/luby"
	"sawbill/nest/internal/pool"
)

// walk is one walk through the plans: ruin and recreate (Schrimpf et al.,
// J. Comput. Phys. 159, 2000; on guillotine trees with a shrinking goal:
// Gardeyn and Wauters, Eur. J. Oper. Res., 2022) with late acceptance (Burke
// and Bykov, Eur. J. Oper. Res. 258, 2017). Citations from memory.
type walk struct {
	e           *env
	state       *state
	rng         *rand.PCG
	goal        instance.Cost // every plan looked at is cheaper than this
	maxPieces   []int         // per stock: no plan looked at cuts more pieces
	best        *instance.Plan
	bestMissing int64 // area, while no complete plan is known

	history    []int64 // scores, for late acceptance
	current    int64
	bestScore  int64 // score since the lane set out
	stagnation int64 // steps since then
	restarts   int   // how often the lane has set out anew
	historyAt  int
	maxRuin    int
	failedPass []int64 // per kind: the pass of recreate in which it found no place
	pass       int64
	// unplacedStep holds per kind the step that began with a piece of it missing:
	// what had no place before has none where nothing has changed since.
	unplacedStep []uint64
	missingTried bool // what is missing was tried everywhere
	blinks       bool
	nextBlink    int          // spots until the next one that is overlooked
	avoidCut     instance.Dir // of the first of two cuts; None to choose freely
	steps        int64
	recorder     *pool.Recorder // nil where nothing is gathered
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
		e: e, rng: rand.NewPCG(seed, number), maxRuin: meanRuin,
		state: newState(e), goal: noGoal,
		history: make([]int64, shortHistory), failedPass: make([]int64, len(e.kinds)), unplacedStep: make([]uint64, len(e.kinds)),
		maxPieces: make([]int, len(e.stock)),
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
	l.blinks = true
}

func (l *walk) random() uint64 { return l.rng.Uint64() }

// below returns a number from 0 to n-1; the bias of the multiplication is
// below n / 2^32.
func (l *walk) below(n int) int { return int(l.random() >> 32 * uint64(n) >> 32) }

// blink reports whether a spot is overlooked: on average one in meanBlink.
func (l *walk) blink() bool {
	l.nextBlink--
	if l.nextBlink > 0 {
		return false
	}
	l.nextBlink = 1 + l.below(2*meanBlink-1)
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
	l.missingTried = false
	l.current = l.score()
	l.bestScore, l.stagnation = l.current, 0
	for i := range l.history {
		l.history[i] = l.current
	}
}

// run makes n steps, or fewer when stop says so. It reports whether it found
// a complete plan cheaper than the goal; that one is l.best then and the new
// goal.
func (l *walk) run(n int64, stop func() bool) bool {
	found := false
	for i := int64(0); i < n; i++ {
		if i&31 == 0 && stop() {
			break
		}
		l.step()
		if l.updateBest() {
			found = true
		}
	}
	return found
}

func (l *walk) step() {
	l.steps++
	s := l.state
	s.begin()
	if l.missingTried {
		for _, k := range s.missing {
			l.unplacedStep[k] = s.step
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
	score := l.score()
	slot := &l.history[l.historyAt]
	if len(s.missing) == 0 || score <= l.current || score <= *slot {
		l.current, l.missingTried = score, true
		s.commit()
	} else {
		s.undo()
	}
	if l.stagnation++; l.current < l.bestScore {
		l.bestScore, l.stagnation = l.current, 0
	}
	*slot = min(*slot, l.current)
	l.historyAt++
	if l.historyAt == len(l.history) {
		l.historyAt = 0
	}
}

// updateBest keeps the plan at hand if it is the best so far, and sets the next
// goal.
func (l *walk) updateBest() bool {
	s := l.state
	switch {
	case len(s.missing) > 0:
		// While no complete plan is known, the one that leaves least counts.
		if l.best.Complete() || s.missingArea >= l.bestMissing {
			return false
		}
		l.best, l.bestMissing = s.plan(), s.missingArea
	default:
		l.best, l.goal = s.plan(), s.cost
		l.clearLimits()
		l.resetAcceptance()
	}
	return true
}

// migrateTo takes plan p over and looks for cheaper ones.
func (l *walk) migrateTo(p *instance.Plan) {
	s := l.state
	s.load(p)
	l.best, l.bestMissing = p, s.missingArea
	l.goal, l.blinks = p.Cost, true
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
	l.restarts++
	n := min(maxHistory, longHistory*luby.Term(l.restarts))
	l.history = slices.Grow(l.history[:0], n)[:n]
	l.historyAt = 0
	l.resetAcceptance()
}

// stagnant reports whether the lane gets no further.
func (l *walk) stagnant() bool { return l.stagnation >= stagnationFactor*int64(len(l.history)) }
