package search

import (
	"math"
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/harvest"
	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/luby"
)

// lane is one walk through the plans: ruin and recreate (Schrimpf et al.,
// J. Comput. Phys. 159, 2000; on guillotine trees with a shrinking goal:
// Gardeyn and Wauters, Eur. J. Oper. Res., 2022) with late acceptance (Burke
// and Bykov, Eur. J. Oper. Res. 258, 2017). Citations from memory.
type lane struct {
	e           *env
	state       *state
	rng         *rand.PCG
	goal        instance.Cost // every plan looked at is cheaper than this
	most        []int         // per stock: no plan looked at cuts more pieces
	best        *instance.Plan
	bestMissing int64 // area, while no complete plan is known

	history []int64 // scores, for late acceptance
	current int64
	lowest  int64 // score since the lane set out
	idle    int64 // steps since then
	outset  int   // how often the lane has set out anew
	turn    int
	reach   int
	stuck   []int64 // per kind: the pass of recreate in which it found no place
	pass    int64
	// homeless holds per kind the step that began with a piece of it missing:
	// what had no place before has none where nothing has changed since.
	homeless []uint64
	tried    bool // what is missing was tried everywhere
	blinks   bool
	next     int          // spots until the next one that is overlooked
	avoid    instance.Dir // of the first of two cuts; None to choose freely
	steps    int64
	gleaner  *harvest.Gleaner // nil where nothing is gathered
}

// Tuned on the published two-dimensional instances; see DEVELOPERS.md.
const (
	shortHistory  = 256  // at first, for what comes easily
	longHistory   = 8192 // later; so many times as Luby's sequence says
	mostHistory   = 16 * longHistory
	patience      = 80 // steps without a better score, for each score in the history
	meanReach     = 25
	meanBlink     = 64
	missingWeight = 4
)

func abs(x int64) int64 { return max(x, -x) }

// noGoal is undercut by every plan.
var noGoal = instance.Cost{Price: math.MaxInt64}

func newLane(e *env, seed, number uint64) *lane {
	l := &lane{
		e: e, rng: rand.NewPCG(seed, number), reach: meanReach,
		state: newState(e), goal: noGoal,
		history: make([]int64, shortHistory), stuck: make([]int64, len(e.kinds)), homeless: make([]uint64, len(e.kinds)),
		most: make([]int, len(e.stock)),
	}
	l.unlimit()
	return l
}

// unlimit lets plans cut all there is.
func (l *lane) unlimit() {
	for s, st := range l.e.in.Stock {
		l.most[s] = st.Limit
	}
}

// construct places everything once, largest first, as a first plan.
func (l *lane) construct() {
	l.sort(byArea)
	l.recreate(l.goal)
	l.blinks = true
}

func (l *lane) random() uint64 { return l.rng.Uint64() }

// below returns a number from 0 to n-1; the bias of the multiplication is
// below n / 2^32.
func (l *lane) below(n int) int { return int(l.random() >> 32 * uint64(n) >> 32) }

// blink reports whether a spot is overlooked: on average one in meanBlink.
func (l *lane) blink() bool {
	l.next--
	if l.next > 0 {
		return false
	}
	l.next = 1 + l.below(2*meanBlink-1)
	return true
}

// score of the state: less is better.
func (l *lane) score() int64 {
	return missingWeight*l.state.missingArea - l.state.value
}

// resume prepares for a walk from the present state towards the present goal.
func (l *lane) resume() {
	l.state.begin()
	l.shrink()
	l.tried = false
	l.current = l.score()
	l.lowest, l.idle = l.current, 0
	for i := range l.history {
		l.history[i] = l.current
	}
}

// walk makes n steps, or fewer when stop says so. It reports whether it found
// a complete plan cheaper than the goal; that one is l.best then and the new
// goal.
func (l *lane) walk(n int64, stop func() bool) bool {
	found := false
	for i := int64(0); i < n; i++ {
		if i&31 == 0 && stop() {
			break
		}
		l.step()
		if l.record() {
			found = true
		}
	}
	return found
}

func (l *lane) step() {
	l.steps++
	s := l.state
	s.begin()
	if l.tried {
		for _, k := range s.missing {
			l.homeless[k] = s.step
		}
	}
	l.ruin()
	o := order(l.below(int(orderCount) + 2)) // by area oftener
	if o >= orderCount {
		o = byArea
	}
	l.sort(o)
	l.recreate(l.goal)
	l.glean()
	score := l.score()
	slot := &l.history[l.turn]
	if len(s.missing) == 0 || score <= l.current || score <= *slot {
		l.current, l.tried = score, true
		s.settle()
	} else {
		s.undo()
	}
	if l.idle++; l.current < l.lowest {
		l.lowest, l.idle = l.current, 0
	}
	*slot = min(*slot, l.current)
	l.turn++
	if l.turn == len(l.history) {
		l.turn = 0
	}
}

// record keeps the plan at hand if it is the best so far, and sets the next
// goal.
func (l *lane) record() bool {
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
		l.unlimit()
		l.resume()
	}
	return true
}

// follow takes plan p over and looks for cheaper ones.
func (l *lane) follow(p *instance.Plan) {
	s := l.state
	s.load(p)
	l.best, l.bestMissing = p, s.missingArea
	l.goal, l.blinks = p.Cost, true
	if !p.Complete() {
		l.goal = noGoal
	}
	l.unlimit()
	l.resume()
}

// setOut starts a walk from plan p, which may lack parts, towards plans that are
// cheaper than goal and cut no more than most pieces of each stock; nil is all
// there is.
func (l *lane) setOut(p *instance.Plan, goal instance.Cost, most []int) {
	l.state.load(p)
	l.goal = goal
	l.unlimit()
	for i, n := range most {
		if !l.e.in.Stock[i].OnHand {
			l.most[i] = min(n, l.most[i])
		}
	}
	l.outset++
	n := min(mostHistory, longHistory*luby.Term(l.outset))
	l.history = slices.Grow(l.history[:0], n)[:n]
	l.turn = 0
	l.resume()
}

// stale reports whether the lane gets no further.
func (l *lane) stale() bool { return l.idle >= patience*int64(len(l.history)) }
