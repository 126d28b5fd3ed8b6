// Package knapsack1d solves the bounded knapsack: the most valuable row of pieces along a
// length, each at most as often as its count.
package knapsack1d

import (
	"cmp"
	"math/bits"
	"slices"

	"sawbill/nest/internal/halt"
)

// Item is a piece that a row may hold up to Count times.
type Item struct {
	Size  int64 // along the length; at least 1
	Count int
}

// Search solves the knapsack for one length and any values. It is a depth-first branch and
// bound over items in order of value per size: Gilmore and Gomory, Oper. Res. 11, 1963;
// Martello and Toth, Knapsack Problems, 1990; from memory. If that takes long, dynamic
// programming follows, unless the length is too great.
type Search struct {
	// Halt ends a solution or a listing early. Best and Bound hold all the same.
	Halt halt.Signal

	length  int64
	items   []Item
	values  []int64 // per item
	order   []int   // items of some value, by value per size, the best first
	minSize []int64 // per place in order, and one more: the minimum size from there on
	row     []int   // per place in order: times in the present row
	best    []int   // per item: times in the best row
	value   int64   // of the best row, or the threshold
	found   bool
	bound   int64
	table   table
	rows    int // looked at since Halt was asked
}

// New returns a search for rows within a length.
func New(length int64, items []Item) *Search {
	return &Search{length: length, items: slices.Clone(items), best: make([]int, len(items))}
}

// Limit sets the count of each item.
func (s *Search) Limit(count func(item int) int) {
	for i := range s.items {
		s.items[i].Count = count(i)
	}
}

// A node takes about as long as cellsPerNode cells of a table. minNodes are tried in any case,
// and maxNodes if there is no table.
const (
	cellsPerNode = 32
	minNodes     = 1 << 12
	maxNodes     = 1 << 20
)

// Solve looks for the best row that is worth more than above, which is at least 0. Item i is
// worth values[i], at least 0; a row is worth less than 2^62. It returns the approximate number
// of steps taken.
func (s *Search) Solve(values []int64, above int64) (steps int64) {
	s.sortItems(values)
	s.value, s.found = above, false
	clear(s.best)
	steps = int64(len(s.items))
	cells := s.table.cells(s)
	most := int64(maxNodes)
	if cells <= maxCells {
		most = max(minNodes, cells/cellsPerNode)
	}
	looked, done := s.branchAndBound(most)
	steps += cellsPerNode * looked
	switch {
	case done:
		s.bound = s.value
	case cells <= maxCells && s.table.solve(s):
		steps += cells
	default:
		s.bound = s.upperBound(0, s.length)
	}
	return steps
}

// Best returns the most valuable row found; not ok if none is worth more than the threshold.
func (s *Search) Best() (value int64, ok bool) { return s.value, s.found }

// Times returns how often the best row holds an item.
func (s *Search) Times(item int) int { return s.best[item] }

// Bound returns a value that no row exceeds: that of the best row, or else the threshold. It is
// more if the search gave up.
func (s *Search) Bound() int64 { return s.bound }

// sortItems puts the usable items in order.
func (s *Search) sortItems(values []int64) {
	s.values = append(s.values[:0], values...)
	s.order = s.order[:0]
	for i, it := range s.items {
		if it.Count > 0 && it.Size <= s.length && values[i] > 0 {
			s.order = append(s.order, i)
		}
	}
	slices.SortFunc(s.order, func(a, b int) int {
		ah, al := bits.Mul64(uint64(values[a]), uint64(s.items[b].Size))
		bh, bl := bits.Mul64(uint64(values[b]), uint64(s.items[a].Size))
		return cmp.Or(cmp.Compare(bh, ah), cmp.Compare(bl, al), cmp.Compare(s.items[b].Size, s.items[a].Size), cmp.Compare(a, b))
	})
	s.prepare()
}

// prepare resets the present row.
func (s *Search) prepare() {
	s.row = append(s.row[:0], make([]int, len(s.order))...)
	s.minSize = append(s.minSize[:0], make([]int64, len(s.order)+1)...)
	s.minSize[len(s.order)] = s.length + 1
	for n := len(s.order) - 1; n >= 0; n-- {
		s.minSize[n] = min(s.minSize[n+1], s.items[s.order[n]].Size)
	}
}

// branchAndBound tries rows until none is left that may be better, or most have been tried.
func (s *Search) branchAndBound(most int64) (looked int64, done bool) {
	at := s.start()
	for {
		// Fill up as long as the row may become better than the best.
		for at.n < len(s.order) && at.room >= s.minSize[at.n] {
			if s.items[s.order[at.n]].Size > at.room {
				s.row[at.n] = 0
				at.n++
				continue
			}
			if at.value+s.upperBound(at.n, at.room) <= s.value {
				break
			}
			s.fill(&at)
			looked++
		}
		if at.value > s.value {
			s.saveBest(at.value, at.n)
		}
		if !s.backtrack(&at) {
			return looked, true
		}
		if looked++; looked > most || s.halted() {
			return looked, false
		}
	}
}

// halted counts a row, and asks Halt after a portion of them.
func (s *Search) halted() bool {
	if s.rows++; s.rows < halt.Portion/cellsPerNode {
		return false
	}
	s.rows = 0
	return s.Halt.On()
}

// partial is a row of which n items, in order, are decided.
type partial struct {
	n           int
	room, value int64
}

func (s *Search) start() partial { return partial{room: s.length} }

// fill adds the next item as often as it fits.
func (s *Search) fill(at *partial) {
	i := s.order[at.n]
	it := &s.items[i]
	times := min(int64(it.Count), at.room/it.Size)
	s.row[at.n] = int(times)
	at.room -= times * it.Size
	at.value += times * s.values[i]
	at.n++
}

// backtrack removes the last piece added and goes on with the next item; false if the row is
// empty.
func (s *Search) backtrack(at *partial) bool {
	for at.n--; at.n >= 0 && s.row[at.n] == 0; at.n-- {
	}
	if at.n < 0 {
		return false
	}
	i := s.order[at.n]
	s.row[at.n]--
	at.room += s.items[i].Size
	at.value -= s.values[i]
	at.n++
	return true
}

// saveBest saves the first n items of the present row as the best row.
func (s *Search) saveBest(value int64, n int) {
	s.value, s.found = value, true
	clear(s.best)
	for m, i := range s.order[:n] {
		s.best[i] = s.row[m]
	}
}

// upperBound returns a bound on the value of the items from n on within room. The room that the
// first of them leaves is filled with the next, in fractions.
func (s *Search) upperBound(n int, room int64) (value int64) {
	for last := min(n+2, len(s.order)); n < last; n++ {
		i := s.order[n]
		size, count := s.items[i].Size, int64(s.items[i].Count)
		if n == last-1 || count > room/size {
			hi, lo := bits.Mul64(uint64(room), uint64(s.values[i]))
			q, _ := bits.Div64(hi, lo, uint64(size))
			return value + int64(q)
		}
		value += count * s.values[i]
		room -= count * size
	}
	return value
}
