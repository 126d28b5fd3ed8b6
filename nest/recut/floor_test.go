package recut_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
)

// floor is a workshop that follows each piece and its grain by the steps of the saw alone.
// The program's pieces are compared with it.
type floor struct {
	t      *testing.T
	random *rand.Rand
	story  string
	state  *progress.State
	code   string
	// onHand lists the possible grains of the pieces with a name, along their length.
	onHand map[string][]stock.Grain
	// good lists the grain of each good blank along its length, by mark.
	good     map[string][]stock.Grain
	made     map[progress.Cut]bool // cuts, one by one
	spoiled  []stock.Grain         // in the order told
	measured [][]stock.Grain       // of uncut pieces, in the order reported
}

func (f *floor) errorf(format string, args ...any) {
	f.t.Helper()
	f.t.Errorf(f.story+", "+f.code+": "+format, args...)
}

// begin puts a plan on the floor. Finished blanks stay.
func (f *floor) begin(p *cutplan.Plan, code string, before []progress.Made) {
	f.state, f.code = progress.Begin(p, before...), code
	f.state.Code = code
	f.made, f.spoiled, f.measured = map[progress.Cut]bool{}, nil, nil
	f.noneAcross(p)
}

// grains lists the possible grains of a layout's stock.
func (f *floor) grains(s stock.Stock) []stock.Grain {
	if !s.OnHand {
		return []stock.Grain{s.Grain}
	}
	if _, there := f.onHand[s.Name]; !there {
		f.errorf("%q is on hand, and nobody laid it there", s.Name)
	}
	return f.onHand[s.Name]
}

// noneAcross checks that no part lies across the true grain of its stock.
func (f *floor) noneAcross(p *cutplan.Plan) {
	for i, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use != cutplan.Part {
				continue
			}
			wants := p.Bill[n.Blank].Part.Grain
			for _, is := range f.grains(l.Stock) {
				if n.Turned {
					is = is.Quarter()
				}
				if wants != stock.GrainAny && is != stock.GrainAny && wants != is {
					f.errorf("layout %d: %s lies across the grain of %s", i+1, p.Bill[n.Blank].Mark, l.Stock.Name)
				}
			}
		}
	}
}

// report reports an event; it returns false if the event is refused.
func (f *floor) report(word, value string) bool {
	return f.state.Apply(progress.Event{Word: word, Value: value}) == nil
}

// cut makes cuts in one piece of stock; the steps say which blanks come off.
func (f *floor) cut(layout, copy, from, to int) {
	steps := f.state.Steps(layout)
	event := progress.Cut{Layout: layout, Copy: copy, From: from, To: to}.Event()
	if !f.report(event.Word, event.Value) {
		return
	}
	l := f.state.Plan().Layouts[layout-1]
	off := func(n *cutplan.Node) {
		if n == nil || n.Use != cutplan.Part {
			return
		}
		is := f.grains(l.Stock)[f.random.IntN(len(f.grains(l.Stock)))]
		if n.Turned {
			is = is.Quarter()
		}
		mark := f.state.Plan().Bill[n.Blank].Mark
		f.good[mark] = append(f.good[mark], is)
	}
	for n := from; n <= to && n > 0; n++ {
		for at := n; at > 0; at = steps[at-1].InHand {
			id := progress.Cut{Layout: layout, Copy: copy, From: at}
			if f.made[id] {
				break
			}
			f.made[id] = true
			off(steps[at-1].OffNode)
			off(steps[at-1].LeftNode)
		}
	}
	whole := progress.Cut{Layout: layout, Copy: copy}
	for n := range steps {
		if !f.made[progress.Cut{Layout: layout, Copy: copy, From: n + 1}] {
			return
		}
	}
	if l.Root.Use == cutplan.Part && !f.made[whole] {
		off(&l.Root)
	}
	f.made[whole] = true
}

