package casework

import (
	"fmt"

	"sawbill/stock"
)

// settleWidths finds the width of the case and of its bays. In a framed case
// what is clear lies between the stiles, and the panels stand back from it.
func (r *reckoner) settleWidths() bool {
	b := r.made
	ends := stock.Sum{{Times: 2, Value: b.carcass.thickness, Label: "side"}}
	upright := stock.Term{Times: len(r.bays) - 1, Value: b.partition.thickness, Label: "partition"}
	if b.frame != nil {
		ends = stock.Sum{{Times: 2, Value: b.frame.stile, Label: "stile"}}
		upright.Value, upright.Label = b.frame.midStile, "mid stile"
	}
	members, ok := r.bayWidths()
	x := axis{name: "width", outside: r.design.OutsideWidth, inside: r.design.InsideWidth, ends: ends}
	if line, missing := lineClaim(members, upright); missing == "" {
		line.of, line.at = "what stands side by side", r.bays[0].at
		if len(r.bays) == 1 {
			line.of = r.bays[0].name
		}
		x.others = []claim{line}
	} else {
		r.tellRefused(line, line)
		x.missing = "a width for " + missing
	}
	var settled bool
	if r.width, settled = r.settle(x); !settled || !ok {
		return false
	}
	if !r.share(r.bays[0].at, given(r.width.clear, "inside width"), plus(nil, upright), members) {
		return false
	}
	for i := range r.bays {
		r.bays[i].width = members[i].size.Total()
		r.record(r.bays[i].name+" width", members[i].size)
	}
	return r.panelWidths()
}

// bayWidths is what is known of the bays: a width was given, measured drawers
// need it, or contents at least.
func (r *reckoner) bayWidths() (members []member, ok bool) {
	ok = true
	for _, b := range r.bays {
		m := member{name: b.name, size: given(b.given.Value, "given"), settled: b.given.Set}
		need := r.made.drawers.widthNeed(b)
		if need != nil && b.given.Set && need.Total() != b.given.Value {
			ok = false
			m.refused = &refusal{at: b.at.under(b.given.Line, "width"), size: "width", of: "width of " + b.name, need: need.Total(),
				cause: fmt.Sprintf("%s is given, but the %s %s", r.print(b.given.Value), many(b.drawers(), "drawer needs", "drawers need"), r.reckoned(need))}
		}
		if need != nil {
			m.size, m.settled = need, true
		}
		if c, least := b.widestContents(); c != nil {
			written := b.given
			if need != nil { // another width would not suit the drawers
				written = Length{}
			}
			ok = r.hold(&m, c, least, "width", written, b.at) && ok
		}
		members = append(members, m)
	}
	return members, ok
}

// panelWidths finds how far the panels stand back from the openings of a
// framed case. A partition stands in the middle behind its mid stile.
func (r *reckoner) panelWidths() bool {
	f := r.made.frame
	if f == nil {
		left := r.made.carcass.thickness
		for i := range r.bays {
			b := &r.bays[i]
			b.panels, b.left, b.behind = b.width, left, left
			left += b.width + r.made.partition.thickness
		}
		return true
	}
	clear, panels := f.stile, f.inset+r.made.carcass.thickness
	t := r.made.carcass.thickness
	r.width.panels = r.width.outside - 2*f.inset - 2*t
	atSide, atMid := f.stile-f.inset-t, (f.midStile-r.made.partition.thickness)/2
	if len(r.bays) > 1 && f.midStile < r.made.partition.thickness {
		r.fault(r.place.under(r.design.Frame.Line, "frame"), fmt.Sprintf("a mid stile %s wide does not cover a partition %s thick",
			r.print(f.midStile), r.print(r.made.partition.thickness)), "give a greater mid_stile_width, or a thinner partition")
		return false
	}
	for i := range r.bays {
		b := &r.bays[i]
		left, right := atMid, atMid
		if i == 0 {
			left = atSide
		}
		if i == len(r.bays)-1 {
			right = atSide
		}
		behind := plus(given(b.width, "opening"), row(
			stock.Term{Times: 1, Value: left, Label: "behind the stile"},
			stock.Term{Times: 1, Value: right, Label: "behind the stile"})...)
		b.panels, b.left, b.behind = behind.Total(), clear, panels
		clear += b.width + f.midStile
		panels += b.panels + r.made.partition.thickness
		r.record(b.name+" width between panels", behind)
		r.cautionPacking(*b, left, right)
	}
	return true
}
