package harvest

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/whole"
)

// strips is stock 100 x 60 and a kind that is 20 long and 10 wide, which may be
// turned.
func strips() *instance.Instance {
	in := &instance.Instance{
		Stages: instance.NoLimit,
		Stock:  []instance.Stock{{L: 100, W: 60, Price: 1, Limit: instance.NoLimit}},
		Kinds: []instance.Kind{
			{L: 20, W: 10, Count: 40, Lies: []instance.Lie{instance.Upright | instance.Turned}},
			{L: 50, W: 30, Count: 4, Lies: []instance.Lie{instance.Upright}},
		},
	}
	in.Prepare()
	return in
}

// row is n parts of kind 0 in a strip along the edge.
func row(n int) instance.Piece {
	strip := instance.Piece{L: 100, W: 10, Dir: instance.Crosscut, Kind: instance.Rest}
	for range n {
		strip.Children = append(strip.Children, instance.Piece{L: 20, W: 10, Kind: 0})
	}
	strip.Children = append(strip.Children, instance.Piece{L: 100 - 20*int64(n), W: 10, Kind: instance.Rest})
	return instance.Piece{L: 100, W: 60, Dir: instance.Ripped, Kind: instance.Rest, Children: []instance.Piece{
		strip, {L: 100, W: 50, Kind: instance.Rest},
	}}
}

func TestPatternsComeBackAsTheyWere(t *testing.T) {
	turned := instance.Piece{L: 100, W: 60, Dir: instance.Crosscut, Kind: instance.Rest, Children: []instance.Piece{
		{L: 50, W: 60, Dir: instance.Ripped, Kind: instance.Rest, Children: []instance.Piece{
			{L: 50, W: 30, Kind: 1}, {L: 50, W: 30, Kind: 1},
		}},
		{L: 10, W: 60, Dir: instance.Ripped, Kind: instance.Rest, Children: []instance.Piece{
			{L: 10, W: 20, Kind: 0, Turned: true}, {L: 10, W: 40, Kind: instance.Rest},
		}},
		{L: 40, W: 60, Kind: instance.Rest},
	}}
	h := New(strips())
	for _, root := range []instance.Piece{row(3), turned, row(3), row(4)} {
		h.Add(0, root)
	}
	want := []whole.Pattern{
		{Counts: []whole.Count{{Kind: 0, Times: 3}}},
		{Counts: []whole.Count{{Kind: 0, Times: 1}, {Kind: 1, Times: 2}}},
		{Counts: []whole.Count{{Kind: 0, Times: 4}}},
	}
	if diff := cmp.Diff(want, h.Patterns); diff != "" {
		t.Fatal(diff)
	}
	for n, root := range []instance.Piece{row(3), turned, row(4)} {
		if diff := cmp.Diff(instance.Compact(root), h.Root(n)); diff != "" {
			t.Errorf("pattern %d: %s", n, diff)
		}
	}
}

// Where there are too many, what leaves most of its stock goes, and does not come
// back; a sheaf taken before stays as it was.
func TestThinningDropsWhatLeavesMost(t *testing.T) {
	h := New(strips())
	for n := range 4 {
		h.Add(0, row(n+1))
	}
	before, grown := h.Sheaf, h.Grown
	h.thin()
	for n := range 4 {
		at, ok := h.Find(before.Number(n))
		if kept := n >= 2; ok != kept || kept && at != n-2 {
			t.Errorf("pattern %d is found at %d, %v", n, at, ok)
		}
	}
	if h.Grown != grown {
		t.Errorf("%d grown before, %d after: who waits for growth would wait for that again", grown, h.Grown)
	}
	h.Add(0, row(1))
	var got []int
	for _, p := range h.Patterns {
		got = append(got, p.Counts[0].Times)
	}
	if diff := cmp.Diff([]int{3, 4}, got); diff != "" {
		t.Error(diff)
	}
	for n := range 4 {
		if diff := cmp.Diff(instance.Compact(row(n+1)), before.Root(n)); diff != "" {
			t.Error(diff)
		}
	}
	if diff := cmp.Diff(instance.Compact(row(4)), h.Root(1)); diff != "" {
		t.Error(diff)
	}
}

func TestKeysTellPatternsApart(t *testing.T) {
	known := map[uint64]whole.Pattern{}
	for stock := range 8 {
		for first := range 8 {
			for second := first; second < 8; second++ {
				for times := range 4 {
					p := whole.Pattern{Stock: stock, Counts: []whole.Count{{Kind: first, Times: 1}}}
					if times > 0 && second > first {
						p.Counts = append(p.Counts, whole.Count{Kind: second, Times: times})
					}
					if q, ok := known[keyOf(p)]; ok && !cmp.Equal(p, q) {
						t.Fatalf("%v and %v have one key", p, q)
					}
					known[keyOf(p)] = p
				}
			}
		}
	}
}

