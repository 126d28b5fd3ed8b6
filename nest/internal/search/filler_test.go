package search

import (
	"math"
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/knapsack"
)

// What a filler finds keeps to every rule, holds no part oftener than it is wanted,
// is worth more than asked for and no more than the best pattern of an exact search
// is; mostly it finds that, whatever was wanted and worth before.
func TestFillersPatternsAgainstExactSearch(t *testing.T) {
	best, sought := 0, 0
	for seed := range uint64(80) {
		r := rand.New(rand.NewPCG(seed, 6))
		in := ruledInstance(r)
		f := NewFiller(in, 0, seed)
		for range 3 {
			wanted, values := make([]int, len(in.Kinds)), make([]int64, len(in.Kinds))
			var items []knapsack.Item
			for k, kd := range in.Kinds {
				wanted[k] = r.IntN(min(kd.Count, 3) + 1)
				values[k] = kd.L * kd.W * int64(80+r.IntN(40))
				items = append(items, knapsack.Item{L: kd.L, W: kd.W, Lies: kd.Lies[0], Count: wanted[k], Kind: k})
			}
			st := in.Stock[0]
			exact := knapsack.New(st.L, st.W, items, knapsack.Rules{Stages: in.Stages, First: st.First, Narrowest: st.Narrowest}, 1<<16, 1<<22)
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
			for _, root := range f.Fill(wanted, values, nil, above, 600, math.MaxInt) {
				if root.L != st.L || root.W != st.W || !in.Allows(0, root) {
					t.Fatalf("seed %d: %+v goes against the rules", seed, root)
				}
				counts := make([]int, len(in.Kinds))
				root.CountParts(counts)
				var worth int64
				for k, n := range counts {
					worth += int64(n) * values[k]
					if n > wanted[k] {
						t.Fatalf("seed %d: %d of kind %d, %d are wanted", seed, n, k, wanted[k])
					}
				}
				if worth <= above || worth > most {
					t.Fatalf("seed %d: a pattern worth %d, asked for more than %d, the best is worth %d", seed, worth, above, most)
				}
				got = max(got, worth)
			}
			f.lane.state.trees[0].check(t, f.lane.e)
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
