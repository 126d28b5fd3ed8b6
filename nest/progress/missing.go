package progress

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// miss notes stock that is not there: "NAME", "NAME=2".
func (s *State) miss(said string) error {
	name, count := strings.TrimSpace(said), 1
	if !s.knows(name) {
		var err error
		if name, count, err = counted(said); err != nil {
			return err
		}
	}
	if !s.knows(name) {
		var all []string
		for _, l := range s.plan.Layouts {
			all = append(all, l.Stock.Name)
		}
		return unknown("stock", name, all, "take a stock that the plan cuts")
	}
	gone, absent := s.uncut(name, count)
	if gone == nil {
		return Wrong{fmt.Sprintf("fewer than %d of %q are uncut", count, name), "what is cut was there"}
	}
	for i, n := range gone {
		s.gone[i] += n
	}
	for of, n := range absent {
		s.absent[of] += n
	}
	return nil
}

// knows reports whether the plan has stock of that name or material.
func (s *State) knows(name string) bool {
	return slices.ContainsFunc(s.plan.Layouts, func(l cutplan.Layout) bool { return Called(l.Stock, name) }) ||
		slices.ContainsFunc(s.plan.Job.Stock, func(of stock.Stock) bool { return of.OnHand && Called(of, name) })
}

// Uncut is how many pieces of a stock or material are there and not begun.
func (s *State) Uncut(name string) int {
	n := 0
	for i, l := range s.plan.Layouts {
		if Called(l.Stock, name) {
			n += s.whole(i).Stock.Count
		}
	}
	for _, p := range s.uncalled() {
		if Called(p.Stock, name) {
			n += p.Stock.Count
		}
	}
	return n
}

// uncut finds so many pieces of a stock that were not begun: those of the last layouts
// first, then what no layout cuts; nil if there are not as many.
func (s *State) uncut(name string, count int) (gone []int, absent map[string]int) {
	gone, absent = make([]int, len(s.plan.Layouts)), map[string]int{}
	for i := len(gone) - 1; i >= 0 && count > 0; i-- {
		if Called(s.plan.Layouts[i].Stock, name) {
			gone[i] = min(count, s.whole(i).Stock.Count)
			count -= gone[i]
		}
	}
	for _, p := range s.uncalled() {
		if count > 0 && Called(p.Stock, name) {
			n := min(count, p.Stock.Count)
			absent[p.Stock.Name] += n
			count -= n
		}
	}
	if count > 0 {
		return nil, nil
	}
	return gone, absent
}
