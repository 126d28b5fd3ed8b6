package pool

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/internal/instance"
	"sawbill/nest/internal/setcover"
)

// strips is stock 100 x 60 and a kind that is 20 long and 10 wide, which may be
// turned.
func strips() *instance.Instance {
	in := &instance.Instance{
		Stages: instance.NoLimit,
		Stock:  []instance.Stock{{L: 100, W: 60, Price: 1, Limit: instance.NoLimit}},
		Kinds: []instance.Kind{
			{L: 20, W: 10, Demand: 40, Orientations: []instance.Orientation{instance.Upright | instance.Turned}},
			{L: 50, W: 30, Demand: 4, Orientations: []instance.Orientation{instance.Upright}},
		},
	}
	in.Prepare()
	return in
}

// row is n parts of kind 0 in a strip along the edge.
func row(n int) instance.Piece {
	strip := instance.Piece{L: 100, W: 10, Dir: instance.Crosscut, Kind: instance.Leftover}
	for range n {
		strip.Children = append(strip.Children, instance.Piece{L: 20, W: 10, Kind: 0})
	}
	strip.Children = append(strip.Children, instance.Piece{L: 100 - 20*int64(n), W: 10, Kind: instance.Leftover})
	return instance.Piece{L: 100, W: 60, Dir: instance.Rip, Kind: instance.Leftover, Children: []instance.Piece{
		strip, {L: 100, W: 50, Kind: instance.Leftover},
	}}
}

func TestPatternsComeBackAsTheyWere(t *testing.T) {
	turned := instance.Piece{L: 100, W: 60, Dir: instance.Crosscut, Kind: instance.Leftover, Children: []instance.Piece{
		{L: 50, W: 60, Dir: instance.Rip, Kind: instance.Leftover, Children: []instance.Piece{
			{L: 50, W: 30, Kind: 1}, {L: 50, W: 30, Kind: 1},
		}},
		{L: 10, W: 60, Dir: instance.Rip, Kind: instance.Leftover, Children: []instance.Piece{
			{L: 10, W: 20, Kind: 0, Turned: true}, {L: 10, W: 40, Kind: instance.Leftover},
		}},
		{L: 40, W: 60, Kind: instance.Leftover},
	}}
	h := New(strips())
	for _, root := range []instance.Piece{row(3), turned, row(3), row(4)} {
		h.Add(0, root)
	}
	want := []setcover.Pattern{
		{Counts: []setcover.Count{{Kind: 0, Times: 3}}},
		{Counts: []setcover.Count{{Kind: 0, Times: 1}, {Kind: 1, Times: 2}}},
		{Counts: []setcover.Count{{Kind: 0, Times: 4}}},
	}
	if diff := cmp.Diff(want, h.Patterns); diff != "" {
		t.Fatal(diff)
	}
	for n, root := range []instance.Piece{row(3), turned, row(4)} {
		if diff := cmp.Diff(instance.Normalize(root), h.Root(n)); diff != "" {
			t.Errorf("pattern %d: %s", n, diff)
		}
	}
}

// A full pool evicts the most wasteful patterns, and they do not come back. A snapshot taken
// before does not change.
func TestEvictionDropsTheMostWasteful(t *testing.T) {
	h := New(strips())
	for n := range 4 {
		h.Add(0, row(n+1))
	}
	before, grown := h.Snapshot, h.Growth
	h.evict()
	for n := range 4 {
		at, ok := h.Index(before.ID(n))
		if kept := n >= 2; ok != kept || kept && at != n-2 {
			t.Errorf("pattern %d is found at %d, %v", n, at, ok)
		}
	}
	if h.Growth != grown {
		t.Errorf("%d grown before, %d after: who waits for growth would wait for that again", grown, h.Growth)
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
		if diff := cmp.Diff(instance.Normalize(row(n+1)), before.Root(n)); diff != "" {
			t.Error(diff)
		}
	}
	if diff := cmp.Diff(instance.Normalize(row(4)), h.Root(1)); diff != "" {
		t.Error(diff)
	}
}

