package report

import (
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

func TestCoverSentence(t *testing.T) {
	bill := func(names ...string) (bill []cutplan.Blank) {
		for _, n := range names {
			bill = append(bill, cutplan.Blank{Blank: stock.Blank{Part: stock.Part{Name: n}}})
		}
		return bill
	}("top", "side", "shelf, lower", "a", "b", "c", "d", "e", "f", "g", "h")
	for i := range bill {
		bill[i].Mark = string(rune('A' + i))
	}
	not := func(counts ...int) (list []cutplan.Uncovered) {
		for i, n := range counts {
			if n > 0 {
				list = append(list, cutplan.Uncovered{Blank: i, Count: n})
			}
		}
		return list
	}
	tests := []struct {
		reason string
		cover  cutplan.Cover
		want   string
	}{
		{"most", cutplan.Cover{Parts: 41, Covered: 38, Uncovered: not(1, 2), Offcuts: true},
			"38 of 41 parts could be recut from the offcuts; not: top, side (2)."},
		{"names with commas", cutplan.Cover{Parts: 5, Covered: 2, Uncovered: not(1, 0, 2), Offcuts: true},
			"2 of 5 parts could be recut from the offcuts; not: top; shelf, lower (2)."},
		{"more than can be named", cutplan.Cover{Parts: 20, Covered: 8, Uncovered: not(1, 2, 1, 1, 1, 1, 1, 1, 1, 1, 1), Offcuts: true},
			"8 of 20 parts could be recut from the offcuts; not: A, B (2), C, D, E, F, G, H, I, J, K."},
		{"some of it from whole pieces", cutplan.Cover{Parts: 41, Covered: 40, Uncovered: not(1), Offcuts: true, Rack: true},
			"40 of 41 parts could be recut from the offcuts and what stays on hand; not: top."},
		{"all", cutplan.Cover{Parts: 41, Covered: 41, Rack: true}, "Any one of the 41 parts could be recut from what stays on hand."},
		{"the only one", cutplan.Cover{Parts: 1, Covered: 1, Offcuts: true}, "The part could be recut from the offcuts."},
		{"none", cutplan.Cover{Parts: 3, Uncovered: not(1, 2)}, "No part could be recut from what is kept: each spoiled one takes another trip."},
		{"nothing is cut", cutplan.Cover{}, ""},
	}
	for _, tt := range tests {
		if got := cover(&cutplan.Plan{Bill: bill, Cover: tt.cover}); got != tt.want {
			t.Errorf("%s:\n\t%s\nwant\t%s", tt.reason, got, tt.want)
		}
	}
}
