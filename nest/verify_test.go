package nest_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest"
)

func TestVerifyAcceptsWhatASawCanCut(t *testing.T) {
	tests := []struct {
		reason  string
		problem nest.Problem
		plan    nest.Plan
	}{{
		"nothing wanted, nothing cut", task(), nest.Plan{},
	}, {
		"a blank as large as the trimmed sheet needs no cut",
		task(want(1, 96, 56, 0)), once(upright(0, 96, 56)),
	}, {
		"children and kerfs fill the sheet",
		task(want(2, 96, 27, 0)), once(rip(96, 56, upright(0, 96, 27), upright(0, 96, 27))),
	}, {
		"the blade of the last cut runs off the edge by a whole kerf",
		task(want(2, 96, 26, 0)), once(rip(96, 56, upright(0, 96, 26), upright(0, 96, 26))),
	}, {
		"the blade takes a part of a kerf behind the only child",
		task(want(1, 96, 55, 0)), once(rip(96, 56, upright(0, 96, 55))),
	}, {
		"the blade runs off behind a split, which may be ripped to size before",
		task(want(1, 50, 54, 0)),
		once(rip(96, 56, crosscut(96, 54, upright(0, 50, 54), offcut(44, 54)))),
	}, {
		"four levels, leftovers first and last, a part turned",
		with(task(want(1, 30, 20, 0), either(want(2, 9, 40, 0))), func(p *nest.Problem) { p.Stages = 4 }),
		once(rip(96, 56,
			waste(96, 5),
			crosscut(96, 49,
				rip(40, 49,
					turned(1, 40, 9),
					turned(1, 40, 9),
					crosscut(40, 27, waste(9, 27), offcut(29, 27)),
				),
				rip(54, 49,
					crosscut(54, 20, upright(0, 30, 20), offcut(22, 20)),
					offcut(54, 27),
				),
			),
		)),
	}, {
		"a board is a strip that is only crosscut",
		nest.Problem{
			Stock:  []nest.Stock{{Length: 2400, Width: 1, TrimLength: 15, Price: 4, FirstCut: nest.Crosscut}},
			Blanks: []nest.Blank{want(4, 700, 1, 0), want(1, 200, 1, 0)},
			Kerf:   3,
			Stages: 1,
			Keep:   nest.Size{Length: 300},
		},
		nest.Plan{
			Layouts: []nest.Layout{
				{Repeat: 1, Root: crosscut(2370, 1, upright(0, 700, 1), upright(0, 700, 1), upright(0, 700, 1), upright(1, 200, 1), waste(58, 1))},
				{Repeat: 1, Root: crosscut(2370, 1, upright(0, 700, 1), offcut(1667, 1))},
			},
			Cost:  8,
			Bound: 8,
		},
	}, {
		"without a least leftover everything is an offcut",
		with(task(want(1, 96, 53, 0)), func(p *nest.Problem) { p.Keep = nest.Size{} }),
		once(rip(96, 56, upright(0, 96, 53), offcut(96, 1))),
	}, {
		"waste may be ripped narrower than the narrowest rip",
		with(task(want(1, 96, 50, 0)), func(p *nest.Problem) { p.Stock[0].NarrowestRip = 9 }),
		once(rip(96, 56, upright(0, 96, 50), waste(96, 4))),
	}, {
		"a crosscut may leave a piece narrower than the narrowest rip",
		with(task(want(2, 47, 56, 0)), func(p *nest.Problem) { p.Stock[0].NarrowestRip = 100 }),
		once(crosscut(96, 56, upright(0, 47, 56), upright(0, 47, 56))),
	}, {
		"stock on hand costs nothing",
		with(task(want(1, 96, 56, 0)), func(p *nest.Problem) { p.Stock[0].OnHand, p.Stock[0].Price, p.Stock[0].Count = true, 0, 1 }),
		nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: upright(0, 96, 56)}}},
	}, {
		"too large for the trimmed sheet",
		task(want(1, 97, 10, 0)),
		nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.TooLarge}}, Bound: 7},
	}, {
		"no stock to come from at all",
		task(want(3, 5, 5)),
		nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 3, Reason: nest.TooLarge}}},
	}, {
		"what there is of the stock is used up",
		with(task(want(3, 96, 56, 0)), func(p *nest.Problem) { p.Stock[0].Count = 2 }),
		nest.Plan{
			Layouts:  []nest.Layout{{Repeat: 2, Root: upright(0, 96, 56)}},
			Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.StockUsedUp}},
			Cost:     14, Bound: 21,
		},
	}, {
		"fits by size, but a single level of cuts does not reach it",
		with(task(want(1, 50, 30, 0)), func(p *nest.Problem) { p.Stages = 1 }),
		nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.AgainstRules}}},
	}, {
		"fits by size, but is narrower than the narrowest rip",
		with(task(want(1, 50, 30, 0)), func(p *nest.Problem) { p.Stock[0].NarrowestRip = 31 }),
		nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.AgainstRules}}},
	}, {
		"layouts that differ in one size only are distinct",
		task(want(2, 96, 40, 0), want(2, 80, 56, 0)),
		nest.Plan{
			Layouts: []nest.Layout{
				{Repeat: 1, Root: rip(96, 56, waste(96, 5), upright(0, 96, 40), waste(96, 7))},
				{Repeat: 1, Root: rip(96, 56, waste(96, 7), upright(0, 96, 40), waste(96, 5))},
				{Repeat: 1, Root: crosscut(96, 56, waste(5, 56), upright(1, 80, 56), waste(7, 56))},
				{Repeat: 1, Root: crosscut(96, 56, waste(7, 56), upright(1, 80, 56), waste(5, 56))},
			},
			Cost: 28,
		},
	}, {
		"sums beyond 64 bits",
		nest.Problem{
			Stock:  []nest.Stock{{Length: math.MaxInt64, Width: math.MaxInt64}},
			Blanks: []nest.Blank{want(math.MaxInt, math.MaxInt64, math.MaxInt64, 0)},
			Kerf:   math.MaxInt64,
		},
		nest.Plan{Layouts: []nest.Layout{{Repeat: math.MaxInt, Root: upright(0, math.MaxInt64, math.MaxInt64)}}},
	}}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			if err := nest.Verify(test.problem, test.plan); err != nil {
				t.Error(err)
			}
		})
	}
}

