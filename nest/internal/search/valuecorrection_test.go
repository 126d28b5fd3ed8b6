package search

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
)

func never() bool { return false }

// Plans by value correction obey every rule and limit. Parts placed and missing add up to the
// demand, and the cost is right.
func TestValueCorrectionKeepsToTheRules(t *testing.T) {
	complete := 0
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 9))
		in := ruledInstance(r)
		q := NewValueCorrection(in, seed)
		var plans []*instance.Plan
		for range 100 {
			q.Work(1<<22, never)
			if plans = append(plans, q.NewPlans()...); len(plans) >= 3 {
				break
			}
		}
		if len(plans) == 0 {
			t.Fatalf("seed %d: no plan", seed)
		}
		for _, p := range plans {
			counts, used := slices.Clone(p.Missing), make([]int, len(in.Stock))
			var cost instance.Cost
			for _, lay := range p.Layouts {
				st := in.Stock[lay.Stock]
				if lay.Root.L != st.L || lay.Root.W != st.W || !in.Allows(lay.Stock, lay.Root) {
					t.Fatalf("seed %d: %+v goes against the rules of stock %d", seed, lay.Root, lay.Stock)
				}
				lay.Root.CountParts(counts)
				used[lay.Stock]++
				cost = cost.Plus(in.CostOf(lay.Stock), 1)
			}
			for s, n := range used {
				if n > in.Stock[s].Limit {
					t.Fatalf("seed %d: %d pieces of stock %d, there are %d", seed, n, s, in.Stock[s].Limit)
				}
			}
			for k, kd := range in.Kinds {
				if counts[k] != kd.Demand {
					t.Fatalf("seed %d: %d of kind %d, %d are wanted", seed, counts[k], k, kd.Demand)
				}
			}
			if cost != p.Cost {
				t.Fatalf("seed %d: costs %v, says %v", seed, cost, p.Cost)
			}
			if p.Complete() {
				complete++
			}
		}
	}
	if complete < 100 {
		t.Errorf("%d complete plans", complete)
	}
}

// Portions do not change the plans.
func TestValueCorrectionInPortionsIsTheSame(t *testing.T) {
	costs := func(in *instance.Instance, portion int64) (all []instance.Cost) {
		q := NewValueCorrection(in, 1)
		for len(all) < 4 {
			q.Work(portion, never)
			for _, p := range q.NewPlans() {
				all = append(all, p.Cost)
			}
		}
		return all[:4]
	}
	for seed := range uint64(10) {
		in := sampleInstance(rand.New(rand.NewPCG(seed, 10)))
		few, many := costs(in, 1<<24), costs(in, 1000)
		if !slices.Equal(few, many) {
			t.Errorf("seed %d: %v in large portions, %v in small ones", seed, few, many)
		}
	}
}

// Corrected values make better plans than uncorrected ones.
func TestValueCorrectionImproves(t *testing.T) {
	best := func(in *instance.Instance, learns bool) int64 {
		q := NewValueCorrection(in, 1)
		best := int64(math.MaxInt64)
		for made := 0; made < 3; {
			q.Work(4000, never)
			if !learns {
				copy(q.worths, q.base)
			}
			for _, p := range q.NewPlans() {
				best = min(best, p.Cost.Price)
				made++
			}
		}
		return best
	}
	var with, without int64
	for seed := range uint64(16) {
		r := rand.New(rand.NewPCG(seed, 11))
		in := &instance.Instance{Stages: instance.NoLimit, Stock: []instance.Stock{{L: 300, W: 200, Price: 1, Limit: instance.NoLimit}}}
		for range 20 {
			in.Kinds = append(in.Kinds, instance.Kind{
				L: 20 + r.Int64N(140), W: 20 + r.Int64N(100), Demand: 10, Orientations: []instance.Orientation{instance.Upright},
			})
		}
		in.Prepare()
		with += best(in, true)
		without += best(in, false)
	}
	t.Logf("%d pieces, %d without correction", with, without)
	if with >= without {
		t.Errorf("%d pieces, %d without correction", with, without)
	}
}

func TestStepsOfFillingAllocateNothing(t *testing.T) {
	e := newEnv(sampleInstance(rand.New(rand.NewPCG(3, 0))), false)
	f := newFiller(e, 0, 1)
	demand, values := make([]int, len(e.kinds)), make([]int64, len(e.kinds))
	for k, kd := range e.in.Kinds {
		demand[k], values[k] = kd.Demand, e.kinds[k].area
	}
	f.start(demand, values)
	step := func() { f.accept(f.tryStep()) }
	for range 2000 {
		step()
	}
	if n := testing.AllocsPerRun(500, step); n > 0.1 {
		t.Errorf("%v allocations a step", n)
	}
}
