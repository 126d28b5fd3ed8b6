package joints

import (
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/sample"
)

// Facts: a dowel is a third to a half of the stock (common practice, no source).
func TestDowelsSuitTheThickness(t *testing.T) {
	for _, test := range []struct {
		units      stock.Units
		thin, thik string
		want       design.Length
	}{
		{stock.Millimeters, "12", "16", sample.Metric("6")},
		{stock.Millimeters, "17", "21", sample.Metric("8")},
		{stock.Millimeters, "22", "30", sample.Metric("10")},
		{stock.Inches, "1/2", "5/8", sample.Imperial("1/4")},
		{stock.Inches, "11/16", "13/16", sample.Imperial("5/16")},
		{stock.Inches, "7/8", "1 1/8", sample.Imperial("3/8")},
	} {
		for _, thickness := range []stock.Length{sample.Length(test.thin, test.units).Value, sample.Length(test.thik, test.units).Value} {
			r := &design.Reader{From: sample.Workshop(test.units)}
			got, _ := dowelsFor(r, thickness)
			if got != test.want.Value || 3*got < thickness || 2*got > thickness {
				t.Errorf("%s thick: %s", r.Print(thickness), r.Print(got))
			}
		}
	}
}

// The dowels at hand are taken, whatever is usual: of 8 and 12 mm the one next to 5/12 of 24.
func TestDowelsAtHand(t *testing.T) {
	const mm = stock.Millimeter
	r := &design.Reader{From: sample.Workshop(stock.Millimeters)}
	r.From.Tools.Dowels = []design.Dowel{{Diameter: 8 * mm, Length: 40 * mm}, {Diameter: 12 * mm, Length: 60 * mm}, {Diameter: 12 * mm, Length: 50 * mm}}
	if diameter, lengths := dowelsFor(r, 25*mm); diameter != 12*mm || len(lengths) != 2 || lengths[0] != 60*mm {
		t.Errorf("%d, %v", diameter, lengths)
	}
}

// Centers keep from the edges and from each other, whatever the length, and mirror
// each other to the last unit.
func TestDowelCentersShareTheJoint(t *testing.T) {
	r := &design.Reader{From: sample.Workshop(stock.Millimeters)}
	d := sample.Metric("8").Value
	for long := 4 * d; long < sample.Metric("900").Value; long += 7919 {
		at := dowelCenters(r, long, d)
		if edge := min(2*d, long/4); at[0] != edge || at[len(at)-1] != long-edge {
			t.Fatalf("%d long: %v", long, at)
		}
		for i := 1; i < len(at); i++ {
			if space := at[i] - at[i-1]; space > sample.Metric("150").Value+1 || space < 2*d-1 {
				t.Fatalf("%d long: a space of %d", long, space)
			}
			if off := at[i] + at[len(at)-1-i] - long; off < -1 || off > 1 {
				t.Fatalf("%d long: %v is not even", long, at)
			}
		}
	}
}