var seen = map[stock.Grain]string{stock.GrainLength: "length", stock.GrainWidth: "width", stock.GrainAny: "none"}

// take spoils or loses any one of the good blanks of a mark.
func (f *floor) take(b progress.Blank) {
	all := f.good[b.Mark]
	if len(all) == 0 {
		return
	}
	at := f.random.IntN(len(all))
	look := ""
	if f.random.IntN(3) == 0 && (all[at] != stock.GrainAny || f.code == "P0") { // later, wood without grain may pass for wood with grain
		look = ", grain " + seen[all[at]]
	}
	if f.random.IntN(3) == 0 {
		if !f.report("lost", b.Mark+look) {
			f.errorf("%d blanks %s are there, and none can be lost%s", len(all), b.Mark, look)
			return
		}
	} else {
		part := b.Length - stock.Length(f.random.Int64N(int64(b.Length)/2))
		if !f.report("spoiled", fmt.Sprintf("%s=%s x %s mm%s", b.Mark, part.Decimal(), b.Width.Decimal(), look)) {
			f.errorf("%d blanks %s are there, and none can be spoiled%s", len(all), b.Mark, look)
			return
		}
		f.spoiled = append(f.spoiled, all[at])
	}
	f.good[b.Mark] = slices.Delete(all, at, at+1)
}

// measure gives a piece of uncut stock another size.
func (f *floor) measure(s stock.Stock) {
	name := s.Name
	grains := f.grains(s)
	if !s.OnHand {
		name = progress.Bought(name)
	}
	if f.report("measured", fmt.Sprintf("%s=%s x %s mm", name, (s.Length-40_000).Decimal(), s.Width.Decimal())) {
		f.measured = append(f.measured, grains)
	}
}

// happens reports a few random events.
func (f *floor) happens(events int) {
	for range events {
		plan := f.state.Plan()
		if len(plan.Layouts) == 0 {
			return
		}
		at := f.random.IntN(len(plan.Layouts))
		l, steps := plan.Layouts[at], f.state.Steps(at+1)
		blanks := f.state.Blanks()
		b := blanks[f.random.IntN(len(blanks))]
		switch f.random.IntN(8) {
		case 0, 1, 2:
			if len(steps) > 0 {
				f.cut(at+1, 1+f.random.IntN(l.Repeat), 1, len(steps))
			} else {
				f.cut(at+1, 1+f.random.IntN(l.Repeat), 0, 0)
			}
		case 3:
			if len(steps) > 0 {
				n := 1 + f.random.IntN(len(steps))
				f.cut(at+1, 1+f.random.IntN(l.Repeat), n, n)
			}
		case 4, 5:
			f.take(b)
		case 6:
			if f.report("good", b.Mark) {
				f.good[b.Mark] = append(f.good[b.Mark], f.madeByHand(b))
			}
		case 7:
			if f.random.IntN(3) == 0 {
				f.measure(l.Stock)
			} else {
				f.report("missing", l.Stock.Name)
			}
		}
	}
	good := map[string]int{}
	for _, b := range f.state.Blanks() {
		good[b.Mark] += b.Good
	}
	for mark, n := range good {
		if n != len(f.good[mark]) {
			f.errorf("%d blanks %s are good, %d are there", n, mark, len(f.good[mark]))
		}
	}
}

// madeByHand returns the grain of a blank from outside the plan: right for its part.
func (f *floor) madeByHand(b progress.Blank) stock.Grain {
	grainless := true
	for _, s := range f.state.Plan().Job.Stock {
		grainless = grainless && (s.Material != b.Part.Material || s.Grain == stock.GrainAny)
	}
	switch {
	case grainless:
		return stock.GrainAny
	case b.Part.Grain == stock.GrainAny:
		return stock.Grain(f.random.IntN(3))
	}
	return b.Part.Grain
}

