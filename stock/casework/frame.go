package casework

import (
	"fmt"

	"sawbill/stock"
)

// frame is the front frame of a framed case; the back frame is its like.
type frame struct {
	panel
	stile, rail, midStile stock.Length // face widths
	midRail               stock.Length // likewise; 0 where there are none
	corner                Joint
	tenon                 stock.Length // length of one
	inset                 stock.Length // of the panels, from the outer edges
}

func (r *reckoner) buildFrame() {
	d := r.design.Frame
	a := r.place.under(d.Line, "frame")
	if r.design.Construction.Value != "framed" {
		if d.Material.Set && !r.doubtful(r.place.path+".construction") {
			r.fault(a, "a case of panels has no frame", `set construction = "framed", or leave the table out`)
		}
		return
	}
	f := &frame{
		panel:    r.panel(a, "", d.Material, d.Thickness, nil),
		stile:    r.required(a, "stile_width", d.StileWidth, "the face width of the uprights"),
		rail:     r.required(a, "rail_width", d.RailWidth, "the face width of the level members"),
		midStile: d.StileWidth.Value,
		corner:   FrameCorner.named(or(d.Corner, "butt")),
		inset:    d.Inset.Value,
	}
	if d.MidStileWidth.Set {
		f.midStile = d.MidStileWidth.Value
	}
	r.buildMidRails(f)
	r.made.frame = f
	r.unused(FrameCorner, a, f.corner, "tenon_length", "a tenon has", d.TenonLength)
	r.unused(FrameCorner, a, f.corner, "finger_width", "fingers have", d.FingerWidth)
	if t, is := f.corner.(mortiseAndTenon); is {
		t.readTenon(r.reader, a, f, len(r.bays) > 1)
	}
	r.frameCovers(a.under(d.StileWidth.Line, "stile_width"), "stiles", f.stile)
	r.frameCovers(a.under(d.RailWidth.Line, "rail_width"), "rails", f.rail)
}

// frameCovers checks that the edges of the panels lie behind the frame, and
// not in its opening.
func (r *reckoner) frameCovers(a at, members string, width stock.Length) {
	f, t := r.made.frame, r.made.carcass.thickness
	if t == 0 || width == 0 || r.doubtful(r.place.path+".frame.inset") {
		return // has its own fault
	}
	if need := f.inset + t; width < need {
		r.fault(a, fmt.Sprintf("%s %s wide do not cover a panel %s thick with an inset of %s", members,
			r.print(width), r.print(t), r.print(f.inset)), "make them at least "+r.print(need)+" wide, or the inset smaller")
	}
}

// framePieces lists the members of both frames. Which of them grow beyond the
// clear opening depends on the corner:
//
//	between            stiles run through, rails stand between them
//	tenoned            likewise, with a tenon at each end of a rail
//	through            rails run through too
func (r *reckoner) framePieces() {
	f := r.made.frame
	if f == nil {
		return
	}
	outsideWidth := stock.Sum{{Times: 1, Value: r.width.outside, Label: "outside width"}}
	height := r.aboveBase()
	tenons := stock.Term{Times: 2, Value: f.tenon, Label: "tenon"}

	rail := outsideWidth
	if f.corner.Reach(FrameCorner) != Through {
		rail = plus(rail, stock.Term{Times: -2, Value: f.stile, Label: "stile"}, tenons)
	}
	midStile := plus(height, stock.Term{Times: -2, Value: f.rail, Label: "rail"}, tenons)
	if f.corner.Reach(FrameMiddle) == Through {
		midStile = height
	}
	w, h := r.width.outside, height.Total()
	floor := r.made.base.height
	railFrom, midFrom := (w-rail.Total())/2, floor+(h-midStile.Total())/2
	var stiles, rails, midStiles []Point
	for _, y := range []stock.Length{0, r.behindFrame() - f.thickness} {
		stiles = append(stiles, Point{0, y, floor}, Point{w - f.stile, y, floor})
		rails = append(rails, Point{railFrom, y, floor}, Point{railFrom, y, floor + h - f.rail})
		for _, b := range r.bays[1:] {
			midStiles = append(midStiles, Point{b.left - f.midStile, y, midFrom})
		}
	}
	r.add(piece{role: "stile", panel: f.panel, count: 4, length: height, width: given(f.stile, "stile width"),
		way: facing, stands: stands(stiles...)})
	r.add(piece{role: "rail", panel: f.panel, count: 4, length: rail, width: given(f.rail, "rail width"),
		way: across, stands: stands(rails...)})
	if partitions := len(r.bays) - 1; partitions > 0 {
		r.add(piece{role: "mid stile", panel: f.panel, count: 2 * partitions, length: midStile,
			width: given(f.midStile, "mid stile width"), way: facing, stands: stands(midStiles...)})
	}
	r.midRailPieces()
}

// behindFrame is how far back the back frame reaches.
func (r *reckoner) behindFrame() stock.Length {
	if r.made.back.fit == "applied" {
		return r.depth.outside - r.made.back.thickness
	}
	return r.depth.outside
}
