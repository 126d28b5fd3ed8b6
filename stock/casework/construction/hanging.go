package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
)

// A hung case stands on nothing: screws through its hanging rails hold it to the wall.
// The rails lie below the top and above the bottom. Behind a back that is set in far enough they
// are hidden, and run from side to side; else they lie before it, in each bay. A
// framed case needs none: the rails of its back frame serve.
//
//	  wall                       wall
//	 _______________            _______________
//	|_|_____top_____|          |______top______|
//	| | |                      | |
//	|r| |back                  | |r|
//	|_| |                      | |_|
//	| | |                      |back
//
//	behind a back set in       before it

// buildHanging reads how a hung case hangs.
func (r *Construction) buildHanging(a design.Place, b *base) {
	d := r.In.Design.Base
	b.Rails, b.RailWidth = 2, r.In.OrDefault(d.RailWidth, 80*stock.Millimeter, 3*stock.Inch) // common practice, no source
	if d.Rails.Set {
		b.Rails = d.Rails.Value
	}
	if b.Rails > 2 {
		r.In.Fault(a.Under(d.Rails.Line, "rails"), fmt.Sprintf("%d hanging rails are more than one below the top and one above the bottom", b.Rails), "give 1 or 2")
	}
	if r.Frame == nil {
		b.Panel = r.In.Panel(a, "", d.Material, d.Thickness, &r.Carcass)
	}
}

// Hung reports whether the case hangs on a wall.
func (r *Construction) Hung() bool { return r.Base.Kind == "hung" }
