package search

import (
	"math/rand/v2"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
)

// workshop draws a job of some cabinets of a few depths, with sides, shelves, doors, drawer
// fronts and a plinth, from one or two sizes of sheet. Most parts may not turn. Millimeters; a
// kerf of 3 is in every size.
func workshop(seed uint64) *instance.Instance {
	r := rand.New(rand.NewPCG(seed, 11))
	in := &instance.Instance{Stages: instance.NoLimit, Kerf: 3, KeepLength: 303, KeepWidth: 83}
	in.Stock = append(in.Stock, instance.Stock{L: 2443, W: 1223, Price: 7450, Limit: instance.NoLimit, NarrowestRip: 3})
	if r.IntN(2) == 0 {
		in.Stock = append(in.Stock, instance.Stock{L: 1528, W: 1528, Price: 6100, Limit: instance.NoLimit, NarrowestRip: 3})
	}
	if r.IntN(3) == 0 {
		in.Stock = append(in.Stock, instance.Stock{L: int64(600 + r.IntN(900)), W: int64(300 + r.IntN(600)), OnHand: true, Limit: 1 + r.IntN(2), NarrowestRip: 3})
	}
	add := func(count int, l, w int64, orientations instance.Orientation) {
		k := instance.Kind{L: l + 3, W: w + 3, Demand: count}
		for range in.Stock {
			k.Orientations = append(k.Orientations, orientations)
		}
		in.Kinds = append(in.Kinds, k)
	}
	free := instance.Upright | instance.Turned
	depth := []int64{280, 380, 560}[r.IntN(3)]
	for range 1 + r.IntN(3) {
		high, wide := int64(600+10*r.IntN(130)), int64(400+10*r.IntN(50))
		add(2, high, depth, instance.Upright)
		add(2, wide-36, depth, instance.Upright)
		if n := r.IntN(5); n > 0 {
			add(n, wide-38, depth-20, instance.Upright)
		}
		if r.IntN(2) == 0 {
			add(2, high-4, wide/2-3, instance.Upright)
		}
		if n := r.IntN(4); n > 0 {
			add(n, wide-4, int64(120+20*r.IntN(6)), instance.Upright)
			add(2*n, depth-30, 100, free)
		}
		add(1, wide, 90, free)
	}
	in.Prepare()
	return in
}

// BenchmarkObjectives shows what each secondary objective gains and costs. It prints averages
// of 40 workshop jobs whose cost counts as proven, with one more objective at a time.
func BenchmarkObjectives(b *testing.B) {
	for _, level := range []struct {
		name string
		last objective
	}{{"cost", noObjective}, {"cover", coverObjective}, {"offcuts", offcutObjective}, {"setups", setupObjective}, {"cuts", cutObjective}} {
		b.Run(level.name, func(b *testing.B) {
			var sum outcome
			const jobs = 40
			for b.Loop() {
				sum = outcome{}
				for seed := range uint64(jobs) {
					b.StopTimer()
					s := cheap(workshop(seed))
					b.StartTimer()
					sum.add(polishUpTo(s, level.last))
				}
			}
			b.ReportMetric(100*sum.cover/jobs, "cover%")
			b.ReportMetric(100*sum.largest/jobs, "largest%")
			b.ReportMetric(sum.offcuts/jobs, "offcuts")
			b.ReportMetric(sum.setups/jobs, "setups")
			b.ReportMetric(sum.cuts/jobs, "cuts")
			b.ReportMetric(sum.steps/jobs, "steps")
			b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(b.N*jobs), "ms/job")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// cheap searches for a plan of low cost, and takes that for proven.
func cheap(in *instance.Instance) *Search {
	s := New(in, lowerbound.New(in, nil).Value(), 1, 4, nil)
	never := func() bool { return false }
	for s.round < 40 && !s.Proven() {
		for _, l := range s.walks {
			l.run(256, never)
		}
		s.roundsLeft = 0
		s.Join()
	}
	s.SetBound(s.best.Cost.Price, nil)
	s.areaRounds = 0
	return s
}

// outcome is the result for a plan.
type outcome struct {
	cover, largest, offcuts, setups, cuts, steps float64
}

func (o *outcome) add(p outcome) {
	o.cover += p.cover
	o.largest += p.largest
	o.offcuts += p.offcuts
	o.setups += p.setups
	o.cuts += p.cuts
	o.steps += p.steps
}

// polishUpTo improves the objectives up to last until it finds nothing more.
func polishUpTo(s *Search, last objective) outcome {
	before := s.Steps()
	if last > noObjective {
		for _, t := range s.polishers {
			t.lastObjective = last
		}
		s.restartPolish(s.best)
		for !s.Done() {
			for i := range s.walks {
				s.Walk(i, 1024, func() bool { return false })
			}
			s.Join()
		}
	}
	t := s.polishers[0]
	t.lastObjective = cutObjective
	m := t.evaluate(s.best)
	o := outcome{
		cover: float64(m.covered) / float64(t.e.pieces), setups: float64(m.setups), cuts: float64(m.cuts),
		steps: float64(s.Steps() - before),
	}
	for _, tree := range t.finalState.trees {
		for _, g := range tree.gaps {
			if l, w := int64(g.l), int64(g.w); l >= s.in.KeepLength && w >= s.in.KeepWidth {
				o.offcuts++
				o.largest = max(o.largest, float64(l*w)/float64(s.in.Stock[0].L*s.in.Stock[0].W))
			}
		}
	}
	return o
}
