package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/internal/wording"
)

// settleWidths finds the width of the case and of its bays. In a framed case
// what is clear lies between the stiles, and the panels stand back from it.
func (r *Sizes) settleWidths() bool {
	b := r.Built
	ends := stock.Sum{{Times: 2, Value: b.Carcass.Thickness, Label: "side"}}
	upright := stock.Term{Times: len(r.Built.Bays) - 1, Value: b.Partition.Thickness, Label: "partition"}
	if b.Frame != nil {
		ends = stock.Sum{{Times: 2, Value: b.Frame.Stile, Label: "stile"}}
		upright.Value, upright.Label = b.Frame.MidStile, "mid stile"
	}
	members, ok := r.bayWidths()
	x := axis{name: "width", outside: r.In.Design.OutsideWidth, inside: r.In.Design.InsideWidth, ends: ends}
	if line, missing := lineClaim(members, upright); missing == "" {
		line.of, line.at = "what stands side by side", r.Built.Bays[0].At
		if len(r.Built.Bays) == 1 {
			line.of = r.Built.Bays[0].Name
		}
		x.others = []claim{line}
	} else {
		r.tellRefused(line, line)
		x.missing = "a width for " + missing
	}
	var settled bool
	if r.Width, settled = r.settle(x); !settled || !ok {
		return false
	}
	if !r.share(r.Built.Bays[0].At, sums.Of(r.Width.Clear, "inside width"), sums.Plus(nil, upright), members) {
		return false
	}
	for i := range r.Built.Bays {
		r.Built.Bays[i].Width = members[i].size.Total()
		r.Record(r.Built.Bays[i].Name+" width", members[i].size)
	}
	return r.panelWidths()
}

// bayWidths returns the known widths of the bays: given, or needed by measured drawers or by
// contents.
func (r *Sizes) bayWidths() (members []member, ok bool) {
	ok = true
	for _, b := range r.Built.Bays {
		m := member{name: b.Name, size: sums.Of(b.Given.Value, "given"), settled: b.Given.Set}
		need := r.Built.Drawers.WidthNeed(b)
		if need != nil && b.Given.Set && need.Total() != b.Given.Value {
			ok = false
			m.refused = &refusal{at: b.At.Under(b.Given.Line, "width"), size: "width", of: "width of " + b.Name, need: need.Total(),
				cause: fmt.Sprintf("%s is given, but the %s %s", r.In.Print(b.Given.Value), wording.Many(b.Drawers(), "drawer needs", "drawers need"), r.In.Explained(need))}
		}
		if need != nil {
			if x := r.In.Design; !x.OutsideWidth.Set && !x.InsideWidth.Set && !b.Given.Set {
				need = r.In.Up(need, "side clearance")
			}
			m.size, m.settled = need, true
		}
		if c, least := widestContents(b); c != nil {
			written := b.Given
			if need != nil { // another width would not suit the drawers
				written = design.Length{}
			}
			ok = r.hold(&m, c, least, "width", written, b.At) && ok
		}
		members = append(members, m)
	}
	return members, ok
}

// panelWidths finds how far the panels stand back from the openings of a
// framed case. A partition stands in the middle behind its mid stile.
func (r *Sizes) panelWidths() bool {
	f := r.Built.Frame
	if f == nil {
		left := r.Built.Carcass.Thickness
		for i := range r.Built.Bays {
			b := &r.Built.Bays[i]
			b.Panels, b.Left, b.Behind = b.Width, left, left
			left += b.Width + r.Built.Partition.Thickness
		}
		return true
	}
	clear, panels := f.Stile, f.Inset+r.Built.Carcass.Thickness
	t := r.Built.Carcass.Thickness
	r.Width.Panels = r.Width.Outside - 2*f.Inset - 2*t
	atSide, atMid := f.Stile-f.Inset-t, (f.MidStile-r.Built.Partition.Thickness)/2
	if len(r.Built.Bays) > 1 && f.MidStile < r.Built.Partition.Thickness {
		r.In.Fault(r.In.Root.Under(r.In.Design.Frame.Line, "frame"), fmt.Sprintf("a mid stile %s wide does not cover a partition %s thick",
			r.In.Print(f.MidStile), r.In.Print(r.Built.Partition.Thickness)), "give a greater mid_stile_width, or a thinner partition")
		return false
	}
	for i := range r.Built.Bays {
		b := &r.Built.Bays[i]
		left, right := atMid, atMid
		if i == 0 {
			left = atSide
		}
		if i == len(r.Built.Bays)-1 {
			right = atSide
		}
		behind := sums.Plus(sums.Of(b.Width, "opening"), sums.Row(
			stock.Term{Times: 1, Value: left, Label: "behind the stile"},
			stock.Term{Times: 1, Value: right, Label: "behind the stile"})...)
		b.Panels, b.Left, b.Behind = behind.Total(), clear, panels
		clear += b.Width + f.MidStile
		panels += b.Panels + r.Built.Partition.Thickness
		r.Record(b.Name+" width between panels", behind)
		r.cautionPacking(*b, left, right)
	}
	return true
}
