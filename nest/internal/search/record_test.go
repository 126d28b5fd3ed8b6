package search

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
)

// ruledInstance is a sample under random rules of the saw, which every part can obey.
func ruledInstance(r *rand.Rand) *instance.Instance {
	in := sampleInstance(r)
	if r.IntN(2) == 0 {
		in.Stages = 2 + r.IntN(3)
	}
	least := in.Kinds[0].W
	for _, k := range in.Kinds {
		least = min(least, k.L, k.W)
	}
	for s := range in.Stock {
		in.Stock[s].FirstCut = instance.Dir(r.IntN(3))
		in.Stock[s].NarrowestRip = r.Int64N(least + 1)
	}
	return in
}

// Recorded patterns come back as patterns of the whole piece of stock, with the parts of their
// counts. They obey every rule, and each multiset of parts comes once.
func TestRecordedPatternsKeepToTheRules(t *testing.T) {
	gathered := 0
	for seed := range uint64(120) {
		r := rand.New(rand.NewPCG(seed, 4))
		in := ruledInstance(r)
		s := New(in, 0, seed, 2, nil)
		h := pool.New(in)
		s.RecordInto(h)
		for range 4 {
			for i := range s.Walks() {
				s.walks[i].run(100, func() bool { return false })
			}
			s.Join()
		}
		known := map[string]bool{}
		for n, p := range h.Patterns {
			root := h.Root(n)
			if st := in.Stock[p.Stock]; root.L != st.L || root.W != st.W {
				t.Fatalf("seed %d: a pattern %d x %d of stock %d x %d", seed, root.L, root.W, st.L, st.W)
			}
			if !in.Allows(p.Stock, root) {
				t.Fatalf("seed %d: %+v goes against the rules of stock %d", seed, root, p.Stock)
			}
			counts := make([]int, len(in.Kinds))
			root.CountParts(counts)
			key := []byte{byte(p.Stock)}
			for _, c := range p.Counts {
				counts[c.Kind] -= c.Times
				key = append(key, byte(c.Kind), byte(c.Times))
			}
			for k, n := range counts {
				if n != 0 {
					t.Fatalf("seed %d: pattern %v is cut as %+v: kind %d differs by %d", seed, p.Counts, root, k, n)
				}
			}
			if known[string(key)] {
				t.Fatalf("seed %d: pattern %v of stock %d is kept twice", seed, p.Counts, p.Stock)
			}
			known[string(key)] = true
		}
		gathered += len(h.Patterns)
	}
	if gathered < 5000 {
		t.Errorf("only %d patterns were recorded", gathered)
	}
}
