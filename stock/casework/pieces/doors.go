package pieces

import (
	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// doorPieces are the doors; their grain stands upright.
//
//	inset    opening - gap all round and between
//	overlay  opening + 2 overlays - gap between
//
// Two doors share the width, rounded down to the unit of Length.
func (r *Maker) doorPieces() {
	s := r.Built.Doors
	for _, b := range r.Built.Bays {
		for _, o := range b.Openings {
			if o.Doors == 0 {
				continue
			}
			name, n := b.Name+" "+o.Name, o.Doors
			wide, high := sums.Of(b.Width, b.Name), sums.Of(o.Height, name+" height")
			from := solid.Point{b.Left + s.Gap, 0, o.Floor + s.Gap}
			if s.Fit == "inset" {
				wide = sums.Plus(wide, stock.Term{Times: -n - 1, Value: s.Gap, Label: "gap"})
				high = sums.Plus(high, stock.Term{Times: -2, Value: s.Gap, Label: "gap"})
			} else {
				over := stock.Term{Times: 2, Value: s.Overlay, Label: "overlay"}
				wide = sums.Plus(wide, over, stock.Term{Times: 1 - n, Value: s.Gap, Label: "gap"})
				high = sums.Plus(high, over)
				from = solid.Point{b.Left - s.Overlay, -s.Thickness, o.Floor - s.Overlay}
			}
			at := []solid.Point{from}
			if n == 2 {
				r.Sizes.Record(name+" width of both doors", wide)
				both := wide.Total()
				wide = stock.Sum{{Times: 1, Value: both, Over: 2, Label: "both doors"}}
				from[solid.X] += both + s.Gap - wide.Total()
				at = append(at, from)
				r.Built.CheckNarrowDoors(o, b.Width, wide.Total())
			}
			r.add(Piece{Role: "door", dryFit: true, places: []string{name}, Panel: s.Panel, Count: n, Length: high, Width: wide,
				way: solid.Facing, Stands: solid.Stands(at...)})
		}
	}
}
