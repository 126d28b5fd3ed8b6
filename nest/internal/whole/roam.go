package whole

import (
	"math/rand/v2"
	"slices"

	"sawbill/nest/internal/luby"
)

// roaming is how a search goes for a solution rather than for a proof that there is
// none. First to be cut is what the last programme is surest of, more or less; and
// after some programmes the search begins anew, for a wrong pattern among the first may
// take longer to be refuted than anybody waits (heavy tails, Gomes, Selman and Kautz,
// AAAI 1998; from memory). What was refuted stays so. Where patterns are made on the way,
// it begins anew after each dead end: what is left for a descent's last pieces is of little
// use to others.
type roaming struct {
	rng   *rand.PCG
	sure  []float64 // per pattern, while a state is opened
	runs  int
	until int // programmes at which the next run begins
	more  Supply
	// sharpen says that the first programme is to keep to odd sets, sharpening how
	// far that is.
	sharpen    bool
	sharpening *sharpening
	sharpened  int64 // work that this took
	told       int   // patterns that the first state knows
}

// Supply makes patterns of a stock that are worth more than above at values and a premium
// or nil, as many as are good, if it finds any: no kind of them oftener than it is wanted.
// It tells what that took.
type Supply func(stock int, wanted []int, values []int64, premium *Premium, above int64) (patterns []Pattern, work int64)

// programmesPerRun, so many times as Luby's sequence says.
const programmesPerRun = 100

// Roam makes a search that goes for a solution, by chance. More patterns are asked of
// supply, unless it is nil, wherever a programme might be bettered: they follow
// those of New in the order in which they were made.
func (s *Search) Roam(seed uint64, supply Supply) {
	s.roaming = &roaming{rng: rand.NewPCG(seed, roamingStream), more: supply, told: len(s.patterns), sure: make([]float64, len(s.patterns))}
	s.patterns = slices.Clip(s.patterns)
	s.roaming.next(0)
}

// roamingStream keeps its random numbers apart from others'.
const roamingStream = 1 << 33

// next says how long the next run may take.
func (r *roaming) next(relaxed int) {
	r.runs++
	r.until = relaxed + programmesPerRun*luby.Term(r.runs)
}

// roam takes one step.
func (s *Search) roam() (work int64) {
	r := s.roaming
	sharpens := r.sharpening != nil
	switch {
	case !s.opened:
		work = s.begin()
	case sharpens:
		work = s.sharpenOnce()
	case s.relaxed >= r.until:
		work = s.beginAnew()
	default:
		work = s.step()
	}
	if sharpens || r.sharpening != nil {
		r.sharpened += work
	}
	return work
}

// beginAnew goes back to what is wanted in all, but for the patterns that were refuted.
func (s *Search) beginAnew() (work int64) {
	r := s.roaming
	r.next(s.relaxed)
	s.depth = 0
	f := &s.frames[0]
	list := slices.Clone(f.list[f.next:])
	for ; r.told < len(s.patterns); r.told++ {
		list = append(list, optionOf(r.told))
	}
	return s.open(0, list)
}

// supplied reports whether there may be more patterns than are known.
func (s *Search) supplied() bool { return s.roaming != nil && s.roaming.more != nil }

// surest is a kind of the pattern that the last programme is surest of, more or less:
// the one that the fewest patterns hold. Without such a pattern it is kind.
func (s *Search) surest(f *frame, kind int) int {
	r := s.roaming
	pick, most := int32(-1), 0.0
	for _, u := range f.support {
		sure := u.times * (leastSure + float64((1-leastSure)*float64(r.rng.Uint64()>>40)/(1<<24)))
		r.sure[u.pattern] = sure
		if sure > most {
			pick, most = u.pattern, sure
		}
	}
	if pick < 0 {
		return kind
	}
	kind = -1
	for _, c := range s.patterns[pick].Counts { // a programme has none that holds nothing wanted
		if f.wanted[c.Kind] > 0 && (kind < 0 || s.options[c.Kind] < s.options[kind]) {
			kind = c.Kind
		}
	}
	return kind
}

// leastSure is what chance leaves at least of how sure the programme is.
const leastSure = 0.4

// forget clears what the next state would take for its own.
func (s *Search) forget(f *frame) {
	for _, u := range f.support {
		s.roaming.sure[u.pattern] = 0
	}
}
