package choice

import (
	"context"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Five pieces of 1000 come of a board of 2000 and one of 3000 for 13.00. Without the short
// one it takes two long ones, 3.00 more; without the long one three short ones, 2.00 more.
func TestWhatToBuyInsteadByHand(t *testing.T) {
	p, err := cutplan.Make(context.Background(), shelves(board("short", "", 2000, 500), board("long", "", 3000, 800)), cutplan.Options{Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	all, err := Instead(context.Background(), p, Options{Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]stock.Money{"short": 300, "long": 200}
	for _, r := range all {
		if want[r.Offer.Name] != r.Extra || r.Plan.Buy[0].Stock.Name == r.Offer.Name {
			t.Errorf("without %s it costs %v more", r.Offer.Name, r.Extra)
		}
		delete(want, r.Offer.Name)
	}
	if len(want) > 0 {
		t.Errorf("nothing instead of %v", want)
	}
}

// Where there is no other offer, or not all is cut, nothing is named.
func TestNothingIsNamedInsteadOfTheOnlyOffer(t *testing.T) {
	for _, j := range []stock.Job{shelves(board("short", "", 2000, 500)), shelves(board("stub", "", 900, 100), board("short", "", 2000, 500))} {
		p, err := cutplan.Make(context.Background(), j, cutplan.Options{Iterations: 50})
		if err != nil {
			t.Fatal(err)
		}
		if all, err := Instead(context.Background(), p, Options{Iterations: 50}); err != nil || all != nil {
			t.Errorf("%v, %v", all, err)
		}
	}
}
