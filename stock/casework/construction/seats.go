package construction

import (
	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// Seats are where a case has joints, in the order in which they are marked.
func (r *Construction) Seats() []joints.Seat {
	d, root := r.In.Design, r.In.Root
	var corner joints.Joint // of the frames
	if r.Frame != nil {
		corner = r.Frame.Corner
	}
	frame := root.Under(d.Frame.Line, "frame").Under(d.Frame.Corner.Line, "corner")
	type roles = []solid.Role
	all := r.corners()
	for _, s := range []struct {
		made bool
		joints.Seat
	}{
		{r.Partition.Joint.Joint != nil, joints.Seat{Site: joints.DividerEnd, Joint: r.Partition.Joint, Enters: roles{"partition"}, Into: roles{"top", "bottom"}, Axis: solid.X,
			Key: root.Under(d.Partition.Line, "partition").Under(d.Partition.Joint.Line, "joint")}},
		{r.Divider.Joint.Joint != nil, joints.Seat{Site: joints.DividerEnd, Joint: r.Divider.Joint, Enters: roles{"divider"}, Into: roles{"side", "partition"}, Axis: solid.Z,
			Key: root.Under(d.Divider.Line, "divider").Under(d.Divider.Joint.Line, "joint")}},
		{r.Shelf.Joint.Joint != nil && !r.Shelf.Loose, joints.Seat{Site: joints.ShelfEnd, Joint: r.Shelf.Joint, Enters: roles{"shelf"}, Into: roles{"side", "partition"}, Axis: solid.Z}},
		{r.Back.Housed(), joints.Seat{Site: joints.BackEdge, Joint: r.Back, Enters: roles{"back"}, Into: roles{"side", "top", "bottom", "stile", "mid stile", "rail"},
			Axis: solid.Y, FromBack: true, Clearance: r.Back.Clearance}},
		{corner != nil, joints.Seat{Site: joints.FrameCorner, Joint: corner, Enters: roles{"rail"}, Into: roles{"stile"}, Axis: solid.Z, Key: frame}},
		{corner != nil, joints.Seat{Site: joints.FrameMiddle, Joint: corner, Enters: roles{"mid stile"}, Into: roles{"rail"}, Axis: solid.X, Key: frame}},
		{corner != nil, joints.Seat{Site: joints.FrameMiddle, Joint: corner, Enters: roles{"mid rail"}, Into: roles{"stile", "mid stile"}, Axis: solid.Z, Key: frame}},
		{r.Base.Rails > 0, joints.Seat{Site: joints.DividerEnd, Joint: joints.Butted, Enters: roles{"hanging rail"}, Into: roles{"side", "partition"}, Axis: solid.Z}},
		{r.Drawers.Corner.Joint != nil, joints.Seat{Site: joints.DrawerCorner, Joint: r.Drawers.Corner, Enters: roles{"drawer front and back"}, Into: roles{"drawer side"}, Axis: solid.Y}},
		{r.Drawers.Corner.Joint != nil, joints.Seat{Site: joints.DrawerBottom, Joint: r.Drawers.Groove, Enters: roles{"drawer bottom"}, Into: roles{"drawer side", "drawer front and back"}, Axis: solid.Z,
			Clearance: r.Drawers.BottomClearance}},
	} {
		if s.made {
			all = append(all, s.Seat)
		}
	}
	return all
}

// corners lists the corners of the box: a panel between the others enters them.
func (r *Construction) corners() []joints.Seat {
	d := r.In.Design
	var between, outside []solid.Role
	for _, end := range []struct {
		role    solid.Role
		outside bool
	}{{"top", r.TopOver}, {"bottom", r.BottomUnder}} {
		if end.outside {
			outside = append(outside, end.role)
		} else {
			between = append(between, end.role)
		}
	}
	level := joints.Seat{Site: joints.CarcassCorner, Joint: r.Corner, Enters: between, Into: []solid.Role{"side"}, Axis: solid.Z,
		Key: r.In.Root.Under(d.Carcass.Line, "carcass").Under(d.Carcass.Joint.Line, "joint")}
	upright := level
	upright.Enters, upright.Into, upright.Axis = []solid.Role{"side"}, outside, solid.X
	return []joints.Seat{level, upright}
}
