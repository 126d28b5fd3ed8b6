package colgen

import (
	"slices"
	"testing"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/lowerbound"
)

// rowsOfThree is a generator whose column set holds every row of three of twenty kinds: more
// than a dive keeps. The longest rows fill the stock.
func rowsOfThree(t *testing.T) *Generator {
	t.Helper()
	in := &instance.Instance{Stages: instance.NoLimit}
	in.Stock = []instance.Stock{{L: 300, W: 100, Price: 10, Limit: instance.NoLimit}}
	for k := range 20 {
		in.Kinds = append(in.Kinds, instance.Kind{L: int64(43 + 3*k), W: 100, Demand: 2 + k%3, Orientations: []instance.Orientation{instance.Upright}})
	}
	in.Prepare()
	g := New(in, lowerbound.New(in, nil), 1<<24, 1, nil, nil)
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

// inRow puts a part of each kind end to end.
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

// After its first master a dive keeps the columns of lowest reduced cost, its support among
// them, and every column made later.
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
		t.Fatalf("the support of the first master is %v", d.choice.firstSupport)
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
			t.Errorf("the master lacks a new column")
		}
	}
	d.startMaster()
	d.addColumns()
	if want := append(slices.Clone(d.choice.chosen), fresh, fresh+1); !slices.Equal(d.master.patterns, want) {
		t.Errorf("the next master has patterns %v, want those chosen and two new ones", d.master.patterns)
	}
	opening := slices.Clone(d.choice.firstSupport)
	d.partial.residual[0], d.master.lp = 0, nil
	d.startMaster()
	if d.solve(0); slices.Equal(d.choice.support, opening) || !slices.Equal(d.choice.firstSupport, opening) {
		t.Errorf("the support is %v; that of the first master is %v, was %v", d.choice.support, d.choice.firstSupport, opening)
	}
}

// A dive remembers its support as places in the column set, which only grows. The next dive
// begins with the support of the last dive's first master, and does not change that list.
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
		t.Errorf("the first master takes %d products, and %d without", before, without)
	}
}

// firstMasterWork returns the work of a dive's first master.
func firstMasterWork(d *dive) int64 {
	d.startMaster()
	d.solve(0)
	work := d.master.lp.Work()
	d.master.lp = nil
	return work
}
