package casework

import (
	"fmt"

	"sawbill/stock"
)

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
	deepest := r.deepestNeed()
	if deepest != nil && !x.outside.Set && !x.inside.Set {
		x.others = []claim{*deepest}
	}
	var ok bool
	if r.depth, ok = r.settle(x); !ok {
		return false
	}
	if deepest != nil && deepest.size.Total() > r.depth.clear {
		need := deepest.size.Total()
		key, given, total := "inside_depth", d.InsideDepth, need
		if d.OutsideDepth.Set {
			key, given, total = "outside_depth", d.OutsideDepth, need+ends.Total()
		}
		r.fault(r.place.under(given.Line, key), fmt.Sprintf("%s %s leaves %s inside, but %s needs %s", key, r.print(given.Value),
			r.print(r.depth.clear), deepest.of, r.reckoned(deepest.size)),
			"make it at least "+r.print(total)+", or leave it out")
		return false
	}
	return true
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
