package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// Derive turns a design into the parts of a case. What the design leaves out
// is reckoned from the rest, inwards from the outside sizes or outwards from
// what goes in. If there are faults, or doubts, the case is nil, and the faults are
// in the order of their lines.
func Derive(d Design, from Context) (*Case, []Fault) {
	r := &reckoner{design: d, from: from, place: at{d.Line, "case"}}
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
	doubtful := len(r.from.Doubts)+len(r.doubts) > 0
	if len(r.faults) == 0 && !doubtful {
		r.recordNotches(solids)
		marks = r.marks(solids)
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
	c.Hardware = r.hardware(c)
	r.checks(c)
	c.Cautions = r.cautions
	return c, nil
}

// reckoner carries one design on its way to a case. Each step reads what the
// ones before it found.
type reckoner struct {
	design Design
	from   Context
	place  at // of the [case] table

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
	cautions     []Caution
	faults       []Fault
	doubts       []string // keys whose value is no good
}

// settleAxes settles all three directions, even if one fails or is in doubt.
func (r *reckoner) settleAxes() bool {
	width := r.settles(widthInputs) && r.settleWidths()
	height := r.settles(heightInputs) && r.settleHeights()
	depth := r.settles(depthInputs) && r.settleDepth()
	return width && height && depth
}

func (r *reckoner) print(l stock.Length) string { return r.from.Ruler.PrintUnit(l) }

// printOrNothing prints what is left.
func (r *reckoner) printOrNothing(left stock.Length) string {
	if left <= 0 {
		return "nothing"
	}
	return r.print(left)
}

// reckoned prints a size with the sum it came from, where there is one.
func (r *reckoner) reckoned(size stock.Sum) string {
	if len(size) == 1 && size[0].Times == 1 && size[0].Over <= 1 {
		return fmt.Sprintf("%s (%s)", r.print(size[0].Value), size[0].Label)
	}
	return size.Print(r.from.Ruler)
}

func (r *reckoner) record(name string, size stock.Sum) {
	r.sizes = append(r.sizes, stock.Derivation{Dimension: name, Sum: size})
}
