package nest

import (
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"testing"
	"time"
)

// The published instances are read from the folder that SAWBILL_BENCH names,
// or ../shared/bench beside the repository. Each file names its source.
type published struct {
	Set       string
	Source    string
	Instances []publishedInstance
}

type publishedInstance struct {
	Name  string
	Kind  string
	Stock []struct{ Length, Width, Cost, Count int64 }
	Parts []struct{ Length, Width, Count, Value int64 }
	Known struct {
		Best, Lower int64
		Rotated     struct{ Best, Lower int64 }
	}
}

func readPublished(t testing.TB, set string) published {
	t.Helper()
	dir := os.Getenv("SAWBILL_BENCH")
	if dir == "" {
		dir = filepath.Join("..", "..", "shared", "bench")
	}
	data, err := os.ReadFile(filepath.Join(dir, set+".json"))
	if errors.Is(err, fs.ErrNotExist) {
		t.Skipf("published instances are not here: set SAWBILL_BENCH to the folder with %s.json", set)
	}
	if err != nil {
		t.Fatal(err)
	}
	var p published
	if err := json.Unmarshal(data, &p); err != nil {
		t.Fatal(err)
	}
	return p
}

func (in publishedInstance) problem(turnable bool) Problem {
	var p Problem
	var from []Source
	for i, s := range in.Stock {
		p.Stock = append(p.Stock, Stock{Length: s.Length, Width: s.Width, Price: s.Cost, Count: int(s.Count)})
		from = append(from, Source{Stock: i, Upright: true, Turned: turnable})
	}
	for _, b := range in.Parts {
		p.Blanks = append(p.Blanks, Blank{Length: b.Length, Width: b.Width, Count: int(b.Count), From: from})
	}
	return p
}

func (in publishedInstance) lower(turnable bool) int64 {
	if turnable {
		return in.Known.Rotated.Lower
	}
	return in.Known.Lower
}

// TestPublishedSheets plans published instances briefly: every plan must pass
// Verify, none may cost less than is possible, no bound may be above what
// somebody reached.
func TestPublishedSheets(t *testing.T) {
	for _, set := range []string{"class", "assort"} {
		pub := readPublished(t, set)
		for i, in := range pub.Instances {
			if i%5 != 0 {
				continue
			}
			for _, turnable := range []bool{false, true} {
				t.Run(fmt.Sprintf("%s/turned=%v", in.Name, turnable), func(t *testing.T) {
					p := in.problem(turnable)
					plan, err := Solve(context.Background(), p, Options{Iterations: 300, Lanes: 1})
					if err != nil {
						t.Fatal(err)
					}
					if err := Verify(p, plan); err != nil {
						t.Fatal(err)
					}
					if lower := in.lower(turnable); plan.Cost < lower {
						t.Errorf("cost %d is below the proven %d", plan.Cost, lower)
					}
					best := in.Known.Best
					if turnable && in.Known.Rotated.Best > 0 {
						best = in.Known.Rotated.Best
					}
					if best > 0 && plan.Bound > best {
						t.Errorf("bound %d is above the %d that somebody reached", plan.Bound, best)
					}
				})
			}
		}
	}
}

// BenchmarkPublished plans every instance of a set within a fixed time on one
// processor and prints, for each group of instances, the sums of cost, of the
// bound proven, and of the bound that comes with the file. SAWBILL_SET names
// the set (class), SAWBILL_TURN=1 lets parts be turned, SAWBILL_SECONDS is the
// time for each (100ms).
func BenchmarkPublished(b *testing.B) {
	set := cmp.Or(os.Getenv("SAWBILL_SET"), "class")
	limit := 100 * time.Millisecond
	if s := os.Getenv("SAWBILL_SECONDS"); s != "" {
		var err error
		if limit, err = time.ParseDuration(s); err != nil {
			b.Fatal(err)
		}
	}
	turnable := os.Getenv("SAWBILL_TURN") == "1"
	pub := readPublished(b, set)
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for b.Loop() {
		var all tally
		var names []string
		groups := map[string]*tally{}
		for _, in := range pub.Instances {
			p := in.problem(turnable)
			ctx, cancel := context.WithTimeout(context.Background(), limit)
			plan, err := Solve(ctx, p, Options{Lanes: 1})
			cancel()
			if err != nil {
				b.Fatal(err)
			}
			if err := Verify(p, plan); err != nil {
				b.Fatal(in.Name, err)
			}
			name := group.ReplaceAllString(in.Name, "")
			if groups[name] == nil {
				groups[name] = &tally{}
				names = append(names, name)
			}
			groups[name].add(plan, in.lower(turnable))
			all.add(plan, in.lower(turnable))
		}
		for _, name := range names {
			b.Logf("%-12s %v", name, groups[name])
		}
		b.Logf("%-12s %v", "all", &all)
		b.ReportMetric(float64(all.cost), "cost")
		b.ReportMetric(float64(all.bound), "bound")
		b.ReportMetric(float64(all.proven), "proven")
		b.ReportMetric(float64(all.steps), "steps")
	}
}

// group cuts an instance's size and number off its name.
var group = regexp.MustCompile(`(-?[0-9]+)+$`)

// tally sums the results of a group of instances.
type tally struct {
	n, proven                 int
	cost, bound, lower, steps int64
}

func (t *tally) add(p Plan, lower int64) {
	t.n++
	t.cost += p.Cost
	t.bound += p.Bound
	t.lower += lower
	t.steps += p.Iterations
	if p.Proven() {
		t.proven++
	}
}

func (t *tally) String() string {
	return fmt.Sprintf("%4d instances  cost %8d  bound %8d  file's bound %8d  over %5.2f %%  proven %4d",
		t.n, t.cost, t.bound, t.lower, 100*float64(t.cost-t.bound)/float64(t.bound), t.proven)
}
