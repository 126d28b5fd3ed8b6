package pieces

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/internal/wording"
	"sawbill/stock/casework/solid"
)

// insideDepth is the depth of the panels within the box.
func (r *Maker) insideDepth() stock.Sum {
	if r.Built.Frame != nil {
		return r.Sizes.Body().Depth
	}
	return sums.Of(r.Sizes.Depth.Clear, "inside depth")
}

// beforeBack is a depth of panels within the box, which leaves a gap before a back that is let in.
// Otherwise panels are flush with the sides.
func (r *Maker) beforeBack(depth stock.Sum) stock.Sum {
	if r.Built.Frame == nil && r.Built.Back.Housed() {
		depth, _ = r.In.Fitted(depth, 1, 0, "gap behind")
	}
	return depth
}

// insidePieces are the partitions, the dividers and the shelves.
//
//	in dados      clear size + 2 dados
//	loose         clear size - clearance
//	shelf's width inside depth - set back - what inset doors take
func (r *Maker) insidePieces() {
	b := r.Built
	if n := len(r.Built.Bays) - 1; n > 0 {
		height := sums.Of(r.Sizes.Height.Panels, "inside height")
		if b.Frame != nil {
			height = sums.Of(r.Sizes.Height.Panels, "height between panels")
		}
		var at []solid.Point
		o := r.Built.Origin()
		for _, bay := range r.Built.Bays[1:] {
			at = append(at, solid.Point{bay.Behind - b.Partition.Thickness, o[solid.Y], o[solid.Z] + b.Carcass.Thickness - b.Partition.Joint.Depth})
		}
		r.add(Piece{Role: "partition", Panel: b.Partition.Panel, Count: n, Width: r.beforeBack(r.insideDepth()),
			Length: sums.Plus(height, b.Partition.Joint.Term(2)),
			way:    solid.Upright, Stands: solid.Stands(at...)})
	}
	for _, bay := range r.Built.Bays {
		wide := sums.Of(bay.Panels, bay.Name)
		if n := len(bay.Openings) - 1; n > 0 {
			var at []solid.Point
			var on bears
			for _, o := range bay.Openings[:n] {
				on = on.and(bearing(o.Contents.Row()))
				at = append(at, solid.Point{bay.Behind - b.Divider.Joint.Depth, r.Built.Origin()[solid.Y], r.Built.DividerBelow(o)})
			}
			r.add(Piece{Role: "divider", places: []string{bay.Name}, Panel: b.Divider.Panel, Count: n, Width: r.beforeBack(r.insideDepth()),
				Length: sums.Plus(wide, b.Divider.Joint.Term(2)),
				way:    solid.Level, Stands: solid.Stands(at...), Bears: on})
		}
		for _, o := range bay.Openings {
			r.shelfPieces(bay, o, wide)
		}
	}
	r.checkBothFaces()
}

func (r *Maker) shelfPieces(bay construction.Bay, o construction.Opening, wide stock.Sum) {
	s := r.Built.Shelf
	if o.Shelves == 0 {
		return
	}
	if filled := stock.Length(o.Shelves) * s.Thickness; filled >= o.Height {
		r.In.Fault(o.At, fmt.Sprintf("%s %s thick %s an opening %s high", wording.Counted(o.Shelves, "shelf", "shelves"), r.In.Print(s.Thickness), wording.Many(o.Shelves, "fills", "fill"), r.In.Print(o.Height)),
			"take fewer shelves, or give the opening more height")
		return
	}
	length := sums.Plus(wide, s.Joint.Term(2))
	if s.Loose {
		length, _ = r.In.Fitted(sums.Plus(wide, stock.Term{Times: -1, Value: s.Clearance, Label: "clearance"}), 1, s.Clearance, "clearance")
	}
	place, front := bay.Name, r.Built.Doors.ShelfFront(o, r.Built.Origin()[solid.Y])
	if front.Value > 0 {
		place += " behind doors"
	}
	var at []solid.Point
	from := bay.Behind + (bay.Panels-length.Total())/2
	gaps := stock.Length(o.Shelves + 1)
	for n := range gaps - 1 { // evenly, from the top
		height := o.Floor + (o.Height-(gaps-1)*s.Thickness)*(gaps-1-n)/gaps + (gaps-2-n)*s.Thickness
		if o.Contents == nil { // they may need all the height of each space
			height = r.Built.OnStep(height)
		}
		at = append(at, solid.Point{from, r.Built.Origin()[solid.Y] + front.Value + s.SetBack, height})
	}
	width := sums.Plus(r.insideDepth(), front, stock.Term{Times: -1, Value: s.SetBack, Label: "set back"})
	if s.Loose {
		width, _ = r.In.Fitted(width, 1, 0, "gap behind")
	}
	r.add(Piece{Role: "shelf", places: []string{place}, Panel: s.Panel, Count: o.Shelves, Length: length,
		Width: r.beforeBack(width),
		way:   solid.Level, Stands: solid.Stands(at...), Bears: bearing(o.Contents.Row())})
}

// checkBothFaces refuses dados that meet within a partition.
func (r *Maker) checkBothFaces() {
	for i := range len(r.Built.Bays) - 1 {
		left, right := r.dadoDepth(r.Built.Bays[i]), r.dadoDepth(r.Built.Bays[i+1])
		t := r.Built.Partition.Thickness
		if left > 0 && right > 0 && left+right >= t {
			r.In.Fault(r.Built.Bays[i+1].At, fmt.Sprintf("dados %s and %s deep in its two faces go right through a partition %s thick",
				r.In.Print(left), r.In.Print(right), r.In.Print(t)), "make them shallower, or the partition thicker")
		}
	}
}

// dadoDepth is the depth of the deepest dado in the uprights of a bay.
func (r *Maker) dadoDepth(b construction.Bay) stock.Length {
	var deepest stock.Length
	if len(b.Openings) > 1 {
		deepest = r.Built.Divider.Joint.Depth
	}
	for _, o := range b.Openings {
		if o.Shelves > 0 {
			deepest = max(deepest, r.Built.Shelf.Joint.Depth)
		}
	}
	return deepest
}
