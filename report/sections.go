package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// stockName is the name of the piece that is cut, of a section with its place
// on the board: "oak A, from 360 to 1510".
func stockName(s stock.Stock, r stock.Ruler) string {
	if !s.IsSection() {
		return s.Name
	}
	on := s.OnBoard()
	return fmt.Sprintf("%s, from %s to %s %s", s.Name, r.Print(on.From), r.Print(on.To), r.Units)
}

// kindWord is what a whole piece of s is called: "sheet", "board" or "section".
func kindWord(s stock.Stock) string {
	if s.IsSection() {
		return "section"
	}
	return s.Kind.String()
}

// cutApart says where a board is cut apart at its defects to free section s.
func cutApart(s stock.Stock, r stock.Ruler) string {
	on, whole := s.OnBoard(), s.Section.Board
	cuts := r.PrintUnit(on.From) + " and at " + r.PrintUnit(on.To)
	switch {
	case on.From == 0:
		cuts = r.PrintUnit(on.To)
	case on.To == whole:
		cuts = r.PrintUnit(on.From)
	}
	return fmt.Sprintf("first crosscut the board, %s long, at %s from its reference end, the kerf outside this section", r.Print(whole), cuts)
}

// sectionsFrom are the sections of one board that are cut, where layout i is the
// first of them; else none.
func sectionsFrom(p *cutplan.Plan, i int) []stock.Stock {
	first := p.Layouts[i].Stock
	if !first.IsSection() {
		return nil
	}
	var all []stock.Stock
	for n, l := range p.Layouts {
		if !l.Stock.IsSection() || l.Stock.Name != first.Name {
			continue
		}
		if n < i {
			return nil
		}
		all = append(all, l.Stock)
	}
	return all
}

// clearStretches says where on their board sections lie, from its reference end
// on.
func clearStretches(sections []stock.Stock, r stock.Ruler) string {
	slices.SortFunc(sections, func(a, b stock.Stock) int { return cmp.Compare(a.Section.From, b.Section.From) })
	said := make([]string, len(sections))
	for i, s := range sections {
		on := s.OnBoard()
		said[i] = r.Print(on.From) + " to " + r.Print(on.To)
	}
	return strings.Join(said, ", ")
}

// boardOf is the board that s is a section of, or s itself.
func boardOf(s stock.Stock) stock.Stock {
	if s.IsSection() {
		s.Length, s.Section = s.Section.Board, stock.Section{}
	}
	return s
}
