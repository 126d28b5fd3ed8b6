package pieces

import "sawbill/stock"

// bears is the greatest load on a piece, 0 where none is known; some is true where
// on others of its like something stands that has no weight.
type bears struct {
	Weight stock.Grams
	Some   bool
}

func bearing(row stock.Grams) bears { return bears{row, row == 0} }

func (b bears) and(c bears) bears { return bears{max(b.Weight, c.Weight), b.Some || c.Some} }