// lies checks the claims about a piece against its possible grains, and puts it on hand.
// Wood without grain may pass for wood with grain; any other difference is an error.
func (f *floor) lies(s stock.Stock, exact bool, grains ...stock.Grain) {
	for _, is := range grains {
		if s.Grain != is && (exact || s.Grain != stock.GrainUnknown && is != stock.GrainAny) {
			f.errorf("%s is said to have its grain %v, it may have it %v", s.Name, s.Grain, is)
		}
		if !slices.Contains(f.onHand[s.Name], is) {
			f.onHand[s.Name] = append(f.onHand[s.Name], is)
		}
	}
}

// rest plans the rest, and follows every piece into it.
func (f *floor) rest(o recut.Options) *recut.Result {
	made, err := recut.Make(f.t.Context(), f.state, o)
	if err != nil {
		f.t.Fatalf("%s, %s: %v", f.story, f.code, err)
	}
	wasOnHand := f.onHand
	f.onHand = map[string][]stock.Grain{}
	measured := 0
	for _, p := range f.state.Pieces(f.code) {
		of := wasOnHand
		grainsOf := func(s stock.Stock) []stock.Grain {
			if s.OnHand {
				return of[s.Name]
			}
			return []stock.Grain{s.Grain}
		}
		switch {
		case p.Kind == progress.Scrap:
			var n int
			if _, err := fmt.Sscanf(p.Stock.Name[strings.LastIndex(p.Stock.Name, "("):], "(%d)", &n); err != nil {
				f.t.Fatal(p.Stock.Name, err)
			}
			is := f.spoiled[n-1]
			length := p.Spoiled.Left.Length
			if p.Spoiled.Turned {
				is, length = is.Quarter(), p.Spoiled.Left.Width
			}
			if p.Stock.Length != length {
				f.errorf("%s is %v long", p.Stock.Name, p.Stock.Length)
			}
			f.lies(p.Stock, p.Spoiled.Known && f.code == "P0", is)
		case p.Layout >= 0:
			grains := grainsOf(f.state.Plan().Layouts[p.Layout].Stock)
			f.lies(p.Stock, len(grains) == 1 && f.state.Plan().Layouts[p.Layout].Stock.Grain == grains[0], grains...)
		case p.Kind == progress.Remeasured:
			f.lies(p.Stock, false, f.measured[measured]...)
			measured++
		default:
			f.lies(p.Stock, false, wasOnHand[p.Stock.Name]...)
		}
	}
	f.unused(made)
	return made
}

// unused removes the blanks that the rest does not count on, any of them.
func (f *floor) unused(made *recut.Result) {
	left := map[string]int{}
	for _, m := range made.Made {
		left[m.Mark] += m.Count
	}
	for mark, all := range f.good {
		f.random.Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
		gone := all[min(left[mark], len(all)):]
		f.good[mark] = all[:min(left[mark], len(all))]
		if len(f.good[mark]) != left[mark] {
			f.errorf("%d blanks %s go along, %d are there", left[mark], mark, len(all))
		}
		for _, s := range made.Unused {
			if !strings.HasPrefix(s.Name, f.code+" "+mark+" ") {
				continue
			}
			i := slices.IndexFunc(f.state.Bill(), func(b cutplan.Blank) bool { return b.Mark == mark })
			part := f.state.Bill()[i].Part
			for _, is := range gone {
				if s.Length == part.Width && part.Width != part.Length {
					is = is.Quarter()
				}
				f.lies(s, false, is)
			}
		}
	}
	// Facts about the blanks that go along hold for each of them.
	for _, m := range made.Made {
		claim := m.From.Grain
		if m.Turned {
			claim = claim.Quarter()
		}
		if claim != stock.GrainUnknown && !slices.ContainsFunc(f.good[m.Mark], func(is stock.Grain) bool { return is == claim || is == stock.GrainAny }) {
			f.errorf("a blank %s is said to have its grain %v, none that is there has", m.Mark, claim)
		}
	}
}
