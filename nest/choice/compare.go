package choice

import (
	"context"
	"fmt"
	"runtime"
	"slices"
	"sync"
	"time"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/nest/internal/crew"
	"sawbill/stock"
)

// Options steer Compare. The zero value is ready for use.
type Options struct {
	// Seed and Iterations go to cutplan.Options, for each choice.
	Seed       uint64
	Iterations int64
	// Worth is the fraction of its price credited for material kept, in hundredths of a
	// percent.
	Worth int64
	// Density, if any, returns a material's density in kg/m3, 0 if it is unknown.
	Density func(material string) float64
	// Progress, if any, is called as each choice begins, with its number from 1. Calls
	// never overlap. Choices that differ only in prices are planned as one.
	Progress func(begun, of int)
}

// task is a problem that one or several choices of a material share.
type task struct {
	job  stock.Job
	plan *cutplan.Plan
	err  error
}

// Compare plans every choice, several side by side. A choice ends when it is proven, its
// iterations are spent or ctx ends. Each choice gets its share of the time left; time that
// it does not need goes to later ones. Without a deadline and iterations, each choice has
// the default budget of cutplan.Make. Compare returns the errors of sellercuts.Make. With
// iterations, equal jobs give equal comparisons.
func Compare(ctx context.Context, j stock.Job, o Options) (*Comparison, error) {
	c := &Comparison{Job: j}
	var tasks []*task
	var of [][]set   // by material
	var by [][]*task // by material and set
	for _, p := range j.Parts {
		if slices.ContainsFunc(c.Materials, func(m Material) bool { return m.Name == p.Material }) {
			continue
		}
		c.Materials = append(c.Materials, Material{Name: p.Material})
		all := sets(j, p.Material)
		var own []*task
		for _, s := range all {
			job := s.job(j, p.Material)
			at := slices.IndexFunc(own, func(t *task) bool { return sameProblem(t.job, job) })
			if at >= 0 {
				own = append(own, own[at])
				continue
			}
			own = append(own, &task{job: job})
			tasks = append(tasks, own[len(own)-1])
		}
		of, by = append(of, all), append(by, own)
	}
	solve(ctx, tasks, o)
	for _, t := range tasks {
		if t.err != nil {
			return nil, t.err
		}
	}
	for m := range c.Materials {
		plans := make([]*cutplan.Plan, len(of[m]))
		for i, s := range of[m] {
			plans[i] = reprice(by[m][i].plan, s.job(j, c.Materials[m].Name))
		}
		inherit(plans)
		full := everything(j).job(j, c.Materials[m].Name)
		for i, s := range of[m] {
			choice := o.evaluate(s, plans[i], c.Materials[m].Name)
			choice.RelaxedSources = !isRestriction(choice.Plan.Job, full)
			c.Materials[m].Choices = append(c.Materials[m].Choices, choice)
		}
		c.Materials[m].rank()
	}
	return c, nil
}

// solve plans all tasks, as many at a time as there are processors.
func solve(ctx context.Context, tasks []*task, o Options) {
	workers := min(runtime.GOMAXPROCS(0), len(tasks))
	var mu sync.Mutex
	next := 0
	begin := func() int {
		mu.Lock()
		defer mu.Unlock() // even if Progress panics, or the other workers wait for ever
		i := next
		next++
		if i < len(tasks) && o.Progress != nil {
			o.Progress(next, len(tasks))
		}
		return i
	}
	crew.Run(workers, func() {
		for i := begin(); i < len(tasks); i = begin() {
			tasks[i].solve(ctx, len(tasks)-i, workers, o)
		}
	})
}

// solve plans t in its share of the time. left tasks remain, t included, and workers run
// at a time.
func (t *task) solve(ctx context.Context, left, workers int, o Options) {
	if end, limited := ctx.Deadline(); limited && o.Iterations == 0 {
		rounds := (left + workers - 1) / workers
		share, cancel := context.WithTimeout(ctx, time.Until(end)/time.Duration(rounds))
		defer cancel()
		ctx = share
	}
	t.plan, t.err = sellercuts.Make(ctx, t.job, cutplan.Options{Seed: o.Seed, Iterations: o.Iterations})
	if t.err != nil {
		t.err = fmt.Errorf("planning a choice of %s: %w", t.job.Parts[0].Material, t.err)
	}
}
