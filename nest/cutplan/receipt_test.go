package cutplan

import (
	"fmt"
	"testing"

	"sawbill/stock"
)

// Each till rounds the tax of its own receipt. The seller's cuts are taxed with the rest.
func TestReceiptsAddUpByHand(t *testing.T) {
	offer := func(name, seller string, price stock.Money) stock.Stock {
		return stock.Stock{Name: name, Seller: seller, Price: price}
	}
	a, b, c := offer("a", "North", 1_06), offer("b", "South", 1_06), offer("c", "North", 10_00)
	sheets := &Plan{Buy: []Purchase{{a, 1, 1_06}, {b, 1, 1_06}}}
	boards := &Plan{Buy: []Purchase{{c, 2, 20_00}}, AtSeller: []Division{{Stock: c, Count: 2, Cost: 3_00}}}
	var got string
	for _, r := range Receipts(8_10, sheets, boards) {
		got += fmt.Sprintln(r.Seller, len(r.Lines), len(r.Lines[len(r.Lines)-1].Cuts), r.Net, r.Tax, r.Paid())
	}
	// 8.1 % of 24.06 is 1.94886, of 1.06 it is 0.08586: 1.95 and 0.09.
	if want := "North 2 1 24.06 1.95 26.01\nSouth 1 0 1.06 0.09 1.15\n"; got != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
	if r := Receipts(0, sheets); r[0].Tax != 0 || r[0].Paid() != 1_06 {
		t.Errorf("without tax %v is paid", r[0].Paid())
	}
	// Two tills that round up: 8.5 % of 0.06 is 0.0051 each, 0.01; of 0.12 it is 0.01 once.
	p := &Plan{Buy: []Purchase{{offer("a", "North", 6), 1, 6}, {offer("b", "South", 6), 1, 6}}}
	sum := stock.Money(0)
	for _, r := range Receipts(8_50, p) {
		sum += r.Paid()
	}
	if sum != 14 {
		t.Errorf("%v is paid at two tills, want 0.14", sum)
	}
}
