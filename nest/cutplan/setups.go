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
	Setting stock.Length // of trim: what comes off each edge or end
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
	r := round{p: p, done: map[cutOf]bool{}}
	slices.SortStableFunc(cuts, func(a, b SetupCut) int { return cmp.Compare(a.Step.Level, b.Step.Level) })
	for len(cuts) > 0 {
		n := slices.IndexFunc(cuts, func(c SetupCut) bool { return c.Step.Level > cuts[0].Step.Level })
		if n < 0 {
			n = len(cuts)
		}
		r.waiting, cuts = cuts[:n], cuts[n:]
		for len(r.waiting) > 0 {
			setups = append(setups, r.next())
		}
	}
	return setups
}

// round is the cuts of one round that are still to be made.
type round struct {
	p       *Plan
	waiting []SetupCut
	done    map[cutOf]bool
}

// cutOf is a cut by its layout and number.
type cutOf struct{ layout, number int }

// next makes all cuts of one setup. A setting that will not be needed again goes
// before one that will, since by then more may be ready for it; then the order is
// that of Position.before.
func (r *round) next() Setup {
	need := map[Position]int{}
	for _, c := range r.waiting {
		need[r.p.position(c)]++
	}
	var best Position
	var made []SetupCut
	for s, n := range need {
		cuts := r.ready(s)
		if len(cuts) == 0 {
			continue
		}
		last, bestLast := len(cuts) == n, made != nil && len(made) == need[best]
		if made == nil || last && !bestLast || last == bestLast && s.before(best) {
			best, made = s, cuts
		}
	}
	for _, c := range made {
		r.done[cutOf{c.Layout, c.Step.Number}] = true
	}
	r.waiting = slices.DeleteFunc(r.waiting, func(c SetupCut) bool { return r.done[cutOf{c.Layout, c.Step.Number}] })
	return Setup{best, made}
}

// ready lists what can be cut at one position as things stand. One pass is enough: a
// cut stands behind those that it waits for.
func (r *round) ready(at Position) []SetupCut {
	var cuts []SetupCut
	now := map[cutOf]bool{}
	for _, c := range r.waiting {
		before := cutOf{c.Layout, c.Step.InHand}
		if r.p.position(c) == at && (c.Step.InHand == 0 || r.done[before] || now[before]) {
			now[cutOf{c.Layout, c.Step.Number}] = true
			cuts = append(cuts, c)
		}
	}
	return cuts
}

// position is how the saw must stand for c.
func (p *Plan) position(c SetupCut) Position {
	if c.Step.Trim {
		return Position{Trim: true, Setting: p.Layouts[c.Layout].Stock.Trim}
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
func (p *Plan) Settings() (apart, gathered int) {
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
