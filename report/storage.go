package report

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework"
)

// storage lists what the drawers hold, each and in all: liters in a job of
// millimeters, else cubic inches, rounded to a tenth.
func storage(drawers []casework.Storage, r stock.Ruler) listing {
	unit, each := "liters", 1e6 // mm³
	if r.Units == stock.Inches {
		unit, each = "cubic inches", 25.4*25.4*25.4
	}
	l := listing{columns: []heading{
		{"drawer", words}, {"width", figures}, {"depth", figures}, {"height", figures}, {unit, figures},
	}}
	all := 0.0
	volume := func(cubic float64) string { return fmt.Sprintf("%.1f", cubic/each) }
	for _, s := range drawers {
		all += s.CubicMillimeters()
		l.add(s.Drawer, r.Print(s.Width), r.Print(s.Depth), r.Print(s.Height), volume(s.CubicMillimeters()))
	}
	if len(drawers) > 1 {
		l.add("in all", "", "", "", volume(all))
	}
	return l
}
