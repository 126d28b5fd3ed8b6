package pieces

import (
	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// framePieces lists the members of both frames. Which of them grow beyond the
// clear opening depends on the corner:
//
//	between            stiles run through, rails stand between them
//	tenoned            likewise, with a tenon at each end of a rail
//	through            rails run through too
func (r *Maker) framePieces() {
	f := r.Built.Frame
	if f == nil {
		return
	}
	outsideWidth := stock.Sum{{Times: 1, Value: r.Sizes.Width.Outside, Label: "outside width"}}
	height := r.Sizes.AboveBase()
	tenons := stock.Term{Times: 2, Value: f.Tenon, Label: "tenon"}

	rail := outsideWidth
	if joints.FitOf(f.Corner, joints.FrameCorner).Reach != joints.Through {
		rail = sums.Plus(rail, stock.Term{Times: -2, Value: f.Stile, Label: "stile"}, tenons)
	}
	midStile := sums.Plus(height, stock.Term{Times: -2, Value: f.Rail, Label: "rail"}, tenons)
	if joints.FitOf(f.Corner, joints.FrameMiddle).Reach == joints.Through {
		midStile = height
	}
	w, h := r.Sizes.Width.Outside, height.Total()
	floor := r.Built.Base.Height
	railFrom, midFrom := (w-rail.Total())/2, floor+(h-midStile.Total())/2
	var stiles, rails, midStiles []solid.Point
	for _, y := range []stock.Length{0, r.behindFrame() - f.Thickness} {
		stiles = append(stiles, solid.Point{0, y, floor}, solid.Point{w - f.Stile, y, floor})
		rails = append(rails, solid.Point{railFrom, y, floor}, solid.Point{railFrom, y, floor + h - f.Rail})
		for _, b := range r.Built.Bays[1:] {
			midStiles = append(midStiles, solid.Point{b.Left - f.MidStile, y, midFrom})
		}
	}
	r.add(Piece{Role: "stile", Panel: f.Panel, Count: 4, Length: height, Width: sums.Of(f.Stile, "stile width"),
		way: solid.Facing, Stands: solid.Stands(stiles...)})
	r.add(Piece{Role: "rail", Panel: f.Panel, Count: 4, Length: rail, Width: sums.Of(f.Rail, "rail width"),
		way: solid.Across, Stands: solid.Stands(rails...)})
	if partitions := len(r.Built.Bays) - 1; partitions > 0 {
		r.add(Piece{Role: "mid stile", Panel: f.Panel, Count: 2 * partitions, Length: midStile,
			Width: sums.Of(f.MidStile, "mid stile width"), way: solid.Facing, Stands: solid.Stands(midStiles...)})
	}
	r.midRailPieces()
}

// midRailPieces stand between the stiles of their bay:
//
//	between  bay width
//	tenoned  bay width + 2 tenons
//	through  bay width + stile at the sides, half of a mid stile
func (r *Maker) midRailPieces() {
	f := r.Built.Frame
	if f.MidRail == 0 {
		return
	}
	for i, b := range r.Built.Bays {
		ends := [2]stock.Term{{Times: 1, Value: f.Tenon, Label: "tenon"}, {Times: 1, Value: f.Tenon, Label: "tenon"}}
		if joints.FitOf(f.Corner, joints.FrameMiddle).Reach == joints.Through {
			half := stock.Term{Times: 1, Value: f.MidStile, Over: 2, Label: "mid stile"}
			ends = [2]stock.Term{half, half}
			if i == 0 {
				ends[0] = stock.Term{Times: 1, Value: f.Stile, Label: "stile"}
			}
			if i == len(r.Built.Bays)-1 {
				ends[1] = stock.Term{Times: 1, Value: f.Stile, Label: "stile"}
			}
		}
		var at []solid.Point
		for _, o := range b.Openings[:len(b.Openings)-1] {
			at = append(at, solid.Point{b.Left - stock.Sum(ends[:1]).Total(), 0, o.Floor - f.MidRail})
		}
		if at != nil {
			r.add(Piece{Role: "mid rail", places: []string{b.Name}, Panel: f.Panel, Count: len(at), Width: sums.Of(f.MidRail, "mid rail width"),
				Length: sums.Plus(sums.Of(b.Width, b.Name), sums.Row(ends[:]...)...), way: solid.Across, Stands: solid.Stands(at...)})
		}
	}
}

// behindFrame is how far back the back frame reaches.
func (r *Maker) behindFrame() stock.Length {
	if r.Built.Back.Fit == "applied" {
		return r.Sizes.Depth.Outside - r.Built.Back.Thickness
	}
	return r.Sizes.Depth.Outside
}
