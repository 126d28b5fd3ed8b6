package whole

// sharpening is how the first programme comes to keep to odd sets, one separation after
// another.
type sharpening struct {
	plain, sharp *programme
	rounds, vain int
	best         float64 // value so far
}

const (
	mostSeparations     = 20
	mostVainSeparations = 3 // once the gain is good
	// goodPart of what is left over is enough of a gain. Elsewhere odd sets are left out,
	// for they make programmes slow.
	goodPart = 0.25
)

// Sharpen has a search that roams look for odd sets that its first programme does not
// keep to.
func (s *Search) Sharpen() { s.roaming.sharpen = true }

// Sets are the odd sets that the first programme keeps to, for others of the same kinds.
func (s *Search) Sets() *Sets {
	own := &s.frames[0].own.sets
	if own.count == 0 {
		return nil
	}
	return &Sets{own.clone()}
}

// Sets of kinds that go in pairs only.
type Sets struct{ oddSets }

// begins reports whether the programme is to be sharpened before all else.
func (s *Search) begins(p *programme) bool {
	if s.roaming == nil || !s.roaming.sharpen || s.depth > 0 {
		return false
	}
	s.roaming.sharpen = false
	s.roaming.sharpening = &sharpening{plain: p, sharp: p}
	return true
}

// sharpenOnce makes a separation, or settles the first state where none helps further.
func (s *Search) sharpenOnce() (work int64) {
	r := s.roaming.sharpening
	f := r.sharp.frame
	value, before := r.sharp.lp.Value(), r.plain.lp.Value()
	if value > r.best+trifling {
		r.best, r.vain = value, 0
	} else {
		r.vain++
	}
	good := s.given.count > 0 || value-before >= goodPart*(1-before)
	if r.rounds < mostSeparations && value < 1 && !(good && r.vain > mostVainSeparations) {
		if sets, some := s.separate(r.sharp); some {
			r.rounds++
			r.sharp.note()
			clear(s.column)
			r.sharp = s.programme(f, sets)
			return s.optimise(r.sharp) + separationWork*int64(len(f.wanted)*len(f.wanted))
		}
	}
	s.roaming.sharpening = nil
	if !good {
		r.sharp = r.plain
	}
	return s.settle(f, r.sharp)
}

// separationWork for each pair of kinds.
const separationWork = 1 << 12

// Sharpened is what the search has worked for that so far.
func (s *Search) Sharpened() (work int64) { return s.roaming.sharpened }
