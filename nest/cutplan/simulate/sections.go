package simulate

import (
	"cmp"
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// apart cuts boards with defects apart as they lie. The sections of one board lie on it from
// its reference end on, side by side, with a kerf or more between them. Each section is then
// a layout of its own.
func apart(p *cutplan.Plan) error {
	of := map[string][]stock.Stock{}
	var boards []string
	for i, l := range p.Layouts {
		if !l.Stock.IsSection() {
			continue
		}
		if l.Repeat != 1 {
			return fmt.Errorf("layout %d: a section of one board is cut %d times", i+1, l.Repeat)
		}
		if of[l.Stock.Name] == nil {
			boards = append(boards, l.Stock.Name)
		}
		of[l.Stock.Name] = append(of[l.Stock.Name], l.Stock)
	}
	for _, name := range boards {
		sections := of[name]
		slices.SortFunc(sections, func(a, b stock.Stock) int { return cmp.Compare(a.Section.From, b.Section.From) })
		var free stock.Length // where the next section may begin
		for _, s := range sections {
			switch {
			case s.Section.Board != sections[0].Section.Board || s.Width != sections[0].Width || s.Thickness != sections[0].Thickness:
				return fmt.Errorf("the sections of board %s are of boards of several sizes", name)
			case s.Section.From < free:
				return fmt.Errorf("the sections of board %s meet: one begins at %d, and the saw is free from %d on", name, s.Section.From, free)
			case s.Length <= 0 || s.Section.From+s.Length > s.Section.Board:
				return fmt.Errorf("a section of board %s ends at %d, the board at %d", name, s.Section.From+s.Length, s.Section.Board)
			}
			free = s.Section.From + s.Length + p.Job.Saw.Kerf
		}
	}
	return nil
}
