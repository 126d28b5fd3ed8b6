// Package sizes finds the sizes of a case, its bays and openings, and refuses those that cannot hold
// together.
package sizes

import (
	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
)

// Sizes holds the sizes of a case, inside and outside, and how each came about.
type Sizes struct {
	In    *design.Reader
	Built *construction.Construction

	Width, Height, Depth extent
	Derivations          []stock.Derivation // in the order in which they were found
	// Settled: all sizes are known, and the parts follow from them.
	Settled bool
}

// Settle finds all sizes. Those of bays, openings and fronts are set in the construction.
func Settle(built *construction.Construction) *Sizes {
	r := &Sizes{In: built.In, Built: built}
	if r.Settled = r.settleAxes() && r.partsFollow(); r.Settled {
		r.checkOverlays()
	}
	return r
}

// settleAxes settles all three directions, even if one fails or is in doubt.
func (r *Sizes) settleAxes() bool {
	if stands := r.Built.Drawers.Doors.Stands; stands != nil {
		r.Record("hinge clearance", stands)
	}
	width := r.settles(widthInputs) && r.settleWidths()
	height := r.settles(heightInputs) && r.settleHeights()
	depth := r.settles(depthInputs) && r.settleDepth()
	return width && height && depth
}

// Record keeps how a size came about.
func (r *Sizes) Record(name string, size stock.Sum) {
	r.Derivations = append(r.Derivations, stock.Derivation{Dimension: name, Sum: size})
}
