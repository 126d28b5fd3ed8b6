package cutplan

import "sawbill/stock"

// Division is the way the seller cuts every piece of one offer, so that it can be carried
// home: straight cuts in one direction. The pieces and the kerfs between them fill the
// offer exactly.
type Division struct {
	Stock  stock.Stock // as it is offered
	Count  int         // pieces of the offer that are bought and cut
	Cut    Cut
	Pieces []stock.Length
	Kerf   stock.Length
	Cost   stock.Money // cost of all cuts, without the stock
}

// Cuts returns the number of cuts in each piece of the offer.
func (d Division) Cuts() int { return len(d.Pieces) - 1 }

// Along returns the dimension that the cuts divide, and the other one.
func (d Division) Along() (along, across stock.Length) {
	if d.Cut == Rip {
		return d.Stock.Width, d.Stock.Length
	}
	return d.Stock.Length, d.Stock.Width
}

// sides returns how many sides of piece i the seller cuts, 1 or 2.
func (d Division) sides(i int) int {
	if i == 0 || i == len(d.Pieces)-1 {
		return 1
	}
	return 2
}

// Piece returns piece i as stock. If the seller cuts one side, the other is its reference
// end or edge. A side cut by the seller is trimmed by the tolerance.
func (d Division) Piece(i int, tolerance stock.Length) stock.Stock {
	s := d.Stock
	s.From, s.Count, s.Price, s.Measure = d.Stock.Name, 0, 0, stock.Measure{}
	near := stock.Length(0)
	if d.sides(i) == 2 {
		near = tolerance
	}
	if d.Cut == Rip {
		s.Width, s.Sawn = d.Pieces[i], stock.Trims{NearEdge: near, FarEdge: tolerance}
	} else {
		s.Length, s.Sawn = d.Pieces[i], stock.Trims{NearEnd: near, FarEnd: tolerance}
	}
	return s
}