func TestKeysTellPatternsApart(t *testing.T) {
	known := map[uint64]setcover.Pattern{}
	for stock := range 8 {
		for first := range 8 {
			for second := first; second < 8; second++ {
				for times := range 4 {
					p := setcover.Pattern{Stock: stock, Counts: []setcover.Count{{Kind: first, Times: 1}}}
					if times > 0 && second > first {
						p.Counts = append(p.Counts, setcover.Count{Kind: second, Times: times})
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

// Eviction goes by prices, except for stock that they do not cover.
func TestEvictionGoesByPrices(t *testing.T) {
	halves := func(n int) instance.Piece { // n parts of kind 1, which are large
		half := instance.Piece{L: 50, W: 60, Dir: instance.Rip, Kind: instance.Leftover}
		for range n {
			half.Children = append(half.Children, instance.Piece{L: 50, W: 30, Kind: 1})
		}
		if n == 1 {
			half.Children = append(half.Children, instance.Piece{L: 50, W: 30, Kind: instance.Leftover})
		}
		return instance.Piece{L: 100, W: 60, Dir: instance.Crosscut, Kind: instance.Leftover, Children: []instance.Piece{
			half, {L: 50, W: 60, Kind: instance.Leftover},
		}}
	}
	for _, c := range []struct {
		name   string
		prices *setcover.Prices
		want   []setcover.Pattern
	}{
		{"areas", nil, []setcover.Pattern{
			{Counts: []setcover.Count{{Kind: 1, Times: 1}}}, {Counts: []setcover.Count{{Kind: 1, Times: 2}}},
			{Stock: 1, Counts: []setcover.Count{{Kind: 1, Times: 2}}},
		}},
		{"prices", &setcover.Prices{Values: []int64{5, 1}, Capacity: []int64{20, 0}}, []setcover.Pattern{
			{Counts: []setcover.Count{{Kind: 0, Times: 3}}}, {Counts: []setcover.Count{{Kind: 0, Times: 4}}},
			{Stock: 1, Counts: []setcover.Count{{Kind: 1, Times: 2}}},
		}},
	} {
		in := strips()
		in.Stock = append(in.Stock, in.Stock[0])
		h := New(in)
		h.SetPrices(c.prices)
		for _, root := range []instance.Piece{row(3), row(4), halves(1), halves(2)} {
			h.Add(0, root)
		}
		h.Add(1, row(1))
		h.Add(1, halves(2))
		h.evict()
		if diff := cmp.Diff(c.want, h.Patterns); diff != "" {
			t.Errorf("by %s: %s", c.name, diff)
		}
		if h.prices != c.prices {
			t.Errorf("by %s: the prices are gone", c.name)
		}
	}
}

// The keys of evicted patterns are limited: beyond the limit these may come back, while kept
// patterns still come once.
func TestKnownKeysAreLimited(t *testing.T) {
	h := New(strips())
	for n := range 4 {
		h.Add(0, row(n+1))
	}
	for key := range uint64(maxKnown) {
		h.known[key] = struct{}{}
	}
	h.evict()
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

// Two walks that record the same pattern bring it in once.
func TestRecordersBringInEachPatternOnce(t *testing.T) {
	h := New(strips())
	a, b := h.NewRecorder(), h.NewRecorder()
	note := func(g *Recorder, n int) (noted bool) {
		key := Key(0, uint64(n)*PartKey(0))
		if noted = g.IsNew(key); noted {
			g.Record(key, 0, func(c Code) Code { return append(c, Code{}.appendPiece(row(n))...) })
		}
		return noted
	}
	if !note(a, 2) || note(a, 2) || !note(a, 3) || !note(b, 2) {
		t.Error("a recorder knows its own records only")
	}
	h.Collect(a)
	h.Collect(b)
	if len(h.Patterns) != 2 || h.Growth != 2 {
		t.Errorf("%v, %d grown; want two", h.Patterns, h.Growth)
	}
	if note(b, 3) {
		t.Error("a pattern of the pool is recorded again")
	}
}

// Patterns more wasteful than all that are kept are not recorded; equally wasteful ones are.
// The limit never rises.
func TestWasteLimitTightensOnEviction(t *testing.T) {
	in := strips()
	h := New(in)
	g := h.NewRecorder()
	area := in.Stock[0].L * in.Stock[0].W
	if g.TooWasteful(area*3/10, area) || !g.TooWasteful(area*3/10+1, area) {
		t.Error("three tenths of the stock are left at most at first")
	}
	quarters := func(parts int) instance.Piece { // of the stock, filled
		root := instance.Piece{L: 100, W: 60, Dir: instance.Rip, Kind: instance.Leftover}
		for range 2 {
			strip := instance.Piece{L: 100, W: 30, Dir: instance.Crosscut, Kind: instance.Leftover}
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
	h.evict()
	if rest := int64(1500); g.TooWasteful(rest, area) || !g.TooWasteful(rest+1, area) {
		t.Error("of four patterns the two are kept that leave a quarter at most, and now more is barren")
	}
	for n := range 4 {
		h.Add(0, row(n+3))
	}
	h.evict()
	if !g.TooWasteful(1501, area) {
		t.Error("what is kept for want of better lowers the bar")
	}
}
