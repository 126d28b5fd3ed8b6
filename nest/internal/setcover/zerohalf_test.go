package setcover

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// Cuts are told apart and keep their order, up to their maximum number.
func TestCutsAreRetainedAndToldApart(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 9))
	for round := range 200 {
		kinds := 7 + r.IntN(4)
		o := zeroHalfCuts{members: make([]uint64, kinds)}
		var want [][]bool
		known := func(set []bool) bool {
			return slices.ContainsFunc(want, func(w []bool) bool { return slices.Equal(w, set) })
		}
		for range 3 * maxCuts {
			set := make([]bool, kinds)
			for k := range set {
				set[k] = r.IntN(2) == 0
			}
			if o.has(set) != known(set) {
				t.Fatalf("round %d: has %v %v, want %v", round, set, o.has(set), known(set))
			}
			if added := !known(set) && len(want) < maxCuts; o.add(set) != added {
				t.Fatalf("round %d: added %v of %d", round, !added, len(want))
			} else if added {
				want = append(want, set)
			}
			if r.IntN(2*maxCuts) > 0 && (round%2 == 0 || r.IntN(9) > 0) {
				continue
			}
			which := r.Uint64()
			if len(want) < maxCuts {
				which &= 1<<len(want) - 1
			}
			var kept [][]bool
			for n, w := range want {
				if which>>n&1 == 1 {
					kept = append(kept, w)
				}
			}
			o.retain(which)
			want = kept
		}
		if o.size != len(want) {
			t.Fatalf("round %d: %d sets, want %d", round, o.size, len(want))
		}
		counts := make([]int, kinds)
		for k := range counts {
			counts[k] = r.IntN(4)
		}
		parity, tally := o.parity(counts), o.totals(counts)
		for n, set := range want {
			if !o.has(set) {
				t.Fatalf("round %d: set %d is lost", round, n)
			}
			sum := 0
			for k, in := range set {
				if in {
					sum += counts[k]
				}
			}
			if tally[n] != sum || parity>>n&1 != uint64(sum&1) {
				t.Fatalf("round %d: set %d has %d, odd %v; want %d", round, n, tally[n], parity>>n&1 == 1, sum)
			}
		}
	}
}

// randomPrices are random prices of kinds and cuts.
func randomPrices(r *rand.Rand, kinds int) Prices {
	p := Prices{cuts: zeroHalfCuts{members: make([]uint64, kinds)}}
	for range kinds {
		p.Values = append(p.Values, r.Int64N(5))
	}
	for range 1 + r.IntN(4) {
		set := make([]bool, kinds)
		for k := range set {
			set[k] = r.IntN(3) > 0
		}
		if p.cuts.add(set) {
			p.cutValues = append(p.cutValues, 1+r.Int64N(12))
		}
	}
	return p
}

// Whatever the duals of cuts, patterns that they exclude are in no solution, at the root and
// below. The prices at a node do not depend on the path to it.
func TestPricesOfCutsThatPruneAreRight(t *testing.T) {
	hopeless, lost := 0, 0
	for seed := range uint64(20_000) {
		task := draw(seed)
		r := rand.New(rand.NewPCG(seed, 10))
		for k := range task.demand {
			task.demand[k] = r.IntN(4)
		}
		s := New(task.demand, task.pieces, task.patterns, []Prices{{Values: make([]int64, len(task.demand)), Capacity: make([]int64, len(task.pieces))}})
		nd := &s.stack[0]
		for n := range task.patterns {
			nd.options = append(nd.options, optionOf(n))
		}
		nd.lpPrices = randomPrices(r, len(task.demand))
		s.evaluatePrices(nd)
		if s.pruned(nd) {
			hopeless++
			if task.possible(0, task.demand, task.pieces) {
				t.Fatalf("seed %d: %+v rule out what can be done", seed, nd.lpPrices)
			}
			continue
		}
		// Down a random path; a pattern that loses too much must lead nowhere.
		for range 3 {
			var left []int
			for n := range task.patterns {
				if nd.pieces[task.patterns[n].Stock] == 0 {
					continue
				}
				if s.affordable(nd, &task.patterns[n]) {
					left = append(left, n)
					continue
				}
				lost++
				if demand, pieces := cut(nd, &task.patterns[n]); task.possible(0, demand, pieces) {
					t.Fatalf("seed %d: %+v rule out pattern %d of a solution of %v by %v", seed, nd.lpPrices, n, nd.demand, nd.pieces)
				}
			}
			if len(left) == 0 {
				break
			}
			p := &task.patterns[left[r.IntN(len(left))]]
			s.affordable(nd, p)
			slack := nd.slack[1] - s.losses[1]
			nd.demand, nd.pieces = cut(nd, p)
			if want := nd.lpPrices.Slack(nd.demand, nd.pieces); slack != want {
				t.Fatalf("seed %d: slack %d on the way, %d by itself", seed, slack, want)
			}
			nd.slack[1], nd.parity = slack, nd.lpPrices.cuts.parity(nd.demand)
		}
	}
	if hopeless < 1000 || lost < 10_000 {
		t.Errorf("%d states and %d patterns were ruled out: too few", hopeless, lost)
	}
}

