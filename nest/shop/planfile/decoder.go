package planfile

import (
	"fmt"

	"sawbill/stock"
)

// decoder turns what a file says into what the program works with, and notes the first
// thing that makes no sense. Until it is asked, nothing that it gives must be relied on.
type decoder struct{ wrong error }

func (d *decoder) bad(format string, args ...any) {
	if d.wrong == nil {
		d.wrong = fmt.Errorf(format, args...)
	}
}

// mostCounted is more than there is of anything in a plan; with it no price, no area and no
// sum of lengths goes beyond what can be counted.
const mostCounted = 1 << 20

// farthest is beyond all lengths that a job may have, with what is added to them.
const farthest = 4 * stock.Longest

// size is a length that is not negative.
func (d *decoder) size(v int64) stock.Length {
	if v < 0 || v > int64(farthest) {
		d.bad("a length of %d in it makes no sense", v)
		return 0
	}
	return stock.Length(v)
}

// place is a length that may lie beyond an edge by a kerf or so.
func (d *decoder) place(v int64) stock.Length {
	if v < 0 && v >= -int64(farthest) {
		return stock.Length(v)
	}
	return d.size(v)
}

// money is a price or a sum of prices.
func (d *decoder) money(v int64) stock.Money {
	if v < 0 {
		d.bad("a price of %d in it makes no sense", v)
		return 0
	}
	return stock.Money(v)
}

// price is that of one piece.
func (d *decoder) price(v int64) stock.Money {
	if v > int64(stock.Dearest) {
		d.bad("a price of %d in it makes no sense", v)
		return 0
	}
	return d.money(v)
}

func (d *decoder) count(v int) int {
	if v < 0 || v > mostCounted {
		d.bad("a count of %d in it makes no sense", v)
		return 0
	}
	return v
}

// index is i where there are n, else 0.
func (d *decoder) index(i, n int) int {
	if i < 0 || i >= n {
		d.bad("the plan in it speaks of what it does not have")
		return 0
	}
	return i
}

// each turns all of a list; nothing stays nothing.
func each[A, B any](all []A, turn func(A) B) []B {
	if all == nil {
		return nil
	}
	turned := make([]B, len(all))
	for i, a := range all {
		turned[i] = turn(a)
	}
	return turned
}

// one is the i-th of all; the zero value where there is none.
func one[A any](d *decoder, all []A, i int) (found A) {
	if i = d.index(i, len(all)); i < len(all) {
		return all[i]
	}
	return found
}
