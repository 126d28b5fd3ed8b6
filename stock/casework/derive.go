package casework

import (
	"slices"

	"sawbill/stock"
)

// Derive turns a design into the parts of a case. What the design leaves out
// is reckoned from the rest, inwards from the outside sizes or outwards from
// what goes in. If there are faults, or doubts, the case is nil, and the faults are
// in the order of their lines.
func Derive(d Design, from Context) (*Case, []Fault) {
	r := &reckoner{reader: &reader{design: d, from: from, place: at{d.Line, "case"}}}
	r.checkValues()
	r.layOut()
	r.build()
	if r.settleAxes() && r.partsFollow() {
		r.checkOverlays()
		r.carcassPieces()
		r.framePieces()
		r.backPieces()
		r.basePieces()
		r.insidePieces()
		r.doorPieces()
		r.boxPieces()
		r.hangingRails()
		r.edgingPieces()
		r.joineryPieces()
	}
	solids := r.solids()
	var marks []Mark
	var pegs []pegged
	doubtful := len(r.from.Doubts)+len(r.doubts) > 0
	if len(r.faults) == 0 && !doubtful {
		r.recordNotches(solids)
		m := r.marks(solids)
		marks, pegs = m.marks, m.pegs
	}
	if len(r.faults) > 0 || doubtful {
		slices.SortStableFunc(r.faults, func(a, b Fault) int { return a.Line - b.Line })
		return nil, r.faults
	}
	for _, b := range r.bays {
		r.cautionNarrow(b)
		for _, o := range b.openings {
			r.cautionBehindDoors(b, o)
		}
	}
	c := &Case{Parts: r.parts(), Sizes: r.sizes, Openings: r.spaces(), Storage: r.storage, Solids: solids, Marks: marks,
		Assembly: r.assembly(), Materials: r.from.Materials, Finish: r.finish(), Hung: r.hung()}
	c.Hardware = r.hardware(c, pegs)
	r.checks(c)
	c.Cautions = r.cautions
	return c, nil
}

// reckoner carries one design on its way to a case. Each step reads what the
// ones before it found.
type reckoner struct {
	*reader
	bays                 []bay
	made                 build
	width, height, depth extent

	pieces   []piece
	finished []Solid // drawers that were measured
	unedged  []Solid // all pieces before strips are put on them

	drawersSoFar int
	drawerLoads  []stock.Grams // of what is in each; 0 where it is not known
	storage      []Storage
	sizes        []stock.Derivation
}

// settleAxes settles all three directions, even if one fails or is in doubt.
func (r *reckoner) settleAxes() bool {
	width := r.settles(widthInputs) && r.settleWidths()
	height := r.settles(heightInputs) && r.settleHeights()
	depth := r.settles(depthInputs) && r.settleDepth()
	return width && height && depth
}

func (r *reckoner) record(name string, size stock.Sum) {
	r.sizes = append(r.sizes, stock.Derivation{Dimension: name, Sum: size})
}