// Prices say what goes in place of areas, but for stock that they were not made for.
func TestThinningGoesByPrices(t *testing.T) {
	halves := func(n int) instance.Piece { // n parts of kind 1, which are large
		half := instance.Piece{L: 50, W: 60, Dir: instance.Ripped, Kind: instance.Rest}
		for range n {
			half.Children = append(half.Children, instance.Piece{L: 50, W: 30, Kind: 1})
		}
		if n == 1 {
			half.Children = append(half.Children, instance.Piece{L: 50, W: 30, Kind: instance.Rest})
		}
		return instance.Piece{L: 100, W: 60, Dir: instance.Crosscut, Kind: instance.Rest, Children: []instance.Piece{
			half, {L: 50, W: 60, Kind: instance.Rest},
		}}
	}
	for _, c := range []struct {
		name   string
		prices *whole.Prices
		want   []whole.Pattern
	}{
		{"areas", nil, []whole.Pattern{
			{Counts: []whole.Count{{Kind: 1, Times: 1}}}, {Counts: []whole.Count{{Kind: 1, Times: 2}}},
			{Stock: 1, Counts: []whole.Count{{Kind: 1, Times: 2}}},
		}},
		{"prices", &whole.Prices{Values: []int64{5, 1}, Worth: []int64{20, 0}}, []whole.Pattern{
			{Counts: []whole.Count{{Kind: 0, Times: 3}}}, {Counts: []whole.Count{{Kind: 0, Times: 4}}},
			{Stock: 1, Counts: []whole.Count{{Kind: 1, Times: 2}}},
		}},
	} {
		in := strips()
		in.Stock = append(in.Stock, in.Stock[0])
		h := New(in)
		h.Appraise(c.prices)
		for _, root := range []instance.Piece{row(3), row(4), halves(1), halves(2)} {
			h.Add(0, root)
		}
		h.Add(1, row(1))
		h.Add(1, halves(2))
		h.thin()
		if diff := cmp.Diff(c.want, h.Patterns); diff != "" {
			t.Errorf("by %s: %s", c.name, diff)
		}
		if h.prices != c.prices {
			t.Errorf("by %s: the prices are gone", c.name)
		}
	}
}

// What long walks come upon does not pile up: beyond so many, dropped patterns are
// forgotten and may come back, while what is kept still comes once.
func TestWhatIsKnownHasAnEnd(t *testing.T) {
	h := New(strips())
	for n := range 4 {
		h.Add(0, row(n+1))
	}
	for key := range uint64(mostKnown) {
		h.known[key] = struct{}{}
	}
	h.thin()
	if len(h.known) != 2 {
		t.Errorf("%d known after thinning, want the two that are kept", len(h.known))
	}
	for n := range 4 {
		h.Add(0, row(n+1))
	}
	var got []int
	for _, p := range h.Patterns {
		got = append(got, p.Counts[0].Times)
	}
	if diff := cmp.Diff([]int{3, 4, 1, 2}, got); diff != "" {
		t.Error(diff)
	}
}

// Two walks that come upon the same pattern bring it in once.
func TestWalksBringInEachPatternOnce(t *testing.T) {
	h := New(strips())
	a, b := h.Gleaner(), h.Gleaner()
	note := func(g *Gleaner, n int) (noted bool) {
		key := Key(0, uint64(n)*PartKey(0))
		if noted = g.Lacks(key); noted {
			g.Note(key, 0, func(c Code) Code { return append(c, Code{}.of(row(n))...) })
		}
		return noted
	}
	if !note(a, 2) || note(a, 2) || !note(a, 3) || !note(b, 2) {
		t.Error("a walk knows what it has noted, and not what another has")
	}
	h.Take(a)
	h.Take(b)
	if len(h.Patterns) != 2 || h.Grown != 2 {
		t.Errorf("%v, %d grown; want two", h.Patterns, h.Grown)
	}
	if note(b, 3) {
		t.Error("what the harvest has is noted again")
	}
}

// What leaves more of its stock than anything that was kept would soon be dropped again;
// what leaves as much is still taken, and the bar never falls.
func TestTheBarRisesWithWhatIsKept(t *testing.T) {
	in := strips()
	h := New(in)
	g := h.Gleaner()
	area := in.Stock[0].L * in.Stock[0].W
	if g.Barren(area*3/10, area) || !g.Barren(area*3/10+1, area) {
		t.Error("three tenths of the stock are left at most at first")
	}
	quarters := func(parts int) instance.Piece { // of the stock, filled
		root := instance.Piece{L: 100, W: 60, Dir: instance.Ripped, Kind: instance.Rest}
		for range 2 {
			strip := instance.Piece{L: 100, W: 30, Dir: instance.Crosscut, Kind: instance.Rest}
			for range min(parts, 2) {
				strip.Children = append(strip.Children, instance.Piece{L: 50, W: 30, Kind: 1})
			}
			parts -= min(parts, 2)
			root.Children = append(root.Children, strip)
		}
		return root
	}
	h.Add(0, quarters(4))
	h.Add(0, quarters(3))
	h.Add(0, row(1))
	h.Add(0, row(2))
	h.thin()
	if rest := int64(1500); g.Barren(rest, area) || !g.Barren(rest+1, area) {
		t.Error("of four patterns the two are kept that leave a quarter at most, and now more is barren")
	}
	for n := range 4 {
		h.Add(0, row(n+3))
	}
	h.thin()
	if !g.Barren(1501, area) {
		t.Error("what is kept for want of better lowers the bar")
	}
}
