package pieces

import (
	"sawbill/stock"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/solid"
)

// carcassPieces are the sides, the top and the bottom.
//
//	between the sides   length = body width - 2 sides + 2 joints
//	over or under them  length = body width; the sides lose a thickness at
//	                    that end and gain a joint
func (r *Maker) carcassPieces() {
	b, body := r.Built, r.Sizes.Body()
	t, joint := b.Carcass.Thickness, b.Corner
	side, across := body.Height, body.Width
	between := sums.Plus(across, stock.Term{Times: -2, Value: t, Label: "side"}, joint.Term(2))
	top, bottom := between, between
	if b.TopOver {
		top = across
		side = sums.Plus(side, stock.Term{Times: -1, Value: t, Label: "top"}, joint.Term(1))
	}
	if b.BottomUnder {
		bottom = across
		side = sums.Plus(side, stock.Term{Times: -1, Value: t, Label: "bottom"}, joint.Term(1))
	}
	o := r.Built.Origin()
	right, above := o[solid.X]+across.Total(), o[solid.Z]+body.Height.Total()
	sideFrom, topFrom, bottomFrom := o[solid.Z], o[solid.X]+t-joint.Depth, o[solid.X]+t-joint.Depth
	if b.TopOver {
		topFrom = o[solid.X]
	}
	if b.BottomUnder {
		bottomFrom, sideFrom = o[solid.X], o[solid.Z]+t-joint.Depth
	}
	r.add(Piece{Role: "side", Panel: b.Carcass, Count: 2, Length: side, Width: body.Depth,
		way: solid.Upright, Stands: solid.Stands(solid.Point{o[solid.X], o[solid.Y], sideFrom}, solid.Point{right - t, o[solid.Y], sideFrom})})
	r.add(Piece{Role: "top", Panel: b.Carcass, Count: 1, Length: top, Width: body.Depth,
		way: solid.Level, Stands: solid.Stands(solid.Point{topFrom, o[solid.Y], above - t})})
	r.add(Piece{Role: "bottom", Panel: b.Carcass, Count: 1, Length: bottom, Width: body.Depth,
		way: solid.Level, Stands: solid.Stands(solid.Point{bottomFrom, o[solid.Y], o[solid.Z]})})
}

// backPieces are the back; its grain stands upright. In a framed case with mid
// stiles a back within the frame is one piece for each bay.
//
//	applied            as large as the case above its base
//	rabbet and groove  clear opening + 2 depths - clearance
func (r *Maker) backPieces() {
	b := r.Built.Back
	switch b.Fit {
	case "none":
		return
	case "applied":
		r.add(Piece{Role: "back", dryFit: true, Panel: b.Panel, Count: 1,
			Length: r.Sizes.AboveBase(), Width: sums.Of(r.Sizes.Width.Outside, "outside width"),
			way: solid.Facing, Stands: solid.Stands(solid.Point{solid.Y: r.Sizes.Depth.Outside - b.Thickness, solid.Z: r.Built.Base.Height})})
		return
	}
	held := []stock.Term{b.Term(2), {Times: -1, Value: b.Clearance, Label: "clearance"}}
	fitted := func(clear stock.Sum) (stock.Sum, stock.Length) {
		return r.In.Fitted(sums.Plus(clear, held...), 1, b.Clearance, "clearance")
	}
	height, more := fitted(sums.Of(r.Sizes.Height.Clear, "inside height"))
	from := solid.Point{solid.Y: r.Sizes.Depth.Outside - b.SetIn - b.Thickness, solid.Z: r.Built.Floor() - b.Depth + (b.Clearance+more)/2}
	if r.Built.Frame == nil || len(r.Built.Bays) == 1 {
		width, more := fitted(sums.Of(r.Sizes.Width.Clear, "inside width"))
		from[solid.X] = r.Built.Bays[0].Left - b.Depth + (b.Clearance+more)/2
		r.add(Piece{Role: "back", dryFit: true, Panel: b.Panel, Count: 1, Length: height, Width: width,
			way: solid.Facing, Stands: solid.Stands(from)})
		return
	}
	for _, bay := range r.Built.Bays {
		width, more := fitted(sums.Of(bay.Width, bay.Name))
		from[solid.X] = bay.Left - b.Depth + (b.Clearance+more)/2
		r.add(Piece{Role: "back", dryFit: true, places: []string{bay.Name}, Panel: b.Panel, Count: 1, Length: height, Width: width,
			way: solid.Facing, Stands: solid.Stands(from)})
	}
}
