// Package pieces makes the pieces of a case whose sizes are settled: what each is made of, its sizes
// with their arithmetic, and where it stands.
package pieces

import (
	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/sizes"
	"sawbill/stock/casework/solid"
)

// Standing is the pieces of a case as they stand.
type Standing struct {
	Parts     []stock.Part
	Solids    []solid.Solid // in the order of Parts, then the drawers that were measured
	Materials map[string]design.Material
}

// Maker makes the pieces of a case.
type Maker struct {
	In    *design.Reader
	Built *construction.Construction
	Sizes *sizes.Sizes

	Standing
	Pieces      []Piece       // one for each of Parts
	Storage     []Storage     // what the drawers to be made hold
	DrawerLoads []stock.Grams // of what is in each drawer; 0 where it is not known

	finished     []solid.Solid // drawers that were measured
	unedged      []solid.Solid // all pieces before strips are put on them
	drawersSoFar int
}

// Make makes the pieces; none unless the sizes are settled.
func Make(s *sizes.Sizes) *Maker {
	r := &Maker{In: s.In, Built: s.Built, Sizes: s}
	if s.Settled {
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
	r.Standing = Standing{Parts: r.parts(), Solids: r.solids(), Materials: r.In.From.Materials}
	if r.In.Sound() {
		r.recordNotches()
	}
	return r
}
