package restrictedmaster

import (
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/pool"
)

// job is a known plan: the instance demands the parts of random layouts of two sizes of stock,
// and the pool has these layouts among others.
type job struct {
	in     *instance.Instance
	pool   *pool.Pool
	counts []int // of the plan
}

func draw(seed uint64) job {
	r := rand.New(rand.NewPCG(seed, 5))
	in := &instance.Instance{Stages: instance.NoLimit, Stock: []instance.Stock{
		{L: 120, W: 60, Price: 100, Limit: instance.NoLimit}, {L: 60, W: 60, Price: 55, Limit: instance.NoLimit},
	}}
	for k := range 6 {
		lies := []instance.Orientation{instance.Upright, instance.Upright}
		in.Kinds = append(in.Kinds, instance.Kind{L: int64(20 + 4*k), W: 20, Orientations: lies})
	}
	in.Prepare()
	j := job{in, pool.New(in), make([]int, 2)}
	for n := range 40 {
		s := r.IntN(2)
		root := three(r, in, s)
		if n < 4 {
			j.counts[s]++
			counts := make([]int, len(in.Kinds))
			root.CountParts(counts)
			for k, n := range counts {
				in.Kinds[k].Demand += n
			}
		}
		j.pool.Add(s, root)
	}
	return j
}

// three is a piece of stock ripped into three strips that are filled at random.
func three(r *rand.Rand, in *instance.Instance, s int) instance.Piece {
	st := in.Stock[s]
	root := instance.Piece{L: st.L, W: st.W, Dir: instance.Rip, Kind: instance.Leftover}
	for range 3 {
		strip := instance.Piece{L: st.L, W: 20, Dir: instance.Crosscut, Kind: instance.Leftover}
		left := st.L
		for {
			k := r.IntN(len(in.Kinds))
			if in.Kinds[k].L > left {
				break
			}
			left -= in.Kinds[k].L
			strip.Children = append(strip.Children, instance.Piece{L: in.Kinds[k].L, W: 20, Kind: k})
		}
		if left > 0 {
			strip.Children = append(strip.Children, instance.Piece{L: left, W: 20, Kind: instance.Leftover})
		}
		root.Children = append(root.Children, strip)
	}
	return root
}

func TestPlansAreMadeOfPoolPatterns(t *testing.T) {
	for seed := range uint64(300) {
		j := draw(seed)
		a := New(j.in, j.pool, 0, nil)
		a.SetTargets([][]int{j.counts})
		a.Work(1 << 28)
		plans := a.NewPlans()
		if len(plans) != 1 {
			t.Fatalf("seed %d: %d plans within %v", seed, len(plans), j.counts)
		}
		p := plans[0]
		counts, cut := make([]int, 2), make([]int, len(j.in.Kinds))
		var cost instance.Cost
		for _, l := range p.Layouts {
			counts[l.Stock]++
			cost = cost.Plus(j.in.CostOf(l.Stock), 1)
			l.Root.CountParts(cut)
			if !j.in.Allows(l.Stock, l.Root) {
				t.Fatalf("seed %d: %+v goes against the rules", seed, l.Root)
			}
		}
		for k, kd := range j.in.Kinds {
			if cut[k] != kd.Demand {
				t.Fatalf("seed %d: %d of kind %d, %d are wanted", seed, cut[k], k, kd.Demand)
			}
		}
		if !p.Complete() || p.Cost != cost || counts[0] > j.counts[0] || counts[1] > j.counts[1] {
			t.Fatalf("seed %d: %v of stock at %v, complete %v; want %v", seed, counts, p.Cost, p.Complete(), j.counts)
		}
	}
}

// Targets that are too small give no plan. They are tried again only when the pool has grown.
func TestTargetsAreTriedAgainWhenThePoolHasGrown(t *testing.T) {
	tried := 0
	for seed := range uint64(100) {
		j := draw(seed)
		all := j.pool.Snapshot
		h := pool.New(j.in)
		for n := 4; n < len(all.Patterns); n++ {
			h.Add(all.Patterns[n].Stock, all.Root(n))
		}
		a := New(j.in, h, 0, nil)
		a.SetTargets([][]int{j.counts})
		a.Work(1 << 28)
		if len(a.NewPlans()) > 0 {
			continue // there is one without these
		}
		tried++
		a.Work(1 << 28)
		if a.run.search != nil || len(a.NewPlans()) > 0 {
			t.Fatalf("seed %d: tried again though the pool has not grown", seed)
		}
		for n := range 4 {
			h.Add(all.Patterns[n].Stock, all.Root(n))
		}
		a.Work(1 << 28)
		if len(a.NewPlans()) != 1 {
			t.Fatalf("seed %d: no plan of the patterns added last", seed)
		}
	}
	if tried < 50 {
		t.Errorf("only %d jobs could not be done at first", tried)
	}
}

