// Package instance is a planning problem after presolve. It has no kerf and no trim. Lengths
// are divided by their common divisor, equal blanks are one kind, and every blank fits.
//
// Every blank and every usable piece of stock is one kerf longer and wider. That turns the
// problem with kerf exactly into one without. Blanks a, b and c in a row need a+k+b+k+c <= W,
// which is (a+k)+(b+k)+(c+k) <= W+k.
package instance

import "math/bits"

// Dir is the direction of a cut.
type Dir uint8

const (
	None     Dir = iota
	Rip          // divides the width
	Crosscut     // divides the length
)

// Across returns the other direction.
func (d Dir) Across() Dir { return Rip + Crosscut - d }

// Orientation is a set of orientations of a blank in a stock.
type Orientation uint8

const (
	Upright Orientation = 1 << iota // length along the stock's length
	Turned                          // length across it
)

// Instance is one problem whose blanks share stock.
type Instance struct {
	Stock []Stock
	Kinds []Kind
	// Stages is the maximum number of levels of cuts; NoLimit if any.
	Stages int
	// Kerf is the largest leftover that a last cut turns to dust entirely.
	Kerf int64
	// KeepLength and KeepWidth are the smallest sides of an offcut, kerf included.
	KeepLength, KeepWidth int64

	scale scale
}

// NoLimit is the value of a limit that is not set.
const NoLimit = 1 << 30

// Stock is one size of piece that can be cut.
type Stock struct {
	L, W         int64
	Price        int64
	Limit        int // pieces; NoLimit if any number
	OnHand       bool
	FirstCut     Dir   // of the first level of cuts; None if free
	NarrowestRip int64 // of a blank, offcut or split, kerf included; waste is exempt
	// Defects hold neither parts nor offcuts. Every piece has them.
	Defects []Rect
}

// Kind is an item type: a size of blank and its demand.
type Kind struct {
	L, W         int64
	Demand       int
	Orientations []Orientation // per stock
	// Run is the direction of the cuts that divide the upright blank, which is several blanks in
	// a row; None if it is one blank.
	Run Dir
}

// RunIn returns the direction of the cuts that divide the blank as it lies.
func (k *Kind) RunIn(turned bool) Dir {
	if turned && k.Run != None {
		return k.Run.Across()
	}
	return k.Run
}

// Demands returns the demand of each kind.
func (in *Instance) Demands() (demands []int) {
	for _, kd := range in.Kinds {
		demands = append(demands, kd.Demand)
	}
	return demands
}

// Parts returns the demand in all.
func (in *Instance) Parts() (parts int) {
	for _, kd := range in.Kinds {
		parts += kd.Demand
	}
	return parts
}

// scale shifts areas so that the largest stock is just under 2^AreaBits. Squares and large sums
// of areas then fit an int64.
type scale struct{ up, down uint }

// AreaBits: the largest stock's Area is below 2^AreaBits.
const AreaBits = 30

// Prepare must be called once, after the fields are set.
func (in *Instance) Prepare() {
	largest := int64(1)
	for _, s := range in.Stock {
		largest = max(largest, s.L*s.W)
	}
	n := uint(bits.Len64(uint64(largest)))
	in.scale = scale{}
	if n > AreaBits {
		in.scale.down = n - AreaBits
	} else {
		in.scale.up = AreaBits - n
	}
}

// Area returns a rectangle's area on the instance's scale, to compare plans. It is exact only
// if no bits were shifted out.
func (in *Instance) Area(l, w int64) int64 {
	return l * w << in.scale.up >> in.scale.down
}
