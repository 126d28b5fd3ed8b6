package diagram

import (
	"sawbill/report/internal/drawing"
)

// lane holds the callouts of one side with their places.
type lane struct {
	callouts []callout
	at       []float64 // middle of each, along the lane
	above    bool      // the lane above the stock, else on its right
	level    bool      // above: the texts lie level, in one row
}

// extent is how much of its lane c takes.
func (l lane) extent(c callout) float64 {
	switch {
	case l.level:
		return c.width() + 3*calloutGap
	case l.above && c.cut:
		return c.width() + calloutGap
	}
	return c.height() + calloutGap
}

func (l lane) extents() []float64 {
	all := make([]float64, len(l.callouts))
	for i, c := range l.callouts {
		all[i] = l.extent(c)
	}
	return all
}

func (l *lane) settle(lo, hi float64) {
	wanted := make([]float64, len(l.callouts))
	for i, c := range l.callouts {
		wanted[i] = c.dots[0].Y
		if l.above {
			wanted[i] = c.dots[0].X
		}
	}
	l.at = drawing.Spread(wanted, l.extents(), lo, hi)
}

// need is how wide the lane has to be.
func (l lane) need() float64 {
	if len(l.callouts) == 0 {
		return 0
	}
	room := 0.0
	for _, c := range l.callouts {
		switch {
		case l.level || l.above && c.cut:
			room = max(room, c.height())
		case l.above:
			room = max(room, min(widest, c.width()))
		default:
			room = max(room, min(widest, c.width()))
		}
	}
	return room + leaderRoom
}

// leaders draws the lines; pieces that share a label are strung on one.
func (l lane) leaders(d *drawing.Drawing, f frame) {
	for i, c := range l.callouts {
		edge := drawing.Point{X: f.stock.Right(), Y: c.dots[0].Y}
		if l.above {
			edge = drawing.Point{X: c.dots[0].X, Y: f.stock.Y}
		}
		d.Leader(c.dots[0], edge)
		d.Line(edge, l.end(i, f), drawing.Narrow)
		for j := 1; j < len(c.dots); j++ {
			d.Leader(c.dots[j], c.dots[j-1])
		}
	}
}

// end is where the leader of callout i meets its text.
func (l lane) end(i int, f frame) drawing.Point {
	if l.above {
		return drawing.Point{X: l.at[i], Y: f.stock.Y - leaderRoom + leaderMargin}
	}
	return drawing.Point{X: f.stock.Right() + leaderRoom - leaderMargin, Y: l.at[i]}
}

// write puts the texts at the ends of their leaders.
func (l lane) write(d *drawing.Drawing, f frame) {
	across := f.lanes.right
	if l.above {
		across = f.lanes.top
	}
	for i, c := range l.callouts {
		end := l.end(i, f)
		if c.cut {
			if l.above {
				end.Y -= c.height()/2 + 0.2
			} else {
				end.X += c.width()/2 + 0.2
			}
			d.Number(end, c.text)
			continue
		}
		t := drawing.Text{String: c.text, Size: calloutSize, Ground: true}
		rise := drawing.RiseOf(t.String, t.Face, t.Size)
		middle := rise - c.height()/2
		switch {
		case l.level:
			t.Align = drawing.Center
			t.At = drawing.Point{X: end.X, Y: end.Y - 0.2 - c.height() + rise}
		case l.above:
			t.Turned = true
			t.At = drawing.Point{X: end.X + middle, Y: end.Y - leaderMargin/2}
		default:
			t.At = drawing.Point{X: end.X + leaderMargin/2, Y: end.Y + middle}
		}
		if !l.level {
			t.String = drawing.Shorten(t.String, t.Face, t.Size, across-leaderRoom)
		}
		d.Text(t)
	}
}

// total is the room that things take in a row.
func total(extents []float64) float64 {
	sum := 0.0
	for _, e := range extents {
		sum += e
	}
	return sum
}
