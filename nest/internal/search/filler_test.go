package search

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/knapsack"
	"sawbill/nest/internal/setcover"
)

// A filler's patterns obey every rule, respect demand, are worth more than asked for, and at
// most as much as the best pattern by exact search. Mostly a filler finds that pattern.
func TestFillersPatternsAgainstExactSearch(t *testing.T) {
	best, sought := 0, 0
	for seed := range uint64(80) {
		r := rand.New(rand.NewPCG(seed, 6))
		in := ruledInstance(r)
		f := NewFillers(in, seed, nil)[0]
		for range 3 {
			demand, values := make([]int, len(in.Kinds)), make([]int64, len(in.Kinds))
			var items []knapsack.Item
			for k, kd := range in.Kinds {
				demand[k] = r.IntN(min(kd.Demand, 3) + 1)
				values[k] = kd.L * kd.W * int64(80+r.IntN(40))
				items = append(items, knapsack.Item{L: kd.L, W: kd.W, Orientations: kd.Orientations[0], Count: demand[k], Kind: k})
			}
			st := in.Stock[0]
			exact := knapsack.New(st.L, st.W, items, knapsack.Rules{Stages: in.Stages, FirstCut: st.FirstCut, NarrowestRip: st.NarrowestRip}, 1<<16, 1<<22)
			if exact == nil {
				continue
			}
			exact.Start(values, 0)
			exact.Advance(1 << 26)
			most, ok := exact.Best()
			if !ok || !exact.Proven() {
				continue
			}
			above := most * 9 / 10
			var got int64
			for _, root := range f.Fill(demand, values, nil, above, 600, math.MaxInt) {
				if root.L != st.L || root.W != st.W || !in.Allows(0, root) {
					t.Fatalf("seed %d: %+v goes against the rules", seed, root)
				}
				counts := make([]int, len(in.Kinds))
				root.CountParts(counts)
				var worth int64
				for k, n := range counts {
					worth += int64(n) * values[k]
					if n > demand[k] {
						t.Fatalf("seed %d: %d of kind %d, %d are wanted", seed, n, k, demand[k])
					}
				}
				if worth <= above || worth > most {
					t.Fatalf("seed %d: a pattern worth %d, asked for more than %d, the best is worth %d", seed, worth, above, most)
				}
				got = max(got, worth)
			}
			f.walk.state.trees[0].check(t, f.walk.e)
			sought++
			if got == most {
				best++
			}
		}
	}
	t.Logf("%d of %d times the best pattern", best, sought)
	if sought < 150 || best < sought*3/4 {
		t.Errorf("the best pattern %d of %d times", best, sought)
	}
}

// pairBonus is the bonus of a task whose kinds pack at most two to a piece, within triples.
func pairBonus(t *testing.T, kinds int) (p *setcover.CutBonus) {
	t.Helper()
	demand, pieces := slices.Repeat([]int{1}, kinds), []int{kinds/3*2 - 1}
	var patterns []setcover.Pattern
	for k := range kinds {
		first := k / 3 * 3
		patterns = append(patterns, setcover.Pattern{Counts: []setcover.Count{{Kind: k, Times: 1}, {Kind: first + (k-first+1)%3, Times: 1}}})
	}
	prices := []setcover.Prices{{Values: make([]int64, kinds), Capacity: []int64{0}}}
	s := setcover.New(demand, pieces, patterns, prices)
	s.Randomize(1, nil)
	s.SeparateCuts()
	s.Advance(math.MaxInt64)
	sets := s.Cuts()
	s = setcover.New(demand, pieces, patterns, prices)
	s.Randomize(1, func(_ int, _ []int, _ []int64, q *setcover.CutBonus, _ int64) ([]setcover.Pattern, int64) {
		p = q
		return nil, 1
	})
	s.WarmStart(nil, sets)
	s.Advance(1)
	if p == nil {
		t.Fatal("no cut was found")
	}
	return p
}

// If kinds have no value beyond the cuts, fillers maximize the bonus.
func TestFillersGoByTheCutBonus(t *testing.T) {
	const kinds = 27
	in := &instance.Instance{Stages: instance.NoLimit, Stock: []instance.Stock{{L: 100, W: 60, Price: 1, Limit: instance.NoLimit}}}
	for k := range kinds {
		in.Kinds = append(in.Kinds, instance.Kind{L: int64(20 + k), W: int64(15 + k%4), Demand: 1, Orientations: []instance.Orientation{instance.Upright}})
	}
	in.Prepare()
	p := pairBonus(t, kinds)
	demand, values := slices.Repeat([]int{1}, kinds), make([]int64, kinds)
	found := 0
	var above, most int64
	for seed := range uint64(20) {
		above = most * 9 / 10
		for _, root := range NewFillers(in, seed, nil)[0].Fill(demand, values, p, above, 200, 8) {
			counts := make([]int, kinds)
			root.CountParts(counts)
			p.Reset()
			for k, n := range counts {
				if n > demand[k] {
					t.Fatalf("seed %d: %d of kind %d", seed, n, k)
				}
				for range n {
					p.Add(k)
				}
			}
			if p.Value() <= above {
				t.Fatalf("seed %d: a bonus of %d, asked for more than %d", seed, p.Value(), above)
			}
			found++
			most = max(most, p.Value())
		}
		if plain := NewFillers(in, seed, nil)[0].Fill(demand, values, nil, above, 200, 8); len(plain) > 0 {
			t.Fatalf("seed %d: %d patterns that are worth nothing", seed, len(plain))
		}
	}
	if found < 20 || above == 0 {
		t.Errorf("only %d patterns", found)
	}
}
