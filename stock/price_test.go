package stock

import "testing"

// Reckoned by hand.
func TestPriceOfAPiece(t *testing.T) {
	sheet := Stock{Length: 2440 * Millimeter, Width: 1220 * Millimeter, Thickness: 18 * Millimeter}
	lumber := Stock{Kind: Board, Length: 8 * Foot, Width: 7 * Inch / 2, Thickness: 3 * Inch / 2, Measure: Measure{Thickness: 2 * Inch, Width: 4 * Inch}}
	rough := Stock{Kind: Board, Length: 6 * Foot, Width: 8 * Inch, Thickness: Inch}
	for _, tt := range []struct {
		of    Stock
		price Money
		per   Per
		want  Money
	}{
		{sheet, 74_50, PerPiece, 74_50},
		{sheet, 25_00, PerSquareMeter, 74_42},                // 2.44 x 1.22 = 2.9768 m2, x 25.00 = 74.42
		{sheet, 10_00, PerMeter, 24_40},                      // 2.44 m
		{lumber, 62, PerFoot, 4_96},                          // 8 ft
		{lumber, 1_05, PerBoardFoot, 5_60},                   // 2 x 4 x 8 / 12 = 5 1/3 bd ft, x 1.05 = 5.60
		{rough, 7_25, PerBoardFoot, 29_00},                   // 1 x 8 x 6 / 12 = 4 bd ft
		{rough, 3_33, PerSquareFoot, 13_32},                  // 8/12 x 6 = 4 ft2
		{Stock{Length: 1001 * Millimeter}, 50, PerMeter, 50}, // 50.05 cents
		{Stock{Length: 1010 * Millimeter}, 50, PerMeter, 51}, // 50.5 cents go up
	} {
		if got := tt.of.PriceOf(tt.price, tt.per); got != tt.want {
			t.Errorf("%v per %s of %+v: %v, want %v", tt.price, Pers[tt.per], tt.of, got, tt.want)
		}
	}
	if got := Share(8_10).Of(180_20); got != 14_60 { // 14.5962
		t.Errorf("8.1 %% of 180.20 is %v", got)
	}
}
