package casework

import "sawbill/stock"

// body is the outside of the box of panels. In a framed case it lies between
// the frames, and inside their edges by the inset.
type body struct {
	width, height, depth stock.Sum
}

func (r *reckoner) body() body {
	b := body{
		width:  given(r.width.outside, "outside width"),
		height: given(r.height.outside, "outside height"),
		depth:  given(r.depth.outside, "outside depth"),
	}
	if r.made.back.fit == "applied" {
		b.depth = plus(b.depth, stock.Term{Times: -1, Value: r.made.back.thickness, Label: "back"})
	}
	if f := r.made.frame; f != nil {
		inset := stock.Term{Times: -2, Value: f.inset, Label: "inset"}
		b.width = plus(b.width, inset)
		b.height = plus(b.height, inset)
		b.depth = plus(b.depth, stock.Term{Times: -2, Value: f.thickness, Label: "frame"})
	}
	return b
}

// carcassPieces are the sides, the top and the bottom.
//
//	between the sides   length = body width - 2 sides + 2 joints
//	over or under them  length = body width; the sides lose a thickness at
//	                    that end and gain a joint
func (r *reckoner) carcassPieces() {
	b, body := r.made, r.body()
	t, joint := b.carcass.thickness, b.corner
	side, across := body.height, body.width
	between := plus(across, stock.Term{Times: -2, Value: t, Label: "side"}, stock.Term{Times: 2, Value: joint.depth, Label: joint.name})
	top, bottom := between, between
	if b.topOver {
		top = across
		side = plus(side, stock.Term{Times: -1, Value: t, Label: "top"}, stock.Term{Times: 1, Value: joint.depth, Label: joint.name})
	}
	if b.bottomUnder {
		bottom = across
		side = plus(side, stock.Term{Times: -1, Value: t, Label: "bottom"}, stock.Term{Times: 1, Value: joint.depth, Label: joint.name})
	}
	r.add(piece{role: "side", panel: b.carcass, count: 2, length: side, width: body.depth})
	r.add(piece{role: "top", panel: b.carcass, count: 1, length: top, width: body.depth})
	r.add(piece{role: "bottom", panel: b.carcass, count: 1, length: bottom, width: body.depth})
}

// backPieces are the back; its grain stands upright. In a framed case with mid
// stiles a back within the frame is one piece for each bay.
//
//	applied            as large as the case
//	rabbet and groove  clear opening + 2 depths - clearance
func (r *reckoner) backPieces() {
	b := r.made.back
	switch b.fit {
	case "none":
		return
	case "applied":
		r.add(piece{role: "back", panel: b.panel, count: 1,
			length: given(r.height.outside, "outside height"), width: given(r.width.outside, "outside width")})
		return
	}
	held := []stock.Term{{Times: 2, Value: b.depth, Label: b.fit}, {Times: -1, Value: b.clearance, Label: "clearance"}}
	height := plus(given(r.height.clear, "inside height"), held...)
	if r.made.frame == nil || len(r.bays) == 1 {
		r.add(piece{role: "back", panel: b.panel, count: 1, length: height,
			width: plus(given(r.width.clear, "inside width"), held...)})
		return
	}
	for _, bay := range r.bays {
		r.add(piece{role: "back", places: []string{bay.name}, panel: b.panel, count: 1, length: height,
			width: plus(given(bay.width, bay.name), held...)})
	}
}
