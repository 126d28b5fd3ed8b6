package instance

// Cost of the stock that a plan cuts, in lexicographic order.
type Cost struct {
	Price  int64 // of the stock bought
	Bought int64 // area of the stock bought
}

// Less compares lexicographically.
func (c Cost) Less(o Cost) bool {
	if c.Price != o.Price {
		return c.Price < o.Price
	}
	return c.Bought < o.Bought
}

// Plus adds n pieces of stock that cost o each.
func (c Cost) Plus(o Cost, n int64) Cost {
	return Cost{c.Price + n*o.Price, c.Bought + n*o.Bought}
}

// CostOf returns what one piece of stock s adds to the cost.
func (in *Instance) CostOf(s int) Cost {
	st := in.Stock[s]
	if st.OnHand {
		return Cost{}
	}
	return Cost{Price: st.Price, Bought: in.Area(st.L, st.W)}
}

// Plan is a set of divided pieces of stock.
type Plan struct {
	Layouts []Layout
	Missing []int // per kind: the demand that is not placed
	Cost    Cost
}

// AddLayout adds a piece of stock to p, without parts that exceed the demand. placed counts the
// parts of p per kind, and is updated.
func (in *Instance) AddLayout(p *Plan, stock int, root Piece, placed []int) {
	p.Layouts = append(p.Layouts, Layout{Stock: stock, Root: Normalize(in.DropExcess(root, placed))})
	p.Cost = p.Cost.Plus(in.CostOf(stock), 1)
}

// Complete reports whether nothing is missing.
func (p *Plan) Complete() bool {
	for _, n := range p.Missing {
		if n > 0 {
			return false
		}
	}
	return true
}

// MissingArea returns the area of the parts that p does not place.
func (in *Instance) MissingArea(p *Plan) int64 {
	var area int64
	for k, n := range p.Missing {
		area += int64(n) * in.Area(in.Kinds[k].L, in.Kinds[k].W)
	}
	return area
}

// Queue holds plans until they are taken.
type Queue struct{ plans []*Plan }

// Put adds a plan.
func (q *Queue) Put(p *Plan) { q.plans = append(q.plans, p) }

// NewPlans returns the plans since the last call. They may lack parts.
func (q *Queue) NewPlans() []*Plan {
	plans := q.plans
	q.plans = nil
	return plans
}

// Layout is one piece of stock divided.
type Layout struct {
	Stock int
	Root  Piece
}

// Piece is a rectangle of a layout. With children it is a split: they lie in order and fill it.
// Otherwise it is a part of Kind, or a leftover.
type Piece struct {
	L, W     int64
	Dir      Dir
	Children []Piece
	Kind     int
	Turned   bool
}

// Leftover is the Kind of a piece that is not a part.
const Leftover = -1
