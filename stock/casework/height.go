package casework

import (
	"fmt"

	"sawbill/stock"
)

// settleHeights finds the height of the case and of every opening. In a framed case
// with mid rails what is clear lies between the rails.
func (r *reckoner) settleHeights() bool {
	b := r.made
	ends := row(stock.Term{Times: 1, Value: b.carcass.thickness, Label: "top"},
		stock.Term{Times: 1, Value: b.carcass.thickness, Label: "bottom"})
	if b.frame != nil {
		ends = stock.Sum{{Times: 2, Value: b.frame.rail, Label: "rail"}}
	}
	ends = plus(ends, stock.Term{Times: 1, Value: b.base.height, Label: "base"})
	x := axis{name: "height", outside: r.design.OutsideHeight, inside: r.design.InsideHeight, ends: ends}
	columns, ok := make([][]member, len(r.bays)), r.coversDividers()
	var missing []string
	for i, bay := range r.bays {
		var agree bool
		columns[i], agree = r.openingHeights(bay)
		ok = ok && agree
		if line, open := lineClaim(columns[i], r.dividers(bay)); open == "" {
			line.of, line.at = bay.name, bay.at
			x.others = append(x.others, line)
		} else {
			r.tellRefused(line, line)
			missing = append(missing, open+" of "+bay.name)
		}
	}
	x.missing = "a height for " + alternatives(missing)
	var settled bool
	if r.height, settled = r.settle(x); !settled || !ok {
		return false
	}
	if f := b.frame; f != nil {
		r.height.panels = r.aboveBase().Total() - 2*f.inset - 2*b.carcass.thickness
	}
	for i := range r.bays {
		ok = r.settleOpenings(&r.bays[i], columns[i]) && ok
	}
	return ok
}

func (r *reckoner) dividers(b bay) stock.Term {
	width, name := r.between()
	return stock.Term{Times: len(b.openings) - 1, Value: width, Label: name}
}

// openingHeights is what is known of a bay's openings.
func (r *reckoner) openingHeights(b bay) (members []member, ok bool) {
	ok = true
	for _, o := range b.openings {
		m := member{name: o.name, size: given(o.given.Value, "given"), settled: o.given.Set}
		if need, settles := r.made.drawers.heightNeed(o); settles {
			if o.given.Set && need.Total() != o.given.Value {
				ok = false
				m.refused = &refusal{at: o.at.under(o.given.Line, "height"), size: "height", of: "height of " + o.name, need: need.Total(),
					cause: fmt.Sprintf("%s is given, but the %s %s", r.print(o.given.Value), many(len(o.stack), "drawer needs", "drawers need"), r.reckoned(need))}
			}
			m.size, m.settled = need, true
		}
		if c := o.contents; c != nil {
			if need := c.heightNeed(r.made.shelf.thickness); need != nil {
				ok = r.hold(&m, c, need, "height", o.given, o.at) && ok
			}
		}
		members = append(members, m)
	}
	return members, ok
}

// settleOpenings shares out the height of a bay, and that of each opening
// among its drawers.
func (r *reckoner) settleOpenings(b *bay, members []member) bool {
	if !r.share(b.at, given(r.height.clear, "inside height"), plus(nil, r.dividers(*b)), members) {
		return false
	}
	ok := true
	above := r.floor() + r.height.clear
	for k := range b.openings {
		o := &b.openings[k]
		o.height = members[k].size.Total()
		o.floor = above - o.height
		between, _ := r.between()
		above = o.floor - between
		r.record(b.name+" "+o.name+" height", members[k].size)
		if len(o.stack) > 0 {
			ok = r.settleStack(b.name+" "+o.name, o) && ok
		}
	}
	return ok
}

// settleStack finds the heights of the fronts in an opening.
func (r *reckoner) settleStack(name string, o *opening) bool {
	fronts, settled := o.fronts()
	if settled {
		for i := range o.stack {
			o.stack[i].front.Value = fronts[i].size.Total()
		}
		return true
	}
	if o.graded.Set {
		return r.grade(name, o)
	}
	if !r.shareFronts(name, o, fronts) {
		return false
	}
	var recorded stock.Length
	for i := range o.stack {
		x := &o.stack[i]
		if size := fronts[i].size.Total(); !x.measured && !x.front.Set && size != recorded {
			of := " front height"
			if recorded > 0 {
				of = fmt.Sprint(" front ", i+1, " height")
			}
			r.record(name+of, fronts[i].size)
			recorded = size
		}
		x.front.Value = fronts[i].size.Total()
	}
	return true
}

// floor is how high the clear inside begins.
func (r *reckoner) floor() stock.Length {
	if f := r.made.frame; f != nil {
		return r.made.base.height + f.rail
	}
	return r.made.base.height + r.made.carcass.thickness
}
