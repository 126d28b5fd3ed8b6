package cutplan

import (
	"slices"

	"sawbill/stock"
)

// Receipt is what is bought from one seller and paid there. Nothing else adds up what a
// plan costs at the till.
type Receipt struct {
	Seller string // empty where it makes no difference
	Lines  []ReceiptLine
	Net    stock.Money // of all lines
	Tax    stock.Money // on Net, rounded once
}

// ReceiptLine is a purchase with the cuts that its seller makes in it.
type ReceiptLine struct {
	Purchase
	Cuts []Division // nil where it is carried as it is
}

// Paid is the sum with tax.
func (r Receipt) Paid() stock.Money { return r.Net + r.Tax }

// Receipts are what plans buy, by seller, in the order of the purchases. The plans are of
// one job: a whole one, or one of each material.
func Receipts(tax stock.Share, plans ...*Plan) []Receipt {
	var all []Receipt
	for _, p := range plans {
		for _, b := range p.Buy {
			at := slices.IndexFunc(all, func(r Receipt) bool { return r.Seller == b.Stock.Seller })
			if at < 0 {
				at = len(all)
				all = append(all, Receipt{Seller: b.Stock.Seller})
			}
			of := &all[at]
			line := ReceiptLine{Purchase: b}
			of.Net += b.Cost
			for _, d := range p.AtSeller {
				if d.Stock.Name == b.Stock.Name && d.Stock.Seller == b.Stock.Seller {
					line.Cuts = append(line.Cuts, d)
					of.Net += d.Cost
				}
			}
			of.Lines = append(of.Lines, line)
		}
	}
	for i := range all {
		all[i].Tax = tax.Of(all[i].Net)
	}
	return all
}
