package knapsack

import "sawbill/nest/internal/instance"

// bounds knows the most that can be cut around a rectangle, from two tables: of
// what is inside a piece, by dynamic programming, where counts matter only for
// the area filled; and of what is around a rectangle in the stock's corner, by
// growing it to the stock with such pieces (after Viswanathan and Bagchi). No
// value in them is less than what can be had.
type bounds struct {
	l, w           int64  // of the stock, less what no row of items reaches
	exactX, exactY *reach // unit 1 unless the stock is very large
	x, y           *reach // of the tables
	items          []Item
	inner          []int64 // value inside x.points[i] x y.points[j], at i*len(y.points)+j
	outer          []int64 // value around a rectangle that leaves these of the stock
	confined       confined
	fill           filler
	row            int // rows done, of inner and then of outer
}

// mostUnits of an axis, and mostPoints of one axis of a table, for the sake of
// memory: 16 MiB for both tables.
const (
	mostUnits  = 1 << 18
	mostPoints = 1 << 10
)

// newBounds lays the tables out; nil where items are so small beside the stock
// that tables would take more than work or too much memory.
func newBounds(l, w int64, items []Item, rules Rules, work int64) *bounds {
	b := &bounds{items: items}
	rowsX, rowsY := rows(items, true), rows(items, false)
	b.exactX, b.exactY = newReach(l, 1+l/mostUnits, rowsX), newReach(w, 1+w/mostUnits, rowsY)
	if b.exactX == nil || b.exactY == nil {
		return nil
	}
	b.l, b.w = b.exactX.within(l), b.exactY.within(w)
	b.x, b.y = b.exactX, b.exactY
	for {
		x, y := int64(len(b.x.points)), int64(len(b.y.points))
		if max(x, y) <= mostPoints && x*y*(x+y) <= work {
			break
		}
		if x >= y {
			b.x = newReach(b.l, 2*b.x.unit, rowsX)
		} else {
			b.y = newReach(b.w, 2*b.y.unit, rowsY)
		}
		if b.x == nil || b.y == nil {
			return nil
		}
	}
	b.inner = make([]int64, len(b.x.points)*len(b.y.points))
	b.outer = make([]int64, len(b.inner))
	if rules.Stages < instance.NoLimit {
		for _, dir := range []instance.Dir{instance.Crosscut, instance.Ripped} {
			b.confined[dir] = make([]int64, len(b.inner))
		}
	}
	return b
}

// room is what a rectangle leaves of the stock in either direction, as far as
// rows of items can use it.
func (b *bounds) room(l, w int64) (restL, restW int64) {
	return b.exactX.within(b.l - l), b.exactY.within(b.w - w)
}

// rests is the same as points of the tables.
func (b *bounds) rests(l, w int64) (restL, restW int32) {
	return b.x.at(b.l - l), b.y.at(b.w - w)
}

// around is the most that is cut around a rectangle which leaves these points.
func (b *bounds) around(restL, restW int32) int64 {
	return b.outer[int(restL)*len(b.y.points)+int(restW)]
}

// whole is the most that is cut of the stock.
func (b *bounds) whole() int64 { return b.inner[len(b.inner)-1] }

func (b *bounds) start(values []int64, f form) {
	b.row = 0
	clear(b.inner)
	clear(b.outer)
	b.fill.start(b.items, b.x.unit, b.y.unit, values, f)
	for n, it := range b.items {
		if it.Count == 0 {
			continue
		}
		if it.Lies&instance.Upright != 0 {
			b.hold(it.L, it.W, values[n])
		}
		if it.Lies&instance.Turned != 0 {
			b.hold(it.W, it.L, values[n])
		}
	}
}

func (b *bounds) hold(l, w, value int64) {
	at := int(b.x.at(l))*len(b.y.points) + int(b.y.at(w))
	b.inner[at] = max(b.inner[at], value)
}

// advance carries the tables on by about work sums.
func (b *bounds) advance(work int64) (left int64, done bool) {
	x, y := int64(len(b.x.points)), int64(len(b.y.points))
	for ; b.row < 2*len(b.x.points); b.row++ {
		if work <= 0 {
			return work, false
		}
		if i := b.row; i < len(b.x.points) {
			b.inside(i)
			work -= y*int64(i)/2 + y*y/4 + y*int64(len(b.fill.items))
		} else {
			b.outside(i - len(b.x.points))
			if b.confined[instance.Crosscut] != nil {
				b.confine(i - len(b.x.points))
				work -= 2 * y
			}
			work -= y*(int64(i)-x) + y*y/2
		}
	}
	return work, true
}

// inside reckons one row of the inner table.
func (b *bounds) inside(i int) {
	cols := len(b.y.points)
	xs, ys := b.x.points, b.y.points
	if i == 0 {
		return // nothing is that short
	}
	cells := b.inner[i*cols : (i+1)*cols]
	for j, v := range b.inner[(i-1)*cols : i*cols] {
		cells[j] = max(cells[j], v)
	}
	for less := 1; 2*xs[less] <= xs[i]; less++ {
		more := int(b.x.floor[xs[i]-xs[less]])
		p, q := b.inner[less*cols:][:cols], b.inner[more*cols:][:cols]
		for j := range cells {
			cells[j] = max(cells[j], p[j]+q[j])
		}
	}
	for j := 1; j < cols; j++ {
		v := max(cells[j], cells[j-1])
		for less := 1; 2*ys[less] <= ys[j]; less++ {
			v = max(v, cells[less]+cells[b.y.floor[ys[j]-ys[less]]])
		}
		cells[j] = min(v, b.fill.inside(xs[i], ys[j]))
	}
}

// outside reckons one row of the outer table.
func (b *bounds) outside(i int) {
	cols := len(b.y.points)
	xs, ys := b.x.points, b.y.points
	cells := b.outer[i*cols : (i+1)*cols]
	if i > 0 {
		copy(cells, b.outer[(i-1)*cols:i*cols])
	}
	wholeX, wholeY := xs[len(xs)-1], ys[len(ys)-1]
	// Pieces beside the rectangle are as wide as it is.
	for x := 1; x <= i; x++ {
		more := b.outer[int(b.x.floor[xs[i]-xs[x]])*cols:][:cols]
		piece := b.inner[x*cols:][:cols]
		for j := range cells {
			cells[j] = max(cells[j], more[j]+piece[b.y.floor[wholeY-ys[j]]])
		}
	}
	// Those above it are as long.
	long := int(b.x.floor[wholeX-xs[i]]) * cols
	for j := 1; j < cols; j++ {
		v := max(cells[j], cells[j-1])
		for y := 1; y <= j; y++ {
			v = max(v, cells[b.y.floor[ys[j]-ys[y]]]+b.inner[long+y])
		}
		cells[j] = v
	}
}
