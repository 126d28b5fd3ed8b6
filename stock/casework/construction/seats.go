package construction

import (
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// Seats are where a case has joints, in the order in which they are marked.
func (r *Construction) Seats() []joints.Seat {
	b, d := r, r.In.Design
	all := r.corners()
	if b.Partition.Joint.Joint != nil {
		all = append(all, joints.Seat{Site: joints.DividerEnd, Joint: b.Partition.Joint, Enters: []solid.Role{"partition"}, Into: []solid.Role{"top", "bottom"}, Axis: solid.X,
			Key: r.In.Root.Under(d.Partition.Line, "partition").Under(d.Partition.Joint.Line, "joint")})
	}
	if b.Divider.Joint.Joint != nil {
		all = append(all, joints.Seat{Site: joints.DividerEnd, Joint: b.Divider.Joint, Enters: []solid.Role{"divider"}, Into: []solid.Role{"side", "partition"}, Axis: solid.Z,
			Key: r.In.Root.Under(d.Divider.Line, "divider").Under(d.Divider.Joint.Line, "joint")})
	}
	if b.Shelf.Joint.Joint != nil && !b.Shelf.Loose {
		all = append(all, joints.Seat{Site: joints.ShelfEnd, Joint: b.Shelf.Joint, Enters: []solid.Role{"shelf"}, Into: []solid.Role{"side", "partition"}, Axis: solid.Z})
	}
	if b.Back.Housed() {
		all = append(all, joints.Seat{Site: joints.BackEdge, Joint: b.Back, Enters: []solid.Role{"back"}, Into: []solid.Role{"side", "top", "bottom", "stile", "mid stile", "rail"},
			Axis: solid.Y, FromBack: true, Clearance: b.Back.Clearance})
	}
	if b.Frame != nil {
		frame := joints.Seat{Site: joints.FrameCorner, Joint: b.Frame.Corner, Enters: []solid.Role{"rail"}, Into: []solid.Role{"stile"}, Axis: solid.Z,
			Key: r.In.Root.Under(d.Frame.Line, "frame").Under(d.Frame.Corner.Line, "corner")}
		stile, rail := frame, frame
		stile.Site, stile.Enters, stile.Into, stile.Axis = joints.FrameMiddle, []solid.Role{"mid stile"}, []solid.Role{"rail"}, solid.X
		rail.Site, rail.Enters, rail.Into = joints.FrameMiddle, []solid.Role{"mid rail"}, []solid.Role{"stile", "mid stile"}
		all = append(all, frame, stile, rail)
	}
	if b.Base.Rails > 0 {
		all = append(all, joints.Seat{Site: joints.DividerEnd, Joint: joints.Butted, Enters: []solid.Role{"hanging rail"}, Into: []solid.Role{"side", "partition"}, Axis: solid.Z})
	}
	if b.Drawers.Corner.Joint != nil {
		all = append(all, joints.Seat{Site: joints.DrawerCorner, Joint: b.Drawers.Corner, Enters: []solid.Role{"drawer front and back"}, Into: []solid.Role{"drawer side"}, Axis: solid.Y},
			joints.Seat{Site: joints.DrawerBottom, Joint: b.Drawers.Groove, Enters: []solid.Role{"drawer bottom"}, Into: []solid.Role{"drawer side", "drawer front and back"}, Axis: solid.Z,
				Clearance: b.Drawers.BottomClearance})
	}
	return all
}

// corners lists the corners of the box: a panel between the others enters them.
func (r *Construction) corners() []joints.Seat {
	b, d := r, r.In.Design
	var between, outside []solid.Role
	for _, end := range []struct {
		role    solid.Role
		outside bool
	}{{"top", b.TopOver}, {"bottom", b.BottomUnder}} {
		if end.outside {
			outside = append(outside, end.role)
		} else {
			between = append(between, end.role)
		}
	}
	level := joints.Seat{Site: joints.CarcassCorner, Joint: b.Corner, Enters: between, Into: []solid.Role{"side"}, Axis: solid.Z,
		Key: r.In.Root.Under(d.Carcass.Line, "carcass").Under(d.Carcass.Joint.Line, "joint")}
	upright := level
	upright.Enters, upright.Into, upright.Axis = []solid.Role{"side"}, outside, solid.X
	return []joints.Seat{level, upright}
}
