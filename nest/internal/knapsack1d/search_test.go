package knapsack1d

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// sample is a small knapsack.
func sample(r *rand.Rand) (s *Search, values []int64) {
	length := 1 + r.Int64N(60)
	var items []Item
	for range 1 + r.IntN(6) {
		items = append(items, Item{Size: 1 + r.Int64N(25), Count: r.IntN(4)})
		values = append(values, r.Int64N(30))
	}
	return New(length, items), values
}

// rows enumerates all rows of a search.
func rows(s *Search, yield func(times []int, room int64)) {
	times := make([]int, len(s.items))
	var choose func(i int, room int64)
	choose = func(i int, room int64) {
		if i == len(s.items) {
			yield(times, room)
			return
		}
		for n := 0; n <= s.items[i].Count && int64(n)*s.items[i].Size <= room; n++ {
			times[i] = n
			choose(i+1, room-int64(n)*s.items[i].Size)
		}
		times[i] = 0
	}
	choose(0, s.length)
}

func worth(times []int, values []int64) (worth int64) {
	for i, n := range times {
		worth += int64(n) * values[i]
	}
	return worth
}

// solvers are both ways to find the best row.
var solvers = map[string]func(s *Search, values []int64, above int64){
	"looking": func(s *Search, values []int64, above int64) { s.Solve(values, above) },
	"table": func(s *Search, values []int64, above int64) {
		s.sortItems(values)
		s.value, s.found = above, false
		clear(s.best)
		s.table.cells(s)
		s.table.solve(s)
	},
}

func TestBestAgainstAllRows(t *testing.T) {
	for name, solve := range solvers {
		t.Run(name, func(t *testing.T) {
			for seed := range uint64(3000) {
				s, values := sample(rand.New(rand.NewPCG(seed, 1)))
				best := int64(0)
				rows(s, func(times []int, _ int64) { best = max(best, worth(times, values)) })
				for _, above := range []int64{0, best - 1, best} {
					if above < 0 {
						continue
					}
					solve(s, values, above)
					value, ok := s.Best()
					if ok != (best > above) || ok && value != best || s.Bound() != max(best, above) {
						t.Fatalf("seed %d: %d, %v above %d, no more than %d; the best is %d", seed, value, ok, above, s.Bound(), best)
					}
					if !ok {
						continue
					}
					var size int64
					for i, it := range s.items {
						if s.Times(i) > it.Count {
							t.Fatalf("seed %d: item %d %d times of %d", seed, i, s.Times(i), it.Count)
						}
						size += int64(s.Times(i)) * it.Size
					}
					if size > s.length || worth(s.best, values) != value {
						t.Fatalf("seed %d: %v is %d long and worth %d", seed, s.best, size, worth(s.best, values))
					}
				}
			}
		})
	}
}

func TestListAgainstAllRows(t *testing.T) {
	for seed := range uint64(3000) {
		r := rand.New(rand.NewPCG(seed, 2))
		s, values := sample(r)
		above := r.Int64N(40)
		var want, got [][]int
		rows(s, func(times []int, room int64) {
			for i, it := range s.items {
				if times[i] < it.Count && it.Size <= room {
					return
				}
			}
			if worth(times, values) > above {
				want = append(want, slices.Clone(times))
			}
		})
		_, all := s.List(values, above, 1<<20, func(times []int) bool {
			got = append(got, slices.Clone(times))
			return true
		})
		slices.SortFunc(got, slices.Compare)
		slices.SortFunc(want, slices.Compare)
		if !all || !slices.EqualFunc(got, want, slices.Equal) {
			t.Fatalf("seed %d: %v, want %v, all %v", seed, got, want, all)
		}
	}
}

// With too many rows to try, dynamic programming decides, or an upper bound remains. The table
// for the short length gives the optimum of one a thousand times as long.
func TestDynamicProgrammingTakesOver(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 3))
	const length, longer = 60_000, maxLength // so that there is no table
	var items, long []Item
	var values []int64
	for range 150 {
		it := Item{Size: 2 * (length/24 + r.Int64N(length/12)), Count: 1 + r.IntN(2)}
		items = append(items, it)
		long = append(long, Item{Size: it.Size * longer, Count: it.Count})
		values = append(values, it.Size) // all sizes are even, the board is odd: none fills it
	}
	s := New(length-1, items)
	steps := s.Solve(values, 0)
	best, _ := s.Best()
	if s.table.cells(s) > steps || s.Bound() != best {
		t.Fatalf("%d steps without a table: nothing is tested", steps)
	}
	solvers["table"](s, values, 0)
	if again, _ := s.Best(); again != best {
		t.Errorf("worth %d; the table alone says %d", best, again)
	}
	s = New((length-1)*longer, long)
	s.Solve(values, 0)
	if value, ok := s.Best(); !ok || value > best || s.Bound() < best {
		t.Errorf("long board: best %d, no more than %d; the optimum is %d", value, s.Bound(), best)
	}
}

func TestLimit(t *testing.T) {
	s := New(10, []Item{{Size: 5, Count: 2}, {Size: 3, Count: 1}})
	s.Limit(func(item int) int { return 1 - item })
	s.Solve([]int64{5, 9}, 0)
	if value, _ := s.Best(); value != 5 {
		t.Errorf("worth %d, want 5", value)
	}
}
