package nest

import (
	"context"
	"fmt"
	"os"
	"regexp"
	"runtime"
	"strconv"
	"sync"
	"sync/atomic"
	"testing"
	"time"
)

// BenchmarkSheets plans series of problems, each problem on one processor, and
// reports sums for every group of a series and for all of it:
//
//	problems      how many
//	cost          of the plans
//	bound         proven for them here
//	file-bound    that comes with published instances; it need not know that
//	              cuts run edge to edge
//	known         what somebody reached, where that is known of each problem
//	proven        plans that none can undercut
//	over-%        cost over the greater of the two bounds
//	worst-%       the same of the worst plan
//	worst-sheets  the same in pieces of the dearest stock
//	s/problem     mean time taken
//	worst-s       the longest
//	proof-s       the longest until the cost was proven, where it was; what
//	              follows serves the secondary objectives
//	steps         of improvement
//	MiB           of memory that the process has taken by then
//
// The series are the sets in the folder of published instances and those that
// are generated here. -bench selects from them, -benchtime 1x plans each
// problem once, -v names the plans that are not proven. The environment says
// more:
//
//	SAWBILL_LIMIT  time for each problem, such as 20s; else the series' own
//	SAWBILL_STEPS  steps for each problem instead: the same figures on each run
//	SAWBILL_CORES  how many problems are planned side by side (1)
//
// A plan that is incomplete, fails Verify or contradicts what is known is an
// error.
func BenchmarkSheets(b *testing.B) {
	var all []series
	for _, set := range publishedSets(b, publishedSheets) {
		for _, lie := range lies {
			all = append(all, set.series(set.Set+"/"+lie.name, 2*time.Second, lie.turned))
		}
	}
	readHarness(b).run(b, append(all, generatedSheets()...))
}

// BenchmarkBoards is the same for boards that are crosscut only.
func BenchmarkBoards(b *testing.B) {
	var all []series
	for _, set := range publishedSets(b, publishedBoards) {
		all = append(all, set.series(set.Set, 5*time.Second, false))
	}
	readHarness(b).run(b, append(all, generatedBoards()...))
}

// run plans all series.
func (h harness) run(b *testing.B, all []series) {
	if _, err := os.Stat(publishedFolder()); err != nil {
		b.Run("published", func(b *testing.B) {
			b.Skipf("no published instances in %s: set SAWBILL_BENCH to their folder", publishedFolder())
		})
	}
	for _, s := range all {
		b.Run(s.name, func(b *testing.B) { h.series(b, s) })
	}
}

// series is a list of problems of one sort.
type series struct {
	name   string
	limit  time.Duration // for each
	trials []trial
}

// trial is a problem and what others know of it: a bound and what somebody
// reached, 0 where that is unknown.
type trial struct {
	name        string
	problem     Problem
	lower, best int64
}

// group is the trial's name without the number at its end.
func (t trial) group() string { return trailingNumbers.ReplaceAllString(t.name, "") }

var trailingNumbers = regexp.MustCompile(`(-?[0-9]+)+$`)

var lies = []struct {
	name   string
	turned bool
}{{"fixed", false}, {"turned", true}}

// series is a published set as a series.
func (p published) series(name string, limit time.Duration, turned bool) series {
	s := series{name: name, limit: limit}
	for _, in := range p.Instances {
		s.trials = append(s.trials, trial{in.Name, in.problem(turned), in.lower(turned), in.best(turned)})
	}
	return s
}

func generatedSheets() []series {
	var all []series
	for _, lie := range lies {
		s := series{name: "mixed/" + lie.name, limit: 5 * time.Second}
		for n := range mixedProblems {
			s.trials = append(s.trials, trial{name: mixedName(n), problem: mixedSheets(n, lie.turned)})
		}
		all = append(all, s)
	}
	jobs := series{name: "workshop", limit: 2 * time.Second}
	for n := range workshopJobs {
		jobs.trials = append(jobs.trials, trial{name: workshopName(n), problem: workshopJob(n)})
	}
	return append(all, jobs,
		series{"scale/1000", 10 * time.Second, []trial{{name: "parts", problem: manyParts(1000)}}},
		series{"scale/10000", 60 * time.Second, []trial{{name: "parts", problem: manyParts(10000)}}})
}

// harness says how problems are planned.
type harness struct {
	limit time.Duration // 0 is the series' own
	steps int64         // 0 is no limit
	cores int
}

func readHarness(b *testing.B) harness {
	h := harness{cores: 1}
	read := func(name string, parse func(string) error) {
		if s := os.Getenv(name); s != "" {
			if err := parse(s); err != nil {
				b.Fatalf("%s=%s: %v", name, s, err)
			}
		}
	}
	read("SAWBILL_LIMIT", func(s string) (err error) { h.limit, err = time.ParseDuration(s); return err })
	read("SAWBILL_STEPS", func(s string) (err error) { h.steps, err = strconv.ParseInt(s, 10, 64); return err })
	read("SAWBILL_CORES", func(s string) (err error) { h.cores, err = strconv.Atoi(s); return err })
	if h.cores < 1 {
		b.Fatalf("SAWBILL_CORES=%d: at least 1", h.cores)
	}
	return h
}

// series plans the groups of a series, each as a benchmark of its own, and
// reports the sums of those that were selected.
func (h harness) series(b *testing.B, s series) {
	if h.limit > 0 {
		s.limit = h.limit
	}
	var groups []string // in the order of the trials
	members := map[string][]trial{}
	for _, t := range s.trials {
		name := t.group()
		if members[name] == nil {
			groups = append(groups, name)
		}
		members[name] = append(members[name], t)
	}
	if len(groups) == 1 {
		groups, members = []string{"all"}, map[string][]trial{"all": s.trials}
	}
	var all tally
	for _, name := range groups {
		b.Run(name, func(b *testing.B) {
			var sum tally
			for b.Loop() {
				sum = h.plan(b, s.limit, members[name])
			}
			sum.report(b)
			all.join(sum)
		})
	}
	if len(groups) > 1 && all.problems > 0 {
		b.Run("all", func(b *testing.B) {
			for b.Loop() {
			}
			all.report(b)
		})
	}
}

