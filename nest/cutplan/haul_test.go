package cutplan

import (
	"testing"

	"sawbill/stock"
)

// A sheet of 1 x 1 m, 20 mm thick, at 500 kg/m3 weighs 10 kg: five of them at 25 kg a
// trip are two and two and one, three trips. At 8 kg each is too heavy alone.
func TestTripsByWeight(t *testing.T) {
	sheet := stock.Stock{Name: "ply", Material: "ply", Length: 1000 * mm, Width: 1000 * mm, Thickness: 20 * mm}
	other := stock.Stock{Name: "oak", Material: "oak", Length: 1000 * mm, Width: 100 * mm, Thickness: 20 * mm}
	p := Plan{Buy: []Purchase{{Stock: sheet, Count: 5}, {Stock: other, Count: 1}}}
	p.Job.Densities = map[string]int{"ply": 500}
	for _, tt := range []struct{ limit, trips, tooHeavy int }{{0, 0, 0}, {25, 3, 0}, {50, 1, 0}, {8, 5, 1}} {
		p.Job.Transport.Heaviest = stock.Grams(1000 * tt.limit)
		h := p.Haul()
		if h.Grams != 50_000 || h.Trips != tt.trips || len(h.TooHeavy) != tt.tooHeavy || len(h.Unknown) != 1 {
			t.Errorf("at %d kg: %+v", tt.limit, h)
		}
	}
}
