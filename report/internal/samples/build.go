// Package samples builds plans by hand for the tests of the report. No solver
// runs, so a report can be tested on layouts that no solver would choose.
package samples

import (
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Piece is something to put into a split.
type Piece struct {
	// along is the piece's extent in the direction that cut divides; 0 takes
	// what is left.
	along func(cut cutplan.Cut) stock.Length
	build func(x, y, length, width stock.Length) cutplan.Node
}

// Maker collects a plan.
type Maker struct {
	Plan cutplan.Plan
}

// New starts a plan for job; its bill follows the job's parts.
func New(job stock.Job) *Maker {
	m := &Maker{}
	m.Plan.Job = job
	for i, b := range job.Blanks() {
		m.Plan.Bill = append(m.Plan.Bill, cutplan.Blank{
			Blank: b, Mark: cutplan.Mark(i), Turnable: b.Part.Grain == stock.GrainAny,
		})
	}
	return m
}

// Part is a blank of the bill, upright.
func (m *Maker) Part(blank int) Piece { return m.part(blank, false) }

// Turned is a blank that lies across.
func (m *Maker) Turned(blank int) Piece { return m.part(blank, true) }

func (m *Maker) part(blank int, turned bool) Piece {
	b := m.Plan.Bill[blank]
	length, width := b.Length, b.Width
	if turned {
		length, width = width, length
	}
	return Piece{
		along: func(cut cutplan.Cut) stock.Length {
			if cut == cutplan.Rip {
				return width
			}
			return length
		},
		build: func(x, y, _, _ stock.Length) cutplan.Node {
			return cutplan.Node{X: x, Y: y, Length: length, Width: width,
				Use: cutplan.Part, Blank: blank, Turned: turned}
		},
	}
}

// Rest is what is left: an offcut where it is worth keeping, else waste.
func (m *Maker) Rest() Piece {
	return Piece{
		along: func(cutplan.Cut) stock.Length { return 0 },
		build: func(x, y, length, width stock.Length) cutplan.Node {
			n := cutplan.Node{X: x, Y: y, Length: length, Width: width, Use: cutplan.Waste}
			if m.Plan.Job.Offcut.Keeps(length, width) {
				n.Use = cutplan.Offcut
			}
			return n
		},
	}
}

// Rips divides the width into pieces; extent is the size that the split takes
// of its own parent, 0 for what is left.
func (m *Maker) Rips(extent stock.Length, pieces ...Piece) Piece {
	return m.split(cutplan.Rip, extent, pieces)
}

// Crosscuts divides the length likewise.
func (m *Maker) Crosscuts(extent stock.Length, pieces ...Piece) Piece {
	return m.split(cutplan.Crosscut, extent, pieces)
}

func (m *Maker) split(cut cutplan.Cut, extent stock.Length, pieces []Piece) Piece {
	return Piece{
		along: func(cutplan.Cut) stock.Length { return extent },
		build: func(x, y, length, width stock.Length) cutplan.Node {
			n := cutplan.Node{X: x, Y: y, Length: length, Width: width, Use: cutplan.Split, Cut: cut}
			at, whole := stock.Length(0), length
			if cut == cutplan.Rip {
				whole = width
			}
			for _, p := range pieces {
				extent := p.along(cut)
				if extent == 0 {
					extent = whole - at
				}
				if extent <= 0 {
					break // the blade ran off the edge: nothing is left
				}
				if cut == cutplan.Rip {
					n.Children = append(n.Children, p.build(x, y+at, length, extent))
				} else {
					n.Children = append(n.Children, p.build(x+at, y, extent, width))
				}
				at += extent + m.Plan.Job.Saw.Kerf
			}
			return n
		},
	}
}

// Layout adds repeat pieces of the job's stock, divided like root.
func (m *Maker) Layout(stockIndex, repeat int, root Piece) {
	s := m.Plan.Job.Stock[stockIndex]
	length, width := s.Usable()
	m.Plan.Layouts = append(m.Plan.Layouts, cutplan.Layout{
		Stock: s, Repeat: repeat,
		Root: root.build(s.Trims().NearEnd, s.Trims().NearEdge, length, width),
	})
	if s.OnHand {
		return
	}
	cost := s.Price * stock.Money(repeat)
	m.Plan.Cost += cost
	for i := range m.Plan.Buy {
		if m.Plan.Buy[i].Stock.Name == s.Name {
			m.Plan.Buy[i].Count += repeat
			m.Plan.Buy[i].Cost += cost
			return
		}
	}
	m.Plan.Buy = append(m.Plan.Buy, cutplan.Purchase{Stock: s, Count: repeat, Cost: cost})
}

// Finished closes the plan: shares are added up and the bound is set.
func (m *Maker) Finished(bound stock.Money) cutplan.Plan {
	m.Plan.Bound = bound
	var all, sheets, boards tally
	onlySheets := true
	for _, l := range m.Plan.Layouts {
		onlySheets = onlySheets && l.Stock.Kind == stock.Sheet
	}
	for _, l := range m.Plan.Layouts {
		flat := m.tally(l, false)
		if l.Stock.Kind == stock.Sheet {
			sheets.add(flat)
		} else {
			boards.add(m.tally(l, true))
		}
		all.add(m.tally(l, !onlySheets))
	}
	m.Plan.Totals = cutplan.Totals{All: all.shares(), Sheets: sheets.shares(), Boards: boards.shares()}
	return m.Plan
}

// tally holds areas or volumes, in mm.
type tally struct{ stock, part, offcut float64 }

func (t *tally) add(u tally) {
	t.stock += u.stock
	t.part += u.part
	t.offcut += u.offcut
}

func (t tally) shares() cutplan.Shares {
	if t.stock == 0 {
		return cutplan.Shares{}
	}
	s := cutplan.Shares{Yield: t.part / t.stock, Offcut: t.offcut / t.stock}
	s.Waste = 1 - s.Yield - s.Offcut
	return s
}

func (m *Maker) tally(l cutplan.Layout, volume bool) tally {
	size := func(length, width, thickness stock.Length) float64 {
		v := float64(length) * float64(width) * float64(l.Repeat)
		if volume {
			v *= float64(thickness)
		}
		return v
	}
	t := tally{stock: size(l.Stock.Length, l.Stock.Width, l.Stock.Thickness)}
	var walk func(n cutplan.Node)
	walk = func(n cutplan.Node) {
		switch n.Use {
		case cutplan.Part:
			b := m.Plan.Bill[n.Blank]
			t.part += float64(b.Holds()) * size(b.Part.Length, b.Part.Width, b.Part.Thickness)
		case cutplan.Offcut:
			t.offcut += size(n.Length, n.Width, l.Stock.Thickness)
		}
		for _, c := range n.Children {
			walk(c)
		}
	}
	walk(l.Root)
	return t
}
