package report

import (
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// 400 x 300 x 100 mm are 12 liters, twice 24; 12 liters are 12 000 000 / 16 387.064 =
// 732.3 cubic inches.
func TestStorageInLitersAndCubicInches(t *testing.T) {
	const mm = stock.Millimeter
	s := casework.Storage{Drawer: "drawer 1", Width: 400 * mm, Depth: 300 * mm, Height: 100 * mm}
	for units, want := range map[stock.Units][2]string{stock.Millimeters: {"12.0", "24.0"}, stock.Inches: {"732.3", "1464.6"}} {
		l := storage([]casework.Storage{s, s}, stock.Ruler{Units: units})
		if each, all := l.rows[0][4], l.rows[2][4]; each != want[0] || all != want[1] {
			t.Errorf("%v: each %s, all %s, want %v", units, each, all, want)
		}
	}
	var b strings.Builder
	if err := storage([]casework.Storage{s}, stock.Ruler{}).text(&b); err != nil || strings.Contains(b.String(), "in all") {
		t.Errorf("one drawer: %v\n%s", err, b.String())
	}
}
