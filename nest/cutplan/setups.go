package cutplan

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Gathered is the work on all stock of one material and thickness, with the cuts
// at one setting of fence or stop together, whatever layout they belong to. Done
// from first to last it is an order in which everything can be cut: no cut comes
// before the piece that it divides.
type Gathered struct {
	Material  string
	Thickness stock.Length
	Kind      stock.Kind
	// Late stock waits for the dry fit.
	Late   bool
	Setups []Setup // in order
}

// Setup is one position of fence or stop, with what is cut at it.
type Setup struct {
	Position
	Cuts []SetupCut // in an order in which they can be made
}

// Position is how the saw stands. Trim is a position of its own; so are breakdown
// cuts of one size, though nothing is set for them.
type Position struct {
	// Round is how deep in its layout all this lies: 0 is the trim, 1 the stock
	// as it was bought or trimmed, 2 what round 1 gives, and so on. A round
	// begins when the one before is done.
	Round   int
	Trim    bool
	Guide   Guide
	Setting stock.Length // of trim: the least that comes off an edge or end
}

// SetupCut is a step of a layout, made as often as the layout is cut.
type SetupCut struct {
	Layout int // index into Plan.Layouts
	Step   Step
}

// Setups gathers the steps of all layouts, sheets and boards alike. In a round
// breakdown cuts come first, then the fence, then the stop, each from the widest
// setting down, unless waiting saves a setting. One comes again where a piece
// needs it after another: cuts along one piece keep their order.
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

// gather orders cuts, which stand in the order of their layouts and numbers.
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

// round is the cuts of one round that are still to be made, by what they are cut at.
type round struct {
	waiting []*waitingAt
	places  map[Position]*waitingAt
	after   map[cutOf][]*waitingAt // by cut: where others wait for it
	done    map[cutOf]bool         // of all rounds
}

// waitingAt is the cuts that wait for one position.
type waitingAt struct {
	at    Position
	cuts  []SetupCut
	ready int // as things stand; -1 if that is to be counted anew
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

// cutOf is a cut by its layout and number.
type cutOf struct{ layout, number int }

func (c SetupCut) id() cutOf { return cutOf{c.Layout, c.Step.Number} }

// next makes all cuts of one setup. A setting that will not be needed again goes
// before one that will, since by then more may be ready for it; then the order is
// that of Position.before.
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
	made := make([]SetupCut, 0, best.ready)
	var rest []SetupCut
	for _, c := range best.cuts {
		if r.free(c) {
			r.done[c.id()] = true
			made = append(made, c)
			for _, w := range r.after[c.id()] {
				w.ready = -1
			}
		} else {
			rest = append(rest, c)
		}
	}
	best.cuts, best.ready = rest, -1
	if rest == nil {
		r.waiting = slices.DeleteFunc(r.waiting, func(w *waitingAt) bool { return w == best })
	}
	return Setup{best.at, made}
}

// ready counts what can be cut of the cuts at one position as things stand. One pass
// is enough: a cut stands behind those that it waits for.
func (r *round) ready(cuts []SetupCut) int {
	n := 0
	for _, c := range cuts {
		if r.free(c) {
			r.done[c.id()] = true // for those behind it
			n++
		}
	}
	for _, c := range cuts {
		delete(r.done, c.id())
	}
	return n
}

// free reports whether the piece that c divides is there.
func (r *round) free(c SetupCut) bool {
	return c.Step.InHand == 0 || r.done[cutOf{c.Layout, c.Step.InHand}]
}

// position is how the saw must stand for c.
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

// Settings counts how often the fence or the stop is set: layout by layout, and
// as gathered. Fence and stop each stay as they are until they are set anew;
// breakdown cuts and trim need neither. Equal layouts are cut together.
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
