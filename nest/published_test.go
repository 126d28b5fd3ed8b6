package nest

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
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

// BenchmarkPublished plans every instance of a set for a fixed time on one
// lane and reports the sum of costs. SAWBILL_SET names the set (class),
// SAWBILL_TURN=1 turns parts, SAWBILL_SECONDS is the time for each.
func BenchmarkPublished(b *testing.B) {
	set := os.Getenv("SAWBILL_SET")
	if set == "" {
		set = "class"
	}
	seconds := 100 * time.Millisecond
	if s, err := time.ParseDuration(os.Getenv("SAWBILL_SECONDS")); err == nil {
		seconds = s
	}
	turnable := os.Getenv("SAWBILL_TURN") == "1"
	pub := readPublished(b, set)
	for b.Loop() {
		var cost, lower, steps, proven int64
		sums := map[string]int64{}
		for _, in := range pub.Instances {
			p := in.problem(turnable)
			ctx, cancel := context.WithTimeout(context.Background(), seconds)
			plan, err := Solve(ctx, p, Options{Lanes: 1})
			cancel()
			if err != nil {
				b.Fatal(err)
			}
			if err := Verify(p, plan); err != nil {
				b.Fatal(in.Name, err)
			}
			cost += plan.Cost
			lower += in.lower(turnable)
			steps += plan.Iterations
			if plan.Proven() {
				proven++
			}
			sums[strings.Join(strings.Split(in.Name, "-")[:2], "-")] += plan.Cost - in.lower(turnable)
		}
		b.ReportMetric(float64(cost), "cost")
		b.ReportMetric(float64(lower), "lower")
		b.ReportMetric(float64(proven), "proven")
		b.ReportMetric(float64(steps), "steps")
		b.Log(sums)
	}
}
