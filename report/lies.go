package report

import (
	"sawbill/nest/cutplan"
	"sawbill/report/internal/diagram"
	"sawbill/stock/casework"
)

// lies tells how the parts of layouts lie, with the good face up: where edging goes, and
// whether that face is the outside. Labels go on the inside, so that such a part lies as its
// label does when it is turned over. Of a layout that is cut several times it is the first copy.
type lies map[corner]diagram.Lie

// liesOf goes through the pieces in the order of the labels, so that both give a piece the
// same place in the case.
func liesOf(p *cutplan.Plan, c *casework.Case) lies {
	if c == nil {
		return nil
	}
	all, places := lies{}, newPlaces(c, p.Bill)
	eachPiece(p, func(o origin) {
		if o.Use != cutplan.Part {
			return
		}
		at := places.next(p.Bill[o.Blank])
		lie := diagram.Lie{Edged: at.edged, Outside: at.inside}
		if at.inside {
			lie.Edged = lie.Edged.Over()
		}
		if o.Turned {
			lie.Edged = lie.Edged.Turned()
		}
		if o.copy == 0 {
			all[corner{o.layout, o.X, o.Y}] = lie
		}
	})
	return all
}

// of is what a diagram of layout i asks.
func (l lies) of(i int) func(*cutplan.Node) diagram.Lie {
	return func(n *cutplan.Node) diagram.Lie { return l[corner{i, n.X, n.Y}] }
}

// eachPiece visits the parts and offcuts of all layouts and their copies, in the order in
// which they come off.
func eachPiece(p *cutplan.Plan, visit func(origin)) {
	for i, l := range p.Layouts {
		freed := freedIn(p, i)
		for copy := range l.Repeat {
			for _, n := range freed {
				visit(origin{layout: i, copy: copy, freed: n})
			}
		}
	}
}
