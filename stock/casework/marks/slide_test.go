package marks

import (
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/sample"
)

// Inside 400 less 3 are 397: the longest slide by 50 from 250 on is 350. Inside
// 18 in less 1/8 in: by 2 from 10 on, 16. Deeper than 700 mm there is nothing longer.
func TestUsualSlide(t *testing.T) {
	for _, test := range []struct {
		units      stock.Units
		room, want design.Length
	}{
		{stock.Millimeters, sample.Metric("397"), sample.Metric("350")},
		{stock.Millimeters, sample.Metric("400"), sample.Metric("400")},
		{stock.Millimeters, sample.Metric("249.9"), design.Length{}},
		{stock.Millimeters, sample.Metric("900"), sample.Metric("700")},
		{stock.Inches, sample.Imperial("17 7/8"), sample.Imperial("16")},
		{stock.Inches, sample.Imperial("40"), sample.Imperial("28")},
	} {
		m := layout{Marker: &joints.Marker{In: &design.Reader{From: sample.Workshop(test.units)}}}
		if got := m.usualSlide(test.room.Value); got != test.want.Value {
			t.Errorf("in a room of %d: %d, want %d", test.room.Value, got, test.want.Value)
		}
	}
}
