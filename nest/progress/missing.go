package progress

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
	"sawbill/stock/fault"
)

// recordMissing records missing stock: "NAME", "NAME=2".
func (s *State) recordMissing(text string) error {
	name, count := strings.TrimSpace(text), 1
	if !s.knows(name) {
		var err error
		if name, count, err = counted(text); err != nil {
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
	byLayout, unplanned := s.uncut(name, count)
	if byLayout == nil {
		return fault.New(fmt.Sprintf("fewer than %d of %q are uncut", count, name), "what is cut was there")
	}
	for i, n := range byLayout {
		s.missing[i] += n
	}
	for of, n := range unplanned {
		s.missingUnplanned[of] += n
	}
	return nil
}

// knows reports whether the plan has stock with that name or material.
func (s *State) knows(name string) bool {
	return slices.ContainsFunc(s.plan.Layouts, func(l cutplan.Layout) bool { return GoesBy(l.Stock, name) }) ||
		slices.ContainsFunc(s.plan.Job.Stock, func(of stock.Stock) bool { return of.OnHand && GoesBy(of, name) })
}

// Uncut returns the number of pieces of a stock or material that are present and not
// begun.
func (s *State) Uncut(name string) int {
	n := 0
	for i, l := range s.plan.Layouts {
		if GoesBy(l.Stock, name) {
			n += s.uncutPiece(i).Stock.Count
		}
	}
	for _, p := range s.unplanned() {
		if GoesBy(p.Stock, name) {
			n += p.Stock.Count
		}
	}
	return n
}

// uncut finds count pieces of stock that were not begun. It takes the last layouts first,
// then stock that no layout cuts. It returns nil if there are too few.
func (s *State) uncut(name string, count int) (byLayout []int, unplanned map[string]int) {
	byLayout, unplanned = make([]int, len(s.plan.Layouts)), map[string]int{}
	for i := len(byLayout) - 1; i >= 0 && count > 0; i-- {
		if GoesBy(s.plan.Layouts[i].Stock, name) {
			byLayout[i] = min(count, s.uncutPiece(i).Stock.Count)
			count -= byLayout[i]
		}
	}
	for _, p := range s.unplanned() {
		if count > 0 && GoesBy(p.Stock, name) {
			n := min(count, p.Stock.Count)
			unplanned[p.Stock.Name] += n
			count -= n
		}
	}
	if count > 0 {
		return nil, nil
	}
	return byLayout, unplanned
}
