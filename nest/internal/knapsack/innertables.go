package knapsack

import "sawbill/nest/internal/instance"

// innerTables hold the bound on the value inside a piece, by the direction of its first cut.
// deep is with all levels of cuts, under with one less. If levels are many, all are one table.
type innerTables struct {
	items       table         // uncut: one item
	staged      [][dirs]table // per number of levels, from 1; nil if there are many
	free        table         // for any number of levels; nil if there are few
	deep, under [dirs]table
}

// maxStaged is the greatest limit on levels that tables respect. The last of more levels add
// almost nothing.
const maxStaged = 4

func newInnerTables(cells int, rules Rules) (p innerTables) {
	if rules.Stages > maxStaged {
		p.free = make(table, cells)
		p.items = p.free
		for dir := range p.deep {
			p.deep[dir], p.under[dir] = p.free, p.free
		}
		return p
	}
	p.items = make(table, cells)
	p.under = [dirs]table{p.items, p.items, p.items}
	for range rules.Stages {
		p.staged = append(p.staged, [dirs]table{instance.Rip: make(table, cells), instance.Crosscut: make(table, cells)})
	}
	p.deep = p.staged[len(p.staged)-1]
	if n := len(p.staged); n > 1 {
		p.under = p.staged[n-2]
	}
	if rules.FirstCut != instance.None {
		p.deep[rules.FirstCut.Across()] = p.under[rules.FirstCut.Across()]
	}
	return p
}

// levels returns the number of tables per direction.
func (p *innerTables) levels() int { return max(1, len(p.staged)) }

func (p *innerTables) clear() {
	clear(p.items)
	for _, t := range p.staged {
		clear(t[instance.Rip])
		clear(t[instance.Crosscut])
	}
}

// fillInnerRow computes one row of the inner tables.
func (b *bounds) fillInnerRow(i int) {
	cols := len(b.y.points)
	if i == 0 {
		return // nothing fits in length 0
	}
	b.fillAreaRow(i)
	p := &b.inner
	if p.free != nil {
		b.crosscut(p.free, p.free, i)
		b.rip(p.free, p.free, i)
		return
	}
	single := p.items[i*cols : (i+1)*cols]
	for j := range single {
		single[j] = max(single[j], p.items[(i-1)*cols+j])
		if j > 0 {
			single[j] = max(single[j], single[j-1])
		}
	}
	ripped, crosscut := p.items, p.items
	for _, t := range p.staged {
		b.crosscut(t[instance.Crosscut], ripped, i)
		b.rip(t[instance.Rip], crosscut, i)
		ripped, crosscut = t[instance.Rip], t[instance.Crosscut]
	}
}

// fillAreaRow computes the bounds for row i by area and demand.
func (b *bounds) fillAreaRow(i int) {
	b.areaRow = b.areaRow[:0]
	for _, y := range b.y.points {
		b.areaRow = append(b.areaRow, b.areas.inside(b.x.points[i], y))
	}
}

// crosscut computes row i of a table for pieces that are crosscut first, into pieces of the
// table parts, which are ripped first.
func (b *bounds) crosscut(t, parts table, i int) {
	cols, xs := len(b.y.points), b.x.points
	cells := t[i*cols : (i+1)*cols]
	for j, v := range parts[i*cols : (i+1)*cols] {
		cells[j] = max(cells[j], v, t[(i-1)*cols+j])
	}
	for less := 1; 2*xs[less] <= xs[i]; less++ {
		more := int(b.x.floor[xs[i]-xs[less]])
		p, q := parts[less*cols:][:cols], t[more*cols:][:cols]
		for j := range cells {
			cells[j] = max(cells[j], p[j]+q[j])
		}
	}
	for j, most := range b.areaRow {
		cells[j] = min(cells[j], most)
	}
}

// rip is the same for pieces that are ripped first.
func (b *bounds) rip(t, parts table, i int) {
	cols, ys := len(b.y.points), b.y.points
	cells, strips := t[i*cols:(i+1)*cols], parts[i*cols:(i+1)*cols]
	for j := 1; j < cols; j++ {
		v := max(cells[j], strips[j], cells[j-1])
		for less := 1; 2*ys[less] <= ys[j]; less++ {
			v = max(v, strips[less]+cells[b.y.floor[ys[j]-ys[less]]])
		}
		cells[j] = min(v, b.areaRow[j])
	}
}
