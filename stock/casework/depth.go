package casework

import "sawbill/stock"

// settleDepth finds the depth of the case. Drawers and contents settle it only
// if nothing else does; otherwise they must find room.
func (r *reckoner) settleDepth() bool {
	b, d := r.made, r.design
	ends := b.back.takes()
	if b.frame != nil { // a back in the frame takes nothing of what is before it
		ends = stock.Sum{{Times: 1, Value: b.frame.thickness, Label: "back frame"}}
	}
	if b.back.fit == "applied" {
		ends = plus(ends, stock.Term{Times: 1, Value: b.back.thickness, Label: "back"})
	}
	x := axis{name: "depth", outside: d.OutsideDepth, inside: d.InsideDepth, ends: ends}
	if r.anyDrawer(false) {
		x.missing = "drawer.box_depth"
	}
	if deepest := r.deepestNeed(); deepest != nil {
		deepest.least = x.outside.Set || x.inside.Set
		x.others = []claim{*deepest}
	}
	var ok bool
	r.depth, ok = r.settle(x)
	return ok
}

// deepestNeed is the claim of the drawer or the contents that need most depth,
// nil if none needs any.
func (r *reckoner) deepestNeed() *claim {
	var deepest *claim
	deeper := func(need stock.Sum, of string, a at) {
		if need != nil && (deepest == nil || need.Total() > deepest.size.Total()) {
			deepest = &claim{size: need, of: of, at: a}
		}
	}
	for _, b := range r.bays {
		for _, o := range b.openings {
			for _, x := range o.stack {
				deeper(r.made.drawers.depthNeed(o, x), "a drawer of "+b.name, x.at)
			}
			if c := o.contents; c != nil {
				deeper(r.contentsDepth(o), "what goes into "+b.name, c.at)
			}
		}
	}
	return deepest
}
