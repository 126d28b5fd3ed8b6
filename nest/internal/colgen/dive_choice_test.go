package colgen

import (
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
)

// rowsOfThree is a generator whose pool holds every row of three of twenty kinds: more
// patterns than a dive goes on with. The longest ones fill the stock.
func rowsOfThree(t *testing.T) *Generator {
	t.Helper()
	in := &instance.Instance{Stages: instance.NoLimit}
	in.Stock = []instance.Stock{{L: 300, W: 100, Price: 10, Limit: instance.NoLimit}}
	for k := range 20 {
		in.Kinds = append(in.Kinds, instance.Kind{L: int64(43 + 3*k), W: 100, Demand: 2 + k%3, Orientations: []instance.Orientation{instance.Upright}})
	}
	in.Prepare()
	g := New(in, lowerbound.New(in), 1<<24, 1, nil)
	if g == nil {
		t.Fatal("no generator")
	}
	for i := range in.Kinds {
		for j := range i + 1 {
			for k := range j + 1 {
				g.columns.add(0, inRow(in, i, j, k))
			}
		}
	}
	return g
}

// inRow is parts of these kinds end to end.
func inRow(in *instance.Instance, kinds ...int) instance.Piece {
	st := in.Stock[0]
	root := instance.Piece{L: st.L, W: st.W, Dir: instance.Crosscut, Kind: instance.Leftover}
	left := st.L
	for _, k := range kinds {
		left -= in.Kinds[k].L
		root.Children = append(root.Children, instance.Piece{L: in.Kinds[k].L, W: st.W, Kind: k})
	}
	if left > 0 {
		root.Children = append(root.Children, instance.Piece{L: left, W: st.W, Kind: instance.Leftover})
	}
	return root
}

// After its first programme a dive goes on with the patterns that promised most, among
// them all that it used, and with whatever is made from then on.
func TestDivesGoOnWithTheBetterPatterns(t *testing.T) {
	g := rowsOfThree(t)
	d := g.newDive()
	d.startMaster()
	d.solve(0)
	if len(d.master.patterns) <= maxChosen || len(d.choice.chosen) != maxChosen || !slices.IsSorted(d.choice.chosen) {
		t.Fatalf("%d of %d patterns are chosen, in order %v", len(d.choice.chosen), len(d.master.patterns), slices.IsSorted(d.choice.chosen))
	}
	first := d.master.lp.Columns() - len(d.master.patterns)
	dearest, cheapest := -1e9, 1e9 // of those chosen, and of the others
	for at, n := range d.master.patterns {
		if gain := d.master.lp.ReducedCost(first + at); slices.Contains(d.choice.chosen, n) {
			dearest = max(dearest, gain)
		} else {
			cheapest = min(cheapest, gain)
		}
	}
	if dearest > cheapest+1e-9 {
		t.Errorf("one is chosen that costs %g more than it is worth, and none that costs %g", dearest, cheapest)
	}
	if len(d.choice.firstSupport) == 0 || !slices.IsSorted(d.choice.firstSupport) {
		t.Fatalf("the first programme used %v", d.choice.firstSupport)
	}
	for _, n := range d.choice.firstSupport {
		if !slices.Contains(d.choice.chosen, n) {
			t.Errorf("pattern %d was used and is not chosen", n)
		}
	}

	columns := d.master.lp.Columns()
	if d.addColumns(); d.master.lp.Columns() != columns {
		t.Errorf("%d columns more, where the pool has gained nothing", d.master.lp.Columns()-columns)
	}
	fresh := len(g.columns.patterns)
	for _, k := range []int{3, 5} {
		if !g.columns.add(0, inRow(g.in, k, k)) {
			t.Fatal("a pattern of two was there before")
		}
		if d.addColumns(); d.master.patterns[len(d.master.patterns)-1] != len(g.columns.patterns)-1 {
			t.Errorf("the programme lacks a pattern that the pool has gained")
		}
	}
	d.startMaster()
	d.addColumns()
	if want := append(slices.Clone(d.choice.chosen), fresh, fresh+1); !slices.Equal(d.master.patterns, want) {
		t.Errorf("the next programme is of patterns %v, want those chosen and two new ones", d.master.patterns)
	}
	opening := slices.Clone(d.choice.firstSupport)
	d.partial.residual[0], d.master.lp = 0, nil
	d.startMaster()
	if d.solve(0); slices.Equal(d.choice.support, opening) || !slices.Equal(d.choice.firstSupport, opening) {
		t.Errorf("another programme used %v, and the first one is said to have used %v after it, %v before", d.choice.support, d.choice.firstSupport, opening)
	}
}

// A dive remembers which patterns its programmes used by their places in the pool, which
// only grows; the next dive begins with those of the first programme, and what it
// does to its own leaves them as they were.
func TestDivesBeginWithWhatTheLastOneUsed(t *testing.T) {
	g := rowsOfThree(t)
	for g.dives.current == nil || !g.dives.current.done {
		if g.dives.current == nil {
			g.dives.current = g.newDive()
		}
		g.dives.current.advance(1 << 20)
	}
	opening := slices.Clone(g.dives.current.choice.firstSupport)
	g.dives.support = g.dives.current.choice.firstSupport
	next := g.newDive()
	if len(opening) == 0 || !slices.Equal(next.choice.support, opening) {
		t.Fatalf("the next dive begins with %v, the last one did with %v", next.choice.support, opening)
	}
	before := firstMasterWork(next)
	for !next.done {
		next.advance(1 << 20)
	}
	if !slices.Equal(g.dives.support, opening) {
		t.Error("a dive has changed what the last one left")
	}
	bare := g.newDive()
	bare.choice.support = nil
	if without := firstMasterWork(bare); before >= without {
		t.Errorf("its first programme takes %d products, and %d without", before, without)
	}
}

// firstMasterWork is the work of a dive's first programme.
func firstMasterWork(d *dive) int64 {
	d.startMaster()
	d.solve(0)
	work := d.master.lp.Work()
	d.master.lp = nil
	return work
}
