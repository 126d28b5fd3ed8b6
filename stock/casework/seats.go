package casework

// seats are where a case has joints, in the order in which they are marked.
func (r *reckoner) seats() []seat {
	b, d := r.made, r.design
	all := r.corners()
	if b.partition.joint.Joint != nil {
		all = append(all, seat{site: DividerEnd, joint: b.partition.joint, enters: []Role{"partition"}, into: []Role{"top", "bottom"}, axis: X,
			key: r.place.under(d.Partition.Line, "partition").under(d.Partition.Joint.Line, "joint")})
	}
	if b.divider.joint.Joint != nil {
		all = append(all, seat{site: DividerEnd, joint: b.divider.joint, enters: []Role{"divider"}, into: []Role{"side", "partition"}, axis: Z,
			key: r.place.under(d.Divider.Line, "divider").under(d.Divider.Joint.Line, "joint")})
	}
	if b.shelf.joint.Joint != nil && !b.shelf.loose {
		all = append(all, seat{site: ShelfEnd, joint: b.shelf.joint, enters: []Role{"shelf"}, into: []Role{"side", "partition"}, axis: Z})
	}
	if b.back.housed() {
		all = append(all, seat{site: BackEdge, joint: b.back, enters: []Role{"back"}, into: []Role{"side", "top", "bottom", "stile", "mid stile", "rail"},
			axis: Y, fromBack: true, clearance: b.back.clearance})
	}
	if b.frame != nil {
		frame := seat{site: FrameCorner, joint: b.frame.corner, enters: []Role{"rail"}, into: []Role{"stile"}, axis: Z,
			key: r.place.under(d.Frame.Line, "frame").under(d.Frame.Corner.Line, "corner")}
		stile, rail := frame, frame
		stile.site, stile.enters, stile.into, stile.axis = FrameMiddle, []Role{"mid stile"}, []Role{"rail"}, X
		rail.site, rail.enters, rail.into = FrameMiddle, []Role{"mid rail"}, []Role{"stile", "mid stile"}
		all = append(all, frame, stile, rail)
	}
	if b.base.rails > 0 {
		all = append(all, seat{site: DividerEnd, joint: butt{}, enters: []Role{"hanging rail"}, into: []Role{"side", "partition"}, axis: Z})
	}
	if b.drawers.corner.Joint != nil {
		all = append(all, seat{site: DrawerCorner, joint: b.drawers.corner, enters: []Role{"drawer front and back"}, into: []Role{"drawer side"}, axis: Y},
			seat{site: DrawerBottom, joint: b.drawers.groove, enters: []Role{"drawer bottom"}, into: []Role{"drawer side", "drawer front and back"}, axis: Z,
				clearance: b.drawers.bottomClearance})
	}
	return all
}

// corners are those of the box: a panel between the others enters them.
func (r *reckoner) corners() []seat {
	b, d := r.made, r.design
	var between, outside []Role
	for _, end := range []struct {
		role    Role
		outside bool
	}{{"top", b.topOver}, {"bottom", b.bottomUnder}} {
		if end.outside {
			outside = append(outside, end.role)
		} else {
			between = append(between, end.role)
		}
	}
	level := seat{site: CarcassCorner, joint: b.corner, enters: between, into: []Role{"side"}, axis: Z,
		key: r.place.under(d.Carcass.Line, "carcass").under(d.Carcass.Joint.Line, "joint")}
	upright := level
	upright.enters, upright.into, upright.axis = []Role{"side"}, outside, X
	return []seat{level, upright}
}
