package report

import (
	"slices"
	"testing"

	"sawbill/report/internal/drawing"
)

// What is missing is told before what to buy, and which blanks and why on the
// same page.
func TestTheFirstPageSaysWhereThePlanFallsShort(t *testing.T) {
	var said []string
	first := lay(incomplete(), Options{}).Pages[0]
	for _, text := range first.Texts() {
		said = append(said, text.String)
	}
	at := -1
	for _, want := range []string{"NOT COMPLETE: 5 blanks could not be cut.", "Buy", "Not cut", "leg", "cleat", "Where the material goes", "Keep"} {
		next := slices.Index(said, want)
		if next <= at {
			t.Errorf("%q is line %d, want it below line %d", want, next, at)
		}
		at = next
	}
}

func TestWhatToBuyIsInTheLargestTypeOfTheTables(t *testing.T) {
	sizes := make(map[string]float64)
	page := lay(bench(), Options{}).Pages[0]
	for _, text := range page.Texts() {
		sizes[text.String] = text.Size
	}
	if sizes["birch 18, 8x4"] < 14 || sizes["in all"] < 14 {
		t.Errorf("what to buy is in %v pt, the sum in %v pt", sizes["birch 18, 8x4"], sizes["in all"])
	}
	if sizes["birch 18, 8x4"] <= sizes["layout"] {
		t.Error("what to buy is no larger than the rest")
	}
	if err := drawing.CheckWriting(page); err != nil {
		t.Error(err)
	}
}

func TestTheFirstPageNamesWhatElseToBuy(t *testing.T) {
	if got, want := alsoToBuy(board(), inches), "Also: finish 0.7 litres, edging 3.7 ft, 4 shelf pins; see What else it takes."; got != want {
		t.Errorf("%q, want %q", got, want)
	}
	if got := alsoToBuy(nil, inches); got != "" {
		t.Errorf("%q without a case", got)
	}
}
