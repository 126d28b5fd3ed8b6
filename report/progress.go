package report

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/stock"
)

// Progress writes how far a plan has come: each layout that is not done, and each blank
// that is open or was spoiled or lost. The error is that of to.
func Progress(to io.Writer, s *progress.State, code string, o Options) error {
	w := &writer{w: to}
	w.line("%s: %s", captionStart(s.Plan(), code, o), standing(s))
	w.listing("Still to cut", layoutsToCut(s))
	w.listing("Blanks", blanksOpen(s, o))
	w.listing("Lying there", remnants(s, code, o))
	return w.err
}

// remnants lists the pieces that cuts have left, by the names that a plan of the rest has
// for them.
func remnants(s *progress.State, code string, o Options) listing {
	l := listing{columns: []heading{{"piece", words}, {"size" + unit(o.Ruler), sizes}, {"material", words}, {"for", words}}}
	for _, p := range s.Pieces(code) {
		purpose := "kept"
		switch p.Kind {
		case progress.Uncut:
			continue
		case progress.Unfinished:
			purpose = unfinished(s, p.Root)
		case progress.Scrap:
			purpose = "smaller blanks"
			if p.Stock.Grain == stock.GrainUnknown {
				purpose += " that may lie any way: nobody said its grain"
			}
		case progress.Remeasured:
			purpose = "kept, as measured"
		case progress.Leftover:
			if p.Stock.Next == stock.NextAsSaid {
				continue // whole, and never to be cut
			}
		}
		l.add(p.Stock.Name, stockSize(p.Stock, o.Ruler), p.Stock.Material, purpose)
	}
	return l
}

// unfinished says which blanks a piece that was begun is for: "blank A", "blanks A, B".
func unfinished(s *progress.State, n cutplan.Node) string {
	var marks []string
	blanks := 0
	for _, n := range n.Leaves() {
		if n.Use != cutplan.Part {
			continue
		}
		blanks++
		if mark := s.Plan().Bill[n.Blank].Mark; !slices.Contains(marks, mark) {
			marks = append(marks, mark)
		}
	}
	word := "blanks "
	if blanks == 1 {
		word = "blank "
	}
	return word + strings.Join(marks, ", ")
}

// standing is how far it has come in one sentence.
func standing(s *progress.State) string {
	cut, pieces, good, wanted := 0, 0, 0, 0
	for _, l := range s.Layouts() {
		cut, pieces = cut+l.Done, pieces+l.Pieces
	}
	for _, b := range s.Blanks() {
		good, wanted = good+min(b.Good, b.Count), wanted+b.Count
	}
	said := fmt.Sprintf("%d of %s of stock cut, %d of %s good.", cut, counted(pieces, "piece"), good, counted(wanted, "blank"))
	if good == wanted {
		said += " All is there."
	}
	return said
}

// layoutsToCut lists the layouts of which something is still to be cut.
func layoutsToCut(s *progress.State) listing {
	l := listing{columns: []heading{{"layout", figures}, {"stock", words}, {"pieces", figures}, {"cut", figures}, {"begun", words}, {"not there", figures}, {"another size", figures}}}
	for i, of := range s.Layouts() {
		if of.Done == of.Pieces {
			continue
		}
		begun := ""
		if n := of.Pieces - of.Uncut - of.Done - of.Missing - of.Remeasured; n > 0 {
			made := of.Made - of.Done*of.Cuts
			begun = fmt.Sprintf("%d: %d of %s made", n, made, counted(n*of.Cuts, "cut"))
		}
		l.add(strconv.Itoa(i+1), s.Plan().Layouts[i].Stock.Name, strconv.Itoa(of.Pieces), strconv.Itoa(of.Done), begun, some(of.Missing), some(of.Remeasured))
	}
	return l.withoutEmpty()
}

func blanksOpen(s *progress.State, o Options) listing {
	l := listing{columns: []heading{
		{"mark", marks}, {"part", words}, {"blank" + unit(o.Ruler), sizes}, {"wanted", figures}, {"good", figures}, {"spoiled", figures}, {"lost", figures}, {"parts spoiled", figures}, {"open", figures},
	}}
	for _, b := range s.Blanks() {
		if b.Open+b.Spoiled+b.Lost+b.Bad > 0 {
			l.add(b.Mark, b.Name(), blankSize(b.Blank, o.Ruler), strconv.Itoa(b.Count), strconv.Itoa(b.Good), some(b.Spoiled), some(b.Lost), some(b.Bad), some(b.Open))
		}
	}
	return l.withoutEmpty()
}

// some is a number, and nothing for none.
func some(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}
