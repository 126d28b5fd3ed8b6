package nest

// Plan says how each piece of stock is divided.
type Plan struct {
	// Layouts are distinct; equal ones are counted in Repeat.
	Layouts  []Layout
	Unplaced []Unplaced
	// Cost is the price of all stock bought.
	Cost int64
	// Bound is proven: no plan that cuts every blank costs less.
	Bound int64
	// Unpriced tells of stock without prices, which Cost and Bound leave out.
	Unpriced []Unpriced
	// Iterations counts improvement steps over all lanes.
	Iterations int64
}

// Complete reports whether every blank is cut.
func (p Plan) Complete() bool { return len(p.Unplaced) == 0 }

// Proven reports whether no plan can cost less.
func (p Plan) Proven() bool { return p.Complete() && p.Cost == p.Bound }

// Layout is how Repeat pieces of one stock are divided.
type Layout struct {
	Stock  int // index into Problem.Stock
	Repeat int
	Root   Node
}

// Unplaced is a blank that could not be cut.
type Unplaced struct {
	Blank  int // index into Problem.Blanks
	Count  int
	Reason Reason
}

// Reason says why a blank could not be cut.
type Reason int

const (
	// TooLarge: it fits no stock it may come from.
	TooLarge Reason = iota
	// StockUsedUp: what there is of the stock was needed for other blanks.
	StockUsedUp
	// AgainstRules: it would fit, but not within the stages, first cut and
	// narrowest rip that are allowed.
	AgainstRules
)

// Use is what becomes of a node.
type Use int

const (
	Split  Use = iota // divided into Children
	Part              // a blank, exactly
	Offcut            // kept
	Waste
)

// Node is a rectangle of a layout. The children of a split lie in order from
// the reference edge (rip) or end (crosscut) with one kerf between neighbours,
// and share its other dimension. They fill it exactly, or the last child is a
// part or a split and what is missing is more than zero and at most one kerf:
// the last cut's blade ran off the edge. Levels of cuts alternate in
// direction.
type Node struct {
	Length, Width int64
	Use           Use
	Cut           Cut    // of a split
	Children      []Node // of a split
	Blank         int    // of a part: index into Problem.Blanks
	Turned        bool   // of a part: its length lies across
}
