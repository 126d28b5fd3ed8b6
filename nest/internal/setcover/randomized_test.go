package setcover

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// loose is a task of more kinds in more pieces, with patterns of two or three of them, so that
// its relaxation is weak.
func loose(seed uint64) task {
	r := rand.New(rand.NewPCG(seed, 11))
	t := task{demand: make([]int, 6+r.IntN(4)), pieces: []int{2 + r.IntN(3), r.IntN(3)}}
	for k := range t.demand {
		t.demand[k] = 1 + r.IntN(3)/2
	}
	for range 2*minRelaxed + r.IntN(minRelaxed) {
		p := Pattern{Stock: r.IntN(2)}
		for _, k := range r.Perm(len(t.demand))[:2+r.IntN(2)] {
			p.Counts = append(p.Counts, Count{k, 1})
		}
		t.patterns = append(t.patterns, p)
	}
	t.prices = []Prices{{Values: make([]int64, len(t.demand)), Capacity: make([]int64, 2)}}
	return t
}

// solves reports a fault in a solution.
func (task task) solves(t *testing.T, seed uint64, patterns []Pattern, chosen []int) {
	t.Helper()
	demand, pieces := slices.Clone(task.demand), slices.Clone(task.pieces)
	for _, n := range chosen {
		pieces[patterns[n].Stock]--
		for _, c := range patterns[n].Counts {
			demand[c.Kind] -= c.Times
		}
	}
	if slices.Max(demand) > 0 || slices.Min(pieces) < 0 {
		t.Fatalf("seed %d: %v is no solution", seed, chosen)
	}
}

// A randomized search finds a solution exactly if there is one: with cuts or without, with a
// restart after each relaxation, or with the cuts of another search. Portions do not change its
// course.
func TestRandomizedSearchFindsSolutions(t *testing.T) {
	can, relaxed, withSets, anew := 0, 0, 0, 0
	for seed := range uint64(6000) {
		task := draw(seed)
		if seed%2 == 0 {
			task = loose(seed)
		}
		inOrder := New(task.demand, task.pieces, task.patterns, task.prices)
		inOrder.Advance(math.MaxInt64)
		_, want := inOrder.Solution()
		if want {
			can++
		}
		var cuts *Cuts
		for try := range 4 {
			s := New(task.demand, task.pieces, task.patterns, task.prices)
			s.Randomize(seed+uint64(try), nil)
			if try%2 == 0 {
				s.SeparateCuts()
			}
			s.WarmStart(nil, cuts)
			if try >= 2 {
				s.randomized.restartAt = 1
			}
			for done := false; !done; {
				portion := int64(math.MaxInt64)
				if try == 3 {
					portion = 1
				}
				if _, done = s.Advance(portion); s.stack[0].lpPrices.cuts.size > 0 {
					withSets++
				}
			}
			anew += s.randomized.runs - 1
			relaxed += min(1, s.relaxations)
			chosen, ok := s.Solution()
			if ok != want || s.Infeasible() == want {
				t.Fatalf("seed %d, try %d: found %v, impossible %v; in order %v", seed, try, ok, s.Infeasible(), want)
			}
			if ok {
				task.solves(t, seed, task.patterns, chosen)
			}
			if try == 0 {
				cuts = s.Cuts()
			}
		}
	}
	if can < 1000 || relaxed < 3000 || withSets < 200 || anew < 1000 {
		t.Errorf("%d have a solution, %d had a relaxation, %d cuts, %d restarts: too one-sided a test", can, relaxed, withSets, anew)
	}
}

// Patterns of the callback alone make a solution. They follow the patterns of the search, and
// each is once in the root's list.
func TestCallbackPatternsJoinSolutions(t *testing.T) {
	found, sought := 0, 0
	for seed := range uint64(500) {
		task := loose(seed)
		exact := New(task.demand, task.pieces, task.patterns, task.prices)
		exact.Advance(math.MaxInt64)
		if _, ok := exact.Solution(); !ok {
			continue
		}
		sought++
		known := task.patterns[:len(task.patterns)/4]
		before := slices.Clone(task.patterns)
		all := slices.Clone(known)
		callback := func(stock int, demand []int, values []int64, bonus *CutBonus, above int64) (made []Pattern, work int64) {
			for _, p := range task.patterns[len(known):] {
				if p.Stock != stock {
					continue
				}
				q := Pattern{Stock: stock}
				var worth int64
				for _, c := range p.Counts {
					if n := min(c.Times, demand[c.Kind]); n > 0 {
						q.Counts = append(q.Counts, Count{c.Kind, n})
						worth += int64(n) * values[c.Kind]
					}
				}
				if worth > above {
					made = append(made, q)
				}
			}
			made = made[:min(3, len(made))]
			all = append(all, made...)
			return made, 1
		}
		s := New(task.demand, task.pieces, known, task.prices)
		s.Randomize(seed, callback)
		for done := false; !done; {
			_, done = s.Advance(1)
			if slices.Max(s.randomized.scores) > 0 {
				t.Fatalf("seed %d: scores outlive their node", seed)
			}
			list := map[int32]bool{}
			for _, o := range s.stack[0].options {
				if list[o.pattern] {
					t.Fatalf("seed %d: pattern %d is on the list twice", seed, o.pattern)
				}
				list[o.pattern] = true
			}
		}
		if chosen, ok := s.Solution(); ok {
			task.solves(t, seed, all, chosen)
			found++
		}
		for n, p := range before {
			if !slices.Equal(p.Counts, task.patterns[n].Counts) {
				t.Fatalf("seed %d: pattern %d of others was overwritten", seed, n)
			}
		}
	}
	if found < sought*9/10 || sought < 100 {
		t.Errorf("%d of %d tasks that can be done were", found, sought)
	}
}
