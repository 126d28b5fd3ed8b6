package cutplan

import (
	"slices"

	"sawbill/stock"
)

// Use is the purpose of a node.
type Use int

const (
	Split  Use = iota // divided into Children
	Part              // a blank, exactly
	Offcut            // worth keeping
	Waste
)

// Cut is the direction of a saw cut: a rip divides the width, a crosscut the length.
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

// Leaves lists the parts, offcuts and waste of l in the order of its tree.
func (l Layout) Leaves() []Node { return l.Root.Leaves() }

// Leaves lists the parts, offcuts and waste of n.
func (n Node) Leaves() []Node { return leaves(nil, n) }

func leaves(list []Node, n Node) []Node {
	if n.Use != Split {
		return append(list, n)
	}
	for _, c := range n.Children {
		list = leaves(list, c)
	}
	return list
}

// Moved returns a deep copy of n, shifted by x and y.
func (n Node) Moved(x, y stock.Length) Node {
	n.X, n.Y = n.X+x, n.Y+y
	n.Children = slices.Clone(n.Children)
	for i, c := range n.Children {
		n.Children[i] = c.Moved(x, y)
	}
	return n
}

// Renumber changes the tree of n to another bill, in which blank i has index at[i].
func (n *Node) Renumber(at []int) {
	if n.Use == Part {
		n.Blank = at[n.Blank]
	}
	for i := range n.Children {
		n.Children[i].Renumber(at)
	}
}
