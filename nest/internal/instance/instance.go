// Package instance is a planning problem as the engines see it: no kerf, no
// trim, lengths divided by their common divisor, equal blanks gathered, and
// nothing in it that cannot be cut.
//
// Adding one kerf to the length and width of every blank and of every usable
// piece of stock turns the problem with kerf exactly into one without: a, b
// and c in a row need a+k+b+k+c <= W, which is (a+k)+(b+k)+(c+k) <= W+k.
package instance

import "math/bits"

// Dir is the direction of a cut.
type Dir uint8

const (
	None     Dir = iota
	Rip          // divides the width
	Crosscut     // divides the length
)

// Across is the other direction.
func (d Dir) Across() Dir { return Rip + Crosscut - d }

// Orientation is a set of ways in which a blank may lie in a stock.
type Orientation uint8

const (
	Upright Orientation = 1 << iota // length along the stock's length
	Turned                          // length across it
)

// Instance is one problem whose blanks compete for the same stock.
type Instance struct {
	Stock []Stock
	Kinds []Kind
	// Stages is the greatest number of levels of cuts; NoLimit if any.
	Stages int
	// Kerf is the greatest leftover that a last cut turns to dust entirely.
	Kerf int64
	// KeepLength and KeepWidth are the least sides of an offcut, kerf included.
	KeepLength, KeepWidth int64

	scale scale
}

// NoLimit stands for "as many as you like".
const NoLimit = 1 << 30

// Stock is one size of piece that can be cut.
type Stock struct {
	L, W         int64
	Price        int64
	Limit        int // NoLimit if any number
	OnHand       bool
	FirstCut     Dir   // of the first level of cuts; None if free
	NarrowestRip int64 // least width off a rip, kerf included; waste is exempt
}

// Kind is a blank wanted Count times.
type Kind struct {
	L, W         int64
	Demand       int
	Orientations []Orientation // per stock
}

// scale brings areas to where the largest stock is just under 2^AreaBits, so
// that squares and large sums of areas fit an int64.
type scale struct{ up, down uint }

// AreaBits: the largest stock's Area is below 2^AreaBits.
const AreaBits = 30

// Prepare must be called once after the fields are set.
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

// Area of a rectangle on the instance's own scale. It is for weighing one plan
// against another; it is exact only where nothing was shifted out.
func (in *Instance) Area(l, w int64) int64 {
	return l * w << in.scale.up >> in.scale.down
}
