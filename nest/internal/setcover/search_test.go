package setcover

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// task is a random covering problem.
type task struct {
	demand, pieces []int
	patterns       []Pattern
	prices         []Prices
}

// draw makes a task whose prices leave little slack, if it has a solution.
func draw(seed uint64) task {
	r := rand.New(rand.NewPCG(seed, 3))
	var t task
	for range 1 + r.IntN(5) {
		t.demand = append(t.demand, 1+r.IntN(4))
	}
	for range 1 + r.IntN(2) {
		t.pieces = append(t.pieces, r.IntN(4))
	}
	patterns := r.IntN(12)
	if r.IntN(4) == 0 { // enough for a relaxation
		patterns += 2 * minRelaxed
	}
	for range patterns {
		p := Pattern{Stock: r.IntN(len(t.pieces))}
		for k := range t.demand {
			if n := r.IntN(4) - 1; n > 0 {
				p.Counts = append(p.Counts, Count{k, n})
			}
		}
		t.patterns = append(t.patterns, p)
	}
	for range 1 + r.IntN(3) {
		p := Prices{Capacity: make([]int64, len(t.pieces))}
		for range t.demand {
			p.Values = append(p.Values, int64(r.IntN(10)))
		}
		for _, q := range t.patterns {
			p.Capacity[q.Stock] = max(p.Capacity[q.Stock], worth(p.Values, q, t.demand))
		}
		t.prices = append(t.prices, p)
	}
	return t
}

func worth(values []int64, p Pattern, demand []int) (sum int64) {
	for _, c := range p.Counts {
		sum += values[c.Kind] * int64(min(c.Times, demand[c.Kind]))
	}
	return sum
}

// possible tries every choice of patterns.
func (t task) possible(first int, demand, pieces []int) bool {
	if !slices.ContainsFunc(demand, func(n int) bool { return n > 0 }) {
		return true
	}
	for n := first; n < len(t.patterns); n++ {
		p := t.patterns[n]
		if pieces[p.Stock] == 0 {
			continue
		}
		w, q := slices.Clone(demand), slices.Clone(pieces)
		q[p.Stock]--
		for _, c := range p.Counts {
			w[c.Kind] -= c.Times
		}
		if t.possible(n, w, q) {
			return true
		}
	}
	return false
}

// search runs a search to its end and compares its answer with every choice.
func (task task) search(t *testing.T, seed uint64) *Search {
	t.Helper()
	s := New(task.demand, task.pieces, task.patterns, task.prices)
	if n := len(task.patterns); n > 0 && seed%2 == 0 { // what comes first does not change the answer
		s.WarmStart([]int{int(seed) % n, int(seed/2) % n}, nil)
	}
	if _, done := s.Advance(math.MaxInt64); !done {
		t.Fatalf("seed %d: no end", seed)
	}
	want := task.possible(0, task.demand, task.pieces)
	chosen, ok := s.Solution()
	if ok != want || s.Infeasible() == want {
		t.Fatalf("seed %d: %v %v of %v by %v: found %v, impossible %v; every choice says %v",
			seed, task.pieces, task.demand, task.patterns, task.prices, ok, s.Infeasible(), want)
	}
	if !ok {
		return s
	}
	demand, pieces := slices.Clone(task.demand), slices.Clone(task.pieces)
	for _, n := range chosen {
		pieces[task.patterns[n].Stock]--
		for _, c := range task.patterns[n].Counts {
			demand[c.Kind] -= c.Times
		}
	}
	if slices.Max(demand) > 0 || slices.Min(pieces) < 0 {
		t.Fatalf("seed %d: %v is no solution", seed, chosen)
	}
	return s
}

