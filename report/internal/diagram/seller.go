package diagram

import (
	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// A side that the seller cut is drawn as a zigzag beside the outline. It may be out of
// square and a little short, so that it is trimmed, and lies away from the reference
// corner where that can be.

const (
	toothLong = 2.4 // mm along the edge
	toothHigh = 1.1
	toothGap  = 0.6 // from the outline
)

// sellerNote says so in words; empty where the seller cut nothing.
func sellerNote(s stock.Stock) string {
	t := s.Sawn
	switch {
	case t == stock.Trims{}:
		return ""
	case t.NearEnd > 0 || t.NearEdge > 0:
		return "zigzag: the seller's cuts, on both sides; measure first"
	}
	return "zigzag: the seller's cut, away from the reference corner; measure first"
}

// drawSeller draws the zigzags of the sides that the seller cut.
func drawSeller(d *drawing.Drawing, s stock.Stock, outline drawing.Rect) {
	t := s.Sawn
	top, bottom := outline.Y-toothGap, outline.Bottom()+toothGap
	left, right := outline.X-toothGap, outline.Right()+toothGap
	for _, side := range []struct {
		sawn     stock.Length
		from, to drawing.Point
		out      drawing.Point
	}{
		{t.FarEdge, drawing.Point{X: outline.X, Y: top}, drawing.Point{X: outline.Right(), Y: top}, drawing.Point{Y: -toothHigh}},
		{t.NearEdge, drawing.Point{X: outline.X, Y: bottom}, drawing.Point{X: outline.Right(), Y: bottom}, drawing.Point{Y: toothHigh}},
		{t.NearEnd, drawing.Point{X: left, Y: outline.Y}, drawing.Point{X: left, Y: outline.Bottom()}, drawing.Point{X: -toothHigh}},
		{t.FarEnd, drawing.Point{X: right, Y: outline.Y}, drawing.Point{X: right, Y: outline.Bottom()}, drawing.Point{X: toothHigh}},
	} {
		if side.sawn > 0 {
			zigzag(d, side.from, side.to, side.out)
		}
	}
}

// zigzag draws teeth from one point to another that stand out.
func zigzag(d *drawing.Drawing, from, to, out drawing.Point) {
	long := abs(to.X-from.X) + abs(to.Y-from.Y)
	teeth := max(1, int(long/toothLong))
	at := func(share float64) drawing.Point {
		return drawing.Point{X: from.X + share*(to.X-from.X), Y: from.Y + share*(to.Y-from.Y)}
	}
	for i := range teeth {
		a, b := at(float64(i)/float64(teeth)), at(float64(i+1)/float64(teeth))
		tip := at((float64(i) + 0.5) / float64(teeth))
		tip.X, tip.Y = tip.X+out.X, tip.Y+out.Y
		d.Line(a, tip, drawing.Visible)
		d.Line(tip, b, drawing.Visible)
	}
}
