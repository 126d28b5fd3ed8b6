package sizes

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/internal/wording"
)

// settleHeights finds the height of the case and of every opening. In a framed case
// with mid rails what is clear lies between the rails.
func (r *Sizes) settleHeights() bool {
	b := r.Built
	ends := sums.Row(stock.Term{Times: 1, Value: b.Carcass.Thickness, Label: "top"},
		stock.Term{Times: 1, Value: b.Carcass.Thickness, Label: "bottom"})
	if b.Frame != nil {
		ends = stock.Sum{{Times: 2, Value: b.Frame.Rail, Label: "rail"}}
	}
	ends = sums.Plus(ends, stock.Term{Times: 1, Value: b.Base.Height, Label: "base"})
	x := axis{name: "height", outside: r.In.Design.OutsideHeight, inside: r.In.Design.InsideHeight, ends: ends}
	columns, ok := make([][]member, len(r.Built.Bays)), r.Built.CoversDividers()
	var missing []string
	for i, bay := range r.Built.Bays {
		var agree bool
		columns[i], agree = r.openingHeights(bay)
		ok = ok && agree
		if line, open := lineClaim(columns[i], r.dividers(bay)); open == "" {
			line.of, line.at = bay.Name, bay.At
			x.others = append(x.others, line)
		} else {
			r.tellRefused(line, line)
			missing = append(missing, open+" of "+bay.Name)
		}
	}
	x.missing = "a height for " + wording.Alternatives(missing)
	var settled bool
	if r.Height, settled = r.settle(x); !settled || !ok {
		return false
	}
	if f := b.Frame; f != nil {
		r.Height.Panels = r.AboveBase().Total() - 2*f.Inset - 2*b.Carcass.Thickness
	}
	for i := range r.Built.Bays {
		ok = r.settleOpenings(&r.Built.Bays[i], columns[i]) && ok
	}
	return ok
}

func (r *Sizes) dividers(b construction.Bay) stock.Term {
	width, name := r.Built.Between()
	return stock.Term{Times: len(b.Openings) - 1, Value: width, Label: name}
}

// openingHeights returns the known heights of a bay's openings.
func (r *Sizes) openingHeights(b construction.Bay) (members []member, ok bool) {
	ok = true
	for _, o := range b.Openings {
		m := member{name: o.Name, size: sums.Of(o.Given.Value, "given"), settled: o.Given.Set}
		if need, settles := heightNeed(r.Built.Drawers, o); settles {
			if o.Given.Set && need.Total() != o.Given.Value {
				ok = false
				m.refused = &refusal{at: o.At.Under(o.Given.Line, "height"), size: "height", of: "height of " + o.Name, need: need.Total(),
					cause: fmt.Sprintf("%s is given, but the %s %s", r.In.Print(o.Given.Value), wording.Many(len(o.Stack), "drawer needs", "drawers need"), r.In.Explained(need))}
			}
			m.size, m.settled = need, true
		}
		if c := o.Contents; c != nil {
			if need := c.HeightNeed(r.Built.Shelf.Thickness); need != nil {
				ok = r.hold(&m, c, need, "height", o.Given, o.At) && ok
			}
		}
		members = append(members, m)
	}
	return members, ok
}

// settleOpenings shares out the height of a bay, and that of each opening
// among its drawers.
func (r *Sizes) settleOpenings(b *construction.Bay, members []member) bool {
	sharing := make([]bool, len(members))
	for k, m := range members {
		sharing[k] = !m.settled
	}
	if !r.share(b.At, sums.Of(r.Height.Clear, "inside height"), sums.Plus(nil, r.dividers(*b)), members) {
		return false
	}
	for k, o := range b.Openings {
		sharing[k] = sharing[k] && r.hasRoom(o)
	}
	shared := r.dividersOnStep(*b, members, sharing)
	ok := true
	above := r.Built.Floor() + r.Height.Clear
	for k := range b.Openings {
		o := &b.Openings[k]
		o.Height = members[k].size.Total()
		o.Shared = o.Height
		if sharing[k] {
			o.Shared = shared
		}
		o.Floor = above - o.Height
		between, _ := r.Built.Between()
		above = o.Floor - between
		r.Record(b.Name+" "+o.Name+" height", members[k].size)
		if len(o.Stack) > 0 {
			ok = r.settleStack(b.Name+" "+o.Name, o) && ok
		}
	}
	return ok
}

// dividersOnStep moves each divider of a bay to the nearest step, by less than one, where the
// openings above and below it share what is left; a stated height between two such keeps its own. It
// returns the least height of those that share.
func (r *Sizes) dividersOnStep(b construction.Bay, members []member, sharing []bool) (least stock.Length) {
	last := len(members) - 1
	moves := make([]stock.Length, last+2) // of the top, of the dividers, of the bottom
	at := r.Built.Floor() + r.Height.Clear
	between, _ := r.Built.Between()
	for k, m := range members[:last] {
		at -= m.size.Total() + between
		moves[k+1] = r.Built.OnStep(at) - at
		if !sharing[k] {
			moves[k+1] = moves[k]
		}
	}
	for k := last; k >= 0 && !sharing[k]; k-- {
		moves[k] = moves[k+1]
	}
	for k := range members {
		moved := stock.Term{Times: 1, Value: moves[k] - moves[k+1], Label: "divider on the step"}
		if moved.Value < 0 {
			moved.Times, moved.Value = -1, -moved.Value
		}
		members[k].size = sums.Plus(members[k].size, moved)
		if high := members[k].size.Total(); sharing[k] && (least == 0 || high < least) {
			least = high
		}
	}
	return least
}

// hasRoom reports whether gaps above or below what closes an opening can take a difference. Overlay
// doors and fronts leave none.
func (r *Sizes) hasRoom(o construction.Opening) bool {
	return !(o.Doors > 0 && r.Built.Doors.Fit == "overlay") && !(len(o.Stack) > 0 && r.Built.Drawers.GapsOf(o) < len(o.Stack))
}

// settleStack finds the heights of the fronts in an opening.
func (r *Sizes) settleStack(name string, o *construction.Opening) bool {
	fronts, settled := fronts(*o)
	if settled {
		for i := range o.Stack {
			o.Stack[i].Front.Value = fronts[i].size.Total()
		}
		return true
	}
	if o.Graded.Set {
		return r.grade(name, o)
	}
	if !r.shareFronts(name, o, fronts) {
		return false
	}
	var recorded stock.Length
	for i := range o.Stack {
		x := &o.Stack[i]
		if size := fronts[i].size.Total(); !x.Measured && !x.Front.Set && size != recorded {
			of := " front height"
			if recorded > 0 {
				of = fmt.Sprint(" front ", i+1, " height")
			}
			r.Record(name+of, fronts[i].size)
			recorded = size
		}
		x.Front.Value = fronts[i].size.Total()
	}
	return true
}
