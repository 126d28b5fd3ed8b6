package cutplan

import "sawbill/stock"

// Use is what becomes of a node.
type Use int

const (
	Split  Use = iota // divided into Children
	Part              // a blank, exactly
	Offcut            // worth keeping
	Waste
)

// Cut is the direction of a saw cut: a rip divides the width, a crosscut the
// length.
type Cut int

const (
	Rip Cut = iota
	Crosscut
)

// String returns the word of the plan file: "rip" or "crosscut".
func (c Cut) String() string {
	if c == Crosscut {
		return "crosscut"
	}
	return "rip"
}

// Node is a rectangle of a layout. X runs along the stock's length from the
// reference end, Y across it from the reference edge; both count from the
// corner of the untrimmed stock.
type Node struct {
	X, Y          stock.Length
	Length, Width stock.Length // along X and along Y
	Use           Use
	Cut           Cut    // of a split
	Children      []Node // of a split: in order from the reference edge or end, a kerf between
	Blank         int    // of a part: index into Plan.Bill
	Turned        bool   // of a part: its length lies along Y
}

// Step is one cut, in an order in which a saw can make them all.
type Step struct {
	Number int // from 1 within its layout
	// InHand is the number of the step whose cut freed the piece in hand: 0 is
	// the whole sheet or board. Rest tells the larger remainder of that step
	// from the piece that came off at the fence.
	InHand int
	Rest   bool
	Cut    Cut
	// Setting is the distance from fence or stop to the blade: the size of the
	// piece that comes off at the reference edge or end.
	Setting stock.Length
	// Piece is the size in hand before the cut, Off what comes off at the
	// fence, and Left what remains beyond the kerf (zero when the blade runs
	// off the edge).
	Piece, Off, Left Size
	// Trim cuts square the stock's own edges; nothing of what falls off is kept.
	Trim bool
	// Breakdown: the setting is beyond the saw's capacity.
	Breakdown bool
	// OffNode is the part, offcut, waste or split that came off; LeftNode is
	// the same of what remains when no further cut is made to it in this
	// direction. Either may be nil.
	OffNode, LeftNode *Node
	// X, Y is where the cut's near side starts, Run how far it goes (along Y
	// for a crosscut, along X for a rip). The kerf lies beyond it.
	X, Y, Run stock.Length
}

// Size is a rectangle in hand.
type Size struct {
	Length, Width stock.Length
}
