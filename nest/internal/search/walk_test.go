package search

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// A walk restarted towards target counts never cuts more pieces for sale, nor reaches its goal,
// until it has placed everything.
func TestRestartsKeepToTheirTarget(t *testing.T) {
	for seed := range uint64(80) {
		e := newEnv(sampleInstance(rand.New(rand.NewPCG(seed, 0))), false)
		l := newWalk(e, seed, 0)
		l.construct()
		l.state.commit()
		first := l.state.plan()
		l.migrateTo(first)
		most := slices.Clone(l.state.used)
		for i := range most {
			most[i] = max(0, most[i]-int(seed+uint64(i))%3)
		}
		l.restart(first, first.Cost, most)
		for range 150 {
			l.step()
			l.state.check(t)
			for i, n := range l.state.used {
				if !e.in.Stock[i].OnHand && n > most[i] {
					t.Fatalf("seed %d: %d pieces of stock %d, at most %d are allowed", seed, n, i, most[i])
				}
			}
			if len(l.state.trees) > 0 && !l.state.cost.Less(first.Cost) {
				t.Fatalf("seed %d: %v is not below %v", seed, l.state.cost, first.Cost)
			}
			if len(l.state.missing) == 0 {
				break
			}
		}
	}
}
