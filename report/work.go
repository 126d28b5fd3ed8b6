package report

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/paper"
	"sawbill/report/internal/strip"
	"sawbill/stock"
)

// work is the order of work of a layout on paper: a strip of small pictures, or a table of
// words where that takes less room.
type work struct {
	table paper.Table
	cards []strip.Card
}

func workOf(p *cutplan.Plan, i int, names offcutNames, r stock.Ruler) work {
	return work{stepTable(p, i, names, r), stripOf(p, i, names, r)}
}

// pictured reports whether the strip buys room.
func (w work) pictured(b *paper.Book) bool {
	return len(w.cards) > 0 && strip.Lowest(w.cards, b.Width()).Height <= b.TableHeight(w.table)
}

// least is the height that the work takes at least, in mm.
func (w work) least(b *paper.Book) float64 {
	if w.pictured(b) {
		return strip.Lowest(w.cards, b.Width()).Height + stripGap
	}
	return b.TableHeight(w.table)
}

// stripGap is the room below a strip, mm.
const stripGap = 2.0

// fit chooses the largest type in which the work fits a room, else the usual one: steps are
// read from further away than the rest.
func (w work) fit(b *paper.Book, room float64) (height float64, write func()) {
	if w.pictured(b) {
		s := strip.Fit(w.cards, b.Width(), room-stripGap)
		return s.Height + stripGap, func() {
			for _, row := range s.Rows {
				b.Picture(row)
			}
			b.Space(stripGap)
		}
	}
	t := fitted(b, w.table, room)
	return b.TableHeight(t), func() { b.Table(t) }
}
