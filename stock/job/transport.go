package job

import (
	"sawbill/stock"
	"sawbill/stock/fault"
)

// mostSellerCuts of one sheet: a panel saw at a seller's makes a few.
const mostSellerCuts = 10

// transportKeys limit the sizes that can be carried home, and the cuts that the seller makes.
var transportKeys = []key{
	{name: "longest", holds: aLength, longest: longestStock, usual: "measure the longest piece that goes into the vehicle"},
	{name: "widest", holds: aLength, longest: longestStock, usual: "measure the widest piece that goes in beside it"},
	{name: "heaviest", holds: aCount, most: 5000, usual: "give the kg that the vehicle may carry in one trip, in a job in inches the pounds"},
	{name: "cuts", holds: aCount, metric: "2", zero: true, most: mostSellerCuts, usual: "sellers make one or two straight cuts in a sheet"},
	{name: "cut_price", holds: aPrice, metric: "0"},
	// A vertical panel saw cuts some 4 mm wide and true to 1 or 2 mm. Common
	// practice, no source.
	{name: "cut_kerf", holds: aLength, metric: "4 mm", inch: "5/32 in", zero: true, longest: widestKerf, usual: "panel saws cut 3 to 5 mm (1/8 to 3/16 in)"},
	{name: "cut_tolerance", holds: aLength, metric: "2 mm", inch: "1/16 in", zero: true, longest: largestMilling, usual: "sellers cut true to 1 to 3 mm (1/32 to 1/8 in)"},
}

// transport reads [transport].
func (r *reader) transport(root *table, at place) stock.Transport {
	if _, there := root.last("transport"); !there {
		return stock.Transport{}
	}
	rec := r.section(root, "transport", at)
	t := stock.Transport{
		Longest: rec.length("longest"), Widest: rec.length("widest"),
		Cuts: rec.count("cuts"), CutPrice: rec.fields["cut_price"].price,
		CutKerf: rec.length("cut_kerf"), CutTolerance: rec.length("cut_tolerance"),
	}
	t.Heaviest = stock.Grams(1000 * rec.count("heaviest"))
	if r.ruler.Units == stock.Inches {
		t.Heaviest = stock.OfPounds(rec.count("heaviest"))
	}
	if t.Widest > t.Longest && t.Longest > 0 {
		r.fault(rec.where("widest").of("widest"), fault.New(
			r.ruler.PrintUnit(t.Widest)+" is more than longest, "+r.ruler.PrintUnit(t.Longest),
			"give the longer of the two as longest"))
	}
	if rec.sound && !t.Limited() && t.Heaviest == 0 {
		r.fault(rec.place, fault.New("nothing limits what can be carried", "add longest =, or leave [transport] out"))
	}
	return t
}
