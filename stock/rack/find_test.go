package rack_test

import (
	"testing"

	"sawbill/stock"
	"sawbill/stock/rack"
)

// What fits, how it lies and what is left, by hand: 3 mm to a cut.
func TestFindTakesTheBestFittingFirst(t *testing.T) {
	const mm = stock.Millimeter
	sheet := func(id string, length, width, thickness stock.Length, grain stock.Grain) stock.Piece {
		return stock.Piece{ID: id, Material: "ply", Length: length * mm, Width: width * mm, Thickness: thickness * mm, Grain: grain}
	}
	board := func(id string, length, width, thickness stock.Length) stock.Piece {
		p := sheet(id, length, width, thickness, stock.GrainLength)
		p.Kind, p.Material = stock.Board, "oak"
		return p
	}
	pieces := []stock.Piece{
		sheet("large", 1000, 600, 18, stock.GrainLength),
		sheet("just", 500, 300, 18, stock.GrainLength),
		sheet("turned", 320, 520, 18, stock.GrainLength),
		sheet("across", 320, 520, 18, stock.GrainWidth),
		sheet("thin", 1000, 600, 12, stock.GrainLength),
		board("plank", 900, 110, 30),
		board("thick", 900, 110, 50),
		board("slight", 900, 110, 20),
	}
	part := func(material string, length, width, thickness stock.Length, grain stock.Grain) stock.Part {
		return stock.Part{Material: material, Length: length * mm, Width: width * mm, Thickness: thickness * mm, Grain: grain}
	}
	type want struct {
		id     string
		turned bool
		left   []rack.Left
	}
	left := func(of ...stock.Length) []rack.Left {
		var all []rack.Left
		for i := 0; i < len(of); i += 2 {
			all = append(all, rack.Left{Length: of[i] * mm, Width: of[i+1] * mm})
		}
		return all
	}
	tests := []struct {
		name string
		part stock.Part
		want []want
	}{
		{"along the grain", part("ply", 500, 300, 18, stock.GrainLength), []want{
			{"just", false, nil}, {"across", true, left(17, 520, 300, 17)}, {"large", false, left(497, 600, 500, 297)}}},
		{"either way", part("ply", 500, 300, 18, stock.GrainAny), []want{
			{"just", false, nil}, {"turned", true, left(17, 520, 300, 17)}, {"across", true, left(17, 520, 300, 17)}, {"large", true, left(697, 600, 300, 97)}}},
		{"a board may be thicker", part("oak", 890, 100, 28, stock.GrainLength), []want{
			{"plank", false, left(900, 7, 7, 100)}, {"thick", false, left(900, 7, 7, 100)}}},
		{"any thickness", part("ply", 900, 500, 0, stock.GrainLength), []want{
			{"thin", false, left(1000, 97, 97, 500)}, {"large", false, left(1000, 97, 97, 500)}}},
		{"a kerf is not there", part("ply", 998, 598, 12, stock.GrainLength), []want{{"thin", false, nil}}},
		{"a board is not turned", part("oak", 100, 890, 28, stock.GrainLength), nil},
		{"but for grain across", part("oak", 100, 890, 28, stock.GrainWidth), []want{
			{"plank", true, left(900, 7, 7, 100)}, {"thick", true, left(900, 7, 7, 100)}}},
		{"too large", part("ply", 1001, 10, 18, stock.GrainLength), nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			fits := rack.Find(pieces, test.part, 3*mm)
			if len(fits) != len(test.want) {
				t.Fatalf("%d fit, want %d: %+v", len(fits), len(test.want), fits)
			}
			for i, w := range test.want {
				f := fits[i]
				same := f.Piece.ID == w.id && f.Turned == w.turned && len(f.Left) == len(w.left)
				for n := range w.left {
					same = same && f.Left[n] == w.left[n]
				}
				if !same {
					t.Errorf("%d: %s, turned %v, left %v; want %+v", i, f.Piece.ID, f.Turned, f.Left, w)
				}
			}
		})
	}
}
