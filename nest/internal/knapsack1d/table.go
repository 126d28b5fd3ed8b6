package knapsack1d

import "sawbill/nest/internal/halt"

// The greatest table worth its time, and the greatest length worth its memory: 8 MiB, and an
// eighth of a byte for each cell.
const (
	maxCells  = 1 << 26
	maxLength = 1 << 20
)

// table holds the most valuable row for every length: dynamic programming over bundles. These
// are items 1, 2, 4 and so on at a time, so that they sum to any number up to the count.
type table struct {
	bundles []bundle
	best    []int64  // per length
	taken   []uint64 // per bundle, a bit for each length
}

type bundle struct {
	item, times int
}

// cells returns the size of the table, or more than maxCells if the length is too great.
func (t *table) cells(s *Search) int64 {
	t.bundles = t.bundles[:0]
	if s.length > maxLength {
		return maxCells + 1
	}
	for _, i := range s.order {
		left := int(min(int64(s.items[i].Count), s.length/s.items[i].Size))
		for times := 1; left > 0; times *= 2 {
			times = min(times, left)
			t.bundles = append(t.bundles, bundle{i, times})
			left -= times
		}
	}
	return (s.length + 1) * int64(len(t.bundles))
}

// solve computes the table and the best row; not ok if halted.
func (t *table) solve(s *Search) (ok bool) {
	length := int(s.length)
	words := length/64 + 1
	t.best = append(t.best[:0], make([]int64, length+1)...)
	t.taken = append(t.taken[:0], make([]uint64, words*len(t.bundles))...)
	asks := max(1, halt.Portion/(length+1))
	for n, b := range t.bundles {
		if n%asks == 0 && s.Halt.On() {
			return false
		}
		size := int(s.items[b.item].Size) * b.times
		value := s.values[b.item] * int64(b.times)
		taken := t.taken[n*words:][:words]
		for at := length; at >= size; at-- {
			if v := t.best[at-size] + value; v > t.best[at] {
				t.best[at] = v
				taken[at/64] |= 1 << (at % 64)
			}
		}
	}
	if t.best[length] > s.value {
		s.value, s.found = t.best[length], true
		clear(s.best)
		at := length
		for n := len(t.bundles) - 1; n >= 0; n-- {
			if t.taken[n*words+at/64]>>(at%64)&1 != 0 {
				b := t.bundles[n]
				s.best[b.item] += b.times
				at -= int(s.items[b.item].Size) * b.times
			}
		}
	}
	s.bound = s.value
	return true
}
