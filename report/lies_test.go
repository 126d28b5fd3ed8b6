package report

import (
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
	"sawbill/stock"
)

// A part has the same edged sides in its layout as on its label, which is turned with it,
// and turned over if the label is on the inside: the good face lies up.
func TestPartsLieInTheirLayoutsAsTheirLabelsSay(t *testing.T) {
	edged, inside := 0, 0
	for _, e := range examples(t) {
		if e.design == nil {
			continue
		}
		lie, next := liesOf(e.plan, e.design), 0
		all := labels(e.plan, namesOf(e.plan, ""), Options{Case: e.design})
		eachPiece(e.plan, func(o origin) {
			if o.Use != cutplan.Part {
				return
			}
			on := all[next].Piece
			next++
			if o.copy > 0 {
				return
			}
			got, want := lie.of(o.layout)(&o.Node), on.Edged
			if on.Inside {
				want.Lower, want.Upper = want.Upper, want.Lower
			}
			if o.Turned {
				want = want.Turned()
			}
			if got.Edged != want || got.Outside != on.Inside {
				t.Errorf("%s, layout %d: %v, on the label %v", e.name, o.layout+1, got, on)
			}
			if want != (edging.Sides{}) {
				edged++
			}
			if on.Inside {
				inside++
			}
		})
	}
	if edged < 5 || inside < 10 {
		t.Errorf("%d parts with edging, %d with an inside: too few to tell", edged, inside)
	}
}

// Each edge that gets edging has its wide line in the diagram, and the sign is explained.
func TestEdgingIsDrawnInTheLayouts(t *testing.T) {
	wide := func(d drawing.Drawing) int {
		n := 0
		for _, m := range d.Marks {
			if l, ok := m.(drawing.Line); ok && l.Pen == drawing.Outline {
				n++
			}
		}
		return n
	}
	for _, e := range examples(t) {
		lie, names := liesOf(e.plan, e.design), namesOf(e.plan, "")
		for i, l := range e.plan.Layouts {
			if l.Stock.Kind == stock.Board {
				continue // its pieces are drawn more than once
			}
			sides := 0
			for _, n := range l.Leaves() {
				if n.Use == cutplan.Part {
					s := lie.of(i)(&n).Edged
					for _, is := range []bool{s.Lower, s.Upper, s.Left, s.Right} {
						if is {
							sides++
						}
					}
				}
			}
			with := diagram.New(view(e.plan, i, names, lie, stock.Ruler{}), 186, 150)
			without := diagram.New(view(e.plan, i, names, nil, stock.Ruler{}), 186, 150)
			sign := 0
			for _, text := range with.Texts() {
				if strings.TrimSpace(text.String) == "edging" {
					sign = 1
				}
			}
			if (sides > 0) != (sign > 0) {
				t.Errorf("%s, layout %d: %d edged sides, sign explained: %v", e.name, i+1, sides, sign > 0)
			}
			if got := wide(with.Drawing) - wide(without.Drawing) - sign; got != sides {
				t.Errorf("%s, layout %d: %d lines of edging for %d sides", e.name, i+1, got, sides)
			}
		}
	}
}