// plan plans the trials, as many side by side as there are cores, and sums the
// results up in the order of the trials.
func (h harness) plan(b *testing.B, limit time.Duration, trials []trial) tally {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(h.cores))
	results := make([]result, len(trials))
	var next atomic.Int64
	var wg sync.WaitGroup
	for range h.cores {
		wg.Go(func() {
			for i := int(next.Add(1)) - 1; i < len(trials); i = int(next.Add(1)) - 1 {
				results[i] = h.one(limit, trials[i])
			}
		})
	}
	wg.Wait()
	var sum tally
	for i, r := range results {
		if r.err != nil {
			b.Errorf("%s: %v", trials[i].name, r.err)
			continue
		}
		if testing.Verbose() && !r.plan.Proven() {
			b.Logf("%s: cost %d, bound %d, %.2f sheets or %.2f %% over, %d steps", trials[i].name,
				r.plan.Cost, r.plan.Bound, r.sheetsOver(), r.percentOver(), r.plan.Iterations)
		}
		sum.add(r)
	}
	return sum
}

// result is a trial and its plan.
type result struct {
	trial
	plan Plan
	took time.Duration
	// proof is when the cost was proven.
	proof time.Duration
	err   error
}

func (h harness) one(limit time.Duration, t trial) result {
	ctx := context.Background()
	if h.steps == 0 {
		var cancel context.CancelFunc
		ctx, cancel = context.WithTimeout(ctx, limit)
		defer cancel()
	}
	r := result{trial: t}
	start := time.Now()
	r.plan, r.err = Solve(ctx, t.problem, Options{Iterations: h.steps, Walks: 1, Workers: 1, Progress: func(p Progress) {
		if r.proof == 0 && p.Complete && p.Cost == p.Bound {
			r.proof = time.Since(start)
		}
	}})
	r.took = time.Since(start)
	if r.err == nil {
		r.err = r.check()
	}
	return r
}

// check refuses a plan that cannot be right.
func (r *result) check() error {
	if err := Verify(r.problem, r.plan); err != nil {
		return err
	}
	switch {
	case !r.plan.Complete():
		return fmt.Errorf("the plan lacks %v", r.plan.Unplaced)
	case r.plan.Cost < r.lower:
		return fmt.Errorf("cost %d is below the proven %d", r.plan.Cost, r.lower)
	case r.best > 0 && r.plan.Bound > r.best:
		return fmt.Errorf("bound %d is above the %d that somebody reached", r.plan.Bound, r.best)
	}
	return nil
}

// over is what the plan costs above the greater of the two bounds.
func (r *result) over() int64 { return r.plan.Cost - max(r.plan.Bound, r.lower) }

func (r *result) percentOver() float64 {
	return 100 * float64(r.over()) / float64(max(r.plan.Bound, r.lower, 1))
}

func (r *result) sheetsOver() float64 {
	dearest := int64(1)
	for _, s := range r.problem.Stock {
		dearest = max(dearest, s.Price)
	}
	return float64(r.over()) / float64(dearest)
}

// tally sums results up.
type tally struct {
	problems, proven, known  int
	cost, bound, lower, best int64
	over, steps              int64
	worst, worstSheets       float64
	took, longest, proof     time.Duration
}

func (t *tally) add(r result) {
	one := tally{
		problems: 1, cost: r.plan.Cost, bound: r.plan.Bound, lower: r.lower, best: r.best,
		over: r.over(), steps: r.plan.Iterations,
		worst: r.percentOver(), worstSheets: r.sheetsOver(), took: r.took, longest: r.took,
		proof: r.proof,
	}
	if r.plan.Proven() {
		one.proven = 1
	}
	if r.best > 0 {
		one.known = 1
	}
	t.join(one)
}

func (t *tally) join(o tally) {
	t.problems += o.problems
	t.proven += o.proven
	t.known += o.known
	t.cost += o.cost
	t.bound += o.bound
	t.lower += o.lower
	t.best += o.best
	t.over += o.over
	t.steps += o.steps
	t.took += o.took
	t.worst = max(t.worst, o.worst)
	t.worstSheets = max(t.worstSheets, o.worstSheets)
	t.longest = max(t.longest, o.longest)
	t.proof = max(t.proof, o.proof)
}

func (t *tally) report(b *testing.B) {
	metric := b.ReportMetric
	metric(0, "ns/op") // s/problem says it
	metric(float64(t.problems), "problems")
	metric(float64(t.cost), "cost")
	metric(float64(t.bound), "bound")
	if t.lower > 0 {
		metric(float64(t.lower), "file-bound")
	}
	if t.problems > 0 && t.known == t.problems {
		metric(float64(t.best), "known")
	}
	metric(float64(t.proven), "proven")
	metric(100*float64(t.over)/float64(max(t.cost-t.over, 1)), "over-%")
	metric(t.worst, "worst-%")
	metric(t.worstSheets, "worst-sheets")
	metric(t.took.Seconds()/float64(max(t.problems, 1)), "s/problem")
	metric(t.longest.Seconds(), "worst-s")
	metric(t.proof.Seconds(), "proof-s")
	metric(float64(t.steps), "steps")
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	metric(float64(memory.Sys)/(1<<20), "MiB")
}
