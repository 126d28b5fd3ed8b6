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
// Two doors share the width. What rounding leaves goes to the gaps.
func (r *Maker) doorPieces() {
	s := r.Built.Doors
	for _, b := range r.Built.Bays {
		for _, o := range b.Openings {
			if o.Doors == 0 {
				continue
			}
			name, n := b.Name+" "+o.Name, o.Doors
			wide, high, gaps := sums.Of(b.Width, b.Name), sums.Of(o.Shared, name+" height"), n-1
			from := solid.Point{b.Left, 0, o.Floor}
			if s.Fit == "inset" {
				gaps = n + 1
				wide = sums.Plus(wide, stock.Term{Times: -gaps, Value: s.Gap, Label: "gap"})
				high, _ = r.In.Fitted(sums.Plus(high, stock.Term{Times: -2, Value: s.Gap, Label: "gap"}), 2, s.Gap+(o.Height-o.Shared)/2, "gap")
				from[solid.Z] += (o.Height - high.Total()) / 2
			} else {
				over := stock.Term{Times: 2, Value: s.Overlay, Label: "overlay"}
				wide = sums.Plus(wide, over, stock.Term{Times: 1 - n, Value: s.Gap, Label: "gap"})
				high = sums.Plus(high, over)
				from = solid.Point{b.Left - s.Overlay, -s.Thickness, o.Floor - s.Overlay}
			}
			all := wide.Total()
			if n == 2 {
				r.Sizes.Record(name+" width of both doors", wide)
				wide = stock.Sum{{Times: 1, Value: all, Over: 2, Label: "both doors"}}
			}
			gap := s.Gap
			if gaps > 0 {
				gap += (all - stock.Length(n)*r.In.Down(wide.Total())) / stock.Length(gaps)
				wide, _ = r.In.Fitted(wide, 1, gap-(wide.Total()-r.In.Down(wide.Total())), "gap")
			}
			if s.Fit == "inset" {
				from[solid.X] += gap
			}
			at := []solid.Point{from}
			if n == 2 {
				from[solid.X] += wide.Total() + gap
				at = append(at, from)
				r.Built.CheckNarrowDoors(o, b.Width, wide.Total())
			}
			r.add(Piece{Role: "door", dryFit: true, places: []string{name}, Panel: s.Panel, Count: n, Length: high, Width: wide,
				way: solid.Facing, Stands: solid.Stands(at...)})
		}
	}
}
