package job

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// shoppingKeys concern money besides the prices. Both are
// percentages, with two decimals at most.
var shoppingKeys = []key{
	{name: "tax", holds: aPercentage},
	{name: "worth", holds: aPercentage},
}

const wholePrice = 100_00 // hundredths of a percent

// shopping reads [shopping] into a job.
func (r *reader) shopping(root *table, at place, into *stock.Job) {
	rec := r.section(root, "shopping", at)
	into.Tax, into.Worth = r.share(rec, "tax"), r.share(rec, "worth")
}

func (r *reader) share(rec record, key string) stock.Share {
	percent := rec.fields[key].price // its cents are hundredths
	if percent > wholePrice {
		r.fault(rec.where(key).of(key), fault.New(percent.String()+" % is more than can be meant (at most 100 %)", "give a percentage, such as 8.1"))
	}
	return stock.Share(percent)
}

// offerListKeys are the headings of a price list: what is said of a sheet or of a
// board, and which of them it is.
var offerListKeys = listedOffers()

func listedOffers() []key {
	all := []key{{name: "kind", holds: aWord, need: true, example: "sheet", words: []string{"sheet", "board"}}}
	for _, of := range [][]key{sheetKeys, boardKeys} {
		for _, k := range of {
			if k.holds != zones && !slices.ContainsFunc(all, func(b key) bool { return b.name == k.name }) {
				// Sheets need a width and a thickness, boards may have a nominal size.
				k.need = k.need && k.name != "width" && k.name != "thickness"
				all = append(all, k)
			}
		}
	}
	return all
}

// priceList reads a list of offers: a heading with the words of [[sheet]] and
// [[board]], and one offer a row.
func (r *reader) priceList(source string, at place, kerf stock.Length) []offer {
	var all []offer
	for _, rec := range r.rowsOf("price", source, offerListKeys, at) {
		if rec.text("kind") == "board" {
			all = append(all, r.board(rec, kerf))
			continue
		}
		for _, name := range []string{"width", "thickness"} {
			if rec.length(name) == 0 {
				r.refuse(&rec, "", fault.New(name+" is missing", "fill in its column"))
			}
		}
		for _, name := range tradeNames {
			if rec.given(name) {
				r.refuse(&rec, name, fault.New("is of boards only", "give the sheet's width and thickness"))
			}
		}
		all = append(all, r.sheet(rec))
	}
	return all
}
