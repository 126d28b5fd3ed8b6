package pieces

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// hangingRails are made when all else stands, for they must be in nothing's way:
//
//	behind the back   inside width between the panels
//	before it         bay width
func (r *Maker) hangingRails() {
	b := r.Built.Base
	if !r.Built.Hung() || r.Built.Frame != nil {
		return
	}
	others := r.solids()
	t := r.Built.Carcass.Thickness
	heights := []stock.Length{r.Sizes.Height.Outside - t - b.RailWidth, t}[:min(b.Rails, 2)]
	add := func(length stock.Sum, from, y stock.Length, place string) {
		var at []solid.Point
		for _, z := range heights {
			at = append(at, solid.Point{from, y, z})
		}
		p := Piece{Role: "hanging rail", Panel: b.Panel, Count: len(at), Length: length, Width: sums.Of(b.RailWidth, "rail width"), way: solid.Across, Stands: solid.Stands(at...)}
		if place != "" {
			p.places = []string{place}
		}
		if r.railsFree(p, others) {
			r.add(p)
		}
	}
	if back := r.Built.Back; back.InGrooves() && back.SetIn >= b.Thickness {
		add(sums.Of(r.Sizes.Width.Clear, "inside width"), t, r.Sizes.Depth.Outside-b.Thickness, "")
		return
	}
	for _, bay := range r.Built.Bays {
		add(sums.Of(bay.Panels, bay.Name), bay.Behind, r.Sizes.Depth.Clear-b.Thickness, bay.Name)
	}
}

// railsFree refuses rails in the way of something.
func (r *Maker) railsFree(rails Piece, others []solid.Solid) bool {
	d := r.In.Design.Base
	a := r.In.Root.Under(d.Line, "base")
	for _, s := range rails.solids() {
		if z := s.At[solid.Z]; z < r.Built.Carcass.Thickness || s.End()[solid.Z] > r.Sizes.Height.Outside-r.Built.Carcass.Thickness {
			r.In.Fault(a.Under(d.RailWidth.Line, "rail_width"), fmt.Sprintf("a hanging rail %s wide does not go between top and bottom, %s apart",
				r.In.Print(r.Built.Base.RailWidth), r.In.Print(r.Sizes.Height.Clear)), "make it narrower")
			return false
		}
		for _, other := range others {
			if s.Overlaps(other) {
				r.In.Fault(a.Under(d.Kind.Line, "kind"), "a hanging rail would be in the way of a "+string(other.Role),
					"make the rail narrower, what is in the way shorter behind, or set a grooved back in by the rail's thickness, "+r.In.Print(s.Size[solid.Y]))
				return false
			}
		}
	}
	return true
}