func TestVerifyNamesWhatIsWrong(t *testing.T) {
	two := func() nest.Problem { return task(want(2, 96, 27, 0)) }
	halves := rip(96, 56, upright(0, 96, 27), upright(0, 96, 27))
	limited := with(task(want(2, 96, 56, 0)), func(p *nest.Problem) { p.Stock[0].Count = 1 })
	tests := []struct {
		reason  string
		problem nest.Problem
		plan    nest.Plan
		want    string
	}{{
		"the trim is not cut off",
		task(want(1, 100, 60, 0)), once(upright(0, 100, 60)),
		`layout 0, root: 100 x 60, stock 0 less its trim is 96 x 56
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 6624, the stock of 6000`,
	}, {
		"trim that leaves nothing",
		with(task(), func(p *nest.Problem) { p.Stock[0].TrimWidth = 30 }), once(waste(96, 0)),
		`layout 0, root: 96 x 0 is no piece
layout 0: cuts no part`,
	}, {
		"one too many for the sheet",
		task(want(3, 96, 27, 0)), once(rip(96, 56, upright(0, 96, 27), upright(0, 96, 27), upright(0, 96, 27))),
		`layout 0, root: child 2 takes 27, behind the children and kerfs before it -2 are left
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 8784, the stock of 6000`,
	}, {
		"more than a kerf is missing",
		task(want(2, 96, 25, 0)), once(rip(96, 56, upright(0, 96, 25), upright(0, 96, 25))),
		`layout 0, root: 4 are missing behind the last child, a kerf takes 2
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 5616, the stock of 6000`,
	}, {
		"without a kerf nothing may be missing",
		with(two(), func(p *nest.Problem) { p.Kerf = 0 }), once(halves),
		`layout 0, root: 2 are missing behind the last child, a kerf takes 0
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 5808, the stock of 6000`,
	}, {
		"the blade cannot run off behind waste",
		task(want(1, 96, 47, 0)), once(rip(96, 56, upright(0, 96, 47), waste(96, 5))),
		`layout 0, root: the last child is a leftover and ends 2 before the edge, where no cut is made
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 5808, the stock of 6000`,
	}, {
		"a split that nothing cuts",
		task(want(1, 96, 56, 0)), once(rip(96, 56, upright(0, 96, 56))),
		`layout 0, node 0: 96 x 56 takes 56 of its parent's 56: no cut frees it
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 624, the stock of 6000
layout 0: cuts no part
blank 0: 0 cut, 0 with those listed as unplaced, 1 wanted`,
	}, {
		"a split without children, and one that is neither rip nor crosscut",
		task(), once(crosscut(96, 56, rip(47, 56), with(rip(47, 56, waste(47, 54)), func(n *nest.Node) { n.Cut = nest.AnyCut }))),
		`layout 0, node 0: a split without children
layout 0, node 1: a split by cut 0, which is neither rip nor crosscut
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 736, the stock of 6000
layout 0: cuts no part`,
	}, {
		"a child that does not share the other dimension, and one of no size",
		task(), once(rip(96, 56, offcut(95, 27), waste(96, 0))),
		`layout 0, node 0: 95 x 27 measures 95 across the cuts, its parent 96
layout 0, node 1: 96 x 0 is no piece
layout 0, root: parts, offcuts, waste, kerf and trim have an area of 624, the stock of 6000
layout 0: cuts no part`,
	}, {
		"levels that do not alternate",
		task(want(3, 96, 17, 0)),
		once(rip(96, 56, rip(96, 36, upright(0, 96, 17), upright(0, 96, 17)), upright(0, 96, 17))),
		`layout 0, node 0: a rip within a rip: levels of cuts alternate`,
	}, {
		"a level more than the stages allow, reported once",
		with(task(want(2, 46, 9, 0)), func(p *nest.Problem) { p.Stages = 1 }),
		once(rip(96, 56, crosscut(96, 9, upright(0, 46, 9), upright(0, 46, 9)), offcut(96, 45))),
		`layout 0, node 0: cuts at level 2, 1 are allowed`,
	}, {
		"the wrong first cut",
		with(two(), func(p *nest.Problem) { p.Stock[0].FirstCut = nest.Crosscut }), once(halves),
		`layout 0, root: the first cut is a rip, stock 0 asks for a crosscut`,
	}, {
		"a part and a split ripped too narrow, but not the waste",
		with(task(want(1, 96, 20, 0), want(2, 47, 24, 0)), func(p *nest.Problem) { p.Stock[0].NarrowestRip = 25 }),
		once(rip(96, 56, upright(0, 96, 20), crosscut(96, 24, upright(1, 47, 24), upright(1, 47, 24)), waste(96, 8))),
		`layout 0, node 0: ripped 20 wide, the narrowest rip is 25
layout 0, node 1: ripped 24 wide, the narrowest rip is 25`,
	}, {
		"a part that is not its blank",
		task(either(want(2, 96, 26, 0))), once(rip(96, 56, upright(0, 96, 27), turned(0, 96, 27))),
		`layout 0, node 0: 96 x 27, blank 0 upright is 96 x 26
layout 0, node 1: 96 x 27, blank 0 turned is 26 x 96`,
	}, {
		"a part against the grain, and one from the wrong stock",
		task(want(1, 27, 96, 0), want(1, 96, 27)), once(rip(96, 56, turned(0, 96, 27), upright(1, 96, 27))),
		`layout 0, node 0: blank 0 may not come turned from stock 0
layout 0, node 1: blank 1 may not come upright from stock 0`,
	}, {
		"an offcut called waste and waste called an offcut",
		task(want(1, 96, 33, 0)), once(rip(96, 56, waste(96, 10), upright(0, 96, 33), offcut(96, 9))),
		`layout 0, node 0: 96 x 10 is called waste, from 10 x 10 on it is an offcut
layout 0, node 2: 96 x 9 is called an offcut, under 10 x 10 it is waste`,
	}, {
		"a leaf with children, and a use that nobody knows",
		task(), once(rip(96, 56,
			with(offcut(96, 27), func(n *nest.Node) { n.Children = []nest.Node{waste(1, 1)} }),
			with(offcut(96, 27), func(n *nest.Node) { n.Use = 9 }))),
		`layout 0, node 0: has children, but is no split
layout 0, node 1: use 9 is unknown
layout 0: cuts no part`,
	}, {
		"indices out of range",
		task(), nest.Plan{
			Layouts: []nest.Layout{
				{Stock: 0, Repeat: 1, Root: rip(96, 56, upright(-1, 96, 27), upright(1, 96, 27))},
				{Stock: 1, Repeat: 1, Root: halves},
				{Stock: -1, Repeat: 1, Root: halves},
			},
			Unplaced: []nest.Unplaced{{Blank: 0, Count: 1}, {Blank: -1, Count: 1}},
			Cost:     7,
		},
		`layout 0, node 0: blank -1, there are 0
layout 0, node 1: blank 1, there are 0
layout 0: cuts no part
layout 1: stock 1, there are 1
layout 2: stock -1, there are 1
unplaced 0: blank 0, there are 0
unplaced 1: blank -1, there are 0`,
	}, {
		"a layout repeated never",
		two(), nest.Plan{Layouts: []nest.Layout{{Root: halves}}},
		`layout 0: cut 0 times
blank 0: 0 cut, 0 with those listed as unplaced, 2 wanted`,
	}, {
		"equal layouts apart",
		task(want(4, 96, 27, 0)), nest.Plan{Layouts: []nest.Layout{{Repeat: 1, Root: halves}, {Repeat: 1, Root: halves}}, Cost: 14},
		`layout 1: equals layout 0; it should be counted there`,
	}, {
		"more stock than there is",
		limited, nest.Plan{Layouts: []nest.Layout{{Repeat: 2, Root: upright(0, 96, 56)}}, Cost: 14},
		`stock 0: 2 pieces taken, there are 1`,
	}, {
		"a wrong cost, and a bound that the plan refutes",
		two(), with(once(halves), func(p *nest.Plan) { p.Cost, p.Bound = 6, 8 }),
		`cost: 6, the stock bought costs 7
bound: 8, but this plan cuts every blank for 6`,
	}, {
		"a negative bound",
		two(), with(once(halves), func(p *nest.Plan) { p.Bound = -1 }),
		`bound: -1 is negative`,
	}, {
		"a blank cut too often, another forgotten",
		task(want(1, 96, 27, 0), want(3, 5, 5, 0)), once(halves),
		`blank 0: 2 cut, 2 with those listed as unplaced, 1 wanted
blank 1: 0 cut, 0 with those listed as unplaced, 3 wanted`,
	}, {
		"unplaced twice, and so often as to cancel out",
		limited, nest.Plan{
			Layouts:  []nest.Layout{{Repeat: 1, Root: upright(0, 96, 56)}},
			Unplaced: []nest.Unplaced{{Blank: 0, Count: 2, Reason: nest.StockUsedUp}, {Blank: 0, Count: -1, Reason: nest.StockUsedUp}},
			Cost:     7,
		},
		`unplaced 1: blank 0 is listed a second time
unplaced 1: blank 0 is listed -1 times`,
	}, {
		"unplaced while stock is left",
		two(), nest.Plan{Unplaced: []nest.Unplaced{{Blank: 0, Count: 2, Reason: nest.StockUsedUp}}},
		`unplaced 0: blank 0 can be cut from stock 0, of which some is left`,
	}, {
		"called too large, but only used up",
		limited, nest.Plan{
			Layouts:  []nest.Layout{{Repeat: 1, Root: upright(0, 96, 56)}},
			Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.TooLarge}},
			Cost:     7,
		},
		`unplaced 0: blank 0 is said not to fit, stock 0 can be cut down to it
unplaced 0: blank 0 is called too large, but is no larger than a stock it may come from`,
	}, {
		"called used up, but too large either way",
		task(either(want(1, 97, 57, 0)), want(1, 56, 96, 0)), nest.Plan{
			Unplaced: []nest.Unplaced{{Blank: 0, Count: 1, Reason: nest.StockUsedUp}, {Blank: 1, Count: 1, Reason: 5}},
		},
		`unplaced 0: blank 0 is larger than any stock it may come from, another reason is given
unplaced 1: blank 1 has reason 5, which is unknown`,
	}}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			var got string
			if err := nest.Verify(test.problem, test.plan); err != nil {
				got = err.Error()
			}
			if diff := cmp.Diff(strings.Split(test.want, "\n"), strings.Split(got, "\n")); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

func TestVerifyComesToAnEndOnATreeThatHoldsItself(t *testing.T) {
	loop := rip(96, 56, nest.Node{}, nest.Node{})
	loop.Children[0], loop.Children[1] = loop, loop
	if err := nest.Verify(task(), once(loop)); err == nil {
		t.Error("accepted")
	}
}
