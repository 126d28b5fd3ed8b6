package colgen

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
)

// divided is stock of one size and the parts of several pieces, cut apart at random, less a
// few. So a plan of that many pieces exists, but is not trivial.
func divided(seed uint64, pieces int) *instance.Instance {
	r := rand.New(rand.NewPCG(seed, 7))
	in := &instance.Instance{Stages: instance.NoLimit}
	in.Stock = []instance.Stock{{L: 600, W: 400, Price: 10, Limit: instance.NoLimit}}
	sizes := map[[2]int64]int{}
	for range pieces {
		for _, p := range apart(r, 600, 400, 5) {
			sizes[p]++
		}
	}
	var order [][2]int64
	for p := range sizes {
		order = append(order, p)
	}
	slices.SortFunc(order, func(a, b [2]int64) int { return slices.Compare(a[:], b[:]) })
	for n, p := range order {
		if n%6 != 0 {
			in.Kinds = append(in.Kinds, instance.Kind{L: p[0], W: p[1], Demand: sizes[p], Orientations: []instance.Orientation{instance.Upright}})
		}
	}
	in.Prepare()
	return in
}

func apart(r *rand.Rand, l, w int64, cuts int) [][2]int64 {
	if cuts == 0 || l < 80 || w < 80 {
		return [][2]int64{{l, w}}
	}
	if r.Int64N(l+w) < l {
		x := l/4 + 5*r.Int64N(l/10)
		return append(apart(r, x, w, cuts-1), apart(r, l-x, w, cuts-1)...)
	}
	y := w/4 + 5*r.Int64N(w/10)
	return append(apart(r, l, y, cuts-1), apart(r, l, w-y, cuts-1)...)
}

// within makes dives stay within counts, without a trial of bounded pricing.
func within(t *testing.T, in *instance.Instance, counts []int) *Generator {
	t.Helper()
	g := New(in, lowerbound.New(in, nil), 1<<24, 1, nil, nil)
	if g == nil {
		t.Fatal("no generator")
	}
	for range 100 {
		g.Work(1 << 16)
	}
	g.master.counts = counts
	return g
}

func (g *Generator) diveWithin() *dive {
	d := g.newDive()
	d.fillers, d.withinCounts = g.makeFillers(), true
	copy(d.partial.stock, g.master.counts)
	for !d.done {
		d.advance(1 << 20)
	}
	return d
}

// All dives start from the same columns, but hardly any two make the same plan.
func TestDivesMakePlansAnew(t *testing.T) {
	in := divided(1, 3)
	g := within(t, in, []int{3})
	const dives = 40
	plans := map[string]bool{}
	for range dives {
		var made []string
		for _, l := range g.diveWithin().partial.plan.Layouts {
			counts := make([]int, len(in.Kinds))
			l.Root.CountParts(counts)
			made = append(made, fmt.Sprint(counts))
		}
		slices.Sort(made)
		plans[fmt.Sprint(made)] = true
	}
	if len(plans) < dives/2 {
		t.Errorf("%d dives made %d plans", dives, len(plans))
	}
}

// If a filler finds room for the whole residual demand in the last piece, the dive ends
// complete, and obeys every rule. Otherwise it ends with all of it missing.
func TestDivesEndWithTheLastPieceFilled(t *testing.T) {
	filled, dives := 0, 0
	for seed := range uint64(20) {
		in := divided(seed, 1)
		d := within(t, in, []int{1}).diveWithin()
		dives++
		cut := make([]int, len(in.Kinds))
		for _, l := range d.partial.plan.Layouts {
			if !in.Allows(l.Stock, l.Root) {
				t.Fatalf("seed %d: %v is not allowed", seed, l.Root)
			}
			l.Root.CountParts(cut)
		}
		missing := 0
		for k, kd := range in.Kinds {
			if cut[k]+d.partial.plan.Missing[k] != kd.Demand {
				t.Fatalf("seed %d: kind %d is cut %d times and missing %d times, wanted %d times", seed, k, cut[k], d.partial.plan.Missing[k], kd.Demand)
			}
			missing += d.partial.plan.Missing[k]
		}
		if missing == 0 && len(d.partial.plan.Layouts) == 1 {
			filled++
		}
	}
	if filled < dives/2 {
		t.Errorf("%d of %d last pieces were filled", filled, dives)
	}
}
