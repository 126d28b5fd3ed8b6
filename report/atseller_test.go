package report

import (
	"bytes"
	"context"
	"encoding/json"
	"strings"
	"testing"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock"
)

// carriedShelves is a plan of two sheets cut in two by their seller, 2440 = 1220 + 4 +
// 1216: what is 1200 x 1100 has room in each half once. Three come from two sheets.
func carriedShelves(t *testing.T, densities map[string]int, heaviest stock.Grams) *cutplan.Plan {
	t.Helper()
	const mm = stock.Millimeter
	p, err := sellercuts.Make(context.Background(), stock.Job{
		Saw: stock.Saw{Kerf: 3 * mm}, Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm}, Densities: densities,
		Transport: stock.Transport{Longest: 1300 * mm, Widest: 1300 * mm, Heaviest: heaviest, Cuts: 1, CutPrice: 1_50, CutKerf: 4 * mm, CutTolerance: 2 * mm},
		Stock:     []stock.Stock{{Name: "full", Material: "ply", Thickness: 18 * mm, Length: 2440 * mm, Width: 1220 * mm, Price: 60_00}},
		Parts:     []stock.Part{{Name: "shelf", Material: "ply", Length: 1200 * mm, Width: 1100 * mm, Thickness: 18 * mm, Count: 3}},
	}, cutplan.Options{Iterations: 200})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// The pieces of two sheets weigh 2436 x 1220 x 18 mm x 2 at 700 kg/m3, 74.9 kg: each some
// 18.7 kg, so two fit in 40 kg and two trips do; 15 kg carry none of them.
func TestWhatTheSellerCutsIsTold(t *testing.T) {
	p := carriedShelves(t, map[string]int{"ply": 700}, 40_000)
	var b bytes.Buffer
	if err := Summary(&b, p, Options{}); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"of each crosscut to ", ", 2 cuts ", "  3.00", "123.00", "Some 75 kg to carry home, at 40 kg a trip: 2 trips.", "trim far end"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("%q is missing in\n%s", want, b.String())
		}
	}
	var file struct {
		Cost     float64 `json:"cost"`
		AtSeller []struct {
			Pieces []float64
			Kerf   float64
			Cuts   int
		} `json:"cut_by_seller"`
		Haul    struct{ Grams, Trips int }
		Layouts []struct {
			From  string
			Trims map[string]float64
		}
	}
	if err := json.Unmarshal(JSON(p, Options{}), &file); err != nil {
		t.Fatal(err)
	}
	if d := file.AtSeller[0]; file.Cost != 123 || d.Cuts != 2 || d.Pieces[0]+d.Kerf+d.Pieces[1] != 2440 || file.Haul.Trips != 2 {
		t.Errorf("%+v", file)
	}
	if l := file.Layouts[0]; l.From != "full" || l.Trims["far_end"] != 2 || l.Trims["near_end"] != 0 {
		t.Errorf("%+v", l)
	}
	if said := haul(carriedShelves(t, map[string]int{"ply": 700}, 15_000), stock.Ruler{}); !strings.Contains(said, "One piece of full weighs more than that alone") {
		t.Error(said)
	}
	if said := haul(carriedShelves(t, nil, 40_000), stock.Ruler{}); !strings.Contains(said, "give the density of ply") {
		t.Error(said)
	}
}

// Two sheets at 60.00 are not 123.00 without their cuts.
func TestAChoiceTellsTheCutsThatItPays(t *testing.T) {
	c := choice.Choice{Plan: carriedShelves(t, nil, 0)}
	if got, want := purchases(c), "2 x full; 2 cuts by the seller"; got != want || costOf(c) != "123.00" {
		t.Errorf("%q for %s", got, costOf(c))
	}
}
