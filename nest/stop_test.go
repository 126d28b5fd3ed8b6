package nest

import (
	"context"
	"runtime"
	"sync/atomic"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// varied are problems in which every method of the solver has its turn.
func varied() map[string]Problem {
	return map[string]Problem{
		"mixed": mixedSheets(47, false), "workshop": workshopJob(2), "staged": workshopJob(7), "boards": benchLumber(3),
		"many parts": manyParts(300),
	}
}

// Once the signal is on, each function that is under way may ask once more, and nobody goes on
// working: a search in full asks tens of thousands of times.
func TestSolverStopsAtTheSignal(t *testing.T) {
	const underWay = 64
	for name, p := range varied() {
		subproblems, unplaced, err := presolve(&p)
		if err != nil {
			t.Fatal(err)
		}
		// The signal is on from a later question each time, so that it finds every method at work.
		for most := int64(1); most < 1<<13; most *= 7 {
			var asked atomic.Int64
			stop := func() bool { return asked.Add(1) > most }
			s := newSolver(stop, subproblems, unplaced, Options{Walks: 1, Workers: 1})
			s.run(nil)
			if late := asked.Load() - most; late > underWay {
				t.Errorf("%s: asked %d times after the signal was on, at question %d", name, late, most)
			}
			if err := Verify(p, s.plan()); err != nil {
				t.Errorf("%s, stopped at question %d: %v", name, most, err)
			}
		}
	}
}

// Who listens gets plans that hold, each no worse than the one before, and the last one is what
// Solve returns.
func TestListenerGetsEachBetterPlan(t *testing.T) {
	for seed := range uint64(40) {
		p := smallMixed(seed)
		var last Plan
		calls := 0
		plan, err := Solve(context.Background(), p, Options{Iterations: 600, Seed: seed, Progress: func(now Progress) {
			if !now.Better {
				if calls == 0 {
					t.Errorf("seed %d: the first plan is no news", seed)
				}
				return
			}
			next := now.Plan()
			if err := Verify(p, next); err != nil {
				t.Errorf("seed %d: %v", seed, err)
			}
			if next.Cost != now.Cost || next.Bound != now.Bound || next.Complete() != now.Complete {
				t.Errorf("seed %d: %+v and a plan of %d, bound %d", seed, now, next.Cost, next.Bound)
			}
			if calls > 0 && last.Complete() && (next.Cost > last.Cost || !next.Complete()) {
				t.Errorf("seed %d: %d after %d", seed, next.Cost, last.Cost)
			}
			last, calls = next, calls+1
		}})
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(last.Layouts, plan.Layouts); diff != "" {
			t.Errorf("seed %d: %s", seed, diff)
		}
	}
}

// smallMixed is one of the mixed problems with its first eight blanks.
func smallMixed(seed uint64) Problem {
	p := mixedSheets(int(seed), seed%2 == 0)
	p.Blanks = p.Blanks[:8]
	return p
}

// A search that has ended leaves nothing behind but its plan.
func TestNothingOfASearchStaysInMemory(t *testing.T) {
	inUse := func() uint64 {
		runtime.GC()
		runtime.GC() // what finalizers held
		var m runtime.MemStats
		runtime.ReadMemStats(&m)
		return m.HeapAlloc
	}
	before := inUse()
	plan, err := Solve(context.Background(), differentParts(60), Options{Iterations: 3000})
	if err != nil {
		t.Fatal(err)
	}
	if after := inUse(); after > before+1<<20 {
		t.Errorf("%d KiB more are in use", (after-before)>>10)
	}
	runtime.KeepAlive(plan)
}

// BenchmarkLateness is how late Solve returns after the end of its context, in milliseconds:
// the share of trials over 10 ms, and the latest. Only on a quiet machine does it say anything.
func BenchmarkLateness(b *testing.B) {
	problems := varied()
	problems["1,000 parts"] = manyParts(1000)
	for name, p := range problems {
		b.Run(name, func(b *testing.B) {
			var latest time.Duration
			trials, over := 0, 0
			for b.Loop() {
				for limit := 20 * time.Millisecond; limit < time.Second; limit = limit * 3 / 2 {
					ctx, cancel := context.WithTimeout(context.Background(), limit)
					plan, err := Solve(ctx, p, Options{})
					end, _ := ctx.Deadline()
					late := time.Since(end)
					cancel()
					if err != nil {
						b.Fatal(err)
					}
					if late < 0 && plan.Proven() {
						break // no longer limit is used up
					}
					trials++
					if latest = max(latest, late); late > 10*time.Millisecond {
						over++
					}
				}
			}
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(float64(trials), "trials")
			b.ReportMetric(float64(over), "over-10ms")
			b.ReportMetric(latest.Seconds()*1e3, "latest-ms")
		})
	}
}

// differentParts is a problem of n parts of n sizes, for the sheets of manyParts.
func differentParts(n int) Problem {
	p := manyParts(10 * n)
	for i := range p.Blanks {
		p.Blanks[i].Count = 1
	}
	return p
}

// BenchmarkMemory is what the process holds once 60 parts of different sizes are planned, and a
// second later.
func BenchmarkMemory(b *testing.B) {
	p := differentParts(60)
	for b.Loop() {
		ctx, cancel := context.WithTimeout(context.Background(), time.Second)
		if _, err := Solve(ctx, p, Options{}); err != nil {
			b.Fatal(err)
		}
		cancel()
	}
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	b.ReportMetric(float64(m.HeapSys-m.HeapReleased)/(1<<20), "held-MiB")
	time.Sleep(time.Second)
	runtime.ReadMemStats(&m)
	b.ReportMetric(float64(m.HeapSys-m.HeapReleased)/(1<<20), "held-after-1s-MiB")
}
