// Package halt lets long computations end early. Time is up between two portions of work, and
// whoever works asks often enough that nobody waits.
package halt

// Signal reports whether to stop. It costs some tens of nanoseconds, and any goroutine may ask.
// Once it is on it stays on. A nil Signal is never on.
type Signal func() bool

// On reports whether to stop.
func (s Signal) On() bool { return s != nil && s() }

// Portion is the work, in comparisons or products, after which to ask again: well under a
// millisecond.
const Portion = 1 << 18