// Portions do not change the course.
func TestWorkInPortionsIsTheSame(t *testing.T) {
	for seed := range uint64(50) {
		j := draw(seed)
		once, often := New(j.in, j.pool, 0, nil), New(j.in, j.pool, 0, nil)
		once.SetTargets([][]int{j.counts})
		often.SetTargets([][]int{j.counts})
		once.Work(1 << 28)
		for range 1 << 19 {
			often.Work(1 << 9)
		}
		p, q := once.NewPlans(), often.NewPlans()
		if !slices.EqualFunc(p, q, func(a, b *instance.Plan) bool {
			return a.Cost == b.Cost && len(a.Layouts) == len(b.Layouts)
		}) {
			t.Fatalf("seed %d: %v at once, %v in portions", seed, p, q)
		}
	}
}

// A target of more stock than there is does not get it.
func TestPlansTakeNoMoreThanThereIs(t *testing.T) {
	for seed := range uint64(100) {
		j := draw(seed)
		for s := range j.in.Stock {
			j.in.Stock[s].Limit = 1
		}
		a := New(j.in, j.pool, 0, nil)
		a.SetTargets([][]int{j.counts})
		a.Work(1 << 28)
		for _, p := range a.NewPlans() {
			counts := make([]int, len(j.in.Stock))
			for _, l := range p.Layouts {
				counts[l.Stock]++
			}
			if slices.Max(counts) > 1 {
				t.Fatalf("seed %d: %v pieces of stock, there is one of each", seed, counts)
			}
		}
	}
}

// Portions of any size do not change the course with cuts or with a pricing callback either.
func TestSeparationAndPricingInPortionsAreTheSame(t *testing.T) {
	separated, made := 0, 0
	for seed := range uint64(12) {
		j := draw(seed)
		all := j.pool.Snapshot
		var runs []*Heuristic
		var plans []int
		for _, portion := range []int64{1 << 40, 1 << 12, 1<<20 + 1} {
			h := pool.New(j.in)
			a := New(j.in, h, seed, nil)
			a.SetTargets([][]int{j.counts})
			a.separateAt = 0
			for round := range 2 {
				for n := 4 * (1 - round); n < len(all.Patterns); n++ {
					h.Add(all.Patterns[n].Stock, all.Root(n))
				}
				a.startTarget()
				const most = 1 << 15 // which is too little for some
				a.run.workLeft = most
				before := a.workDone
				for {
					a.Work(portion)
					if a.run.search == nil {
						break
					}
					if plain := a.workDone - before - a.run.search.CutWork(); a.run.workLeft != most-plain {
						t.Fatalf("seed %d: %d of %d left after %d besides cuts", seed, a.run.workLeft, most, plain)
					}
					separated += int(min(1, a.run.search.CutWork()))
				}
			}
			made += len(a.unreported)
			runs = append(runs, a)
			plans = append(plans, len(a.NewPlans()))
		}
		for n, a := range runs[1:] {
			if a.workDone != runs[0].workDone || a.searches != runs[0].searches || len(a.unreported) != len(runs[0].unreported) || plans[n+1] != plans[0] {
				t.Fatalf("seed %d: %d work in %d searches made %d patterns; at once %d in %d made %d",
					seed, a.workDone, a.searches, len(a.unreported), runs[0].workDone, runs[0].searches, len(runs[0].unreported))
			}
		}
	}
	if separated == 0 || made == 0 {
		t.Errorf("%d portions with cuts, %d patterns made", separated, made)
	}
}

// Patterns that are not in the pool make plans. They obey the rules, meet the demand, and go to
// the pool.
func TestPlansAreMadeOfPricedPatterns(t *testing.T) {
	plans := 0
	for seed := range uint64(20) {
		j := draw(seed)
		h := pool.New(j.in)
		for n := range 3 { // one short of a plan
			h.Add(j.pool.Patterns[n].Stock, j.pool.Root(n))
		}
		a := New(j.in, h, seed, nil)
		a.targets.round = 1 // a round with the pricing callback
		area := int64(0)
		for _, kd := range j.in.Kinds {
			area += int64(kd.Demand) * kd.L * kd.W
		}
		squares := int(area/(60*60)) + 1 // hardly enough, so that pricing for these fails
		a.SetTargets([][]int{{0, squares}, {j.counts[0] + 1, j.counts[1] + 1}})
		a.Work(1 << 28)
		for _, p := range a.NewPlans() {
			plans++
			counts := make([]int, len(j.in.Kinds))
			for _, l := range p.Layouts {
				l.Root.CountParts(counts)
				if !j.in.Allows(l.Stock, l.Root) {
					t.Fatalf("seed %d: %+v goes against the rules", seed, l.Root)
				}
			}
			for k, kd := range j.in.Kinds {
				if counts[k] != kd.Demand {
					t.Fatalf("seed %d: %d of kind %d, %d are wanted", seed, counts[k], k, kd.Demand)
				}
			}
		}
		known := len(h.Patterns)
		a.NewPatterns(h.Add)
		if len(h.Patterns) == known {
			t.Fatalf("seed %d: no pattern was reported", seed)
		}
		a.NewPatterns(func(int, instance.Piece) { t.Fatalf("seed %d: a pattern is reported twice", seed) })
	}
	if plans < 15 {
		t.Errorf("only %d plans", plans)
	}
}
