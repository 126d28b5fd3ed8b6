package colgen

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
	"sawbill/nest/internal/search"
)

// randomInstance draws stock of one to three sizes and some forty parts.
func randomInstance(r *rand.Rand) *instance.Instance {
	in := &instance.Instance{Stages: instance.NoLimit}
	for range 1 + r.IntN(3) {
		in.Stock = append(in.Stock, instance.Stock{
			L: int64(150 + r.IntN(100)), W: int64(100 + r.IntN(50)),
			Price: int64(10 + r.IntN(20)), Limit: []int{instance.NoLimit, 2 + r.IntN(3)}[r.IntN(2)],
		})
	}
	in.Stock[0].Limit = instance.NoLimit
	for range 2 + r.IntN(8) {
		k := instance.Kind{L: int64(20 + r.IntN(100)), W: int64(20 + r.IntN(80)), Demand: 1 + r.IntN(9)}
		lie := instance.Orientation(1 + 2*r.IntN(2))
		for range in.Stock {
			k.Orientations = append(k.Orientations, lie)
		}
		in.Kinds = append(in.Kinds, k)
	}
	in.Prepare()
	return in
}

// However little work the grids may take, the bound is at most that of exact grids, and at
// least that of areas. Every pattern fits.
func TestCoarseGridsProveNoMoreThanExactOnes(t *testing.T) {
	raised := 0
	for seed := range uint64(60) {
		in := randomInstance(rand.New(rand.NewPCG(seed, 1)))
		area := lowerbound.New(in, nil).Value()
		exact, reached := prove(t, in, 1<<28, seed)
		for _, most := range []int64{1 << 9, 1 << 12, 1 << 15} {
			got, _ := prove(t, in, most, seed)
			if got > exact {
				t.Fatalf("seed %d: %d with at most %d comparisons, exact grids prove %d", seed, got, most, exact)
			}
			if got > area {
				raised++
			}
		}
		if exact > reached {
			t.Fatalf("seed %d: %d is proven, a plan costs %d", seed, exact, reached)
		}
	}
	if raised < 10 {
		t.Errorf("coarse grids raised the bound above that of areas %d times only", raised)
	}
}

// prove runs a generator to its end, and searches for a plan.
func prove(t *testing.T, in *instance.Instance, most int64, seed uint64) (floor, cost int64) {
	t.Helper()
	f := lowerbound.New(in, nil)
	s := search.New(in, f.Value(), seed, 1, nil)
	g := New(in, f, most, seed, nil, nil)
	if g == nil {
		return f.Value(), s.Best().Cost.Price
	}
	g.AddPlan(s.Best())
	for n := 0; !g.done; n++ {
		if n > 10_000 {
			t.Fatalf("seed %d: no end", seed)
		}
		g.Work(1 << 20)
	}
	for _, p := range g.columns.patterns {
		if st := in.Stock[p.Stock]; p.Root.L != st.L || p.Root.W != st.W {
			t.Fatalf("seed %d: a pattern %d x %d of stock %d x %d", seed, p.Root.L, p.Root.W, st.L, st.W)
		}
	}
	return f.Value(), s.Best().Cost.Price
}

// With many sizes in small units, coarse grids price first and finer ones later. The bound lies
// between areas and a plan.
func TestGridsBecomeFiner(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 2))
	in := &instance.Instance{Stages: instance.NoLimit}
	in.Stock = []instance.Stock{{L: 24432, W: 12232, Price: 100, Limit: instance.NoLimit}}
	for range 40 {
		in.Kinds = append(in.Kinds, instance.Kind{
			L: 3000 + r.Int64N(9000), W: 1500 + r.Int64N(5000), Demand: 50, Orientations: []instance.Orientation{instance.Upright},
		})
	}
	in.Prepare()
	f := lowerbound.New(in, nil)
	first := f.Value()
	s := search.New(in, first, 1, 1, nil)
	g := New(in, f, 1<<28, 1, nil, nil)
	g.AddPlan(s.Best())
	if g.grids.outer == nil {
		t.Fatal("the grids are exact at once")
	}
	for n := 0; g.grids.work <= firstWork*finer && !g.done; n++ {
		if n > 1000 {
			t.Fatal("the grids stay coarse")
		}
		g.Work(1 << 22)
	}
	if cost := s.Best().Cost.Price; f.Value() <= first || f.Value() > cost {
		t.Errorf("bound %d, without prices %d, a plan costs %d", f.Value(), first, cost)
	}
}

// The generator asks whether to stop after little work: a filling of a piece or a portion of the
// simplex method at most, and a step of pricing. Once it is told to, it returns.
func TestGeneratorAsksOften(t *testing.T) {
	const most = 2*portion + fillSteps*search.FillStepWork
	for seed := range uint64(4) {
		in := randomInstance(rand.New(rand.NewPCG(seed, 21)))
		f := lowerbound.New(in, nil)
		var g *Generator
		var last, longest int64
		asked, told := 0, 0
		stop := func() bool {
			if asked++; g != nil {
				longest = max(longest, last-g.work)
				last = g.work
			}
			if asked > 3000 {
				told++
			}
			return asked > 3000
		}
		if g = New(in, f, 1<<24, seed, nil, stop); g == nil {
			t.Fatal("no generator")
		}
		for range 60 {
			last = g.work + 1<<22
			g.Work(1 << 22)
		}
		if longest > most {
			t.Errorf("seed %d: %d of work between two questions, %d are enough", seed, longest, most)
		}
		if told > 200 {
			t.Errorf("seed %d: asked %d times after it was told to stop", seed, told)
		}
	}
}
