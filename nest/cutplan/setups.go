package cutplan

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Gathered is the work on all stock of one material and thickness. Cuts at one setting of
// fence or stop stand together, whatever their layout. The order is feasible: no cut comes
// before the cut that frees its piece.
type Gathered struct {
	Material  string
	Thickness stock.Length
	Kind      stock.Kind
	// Late stock waits for the dry fit.
	Late   bool
	Setups []Setup // in order
}

// Setup is one position of fence or stop, with the cuts made at it.
type Setup struct {
	Position
	Cuts []SetupCut // in an order in which they can be made
}

// Position is a setting of the saw. Trim has a position of its own. So do breakdown cuts
// of one size, though they need no setting.
type Position struct {
	// Round is the depth in the layout's tree. 0 is the trim, 1 the stock as bought or
	// trimmed, 2 the pieces from round 1, and so on. A round begins when the one before is
	// done. That costs few settings, and can be followed with sawdust on the page.
	Round   int
	Trim    bool
	Guide   Guide
	Setting stock.Length // for trim: the least taken off an edge or end
}

// SetupCut is a step of a layout, made as often as the layout is cut.
type SetupCut struct {
	Layout int // index into Plan.Layouts
	Step   Step
}

// Setups gathers the steps of all layouts, sheets and boards alike. In a round breakdown
// cuts come first, then the fence, then the stop, each from the widest setting down. A
// later setting goes first if that saves a setup. A setting may come twice, since cuts
// along one piece keep their order.
func (p *Plan) Setups() []Gathered {
	var all []Gathered
	var waiting [][]SetupCut // of each of all
	for i, l := range p.Layouts {
		g := Gathered{Material: l.Stock.Material, Thickness: l.Stock.Thickness, Kind: l.Stock.Kind, Late: p.waits(l) > 0}
		at := slices.IndexFunc(all, func(h Gathered) bool {
			return h.Material == g.Material && h.Thickness == g.Thickness && h.Kind == g.Kind && h.Late == g.Late
		})
		if at < 0 {
			at = len(all)
			all, waiting = append(all, g), append(waiting, nil)
		}
		for _, s := range p.Steps(l) {
			waiting[at] = append(waiting[at], SetupCut{i, s})
		}
	}
	var some []Gathered
	for i := range all {
		if len(waiting[i]) > 0 {
			all[i].Setups = p.gather(waiting[i])
			some = append(some, all[i])
		}
	}
	return some
}

// gather orders cuts, given in the order of their layouts and numbers.
func (p *Plan) gather(cuts []SetupCut) []Setup {
	var setups []Setup
	done := map[cutOf]bool{}
	slices.SortStableFunc(cuts, func(a, b SetupCut) int { return cmp.Compare(a.Step.Level, b.Step.Level) })
	for len(cuts) > 0 {
		r := round{done: done, places: map[Position]*waitingAt{}, after: map[cutOf][]*waitingAt{}}
		level := cuts[0].Step.Level
		for len(cuts) > 0 && cuts[0].Step.Level == level {
			r.add(p.position(cuts[0]), cuts[0])
			cuts = cuts[1:]
		}
		for len(r.waiting) > 0 {
			setups = append(setups, r.next())
		}
	}
	return setups
}

// round holds the cuts of one round that are still to be made, by position.
type round struct {
	waiting []*waitingAt
	places  map[Position]*waitingAt
	after   map[cutOf][]*waitingAt // by cut: positions with cuts that depend on it
	done    map[cutOf]bool         // in all rounds
}

// waitingAt holds the cuts that wait for one position.
type waitingAt struct {
	at    Position
	cuts  []SetupCut
	ready int // cuts that can be made now; -1 if unknown
}

func (r *round) add(at Position, c SetupCut) {
	w := r.places[at]
	if w == nil {
		w = &waitingAt{at: at, ready: -1}
		r.places[at], r.waiting = w, append(r.waiting, w)
	}
	w.cuts = append(w.cuts, c)
	if c.Step.InHand != 0 {
		before := cutOf{c.Layout, c.Step.InHand}
		r.after[before] = append(r.after[before], w)
	}
}

// cutOf identifies a cut by layout and number.
type cutOf struct{ layout, number int }

func (c SetupCut) id() cutOf { return cutOf{c.Layout, c.Step.Number} }

// next makes all cuts that are ready at one position. A position with no later cuts goes
// first, since others may gain cuts meanwhile. Ties follow Position.before.
func (r *round) next() Setup {
	var best *waitingAt
	bestLast := false
	for _, w := range r.waiting {
		if w.ready < 0 {
			w.ready = r.ready(w.cuts)
		}
		if w.ready == 0 {
			continue
		}
		last := w.ready == len(w.cuts)
		if best == nil || last && !bestLast || last == bestLast && w.at.before(best.at) {
			best, bestLast = w, last
		}
	}
	ready := make([]SetupCut, 0, best.ready)
	var waiting []SetupCut
	for _, c := range best.cuts {
		if r.free(c) {
			r.done[c.id()] = true
			ready = append(ready, c)
			for _, w := range r.after[c.id()] {
				w.ready = -1
			}
		} else {
			waiting = append(waiting, c)
		}
	}
	best.cuts, best.ready = waiting, -1
	if waiting == nil {
		r.waiting = slices.DeleteFunc(r.waiting, func(w *waitingAt) bool { return w == best })
	}
	return Setup{best.at, ready}
}

// ready counts the cuts at one position that can be made now. One pass is enough, since a
// cut stands behind those that it depends on.
func (r *round) ready(cuts []SetupCut) int {
	n := 0
	for _, c := range cuts {
		if r.free(c) {
			r.done[c.id()] = true // for the cuts behind it
			n++
		}
	}
	for _, c := range cuts {
		delete(r.done, c.id())
	}
	return n
}

// free reports whether the piece that c divides is cut free.
func (r *round) free(c SetupCut) bool {
	return c.Step.InHand == 0 || r.done[cutOf{c.Layout, c.Step.InHand}]
}

// position returns the saw's position for c.
func (p *Plan) position(c SetupCut) Position {
	if c.Step.Trim {
		return Position{Trim: true, Setting: p.Layouts[c.Layout].Stock.Trims().Least()}
	}
	return Position{Round: c.Step.Level, Guide: c.Step.Guide, Setting: c.Step.Setting}
}

// before reports whether a comes before b in a round.
func (a Position) before(b Position) bool {
	first := func(g Guide) int { return [...]int{Marked: 0, Fence: 1, Stop: 2}[g] }
	return cmp.Or(cmp.Compare(first(a.Guide), first(b.Guide)), cmp.Compare(b.Setting, a.Setting)) < 0
}

// Settings counts how often the fence or the stop is set: layout by layout, and as
// gathered. A setting stays until it is changed. Breakdown cuts and trim need none. Equal
// layouts are cut together.
func (p *Plan) Settings() (byLayout, gathered int) {
	var a, g setter
	for _, l := range p.Layouts {
		for _, s := range p.Steps(l) {
			a.step(s)
		}
	}
	for _, of := range p.Setups() {
		for _, setup := range of.Setups {
			for _, c := range setup.Cuts {
				g.step(c.Step)
			}
		}
	}
	return a.count, g.count
}

// setter counts the settings of a saw.
type setter struct {
	at    [Marked]stock.Length // of fence and stop
	count int
}

func (t *setter) step(s Step) {
	if s.Trim || s.Guide == Marked || t.at[s.Guide] == s.Setting {
		return
	}
	t.at[s.Guide] = s.Setting
	t.count++
}
