package report

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/strip"
	"sawbill/stock"
)

// The strip shows each step of the table once and in order, with its setting, and in its
// pictures each cut of one piece.
func TestTheStripShowsEachStepOnceAndInOrder(t *testing.T) {
	for _, e := range examples(t) {
		names := namesOf(e.plan, "H7KMQ")
		for i, l := range e.plan.Layouts {
			table, cards := stepTable(e.plan, i, names, stock.Ruler{}).Rows, stripOf(e.plan, i, names, stock.Ruler{})
			if len(cards) != len(table) {
				t.Fatalf("%s, layout %d: %d pictures of %d steps", e.name, i+1, len(cards), len(table))
			}
			next := 1
			for n, c := range cards {
				first, last := firstAndLast(t, c.Number)
				if first != next || c.Number != table[n][0] {
					t.Errorf("%s, layout %d: picture %s stands where cut %d is due", e.name, i+1, c.Number, next)
				}
				next = last + 1
				if !slices.ContainsFunc(table[n], func(cell string) bool { return bare(c.Guide+" "+c.Setting) == cell }) {
					t.Errorf("%s, layout %d: picture %s is set to %s %s, its step %q", e.name, i+1, c.Number, c.Guide, c.Setting, table[n])
				}
			}
			if steps := len(e.plan.Steps(l)); next != steps+1 {
				t.Errorf("%s, layout %d: the pictures end at cut %d of %d", e.name, i+1, next-1, steps)
			}
		}
	}
}

func firstAndLast(t *testing.T, said string) (first, last int) {
	t.Helper()
	from, to, isRange := strings.Cut(said, "–")
	if !isRange {
		to = from
	}
	first, err := strconv.Atoi(from)
	if err != nil {
		t.Fatal(err)
	}
	last, err = strconv.Atoi(to)
	if err != nil {
		t.Fatal(err)
	}
	return first, last
}

// A picture divides the piece as its steps do: the first piece that comes off lies between
// the guided side and the line, trim outside all lines.
func TestPicturesDivideThePieceInHand(t *testing.T) {
	for _, e := range examples(t) {
		say := teller{e.plan, namesOf(e.plan, ""), stock.Ruler{}}
		for i := range e.plan.Layouts {
			for _, row := range e.plan.StepRows(i) {
				if row.Trim {
					continue
				}
				p, h := say.pictured(row), row.Pieces[0]
				side := func(s cutplan.Size) float64 {
					if row.Cut == cutplan.Rip {
						return float64(s.Width)
					}
					return float64(s.Length)
				}
				if p.Length != float64(h.Size.Length) || p.Width != float64(h.Size.Width) || len(p.Cuts) != len(h.Cuts) {
					t.Fatalf("%s: %v is drawn as %v", e.name, h, p)
				}
				if at := p.Cuts[0].At; at != side(h.Cuts[0].Off.Size) {
					t.Errorf("%s, cut %d: the first line is at %v, %v comes off", e.name, h.Cuts[0].Number, at, side(h.Cuts[0].Off.Size))
				}
			}
			if rows := e.plan.StepRows(i); len(rows) > 0 && rows[0].Trim {
				checkTrim(t, e, say.picturedTrim(rows[:trimRows(rows)]), i)
			}
		}
	}
}

// checkTrim reports lines of trim that do not lie where the usable sheet ends.
func checkTrim(t *testing.T, e example, p strip.Piece, i int) {
	t.Helper()
	root := e.plan.Layouts[i].Root
	for _, c := range p.Cuts {
		want := map[cutplan.Cut]map[cutplan.Side]stock.Length{
			cutplan.Rip:      {cutplan.Near: root.Y, cutplan.Far: root.Y + root.Width},
			cutplan.Crosscut: {cutplan.Near: root.X, cutplan.Far: root.X + root.Length},
		}[c.Along][c.Waste]
		if c.At != float64(want) {
			t.Errorf("%s, layout %d: trim of the %s is drawn at %v, not %v", e.name, i+1, sideName(c.Along, c.Waste), c.At, want)
		}
	}
}
