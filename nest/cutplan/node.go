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
