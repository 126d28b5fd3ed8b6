package nest_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest"
)

// What is covered is what a problem can cut whose only stock is what the plan
// keeps: each offcut a piece of its own, and the pieces on hand that stay whole.
func TestCoverIsWhatThePlansLeftoversCanBeCutTo(t *testing.T) {
	seen := map[nest.Cover]int{}
	for seed := range uint64(300) {
		p := randomProblem(seed)
		plan := solve(t, p, nest.Options{Iterations: 40, Seed: seed})
		cover := nest.CoverOf(p, plan)
		for i, b := range p.Blanks {
			want := nest.Uncovered
			switch {
			case recut(t, p, b, offcutsOf(p, plan)):
				want = nest.FromOffcut
			case recut(t, p, b, wholeOnHand(p, plan)):
				want = nest.FromStock
			}
			if cover[i] != want {
				t.Fatalf("seed %d: blank %d, %d x %d, is covered %v; what is kept says %v", seed, i, b.Length, b.Width, cover[i], want)
			}
			seen[want]++
		}
	}
	for c := nest.Uncovered; c <= nest.FromStock; c++ {
		if seen[c] < 50 {
			t.Errorf("cover %v came up %d times", c, seen[c])
		}
	}
}

// leftover is a piece that is kept, and the stock it once was part of.
type leftover struct {
	stock  int
	length int64
	width  int64
}

func offcutsOf(p nest.Problem, plan nest.Plan) (kept []leftover) {
	for _, l := range plan.Layouts {
		open := []nest.Node{l.Root}
		for len(open) > 0 {
			n := open[0]
			open = append(open[1:], n.Children...)
			if n.Use != nest.Split && n.Use != nest.Part && n.Length >= p.Keep.Length && n.Width >= p.Keep.Width {
				kept = append(kept, leftover{l.Stock, n.Length, n.Width})
			}
		}
	}
	return kept
}

func wholeOnHand(p nest.Problem, plan nest.Plan) (kept []leftover) {
	for i, s := range p.Stock {
		left := s.Count
		for _, l := range plan.Layouts {
			if l.Stock == i {
				left -= l.Repeat
			}
		}
		if s.OnHand && (s.Count == 0 || left > 0) {
			kept = append(kept, leftover{i, s.Length - 2*s.TrimLength, s.Width - 2*s.TrimWidth})
		}
	}
	return kept
}

// recut plans one piece of b from what is kept.
func recut(t *testing.T, p nest.Problem, b nest.Blank, kept []leftover) bool {
	t.Helper()
	q := nest.Problem{Kerf: p.Kerf, Stages: p.Stages, Keep: p.Keep}
	b.Count = 1
	from := b.From
	b.From = nil
	for i, k := range kept {
		s := p.Stock[k.stock]
		q.Stock = append(q.Stock, nest.Stock{Length: k.length, Width: k.width, OnHand: true, Count: 1,
			FirstCut: s.FirstCut, NarrowestRip: s.NarrowestRip})
		for _, f := range from {
			if f.Stock == k.stock {
				f.Stock = i
				b.From = append(b.From, f)
			}
		}
	}
	q.Blanks = []nest.Blank{b}
	return solve(t, q, nest.Options{Iterations: 1}).Complete()
}

func TestCoverOfOnePlan(t *testing.T) {
	part := func(blank int, l, w int64) nest.Node {
		return nest.Node{Length: l, Width: w, Use: nest.Part, Blank: blank}
	}
	left := func(use nest.Use, l, w int64) nest.Node { return nest.Node{Length: l, Width: w, Use: use} }
	sheet, rack := nest.Source{Stock: 0, Upright: true}, nest.Source{Stock: 1, Upright: true, Turned: true}
	p := nest.Problem{
		Kerf: 2, Keep: nest.Size{Length: 20, Width: 10},
		Stock: []nest.Stock{
			{Length: 100, Width: 50, Price: 1, NarrowestRip: 8},
			{Length: 40, Width: 30, OnHand: true, Count: 1, FirstCut: nest.Rip},
		},
		Blanks: []nest.Blank{
			{Length: 60, Width: 30, Count: 1, From: []nest.Source{sheet}},
			{Length: 38, Width: 18, Count: 1, From: []nest.Source{sheet}},
			{Length: 30, Width: 40, Count: 1, From: []nest.Source{sheet, rack}},
			{Length: 30, Width: 30, Count: 1, From: []nest.Source{rack}},
			{Length: 30, Width: 7, Count: 1, From: []nest.Source{sheet}},
		},
	}
	plan := nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: nest.Node{Length: 100, Width: 50, Cut: nest.Rip, Children: []nest.Node{
		{Length: 100, Width: 30, Cut: nest.Crosscut, Children: []nest.Node{part(0, 60, 30), left(nest.Offcut, 38, 30)}},
		left(nest.Waste, 100, 18),
	}}}}}
	want := []nest.Cover{
		nest.Uncovered, nest.FromOffcut,
		nest.FromStock, // turned, it is the whole piece
		nest.Uncovered, // one crosscut would do, but the first cut must be a rip
		nest.Uncovered, // narrower than may be ripped
	}
	if d := cmp.Diff(want, nest.CoverOf(p, plan)); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
}

// Two plans of one sheet: the wide leftover beside a column is worth more, but
// only the long strip holds the long blank.
func TestCoverComesBeforeTheValueOfOffcuts(t *testing.T) {
	from := []nest.Source{{Upright: true}}
	p := nest.Problem{
		Keep:  nest.Size{Length: 10, Width: 10},
		Stock: []nest.Stock{{Length: 100, Width: 60, Price: 1}},
		Blanks: []nest.Blank{
			{Length: 90, Width: 20, Count: 1, From: from},
			{Length: 40, Width: 20, Count: 2, From: from},
		},
	}
	plan := solve(t, p, nest.Options{Iterations: 4000})
	for i, c := range nest.CoverOf(p, plan) {
		if c != nest.FromOffcut {
			t.Errorf("blank %d is not covered: %+v", i, plan.Layouts)
		}
	}
}

// Strips of one width, or columns that are ripped again: the fence is set less
// often for the one, and nothing else tells the plans apart.
func TestEqualStripsAreCutAtOneSetting(t *testing.T) {
	from := []nest.Source{{Upright: true}}
	p := nest.Problem{
		Keep:  nest.Size{Length: 100, Width: 100},
		Stock: []nest.Stock{{Length: 1200, Width: 600, Price: 1}},
		Blanks: []nest.Blank{
			{Length: 400, Width: 200, Count: 6, From: from},
			{Length: 600, Width: 200, Count: 2, From: from},
		},
	}
	plan := solve(t, p, nest.Options{Iterations: 8000})
	rips := map[int64]bool{}
	for _, l := range plan.Layouts {
		open := []nest.Node{l.Root}
		for len(open) > 0 {
			n := open[0]
			open = append(open[1:], n.Children...)
			if n.Use != nest.Split || n.Cut != nest.Rip {
				continue
			}
			for _, c := range n.Children {
				if c.Use != nest.Offcut && c.Use != nest.Waste {
					rips[c.Width] = true
				}
			}
		}
	}
	if plan.Cost != 1 || len(rips) != 1 {
		t.Errorf("cost %d, rips at %v", plan.Cost, rips)
	}
}
