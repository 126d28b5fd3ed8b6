package joints

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
)

// Back is the panel that closes the case behind.
type Back struct {
	design.Panel
	Connection // its depth is that of rabbet or groove, per edge
	Fit        string
	SetIn      stock.Length
	Clearance  stock.Length
}

// Housed reports whether it lies in rabbets or grooves.
func (b Back) Housed() bool {
	_, is := b.Joint.(housedJoint)
	return is
}

// InGrooves reports whether it must be in its place before that is closed.
func (b Back) InGrooves() bool {
	_, is := b.Joint.(groove)
	return is
}

// Takes is the depth that the back takes from the panels it is fitted to.
func (b Back) Takes() stock.Sum {
	if !b.Housed() {
		return nil
	}
	return sums.Plus(nil, stock.Term{Times: 1, Value: b.Thickness, Label: "back"}, stock.Term{Times: 1, Value: b.SetIn, Label: "set in"})
}
