package report

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

func TestProof(t *testing.T) {
	sheet := stock.Stock{Name: "birch", Price: 7450, Length: 2440 * stock.Millimeter, Width: 1220 * stock.Millimeter}
	half := stock.Stock{Name: "half", Price: 4100, Length: 1220 * stock.Millimeter, Width: 1220 * stock.Millimeter}
	board := stock.Stock{Name: "2x4", Kind: stock.Board, Price: 498, Length: 2400 * stock.Millimeter, Width: 89 * stock.Millimeter}
	free := func(s stock.Stock) stock.Stock { s.Price = 0; return s }

	type buy map[stock.Stock]int
	plan := func(cost, bound stock.Money, b buy, unpriced ...cutplan.Unpriced) *cutplan.Plan {
		p := &cutplan.Plan{Cost: cost, Bound: bound, Unpriced: unpriced, Layouts: make([]cutplan.Layout, 1)}
		for _, s := range []stock.Stock{sheet, half, board, free(sheet), free(half), free(board)} {
			if n := b[s]; n > 0 {
				p.Buy = append(p.Buy, cutplan.Purchase{Stock: s, Count: n, Cost: s.Price.Times(n)})
			}
			if _, ok := b[s]; ok {
				p.Job.Stock = append(p.Job.Stock, s)
			}
		}
		return p
	}
	group := func(area, bound int64, of ...stock.Stock) cutplan.Unpriced {
		return cutplan.Unpriced{Stock: of, OneSize: len(of) == 1, Area: area, Bound: bound}
	}
	short := func(p *cutplan.Plan) *cutplan.Plan {
		p.Unplaced = make([]cutplan.Unplaced, 1)
		return p
	}
	tests := []struct {
		reason string
		plan   *cutplan.Plan
		want   string
	}{
		{"cost equals bound", plan(14900, 14900, buy{sheet: 2}), "2 sheets, 149.00: no plan can cost less."},
		{"one sheet", plan(7450, 7450, buy{sheet: 1}), "1 sheet, 74.50: no plan can cost less."},
		{"boards", plan(498, 498, buy{board: 1}), "1 board, 4.98: no plan can cost less."},
		{"sheets and boards", plan(17390, 17390, buy{sheet: 2, board: 5}), "2 sheets and 5 boards, 173.90: no plan can cost less."},
		{"a gap where all has one price is told in pieces", plan(37250, 29800, buy{sheet: 5}),
			"5 sheets, 372.50; 4 for 298.00 may be possible (bound 298.00): a longer --limit may find it."},
		{"a gap is told in money", plan(15650, 14900, buy{sheet: 1, half: 2}),
			"3 sheets, 156.50; a plan for 149.00 may be possible (bound 149.00): a longer --limit may find it."},
		{"so it is where only one of two sizes is bought", plan(14900, 12300, buy{sheet: 2, half: 0}),
			"2 sheets, 149.00; a plan for 123.00 may be possible (bound 123.00): a longer --limit may find it."},
		{"an incomplete plan proves nothing of its cost", short(plan(7450, 14900, buy{sheet: 1})),
			"1 sheet, 74.50, for the blanks that are cut; the whole job costs 149.00 at least."},
		{"one price is missing", plan(14900, 14900, buy{sheet: 2, free(board): 3}, group(3, 3, free(board))),
			"2 sheets and 3 boards, 149.00 without 2x4, for which no price is given."},

		{"no prices: the number is proven", plan(0, 0, buy{free(sheet): 5}, group(5, 5, free(sheet))),
			"5 sheets, no prices given: no plan can do with fewer."},
		{"of all materials together", plan(0, 0, buy{free(sheet): 5, free(board): 1}, group(5, 5, free(sheet)), group(1, 1, free(board))),
			"5 sheets and 1 board, no prices given: no plan can do with fewer."},
		{"or not proven", plan(0, 0, buy{free(sheet): 5}, group(5, 4, free(sheet))),
			"5 sheets, no prices given; 4 may be possible (bound 4): a longer --limit may find it."},
		{"of several sizes the area is proven, not the number", plan(0, 0, buy{free(sheet): 1, free(half): 1}, group(3, 3, free(sheet), free(half))),
			"2 sheets, no prices given: no plan can do with less area."},
		{"or not", plan(0, 0, buy{free(sheet): 1, free(half): 1}, group(3, 2, free(sheet), free(half))),
			"2 sheets, no prices given; a plan with less area may be possible: a longer --limit may find it."},
		{"one group is not proven", plan(0, 0, buy{free(sheet): 5, free(board): 1}, group(5, 5, free(sheet)), group(2, 1, free(board), free(half))),
			"5 sheets and 1 board, no prices given; a plan with less area may be possible: a longer --limit may find it."},
		{"other stock for the same blanks has a price", plan(0, 0, buy{free(sheet): 2}),
			"2 sheets, no prices given."},
		{"nor is anything proven of an incomplete plan", short(plan(0, 0, buy{free(sheet): 2}, group(2, 2, free(sheet)))),
			"2 sheets, no prices given, for the blanks that are cut."},

		{"all from the rack", plan(0, 0, buy{}), "Nothing has to be bought: what is on hand is enough for this plan."},
		{"nothing to do", &cutplan.Plan{}, "Nothing is left to be cut."},
	}
	for _, tt := range tests {
		if got := proof(tt.plan); got != tt.want {
			t.Errorf("%s:\n\t%s\nwant\t%s", tt.reason, got, tt.want)
		}
	}
}
