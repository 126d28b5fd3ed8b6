package planfile

import (
	"fmt"

	"sawbill/stock"
)

// decoder converts values of a file and notes the first one that makes no sense. Its results
// are safe to use only if wrong is nil.
type decoder struct{ wrong error }

func (d *decoder) bad(format string, args ...any) {
	if d.wrong == nil {
		d.wrong = fmt.Errorf(format, args...)
	}
}

// mostCounted is beyond any count in a plan. It keeps products with prices and lengths from
// overflowing.
const mostCounted = 1 << 20

// farthest is beyond any length of a job, allowances included.
const farthest = 4 * stock.Longest

// size reads a length that is not negative.
func (d *decoder) size(v int64) stock.Length {
	if v < 0 || v > int64(farthest) {
		d.bad("a length of %d in the file makes no sense", v)
		return 0
	}
	return stock.Length(v)
}

// place reads a coordinate: it may lie beyond an edge by a kerf or so.
func (d *decoder) place(v int64) stock.Length {
	if v < 0 && v >= -int64(farthest) {
		return stock.Length(v)
	}
	return d.size(v)
}

// money reads a price or a sum of prices.
func (d *decoder) money(v int64) stock.Money {
	if v < 0 {
		d.bad("a price of %d in the file makes no sense", v)
		return 0
	}
	return stock.Money(v)
}

// price reads the price of one piece.
func (d *decoder) price(v int64) stock.Money {
	if v > int64(stock.Dearest) {
		d.bad("a price of %d in the file makes no sense", v)
		return 0
	}
	return d.money(v)
}

func (d *decoder) count(v int) int {
	if v < 0 || v > mostCounted {
		d.bad("a count of %d in the file makes no sense", v)
		return 0
	}
	return v
}

// index returns i if it is an index of n things, else 0.
func (d *decoder) index(i, n int) int {
	if i < 0 || i >= n {
		d.bad("the plan in the file refers to something that it does not have")
		return 0
	}
	return i
}

// each converts every element of a list; nil stays nil.
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

// one returns element i of a list, or the zero value.
func one[A any](d *decoder, all []A, i int) (found A) {
	if i = d.index(i, len(all)); i < len(all) {
		return all[i]
	}
	return found
}
