package sizes

import (
	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
)

// settleDepth finds the depth of the case. Drawers and contents settle it only
// if nothing else does; otherwise they must find room.
func (r *Sizes) settleDepth() bool {
	b, d := r.Built, r.In.Design
	ends := b.Back.Takes()
	if b.Frame != nil { // a back in the frame takes nothing of what is before it
		ends = stock.Sum{{Times: 1, Value: b.Frame.Thickness, Label: "back frame"}}
	}
	if b.Back.Fit == "applied" {
		ends = sums.Plus(ends, stock.Term{Times: 1, Value: b.Back.Thickness, Label: "back"})
	}
	x := axis{name: "depth", outside: d.OutsideDepth, inside: d.InsideDepth, ends: ends}
	if r.Built.AnyDrawer(false) {
		x.missing = "drawer.box_depth"
	}
	if deepest := r.deepestNeed(); deepest != nil {
		if deepest.least = x.outside.Set || x.inside.Set; !deepest.least {
			deepest.size = r.In.Up(deepest.size, "room behind")
		}
		x.others = []claim{*deepest}
	}
	var ok bool
	r.Depth, ok = r.settle(x)
	return ok
}

// deepestNeed is the claim of the drawer or the contents that need most depth,
// nil if none needs any.
func (r *Sizes) deepestNeed() *claim {
	var deepest *claim
	deeper := func(need stock.Sum, of string, a design.Place) {
		if need != nil && (deepest == nil || need.Total() > deepest.size.Total()) {
			deepest = &claim{size: need, of: of, at: a}
		}
	}
	for _, b := range r.Built.Bays {
		for _, o := range b.Openings {
			for _, x := range o.Stack {
				deeper(r.Built.Drawers.DepthNeed(o, x), "a drawer of "+b.Name, x.At)
			}
			if c := o.Contents; c != nil {
				deeper(r.contentsDepth(o), "what goes into "+b.Name, c.At)
			}
		}
	}
	return deepest
}
