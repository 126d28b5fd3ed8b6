// Package sums adds up sizes that keep how they came about.
package sums

import "sawbill/stock"

// Of is a size that was given.
func Of(l stock.Length, label string) stock.Sum {
	return stock.Sum{{Times: 1, Value: l, Label: label}}
}

// Plus is sum with more terms. Terms that come to nothing are left out.
func Plus(sum stock.Sum, terms ...stock.Term) stock.Sum {
	longer := append(make(stock.Sum, 0, len(sum)+len(terms)), sum...)
	for _, t := range terms {
		if t.Times != 0 && t.Value != 0 {
			longer = append(longer, t)
		}
	}
	return longer
}

// Minus is sum less every term of less.
func Minus(sum, less stock.Sum) stock.Sum {
	return Plus(sum, scaled(less, -1)...)
}

func scaled(sum stock.Sum, times int) stock.Sum {
	s := make(stock.Sum, len(sum))
	for i, t := range sum {
		t.Times *= times
		s[i] = t
	}
	return s
}

// Row adds up what stands in a line, taking neighbors of one size and label
// together.
func Row(members ...stock.Term) stock.Sum {
	var sum stock.Sum
	for _, m := range members {
		if last := len(sum) - 1; last >= 0 && sum[last].Value == m.Value && sum[last].Label == m.Label {
			sum[last].Times += m.Times
			continue
		}
		sum = Plus(sum, m)
	}
	return sum
}
