package search

import "slices"

// lateAcceptance accepts a score that is no worse than the present one, or than the present
// one was some steps ago: Burke and Bykov, Eur. J. Oper. Res. 258, 2017; from memory.
// Lower scores are better.
type lateAcceptance struct {
	history []int64
	at      int // entry compared next
	current int64
}

func newLateAcceptance(length int) lateAcceptance {
	return lateAcceptance{history: make([]int64, length)}
}

// reset starts from a score, and accepts any up to threshold for one round of the history.
func (a *lateAcceptance) reset(score, threshold int64) {
	a.current = score
	for i := range a.history {
		a.history[i] = threshold
	}
}

// resize sets the length of the history; reset must follow.
func (a *lateAcceptance) resize(length int) {
	a.history = slices.Grow(a.history[:0], length)[:length]
	a.at = 0
}

// accept reports whether a score is accepted. If always is set, it is.
func (a *lateAcceptance) accept(score int64, always bool) bool {
	slot := &a.history[a.at]
	accepted := always || score <= a.current || score <= *slot
	if accepted {
		a.current = score
	}
	*slot = min(*slot, a.current)
	if a.at++; a.at == len(a.history) {
		a.at = 0
	}
	return accepted
}