// cut returns the residual problem of a node after a pattern.
func cut(nd *node, p *Pattern) (demand, pieces []int) {
	demand, pieces = slices.Clone(nd.demand), slices.Clone(nd.pieces)
	pieces[p.Stock]--
	for _, c := range p.Counts {
		demand[c.Kind] = max(0, demand[c.Kind]-c.Times)
	}
	return demand, pieces
}

// The value of a pattern, its loss and its bonus, part by part, agree. A part's share is at
// most its part of the bonus.
func TestCutBonusEqualsPrices(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 9))
	for range 5000 {
		kinds := 2 + r.IntN(5)
		prices := randomPrices(r, kinds)
		bonus := CutBonus{prices.cuts.clone(), prices.cutValues}
		p := Pattern{}
		var want, least int64
		bonus.Reset()
		for k := range kinds {
			if n := r.IntN(4); n > 0 {
				p.Counts = append(p.Counts, Count{k, n})
				want += int64(n) * prices.Values[k]
				least += int64(n) * bonus.PartShare(k)
				for range n {
					bonus.Add(k)
				}
			}
		}
		if least > bonus.Value() {
			t.Fatalf("%+v: shares of %d in %d", p, least, bonus.Value())
		}
		if got := prices.Value(&p); got != want+bonus.Value() {
			t.Fatalf("%+v is worth %d, its parts %d and their bonus %d", p, got, want, bonus.Value())
		}
	}
}

// triangles are tasks whose kinds pack at most two to a piece, within triples. Two pieces hold
// such a triple; one and a half do in fractions.
func triangles(count, pieces int) task {
	t := task{demand: slices.Repeat([]int{1}, 3*count), pieces: []int{pieces}}
	for k := range t.demand {
		p := k / 3 * 3
		t.patterns = append(t.patterns, Pattern{Counts: []Count{{k, 1}, {p + (k-p+1)%3, 1}}})
	}
	t.prices = []Prices{{Values: slices.Repeat([]int64{1}, 3*count), Capacity: []int64{2}}}
	return t
}

// The relaxation covers a triple with one and a half pieces. A cut raises that to two.
func TestSeparationFindsTheCutsOfTriangles(t *testing.T) {
	const count = 9 // enough patterns for a relaxation
	for seed := range uint64(20) {
		task := triangles(count, 2*count-1)
		s := New(task.demand, task.pieces, task.patterns, task.prices)
		s.Randomize(seed, nil)
		s.SeparateCuts()
		if _, done := s.Advance(1); done || s.randomized.rounds == nil {
			t.Fatalf("seed %d: done %v before the cuts", seed, done)
		}
		plain := s.randomized.rounds.plain.lp.Value()
		if want := 1.5 * count / (2*count - 1); math.Abs(plain-want) > 1e-4 {
			t.Fatalf("seed %d: %g of the pieces without cuts, want %g", seed, plain, want)
		}
		for s.randomized.rounds != nil {
			s.Advance(1)
		}
		if own := &s.stack[0].lpPrices; !s.pruned(&s.stack[0]) || own.cuts.size < 2 {
			t.Fatalf("seed %d: %d cuts do not show that the pieces are too few", seed, own.cuts.size)
		}
		if s.Advance(math.MaxInt64); !s.Infeasible() || s.relaxations > 1 {
			t.Fatalf("seed %d: infeasible %v after %d relaxations", seed, s.Infeasible(), s.relaxations)
		}
		if cuts := s.Cuts(); cuts == nil || !cuts.has([]bool{0: true, 1: true, 2: true, 3*count - 1: false}) {
			t.Fatalf("seed %d: the first three are not among the sets", seed)
		}

		// Other searches start with the cuts.
		other := New(task.demand, task.pieces, task.patterns, task.prices)
		other.Randomize(seed, nil)
		other.WarmStart(nil, s.Cuts())
		if other.Advance(1); !other.pruned(&other.stack[0]) {
			t.Fatalf("seed %d: sets that are known do not show that the pieces are too few", seed)
		}
	}
}
