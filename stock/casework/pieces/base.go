package pieces

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// basePieces are those of a plinth or the feet, flush with the sides and, but
// for an applied back, with the back of the case.
//
//	plinth front, back   outside width; set back in front
//	plinth cross piece   depth - set back - 2 thicknesses, between the two
//	back foot            depth as given, height of the base
//	front foot           depth + forward, height of the base
//
// The grain of a foot runs the longer way, for short grain would split.
func (r *Maker) basePieces() {
	b := r.Built.Base
	height, right, behind := sums.Of(b.Height, "base height"), r.Sizes.Width.Outside, r.behindFrame()
	deep := sums.Of(r.Sizes.Depth.Outside, "outside depth")
	if back := r.Built.Back; back.Fit == "applied" {
		deep = sums.Plus(deep, stock.Term{Times: -1, Value: back.Thickness, Label: "back"})
	}
	switch b.Kind {
	case "plinth":
		r.add(Piece{Role: "plinth front and back", Panel: b.Panel, Count: 2, Length: sums.Of(right, "outside width"), Width: height,
			way: solid.Across, Stands: solid.Stands(solid.Point{solid.Y: b.SetBack}, solid.Point{solid.Y: behind - b.Thickness})})
		r.add(Piece{Role: "plinth cross piece", Panel: b.Panel, Count: 2, Width: height,
			Length: sums.Plus(deep, stock.Term{Times: -1, Value: b.SetBack, Label: "set back"},
				stock.Term{Times: -2, Value: b.Thickness, Label: "plinth front and back"}),
			way: solid.Endwise, Stands: solid.Stands(solid.Point{solid.Y: b.SetBack + b.Thickness}, solid.Point{right - b.Thickness, b.SetBack + b.Thickness, 0})})
	case "feet":
		if 2*b.Thickness > right {
			d := r.In.Design.Base
			r.In.Fault(r.In.Root.Under(d.Line, "base").Under(d.Thickness.Line, "thickness"), fmt.Sprintf("two feet %s thick do not stand in %s",
				r.In.Print(b.Thickness), r.In.Print(right)), "make them at most "+r.In.Print(right/2)+" thick")
			return
		}
		if 2*b.Depth > deep.Total() {
			d := r.In.Design.Base
			r.In.Fault(r.In.Root.Under(d.Line, "base").Under(d.Depth.Line, "depth"), fmt.Sprintf("two feet %s deep do not stand in %s",
				r.In.Print(b.Depth), r.In.Explained(deep)), "make them at most "+r.In.Print(deep.Total()/2)+" deep")
			return
		}
		if b.Forward > deep.Total() {
			d := r.In.Design.Base
			r.In.Fault(r.In.Root.Under(d.Line, "base").Under(d.Forward.Line, "forward"), fmt.Sprintf("feet that reach %s forward stand farther before the case than it is deep, %s",
				r.In.Print(b.Forward), r.In.Explained(deep)), "make it less; what the check of tipping asks for is enough")
			return
		}
		front := sums.Plus(sums.Of(b.Depth, "depth"), stock.Term{Times: 1, Value: b.Forward, Label: "forward"})
		ahead, rear := solid.Point{solid.Y: -b.Forward}, solid.Point{solid.Y: behind - b.Depth}
		fronts := solid.Stands(ahead, solid.Point{right - b.Thickness, ahead[solid.Y], 0})
		backs := solid.Stands(rear, solid.Point{right - b.Thickness, rear[solid.Y], 0})
		if b.Forward == 0 {
			r.foot("foot", front, height, append(fronts, backs...))
			return
		}
		r.foot("front foot", front, height, fronts)
		r.foot("back foot", sums.Of(b.Depth, "depth"), height, backs)
	}
}

func (r *Maker) foot(role solid.Role, deep, height stock.Sum, at []solid.Solid) {
	p := Piece{Role: role, Panel: r.Built.Base.Panel, Count: len(at), Length: height, Width: deep, way: solid.Upright, Stands: at}
	if deep.Total() > height.Total() {
		p.Length, p.Width, p.way = deep, height, solid.Endwise
	}
	r.add(p)
}
