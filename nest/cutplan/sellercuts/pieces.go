package sellercuts

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// piece is a kind of piece that divisions of one offer give.
type piece struct {
	stock.Stock
	of []int // number that each division gives, by index
}

// pieces lists the kinds of pieces that divisions give, each with a name of its own.
func pieces(divisions []cutplan.Division, tolerance stock.Length) []piece {
	var all []piece
	for k, d := range divisions {
		for i := range d.Pieces {
			s := d.Piece(i, tolerance)
			at := slices.IndexFunc(all, func(p piece) bool { return p.Stock == s })
			if at < 0 {
				at = len(all)
				all = append(all, piece{s, make([]int, len(divisions))})
			}
			all[at].of[k]++
		}
	}
	numbers := map[string]int{}
	for _, p := range all {
		numbers[p.From]++
	}
	counted := map[string]int{}
	for i, p := range all {
		counted[p.From]++
		all[i].Name = p.From + ", piece"
		if numbers[p.From] > 1 {
			all[i].Name = fmt.Sprintf("%s, piece %d", p.From, counted[p.From])
		}
	}
	return all
}

// count returns how many of p the divisions give by their counts.
func (p piece) count(divisions []cutplan.Division) int {
	n := 0
	for k, d := range divisions {
		n += p.of[k] * d.Count
	}
	return n
}

// share returns the price of p: its share of the offer's price and the cuts, by size. The
// cheapest division that gives p counts.
func (p piece) share(divisions []cutplan.Division, t stock.Transport) stock.Money {
	least := stock.Money(0)
	for k, d := range divisions {
		if p.of[k] == 0 || d.Stock.Price == 0 {
			continue
		}
		size, _ := cutplan.Division{Stock: p.Stock, Cut: d.Cut}.Along()
		along, _ := d.Along()
		price := max(1, each(d, t)*stock.Money(size)/stock.Money(along))
		if least == 0 || price < least {
			least = price
		}
	}
	return least
}

// each returns the cost of one piece of the offer with its cuts.
func each(d cutplan.Division, t stock.Transport) stock.Money {
	return d.Stock.Price + t.CutPrice.Times(d.Cuts())
}

// needed returns the least count of each division that supplies the layouts. Pieces that
// several divisions give come from the first; if limited, only up to its count.
func needed(divisions []cutplan.Division, all []piece, layouts []cutplan.Layout, limited bool) []int {
	counts := make([]int, len(divisions))
	for _, p := range all {
		used := p.used(layouts)
		for k, n := range p.of {
			used -= n * counts[k]
		}
		for k, n := range p.of {
			if n == 0 || used <= 0 {
				continue
			}
			more := (used + n - 1) / n
			if limited {
				more = min(more, divisions[k].Count-counts[k])
			}
			counts[k] += more
			used -= more * n
		}
	}
	return counts
}

// used returns how many of p the layouts divide.
func (p piece) used(layouts []cutplan.Layout) int {
	used := 0
	for _, l := range layouts {
		if l.Stock.From == p.From && l.Stock.Name == p.Name {
			used += l.Repeat
		}
	}
	return used
}
