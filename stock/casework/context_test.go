package casework

import (
	"testing"

	"sawbill/stock"

	"github.com/google/go-cmp/cmp"
)

// Sheets of one material in two sizes and two thicknesses, out of order.
func TestMaterialsOfGathersThicknesses(t *testing.T) {
	piece := func(kind stock.Kind, material, thickness string) stock.Stock {
		return stock.Stock{Kind: kind, Material: material, Thickness: metric(thickness).Value}
	}
	got := MaterialsOf([]stock.Stock{
		piece(stock.Sheet, "ply", "18"), piece(stock.Board, "oak", "27"), piece(stock.Sheet, "ply", "6"), piece(stock.Sheet, "ply", "18"),
	})
	want := map[string]Material{
		"ply": {Kind: stock.Sheet, Thicknesses: []stock.Length{metric("6").Value, metric("18").Value}},
		"oak": {Kind: stock.Board, Thicknesses: []stock.Length{metric("27").Value}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestPartsSayThatTheyAreOfTheCase(t *testing.T) {
	for _, p := range derive(t, plain(), workshop(stock.Millimeters)).Parts {
		if p.From != "case" {
			t.Errorf("%s: from %q", p.Name, p.From)
		}
	}
}
