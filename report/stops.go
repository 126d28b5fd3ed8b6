package report

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// aboutStops says in which order the stops are meant.
const aboutStops = "Each stop is set once for all boards, in this order: cut boards apart at their defects and trim them all, cut off at each stop what is listed there, and put pieces that are to be ripped aside. What remains of a board at its end needs no stop."

// stopColumn of the list holds the settings.
const stopColumn = 2

// stopList gathers the crosscuts of all boards by the setting of the stop.
func stopList(p *cutplan.Plan, r stock.Ruler) listing {
	l := listing{columns: []heading{
		{"material", words}, {"cut", words}, {"stop" + unit(r), figures}, {"comes off", words}, {"layout", words},
	}}
	for _, round := range p.Stops() {
		for _, s := range round.Stops {
			var off []string
			var layouts []int
			for _, piece := range s.Pieces {
				said := stopPiece(p, piece.Node, r)
				if piece.Count > 1 {
					said = fmt.Sprintf("%d x %s", piece.Count, said)
				}
				off = append(off, said)
				for _, i := range piece.Layouts {
					layouts = append(layouts, i+1)
				}
			}
			slices.Sort(layouts)
			l.add(round.Material, roundName(round.Round), r.Print(s.Setting), strings.Join(off, "; "), list(slices.Compact(layouts)))
		}
	}
	return l
}

func roundName(round int) string {
	switch round {
	case 0:
		return "boards"
	case 1:
		return "ripped pieces"
	}
	return "pieces ripped " + strconv.Itoa(round) + " times"
}

// stopPiece names what comes off at a stop, whose setting is its length.
func stopPiece(p *cutplan.Plan, n cutplan.Node, r stock.Ruler) string {
	if n.Use == cutplan.Part {
		b := p.Bill[n.Blank]
		return b.Mark + " " + shortened(b.Name())
	}
	said := piece(p, &n, cutplan.Size{Length: n.Length, Width: n.Width}, r)
	if n.Use == cutplan.Split {
		said += " to rip"
	}
	return said
}

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
		if !goesOn || !s.Rest {
			at = len(all)
			all = append(all, markedPiece{whole: s.InHand == trims && !s.Rest, from: []cutplan.Step{s}})
		}
		all[at].at = append(all[at].at, s.Mark)
		last[s.Number] = at
	}
	var merged []markedPiece
	for _, m := range all {
		same := slices.IndexFunc(merged, func(k markedPiece) bool {
			return !k.whole && k.from[0].Rest == m.from[0].Rest && slices.Equal(k.at, m.at)
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
	case m.from[0].Rest:
		what, of = "rest", "of"
	}
	if len(m.from) > 1 {
		what += "s"
	}
	return what + " " + of + " " + sources(m.from)
}

func (m markedPiece) marks(r stock.Ruler) string {
	said := make([]string, len(m.at))
	for i, at := range m.at {
		said[i] = r.Print(at)
	}
	return strings.Join(said, ", ")
}
