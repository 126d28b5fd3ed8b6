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
		height: r.aboveBase(),
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

// origin is the body's left lower corner in front.
func (r *reckoner) origin() Point {
	if f := r.made.frame; f != nil {
		return Point{f.inset, f.thickness, r.made.base.height + f.inset}
	}
	return Point{Z: r.made.base.height}
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
	between := plus(across, stock.Term{Times: -2, Value: t, Label: "side"}, joint.term(2))
	top, bottom := between, between
	if b.topOver {
		top = across
		side = plus(side, stock.Term{Times: -1, Value: t, Label: "top"}, joint.term(1))
	}
	if b.bottomUnder {
		bottom = across
		side = plus(side, stock.Term{Times: -1, Value: t, Label: "bottom"}, joint.term(1))
	}
	o := r.origin()
	right, above := o[X]+across.Total(), o[Z]+body.height.Total()
	sideFrom, topFrom, bottomFrom := o[Z], o[X]+t-joint.depth, o[X]+t-joint.depth
	if b.topOver {
		topFrom = o[X]
	}
	if b.bottomUnder {
		bottomFrom, sideFrom = o[X], o[Z]+t-joint.depth
	}
	r.add(piece{role: "side", panel: b.carcass, count: 2, length: side, width: body.depth,
		way: upright, stands: stands(Point{o[X], o[Y], sideFrom}, Point{right - t, o[Y], sideFrom})})
	r.add(piece{role: "top", panel: b.carcass, count: 1, length: top, width: body.depth,
		way: level, stands: stands(Point{topFrom, o[Y], above - t})})
	r.add(piece{role: "bottom", panel: b.carcass, count: 1, length: bottom, width: body.depth,
		way: level, stands: stands(Point{bottomFrom, o[Y], o[Z]})})
}

// backPieces are the back; its grain stands upright. In a framed case with mid
// stiles a back within the frame is one piece for each bay.
//
//	applied            as large as the case above its base
//	rabbet and groove  clear opening + 2 depths - clearance
func (r *reckoner) backPieces() {
	b := r.made.back
	switch b.fit {
	case "none":
		return
	case "applied":
		r.add(piece{role: "back", dryFit: true, panel: b.panel, count: 1,
			length: r.aboveBase(), width: given(r.width.outside, "outside width"),
			way: facing, stands: stands(Point{Y: r.depth.outside - b.thickness, Z: r.made.base.height})})
		return
	}
	from := Point{Y: r.depth.outside - b.setIn - b.thickness, Z: r.floor() - b.depth + b.clearance/2}
	held := []stock.Term{b.term(2), {Times: -1, Value: b.clearance, Label: "clearance"}}
	height := plus(given(r.height.clear, "inside height"), held...)
	if r.made.frame == nil || len(r.bays) == 1 {
		from[X] = r.bays[0].left - b.depth + b.clearance/2
		r.add(piece{role: "back", dryFit: true, panel: b.panel, count: 1, length: height,
			width: plus(given(r.width.clear, "inside width"), held...), way: facing, stands: stands(from)})
		return
	}
	for _, bay := range r.bays {
		from[X] = bay.left - b.depth + b.clearance/2
		r.add(piece{role: "back", dryFit: true, places: []string{bay.name}, panel: b.panel, count: 1, length: height,
			width: plus(given(bay.width, bay.name), held...), way: facing, stands: stands(from)})
	}
}
