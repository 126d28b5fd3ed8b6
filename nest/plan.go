package nest

// Plan says how each piece of stock is divided.
type Plan struct {
	// Layouts are distinct. Repeat counts equal ones.
	Layouts  []Layout
	Unplaced []Unplaced
	// Cost is the price of all stock bought.
	Cost int64
	// Bound is a proven lower bound: no plan that cuts every blank costs less.
	Bound int64
	// Unpriced describes stock without prices, which Cost and Bound leave out.
	Unpriced []Unpriced
	// Iterations counts the improvement steps of all walks.
	Iterations int64
	// Proof is what has been proven on the way to Bound. Nil is nothing.
	Proof *Proof
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

// Unplaced is a blank that the plan does not cut.
type Unplaced struct {
	Blank  int // index into Problem.Blanks
	Count  int
	Reason Reason
}

// Reason says why a blank is not cut.
type Reason int

const (
	// TooLarge: the blank fits none of its stock.
	TooLarge Reason = iota
	// StockUsedUp: other blanks need all of its stock.
	StockUsedUp
	// AgainstRules: the blank fits, but not within the stages, first cut and narrowest rip.
	AgainstRules
)

// Use says what a node becomes.
type Use int

const (
	Split  Use = iota // divided into Children
	Part              // a blank, exactly
	Offcut            // kept
	Waste
)

// Node is a rectangle of a layout. The children of a split lie in order from the reference edge
// (rip) or end (crosscut), one kerf apart, and share the other dimension. Levels of cuts
// alternate in direction.
//
// The children fill the node exactly. Or the last child is a part or a split, and at most one
// kerf is missing, because the last cut's blade ran off the edge.
type Node struct {
	Length, Width int64
	Use           Use
	Cut           Cut    // of a split
	Children      []Node // of a split
	Blank         int    // of a part: index into Problem.Blanks
	Turned        bool   // of a part: its length lies across the stock
}
