package casework

import (
	"fmt"

	"sawbill/stock"
)

// insideDepth is that of the panels within the box.
func (r *reckoner) insideDepth() stock.Sum {
	if r.made.frame != nil {
		return r.body().depth
	}
	return given(r.depth.clear, "inside depth")
}

// insidePieces are the partitions, the dividers and the shelves.
//
//	in dados      clear size + 2 dados
//	loose         clear size - clearance
//	shelf's width inside depth - set back - what inset doors take
func (r *reckoner) insidePieces() {
	b := r.made
	if n := len(r.bays) - 1; n > 0 {
		height := given(r.height.panels, "inside height")
		if b.frame != nil {
			height = given(r.height.panels, "height between panels")
		}
		var at []Point
		o := r.origin()
		for _, bay := range r.bays[1:] {
			at = append(at, Point{bay.behind - b.partition.thickness, o[Y], o[Z] + b.carcass.thickness - b.partition.joint.depth})
		}
		r.add(piece{role: "partition", panel: b.partition.panel, count: n, width: r.insideDepth(),
			length: plus(height, b.partition.joint.term(2)),
			way:    upright, stands: stands(at...)})
	}
	for _, bay := range r.bays {
		wide := given(bay.panels, bay.name)
		if n := len(bay.openings) - 1; n > 0 {
			var at []Point
			var on bears
			for _, o := range bay.openings[:n] {
				on = on.and(bearing(o.contents.row()))
				at = append(at, Point{bay.behind - b.divider.joint.depth, r.origin()[Y], r.dividerBelow(o)})
			}
			r.add(piece{role: "divider", places: []string{bay.name}, panel: b.divider.panel, count: n, width: r.insideDepth(),
				length: plus(wide, b.divider.joint.term(2)),
				way:    level, stands: stands(at...), bears: on})
		}
		for _, o := range bay.openings {
			r.shelfPieces(bay, o, wide)
		}
	}
	r.checkBothFaces()
}

func (r *reckoner) shelfPieces(bay bay, o opening, wide stock.Sum) {
	s := r.made.shelf
	if o.shelves == 0 {
		return
	}
	if filled := stock.Length(o.shelves) * s.thickness; filled >= o.height {
		r.fault(o.at, fmt.Sprintf("%s %s thick %s an opening %s high", counted(o.shelves, "shelf", "shelves"), r.print(s.thickness), many(o.shelves, "fills", "fill"), r.print(o.height)),
			"take fewer shelves, or give the opening more height")
		return
	}
	length := plus(wide, s.joint.term(2))
	if s.loose {
		length = plus(wide, stock.Term{Times: -1, Value: s.clearance, Label: "clearance"})
	}
	place, front := bay.name, r.made.doors.shelfFront(o, r.origin()[Y])
	if front.Value > 0 {
		place += " behind doors"
	}
	var at []Point
	from := bay.behind + (bay.panels-length.Total())/2
	gaps := stock.Length(o.shelves + 1)
	for n := range gaps - 1 { // evenly, from the top
		at = append(at, Point{from, r.origin()[Y] + front.Value + s.setBack,
			o.floor + (o.height-(gaps-1)*s.thickness)*(gaps-1-n)/gaps + (gaps-2-n)*s.thickness})
	}
	r.add(piece{role: "shelf", places: []string{place}, panel: s.panel, count: o.shelves, length: length,
		width: plus(r.insideDepth(), front, stock.Term{Times: -1, Value: s.setBack, Label: "set back"}),
		way:   level, stands: stands(at...), bears: bearing(o.contents.row())})
}

// checkBothFaces refuses dados that meet within a partition.
func (r *reckoner) checkBothFaces() {
	for i := range len(r.bays) - 1 {
		left, right := r.dadoDepth(r.bays[i]), r.dadoDepth(r.bays[i+1])
		t := r.made.partition.thickness
		if left > 0 && right > 0 && left+right >= t {
			r.fault(r.bays[i+1].at, fmt.Sprintf("dados %s and %s deep in its two faces go right through a partition %s thick",
				r.print(left), r.print(right), r.print(t)), "make them shallower, or the partition thicker")
		}
	}
}

// dadoDepth is that of the deepest dado in the uprights of a bay.
func (r *reckoner) dadoDepth(b bay) stock.Length {
	var deepest stock.Length
	if len(b.openings) > 1 {
		deepest = r.made.divider.joint.depth
	}
	for _, o := range b.openings {
		if o.shelves > 0 {
			deepest = max(deepest, r.made.shelf.joint.depth)
		}
	}
	return deepest
}
