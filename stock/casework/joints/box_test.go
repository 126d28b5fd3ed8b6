package joints

import (
	"math/rand/v2"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/sample"

	"github.com/google/go-cmp/cmp"
)

// 90 of sides 12 thick: 7.5, so eight fingers or more; nine, to be odd, of 10
// each. Of 12 given, seven; the last is 90 - 6 x 12 = 18. Facts: from half to all of
// the thickness, an odd number (common practice, no source).
func TestFingers(t *testing.T) {
	want := func(got []stock.Length, text ...string) {
		t.Helper()
		var said []string
		for _, l := range got {
			said = append(said, stock.Ruler{}.Print(l))
		}
		if diff := cmp.Diff(text, said); diff != "" {
			t.Errorf("(-want +got):\n%s", diff)
		}
	}
	want(suggestedFingers(sample.Metric("90").Value, sample.Metric("12").Value, nil), "0", "10", "20", "30", "40", "50", "60", "70", "80", "90")
	want(givenFingers(sample.Metric("90").Value, sample.Metric("12").Value), "0", "12", "24", "36", "48", "60", "72", "90")
	// 100 / 9 = 11.111...: the fourth edge is at 44.4 and the eighth at 88.9, not
	// at 8 x 11.1 = 88.8.
	want(suggestedFingers(sample.Metric("100").Value, sample.Metric("12").Value, nil),
		"0", "≈11.1", "≈22.2", "≈33.3", "≈44.45", "≈55.55", "≈66.65", "≈77.75", "≈88.9", "100")
}

// Any width: an odd number of fingers, from half to all of the thickness from
// five on; every edge within one unit of its exact place, the last exact.
func TestSuggestedFingersShareTheWidth(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 3))
	for range 2000 {
		width, thickness := 1+stock.Length(rnd.IntN(400*int(stock.Millimeter))), stock.Millimeter+stock.Length(rnd.IntN(40*int(stock.Millimeter)))
		edges := suggestedFingers(width, thickness, nil)
		n := stock.Length(len(edges) - 1)
		if n%2 == 0 || n < 3 || edges[n] != width || width > n*thickness || n > 3 && 2*width <= n*thickness {
			t.Fatalf("%d of %d: %d fingers %v", width, thickness, n, edges)
		}
		for i, at := range edges {
			if off := stock.Length(i)*width - at*n; off < 0 || off >= n {
				t.Fatalf("%d of %d: edge %d at %d", width, thickness, i, at)
			}
		}
	}
}

// Boxes 123 high of 12 mm: bits of 6, 8, 10 and 12 leave 3 each; with 8 there are 15 fingers, and with 6
// 20; of 10 there are 12, of 12 there are 10. On 100 no number is odd, and 10 leaves nothing. A frame of 38 has three of 12, the last 14.
func TestFingersAreAsWideAsABit(t *testing.T) {
	mm := stock.Millimeter
	bits := []stock.Length{3 * mm, 4 * mm, 5 * mm, 6 * mm, 8 * mm, 10 * mm, 12 * mm, 16 * mm}
	for _, test := range []struct{ width, thickness, finger, last stock.Length }{
		{123, 12, 8, 11}, {100, 12, 10, 10}, {90, 12, 10, 10}, {38, 38, 12, 14},
	} {
		edges := suggestedFingers(test.width*mm, test.thickness*mm, bits)
		if got, last := edges[1], edges[len(edges)-1]-edges[len(edges)-2]; got != test.finger*mm || last != test.last*mm {
			t.Errorf("%d of %d: fingers %d, the last %d", test.width, test.thickness, got/mm, last/mm)
		}
	}
}
