package lowerbound

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
)

// cheapest tries all counts up to most of each stock.
func cheapest(prices []int64, limits []int, cuts []Inequality, short [][]int, most int) int64 {
	best := int64(math.MaxInt64)
	counts := make([]int, len(prices))
	var try func(s int, spent int64)
	try = func(s int, spent int64) {
		if s == len(prices) {
			if spent < best && !slices.ContainsFunc(cuts, func(c Inequality) bool { return !c.holds(counts) }) &&
				!slices.ContainsFunc(short, func(limits []int) bool { return atMost(counts, limits) }) {
				best = spent
			}
			return
		}
		for n := 0; n <= min(most, limits[s]); n++ {
			counts[s] = n
			try(s+1, spent+int64(n)*prices[s])
		}
		counts[s] = 0
	}
	try(0, 0)
	return best
}

func TestBoundEqualsExhaustiveSearch(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	for i := range 800 {
		in := &instance.Instance{Stages: instance.NoLimit}
		var orientations []instance.Orientation
		for range 1 + r.IntN(4) {
			in.Stock = append(in.Stock, instance.Stock{
				L: int64(1 + r.IntN(6)), W: int64(1 + r.IntN(6)), Price: int64(r.IntN(30)),
				Limit: []int{instance.NoLimit, r.IntN(4)}[r.IntN(2)],
			})
			orientations = append(orientations, instance.Upright)
		}
		in.Kinds = []instance.Kind{{L: 1, W: 1, Demand: r.IntN(60), Orientations: orientations}}
		in.Prepare()
		var limits []int
		for _, st := range in.Stock {
			limits = append(limits, st.Limit)
		}
		f := New(in, nil)
		cuts := areaInequalities(in)
		for range r.IntN(4) {
			c := Inequality{RHS: int64(r.IntN(50))}
			for range in.Stock {
				c.Coef = append(c.Coef, int64(r.IntN(12)))
			}
			cuts = append(cuts, c)
			f.Add(c)
		}
		var short [][]int
		for range r.IntN(6) {
			var counts []int
			for s := range in.Stock {
				n := r.IntN(4)
				if f.counts != nil && r.IntN(2) == 0 { // exclude the bound's counts
					n = f.counts[s]
				}
				counts = append(counts, n)
			}
			before := f.Value()
			f.Exclude(counts)
			if short = append(short, counts); f.Value() < before {
				t.Fatalf("case %d: %d after %d", i, f.Value(), before)
			}
		}
		want := cheapest(f.prices, limits, cuts, short, 60)
		if want == math.MaxInt64 {
			continue // infeasible: any bound holds
		}
		if f.Value() > want || f.counts != nil && f.Value() != want {
			t.Fatalf("case %d: bound %d of %v, exhaustive search finds %d (%v, none within %v)", i, f.Value(), in.Stock, want, cuts, short)
		}
	}
}

// If no plan stays within some counts, the bound goes on to the next dearer ones, and so on.
func TestBoundSkipsExcludedCounts(t *testing.T) {
	in := &instance.Instance{
		Stock: []instance.Stock{
			{L: 10, W: 10, Price: 10, Limit: instance.NoLimit},
			{L: 10, W: 5, Price: 6, Limit: instance.NoLimit},
			{L: 10, W: 2, Limit: 1, OnHand: true},
		},
		Kinds: []instance.Kind{{L: 1, W: 1, Demand: 201, Orientations: []instance.Orientation{instance.Upright, instance.Upright, instance.Upright}}},
	}
	in.Prepare()
	f := New(in, nil)
	for _, want := range [][]int{{2, 0, 1}, {1, 2, 1}, {0, 4, 1}, {2, 1, 0}, {1, 3, 0}} {
		if !slices.Equal(f.Counts(), want) {
			t.Fatalf("the bound %d has counts %v, want %v", f.Value(), f.Counts(), want)
		}
		f.Exclude([]int{want[0], want[1], 1}) // stock on hand is free
	}
	if f.Value() != 30 {
		t.Errorf("bound %d, want 30: three sheets, or five halves", f.Value())
	}
}

// Blanks that only the dear stock can hold must be paid for there.
func TestBoundCountsStockThatOnlySomeCanHold(t *testing.T) {
	in := &instance.Instance{
		Stock: []instance.Stock{
			{L: 10, W: 10, Price: 1, Limit: instance.NoLimit},
			{L: 20, W: 10, Price: 50, Limit: instance.NoLimit},
		},
		Kinds: []instance.Kind{
			{L: 20, W: 5, Demand: 3, Orientations: []instance.Orientation{0, instance.Upright}},
			{L: 5, W: 5, Demand: 13, Orientations: []instance.Orientation{instance.Upright, instance.Upright}},
		},
	}
	in.Prepare()
	// Three long ones fill 300 of two long pieces' 400, at 100; the 13 others
	// take the 100 that is left there and 225 more: three pieces at 1.
	if f := New(in, nil); f.Value() != 103 {
		t.Errorf("bound %d, want 103", f.Value())
	}
}

// With one piece for sale where five are needed, the bound is the cost of five.
func TestBoundOfTooLittleStockIsThatOfEnough(t *testing.T) {
	in := &instance.Instance{
		Stock: []instance.Stock{{L: 10, W: 10, Price: 7, Limit: 1}},
		Kinds: []instance.Kind{{L: 10, W: 6, Demand: 5, Orientations: []instance.Orientation{instance.Upright}}},
	}
	in.Prepare()
	if f := New(in, nil); f.Value() != 35 {
		t.Errorf("bound %d, want 35", f.Value())
	}
}

// Candidates are in order of price, the bound's own counts first. They cost less than the given
// price and satisfy every inequality.
func TestCandidates(t *testing.T) {
	f := &Bound{
		prices: []int64{50, 30}, limits: []int{instance.NoLimit, 3}, order: []int{0, 1},
		inequalities: []Inequality{{Coef: []int64{5, 3}, RHS: 11}},
	}
	f.solve()
	got := f.Candidates(200, 10)
	want := [][]int{{1, 2}, {2, 1}, {3, 0}}
	if !slices.EqualFunc(got, want, slices.Equal[[]int]) {
		t.Errorf("%v, want %v", got, want)
	}
	if few := f.Candidates(130, 10); len(few) != 1 || len(f.Candidates(200, 2)) != 2 {
		t.Errorf("%v below 130", few)
	}
}

// An inequality with a tiny coefficient asks for billions of a stock. The search for counts
// gives up early, and its result is still a lower bound.
func TestBoundGivesUpWhereAnInequalityAsksForBillions(t *testing.T) {
	in := &instance.Instance{
		Stages: instance.NoLimit,
		Stock:  []instance.Stock{{L: 5, W: 5, Price: 7, Limit: instance.NoLimit}, {L: 3, W: 3, Price: 4, Limit: instance.NoLimit}},
		Kinds:  []instance.Kind{{L: 1, W: 1, Demand: 30, Orientations: []instance.Orientation{instance.Upright, instance.Upright}}},
	}
	in.Prepare()
	f := New(in, nil)
	before := f.Value()
	f.Add(Inequality{RHS: 1 << 34, Coef: []int64{1, 1 << 33}}) // two of the second, or very many of the first
	if f.Value() < before || f.Value() > 12 {                  // one of the first and two of the second, or two of the first
		t.Errorf("the bound was %d and is %d", before, f.Value())
	}
}
