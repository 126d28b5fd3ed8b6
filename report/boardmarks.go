package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// markList is the running marks of all boards: what is crosscut, and where the
// marks lie on it.
func markList(p *cutplan.Plan, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"layout", figures}, {"stock", words}, {"on the", words}, {"marks from its reference end" + unit(r), words},
	}}
	for i, lay := range p.Layouts {
		if lay.Stock.Kind != stock.Board {
			continue
		}
		if sections := sectionsFrom(p, i); sections != nil {
			l.add("", lay.Stock.Name, "board", "cut apart: "+clearStretches(sections, r))
		}
		name := stockName(lay.Stock, r)
		if lay.Repeat > 1 {
			name = fmt.Sprintf("%d x %s", lay.Repeat, name)
		}
		for _, m := range markedPieces(p.Steps(lay)) {
			l.add(strconv.Itoa(i+1), name, m.name(kindWord(lay.Stock)), m.marks(r))
		}
	}
	return l
}

// markedPiece is a piece that is crosscut, or several that are marked alike.
type markedPiece struct {
	whole bool           // the board itself
	from  []cutplan.Step // the first crosscut of each
	at    []stock.Length
}

// markedPieces gathers crosscuts by the piece that they divide.
func markedPieces(steps []cutplan.Step) []markedPiece {
	var all []markedPiece
	trims := 0
	last := map[int]int{} // the piece that a step's rest belongs to
	for _, s := range steps {
		if s.Trim {
			trims++
		}
		if s.Trim || s.Cut != cutplan.Crosscut {
			continue
		}
		at, goesOn := last[s.InHand]
		if !goesOn || !s.Remainder {
			at = len(all)
			all = append(all, markedPiece{whole: s.InHand == trims && !s.Remainder, from: []cutplan.Step{s}})
		}
		all[at].at = append(all[at].at, s.Mark)
		last[s.Number] = at
	}
	var merged []markedPiece
	for _, m := range all {
		same := slices.IndexFunc(merged, func(k markedPiece) bool {
			return !k.whole && k.from[0].Remainder == m.from[0].Remainder && slices.Equal(k.at, m.at)
		})
		if same < 0 {
			merged = append(merged, m)
		} else {
			merged[same].from = append(merged[same].from, m.from...)
		}
	}
	return merged
}

// name says where the piece comes from, as the steps do.
func (m markedPiece) name(whole string) string {
	what, of := "piece", "from"
	switch {
	case m.whole:
		return whole
	case m.from[0].Remainder:
		what, of = "rest", "of"
	}
	if len(m.from) > 1 {
		what += "s"
	}
	by := make([]int, len(m.from))
	for i, s := range m.from {
		by[i] = s.InHand
	}
	return what + " " + of + " " + ranges(by)
}

func (m markedPiece) marks(r stock.Ruler) string {
	said := make([]string, len(m.at))
	for i, at := range m.at {
		said[i] = r.Print(at)
	}
	return strings.Join(said, ", ")
}
