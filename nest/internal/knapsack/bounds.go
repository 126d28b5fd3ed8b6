package knapsack

import "sawbill/nest/internal/instance"

// bounds computes upper bounds on the value cut around a rectangle, from tables by dynamic
// programming. Inner tables are for a piece, and respect demand only through its area. Outer
// tables are for a rectangle in the stock's corner, and grow it to the stock with such pieces
// (after Viswanathan and Bagchi). No value is too low.
type bounds struct {
	l, w           int64   // of the stock, less the rest that no row of items reaches
	exactX, exactY *points // in units of 1 unless the stock is very large
	x, y           *points // of the tables
	items          []Item
	rules          Rules
	inner          innerTables
	outer          table // value around a rectangle, by the points that it leaves of the stock
	confined       [dirs]table
	areas          areaBound
	areaRow        []int64 // of the row in progress: the bound inside by area alone
	rowsDone       int     // of inner, then of outer tables
}

// table holds a value for x.points[i] x y.points[j], at i*len(y.points)+j.
type table []int64

// dirs is the length of an array indexed by direction.
const dirs = instance.Crosscut + 1

// maxUnits limits an axis, and maxTablePoints an axis of a table. A table takes 8 MiB at most,
// and mostly far less.
const (
	maxUnits       = 1 << 18
	maxTablePoints = 1 << 10
)

// newBounds makes empty tables; nil if items are so small that tables would take more than
// work, or too much memory.
func newBounds(l, w int64, items []Item, rules Rules, work int64) *bounds {
	b := &bounds{items: items, rules: rules}
	rowsX, rowsY := rows(items, true), rows(items, false)
	b.exactX, b.exactY = newPoints(l, 1+l/maxUnits, rowsX), newPoints(w, 1+w/maxUnits, rowsY)
	if b.exactX == nil || b.exactY == nil {
		return nil
	}
	b.l, b.w = b.exactX.roundDown(l), b.exactY.roundDown(w)
	b.x, b.y = b.exactX, b.exactY
	for {
		x, y := int64(len(b.x.points)), int64(len(b.y.points))
		if max(x, y) <= maxTablePoints && x*y*(x+y) <= work {
			break
		}
		if x >= y {
			b.x = newPoints(b.l, 2*b.x.unit, rowsX)
		} else {
			b.y = newPoints(b.w, 2*b.y.unit, rowsY)
		}
		if b.x == nil || b.y == nil {
			return nil
		}
	}
	cells := len(b.x.points) * len(b.y.points)
	b.inner = newInnerTables(cells, rules)
	b.outer = make(table, cells)
	if rules.Stages < instance.NoLimit {
		b.confined[instance.Crosscut], b.confined[instance.Rip] = make(table, cells), make(table, cells)
	}
	return b
}

// usableRest returns the rest of the stock beside a rectangle in each direction, as far as rows
// of items reach.
func (b *bounds) usableRest(l, w int64) (restL, restW int64) {
	return b.exactX.roundDown(b.l - l), b.exactY.roundDown(b.w - w)
}

// restPoints returns the same as points of the tables.
func (b *bounds) restPoints(l, w int64) (restL, restW int32) {
	return b.x.index(b.l - l), b.y.index(b.w - w)
}

// around returns the bound around a rectangle that leaves the given points, with a stage slack.
func (b *bounds) around(f stageSlack, dir instance.Dir, restL, restW int32) int64 {
	cols := len(b.y.points)
	switch f {
	case noStageLeft:
		return minusInfinity
	case sameDirection:
		if dir == instance.Crosscut {
			return b.inner.deep[dir][int(restL)*cols+cols-1]
		}
		return b.inner.deep[dir][(len(b.x.points)-1)*cols+int(restW)]
	case oneStageAcross:
		return b.confined[dir][int(restL)*cols+int(restW)]
	}
	return b.outer[int(restL)*cols+int(restW)]
}

// minusInfinity is so low that no rectangle is kept for it.
const minusInfinity = -1 << 62

// stockBound returns the bound for the whole stock.
func (b *bounds) stockBound() (most int64) {
	for _, dir := range []instance.Dir{instance.Crosscut, instance.Rip} {
		most = max(most, b.inner.deep[dir][len(b.outer)-1])
	}
	return most
}

func (b *bounds) start(values []int64, f packing) {
	b.rowsDone = 0
	clear(b.outer)
	b.inner.clear()
	b.areas.start(b.items, b.x.unit, b.y.unit, values, f)
	for n, it := range b.items {
		if it.Count == 0 {
			continue
		}
		if it.Orientations&instance.Upright != 0 {
			b.raiseItem(it.L, it.W, values[n])
		}
		if it.Orientations&instance.Turned != 0 {
			b.raiseItem(it.W, it.L, values[n])
		}
	}
}

func (b *bounds) raiseItem(l, w, value int64) {
	at := int(b.x.index(l))*len(b.y.points) + int(b.y.index(w))
	b.inner.items[at] = max(b.inner.items[at], value)
}

// advance computes about work sums more.
func (b *bounds) advance(work int64) (left int64, done bool) {
	x, y := int64(len(b.x.points)), int64(len(b.y.points))
	for ; b.rowsDone < 2*len(b.x.points); b.rowsDone++ {
		if work <= 0 {
			return work, false
		}
		if i := b.rowsDone; i < len(b.x.points) {
			b.fillInnerRow(i)
			work -= int64(b.inner.levels())*(y*int64(i)/2+y*y/4) + y*int64(len(b.areas.items))
		} else {
			b.fillOuterRow(i - len(b.x.points))
			work -= y*(int64(i)-x) + y*y/2
		}
	}
	return work, true
}

// fillOuterRow computes one row of the outer tables.
func (b *bounds) fillOuterRow(i int) {
	cols := len(b.y.points)
	xs, ys := b.x.points, b.y.points
	cells := b.outer[i*cols : (i+1)*cols]
	if i > 0 {
		copy(cells, b.outer[(i-1)*cols:i*cols])
	}
	wholeX, wholeY := xs[len(xs)-1], ys[len(ys)-1]
	// Pieces beside the rectangle are as wide as it is.
	besides := b.inner.under[instance.Rip]
	for x := 1; x <= i; x++ {
		more := b.outer[int(b.x.floor[xs[i]-xs[x]])*cols:][:cols]
		piece := besides[x*cols:][:cols]
		for j := range cells {
			cells[j] = max(cells[j], more[j]+piece[b.y.floor[wholeY-ys[j]]])
		}
	}
	// Pieces above it are as long.
	above := b.inner.under[instance.Crosscut][int(b.x.floor[wholeX-xs[i]])*cols:][:cols]
	for j := 1; j < cols; j++ {
		v := max(cells[j], cells[j-1])
		for y := 1; y <= j; y++ {
			v = max(v, cells[b.y.floor[ys[j]-ys[y]]]+above[y])
		}
		cells[j] = v
	}
	if b.confined[instance.Crosscut] != nil {
		b.fillConfinedRow(i)
	}
}
