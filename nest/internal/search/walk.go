package search

import (
	"math"
	"math/rand/v2"

	"sawbill/nest/internal/halt"
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

// insertion keeps the data that recreate reuses between insertions.
type insertion struct {
	pass       int64   // number of the present recreate
	failedPass []int64 // per kind: the last pass in which no place was found
	// unplacedStep holds, per kind, the last step that began with it missing. Such a part
	// fits only in trees that the step changed.
	unplacedStep []uint64
	missingTried bool // every missing part was tried everywhere
	blinks       bool
	refusal      refusal
	nextBlink    int          // placements until the next one is skipped
	avoidCut     instance.Dir // as the first of two cuts; None avoids neither
}

// Tuned on published two-dimensional instances.
const (
	shortHistory     = 256  // at first, for easy improvements
	longHistory      = 8192 // after restarts, times the terms of the Luby sequence
	maxHistory       = 16 * longHistory
	stagnationFactor = 80 // steps without a better score, for each entry of the history, that are stagnation
	meanRuin         = 25
	meanBlink        = 64
	missingWeight    = 4
)

func abs(x int64) int64 { return max(x, -x) }

// noGoal exceeds the cost of every plan.
var noGoal = instance.Cost{Price: math.MaxInt64}

func newWalk(e *env, seed, number uint64) *walk {
	w := &walk{
		e: e, rng: rand.NewPCG(seed, number), state: newState(e), goal: noGoal, maxPieces: make([]int, len(e.stock)),
		acceptance: newLateAcceptance(shortHistory),
		insertion:  insertion{failedPass: make([]int64, len(e.kinds)), unplacedStep: make([]uint64, len(e.kinds))},
	}
	w.clearLimits()
	return w
}

// clearLimits lets plans cut all stock there is.
func (w *walk) clearLimits() {
	for s, st := range w.e.in.Stock {
		w.maxPieces[s] = st.Limit
	}
}

// construct makes a first plan: it inserts every part once, the largest first.
func (w *walk) construct() {
	w.sort(byArea)
	w.recreate(w.goal)
	w.insertion.blinks = true
}

func (w *walk) random() uint64 { return w.rng.Uint64() }

// below returns a number from 0 to n-1. The bias of the multiplication is below n / 2^32.
func (w *walk) below(n int) int { return int(w.random() >> 32 * uint64(n) >> 32) }

// blink reports whether to skip a placement, on average one in meanBlink.
func (w *walk) blink() bool {
	w.insertion.nextBlink--
	if w.insertion.nextBlink > 0 {
		return false
	}
	w.insertion.nextBlink = 1 + w.below(2*meanBlink-1)
	return true
}

// score rates the state; lower is better.
func (w *walk) score() int64 {
	return missingWeight*w.state.missingArea - w.state.value
}

// resetAcceptance starts from the present state towards the present goal.
func (w *walk) resetAcceptance() {
	w.state.begin()
	w.meetGoal()
	w.insertion.missingTried = false
	score := w.score()
	w.acceptance.reset(score, score)
	w.progress.bestScore, w.progress.stagnation = score, 0
}

// run takes n steps, or fewer if stop is on. Each complete plan that it finds
// becomes best, and its cost the goal.
func (w *walk) run(n int64, stop halt.Signal) {
	for i := int64(0); i < n; i++ {
		if i%w.e.asks == 0 && stop.On() {
			return
		}
		w.step()
		w.updateBest()
	}
}

func (w *walk) step() {
	w.steps++
	s := w.state
	s.begin()
	if w.insertion.missingTried {
		for _, k := range s.missing {
			w.insertion.unplacedStep[k] = s.step
		}
	}
	w.ruin()
	o := order(w.below(int(orderCount) + 2)) // byArea has a greater share
	if o >= orderCount {
		o = byArea
	}
	w.sort(o)
	w.recreate(w.goal)
	w.recordPatterns()
	if w.acceptance.accept(w.score(), len(s.missing) == 0) {
		w.insertion.missingTried = true
		s.commit()
	} else {
		s.undo()
	}
	if w.progress.stagnation++; w.acceptance.current < w.progress.bestScore {
		w.progress.bestScore, w.progress.stagnation = w.acceptance.current, 0
	}
}

// updateBest keeps the state if it is the best so far, and sets the next goal. While no
// complete plan is known, the one that leaves out the least area is the best.
func (w *walk) updateBest() {
	s := w.state
	switch {
	case len(s.missing) == 0:
		plan := s.plan()
		if !w.e.in.AllowsPlan(plan) {
			return // a layout is forbidden
		}
		w.best, w.goal = plan, s.cost
		w.clearLimits()
		w.resetAcceptance()
	case !w.best.Complete() && s.missingArea < w.bestMissing:
		if plan := s.plan(); w.e.in.AllowsPlan(plan) {
			w.best, w.bestMissing = plan, s.missingArea
		}
	}
}

// migrateTo moves the walk to plan p.
func (w *walk) migrateTo(p *instance.Plan) {
	s := w.state
	s.load(p)
	w.best, w.bestMissing = p, s.missingArea
	w.goal, w.insertion.blinks = p.Cost, true
	if !p.Complete() {
		w.goal = noGoal
	}
	w.clearLimits()
	w.resetAcceptance()
}

// restart starts the walk again from plan p, which may be incomplete. It then seeks plans that
// cost less than goal and cut at most most pieces of each stock for sale; nil is no limit.
func (w *walk) restart(p *instance.Plan, goal instance.Cost, most []int) {
	w.state.load(p)
	w.goal = goal
	w.clearLimits()
	for i, n := range most {
		if !w.e.in.Stock[i].OnHand {
			w.maxPieces[i] = min(n, w.maxPieces[i])
		}
	}
	w.progress.restarts++
	w.acceptance.resize(min(maxHistory, longHistory*luby.Term(w.progress.restarts)))
	w.resetAcceptance()
}

// stagnant reports whether the walk has stagnated.
func (w *walk) stagnant() bool {
	return w.progress.stagnation >= stagnationFactor*int64(len(w.acceptance.history))
}