// Prices that prune a node are right, whatever their values.
func TestPricesThatRuleOutAStateAreRight(t *testing.T) {
	out := 0
	for seed := range uint64(20_000) {
		task := draw(seed)
		s := New(task.demand, task.pieces, task.patterns, task.prices)
		s.Advance(1) // the options of the root
		nd := &s.stack[0]
		nd.options = nd.options[:0]
		for n := range task.patterns {
			nd.options = append(nd.options, option{pattern: int32(n)})
		}
		r := rand.New(rand.NewPCG(seed, 6))
		for range 4 {
			nd.lpPrices.Values = nd.lpPrices.Values[:0]
			for range task.demand {
				nd.lpPrices.Values = append(nd.lpPrices.Values, r.Int64N(10))
			}
			s.reusePrices(nd)
			if !s.pruned(nd) {
				continue
			}
			out++
			if task.possible(0, task.demand, task.pieces) {
				t.Fatalf("seed %d: values %v rule out what can be done", seed, nd.lpPrices.Values)
			}
		}
	}
	if out < 10_000 {
		t.Errorf("only %d times prices ruled a state out", out)
	}
}

func TestSearchEqualsEveryChoiceOfPatterns(t *testing.T) {
	can, relaxed := 0, 0
	for seed := range uint64(20_000) {
		task := draw(seed)
		s := task.search(t, seed)
		if s.relaxations > 0 {
			relaxed++
		}
		for _, n := range s.Support() {
			if n < 0 || n >= len(task.patterns) {
				t.Fatalf("seed %d: pattern %d of %d", seed, n, len(task.patterns))
			}
		}
		if _, ok := s.Solution(); ok {
			can++
		}
	}
	if can < 2000 || can > 18_000 {
		t.Errorf("%d of the tasks can be done: too one-sided a test", can)
	}
	if relaxed < 1000 {
		t.Errorf("only %d tasks had a relaxation", relaxed)
	}
}

func TestSearchInPortionsIsTheSame(t *testing.T) {
	portions := 0
	for seed := range uint64(2000) {
		task := draw(seed)
		s := New(task.demand, task.pieces, task.patterns, task.prices)
		s.Advance(math.MaxInt64)
		want, ok := s.Solution()
		s = New(task.demand, task.pieces, task.patterns, task.prices)
		for done := false; !done; portions++ {
			_, done = s.Advance(1)
		}
		if got, also := s.Solution(); also != ok || !slices.Equal(got, want) {
			t.Fatalf("seed %d: %v, %v in portions; %v, %v at once", seed, got, also, want, ok)
		}
	}
	if portions < 3000 {
		t.Errorf("only %d portions", portions)
	}
}

func TestNogoodsTellStatesApart(t *testing.T) {
	m := newNogoods(3)
	r := rand.New(rand.NewPCG(1, 1))
	known := map[[3]int]bool{}
	for range 20_000 {
		state := [3]int{r.IntN(20), 250 + r.IntN(20), r.IntN(20)}
		if got := m.has(state[:2], state[2:]); got != known[state] {
			t.Fatalf("%v: %v, want %v", state, got, known[state])
		}
		if r.IntN(2) == 0 {
			m.add(state[:2], state[2:])
			known[state] = true
		}
	}
}

// A node of many kinds exceeds its portion only a little: the search cannot be interrupted
// before it returns.
func TestRelaxationsEndInTime(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 4))
	demand, pieces := make([]int, 250), []int{40}
	prices := Prices{Capacity: []int64{0}}
	for k := range demand {
		demand[k] = 1
		prices.Values = append(prices.Values, int64(50+r.IntN(50)))
	}
	var patterns []Pattern
	for range 8000 {
		p := Pattern{}
		for k := r.IntN(60); k < len(demand); k += 10 + r.IntN(50) {
			p.Counts = append(p.Counts, Count{k, 1})
		}
		patterns = append(patterns, p)
		prices.Capacity[0] = max(prices.Capacity[0], worth(prices.Values, p, demand))
	}
	s := New(demand, pieces, patterns, []Prices{prices})
	left, _ := s.Advance(1)
	if s.relaxations == 0 || -left > 2*maxRelaxationWork {
		t.Errorf("%d relaxations, overdrawn by %d", s.relaxations, -left)
	}
}
