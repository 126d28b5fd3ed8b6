package cutplan

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// piece is what divisions of one offer give alike.
type piece struct {
	stock.Stock
	of []int // how many of it each of the divisions gives, by index
}

// pieces are what divisions give, alike ones of one offer together and each named
// once.
func pieces(divisions []Division, tolerance stock.Length) []piece {
	var all []piece
	for k, d := range divisions {
		for i := range d.Pieces {
			s := d.piece(i, tolerance)
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

// count is how many of p there are when as many are cut as counts says.
func (p piece) count(divisions []Division) int {
	n := 0
	for k, d := range divisions {
		n += p.of[k] * d.Count
	}
	return n
}

// share is what p costs if the price of its offer and of the cuts is shared out by
// size; of divisions that give it, by the cheapest.
func (p piece) share(divisions []Division, t stock.Transport) stock.Money {
	least := stock.Money(0)
	for k, d := range divisions {
		if p.of[k] == 0 || d.Stock.Price == 0 {
			continue
		}
		size, _ := Division{Stock: p.Stock, Cut: d.Cut}.along()
		along, _ := d.along()
		each := max(1, d.each(t)*stock.Money(size)/stock.Money(along))
		if least == 0 || each < least {
			least = each
		}
	}
	return least
}

// each is what one of the offer costs with its cuts.
func (d Division) each(t stock.Transport) stock.Money {
	return d.Stock.Price + t.CutPrice.Times(d.Cuts())
}

// needed is how many of each division the layouts take at the least, by the piece
// that they take most of; what several divisions give is taken from the first, as far
// as its count goes if that is the limit.
func needed(divisions []Division, all []piece, layouts []Layout, limited bool) []int {
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

// used is how many of p the layouts divide.
func (p piece) used(layouts []Layout) int {
	used := 0
	for _, l := range layouts {
		if l.Stock.From == p.From && l.Stock.Name == p.Name {
			used += l.Repeat
		}
	}
	return used
}
