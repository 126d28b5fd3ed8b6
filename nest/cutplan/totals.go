package cutplan

import "sawbill/stock"

// totals adds up the use of the stock. Yield counts finished parts: allowances are waste.
func totals(p *Plan) Totals {
	var sheets, boards, all tally
	for _, l := range p.Layouts {
		s := l.Stock
		if s.Kind == stock.Sheet {
			sheets.layout(p, l, stock.Millimeter, stock.Millimeter)
		} else {
			boards.layout(p, l, s.Thickness, 0)
		}
		all.layout(p, l, s.Thickness, 0)
	}
	for _, d := range p.AtSeller {
		if d.Stock.Kind == stock.Sheet {
			sheets.atSeller(d, stock.Millimeter)
		} else {
			boards.atSeller(d, d.Stock.Thickness)
		}
		all.atSeller(d, d.Stock.Thickness)
	}
	t := Totals{All: all.shares(), Sheets: sheets.shares(), Boards: boards.shares()}
	if !boards.some {
		t.All = t.Sheets
	}
	return t
}

// tally sums volumes; a fixed thickness turns them into areas.
type tally struct {
	cut, parts, offcuts stock.Volume
	some                bool
}

// layout adds l, with its stock as thick as given. Parts are as thick as finished, or have
// their own thickness if finished is 0.
func (t *tally) layout(p *Plan, l Layout, thick, finished stock.Length) {
	t.some = true
	t.cut = t.cut.Add(l.Stock.Length, l.Stock.Width, thick, l.Repeat)
	for _, n := range l.Leaves() {
		switch n.Use {
		case Part:
			b := p.Bill[n.Blank]
			part := b.Part
			deep := finished
			if deep == 0 {
				deep = part.Thickness
			}
			t.parts = t.parts.Add(part.Length, part.Width, deep, l.Repeat*b.Holds())
		case Offcut:
			t.offcuts = t.offcuts.Add(n.Length, n.Width, thick, l.Repeat)
		}
	}
}

// atSeller adds the kerf of the seller's saw.
func (t *tally) atSeller(d Division, thick stock.Length) {
	_, across := d.Along()
	t.cut = t.cut.Add(stock.Length(d.Cuts())*d.Kerf, across, thick, d.Count)
}

func (t *tally) shares() Shares {
	if !t.some {
		return Shares{}
	}
	s := Shares{Yield: t.parts.Ratio(t.cut), Offcut: t.offcuts.Ratio(t.cut)}
	s.Waste = max(0, 1-s.Yield-s.Offcut) // the shares are rounded, each on its own
	return s
}
