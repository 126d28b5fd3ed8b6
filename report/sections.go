package report

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
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

// onMap is where to look before a section is cut.
const onMap = "free it as the map of its board shows"

// boardMap is the map of the board that layout i is cut from, if it is the first layout
// of a section of it.
func boardMap(p *cutplan.Plan, i int, r stock.Ruler) (m diagram.BoardMap, ok bool) {
	if sectionsFrom(p, i) == nil {
		return m, false
	}
	first := p.Layouts[i].Stock
	m = diagram.BoardMap{Length: first.Section.Board, Width: first.Width, Kerf: p.Job.Saw.Kerf, Ruler: r}
	for _, s := range p.Job.Stock {
		if s.IsSection() && s.Name == first.Name {
			m.Clear = append(m.Clear, diagram.Stretch{Zone: s.OnBoard()})
		}
	}
	for n, l := range p.Layouts {
		if !l.Stock.IsSection() || l.Stock.Name != first.Name {
			continue
		}
		on := l.Stock.OnBoard()
		at := slices.IndexFunc(m.Clear, func(s diagram.Stretch) bool { return s.Zone == on })
		if at < 0 { // the rest of a plan may have a section that was measured anew
			at = len(m.Clear)
			m.Clear = append(m.Clear, diagram.Stretch{Zone: on})
		}
		m.Clear[at].Name = fmt.Sprintf("layout %d: %s", n+1, r.Print(l.Stock.Length))
		for _, s := range p.Steps(l) {
			if s.Level == 1 && s.Cut == cutplan.Crosscut {
				m.Clear[at].Cuts = append(m.Clear[at].Cuts, diagram.MapCut{Name: fmt.Sprintf("%d/%d", n+1, s.Number), At: on.From + s.X})
			}
		}
	}
	slices.SortFunc(m.Clear, func(a, b diagram.Stretch) int { return cmp.Compare(a.From, b.From) })
	return m, true
}

func mapName(s stock.Stock) string { return "Map of " + s.Name }

// aboutMap says how the cuts of a map are made.
const aboutMap = "MARK ALL FIRST, from the reference end: the first cut takes that end. Pencil layout and reference end on each section. Crosscut at the letters, the blade on the side of the tick; 1/2 is cut 2 of layout 1, to be made later."

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
