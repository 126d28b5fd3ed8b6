package job

import (
	"fmt"
	"slices"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// lumber is rough lumber for sale by the board foot, and where it is written.
type lumber struct {
	stock.Rough
	record
}

// rough reads every [[rough]] and checks them against one another and against
// the stock that is cut to a plan.
func (r *reader) rough(root *table, at place, offers []offer) []lumber {
	var all []lumber
	for _, rec := range r.each(root, "rough", at) {
		l := r.lumber(rec)
		l.sound = r.alone(l, all, offers) && l.sound
		all = append(all, l)
	}
	return all
}

func (r *reader) lumber(rec record) lumber {
	l := stock.Rough{Material: rec.text("material"), Price: rec.fields["price"].price}
	if rec.text("quarter") != "" {
		q, err := stock.ParseQuarter(rec.text("quarter"))
		if err != nil {
			r.refuse(&rec, "quarter", unreadable(rec.text("quarter"), err))
		}
		l.Quarter = q
	}
	if rec.text("grade") != "" {
		l.Grade = stock.GradeOf(rec.text("grade"))
	}
	if rec.given("yield") {
		l.Yield = stock.Percent(rec.count("yield"))
	}
	if l.Price > dearestBoardFoot {
		r.refuse(&rec, "price", fault.New(
			fmt.Sprintf("%v a board foot is more than can be meant (at most %v)", l.Price, dearestBoardFoot), "give the price of one board foot"))
	}
	return lumber{l, rec}
}

// alone makes sure that it is clear which lumber a part comes from.
func (r *reader) alone(l lumber, before []lumber, offers []offer) bool {
	if l.Material == "" {
		return false
	}
	for _, b := range before {
		if b.Material == l.Material && b.Quarter == l.Quarter && b.sound && l.sound {
			r.fault(l.where("quarter").of("quarter"), fault.New(
				fmt.Sprintf("%s %s is for sale in line %d already", l.Quarter, l.Material, b.line),
				"keep the grade that you mean to buy, or give the other a material of its own"))
			return false
		}
	}
	for _, o := range offers {
		if o.Material == l.Material && (o.Kind == stock.Sheet || !o.OnHand) {
			r.fault(l.where("material").of("material"), fault.New(
				fmt.Sprintf("%q is for sale by the %s in line %d and by the board foot here", l.Material, o.Kind, o.line),
				"delete one of them, or give them different materials; boards of it may be on hand"))
			return false
		}
	}
	return true
}

// fitRough checks that p can be planed from rough lumber for sale, or else cut
// from a board on hand. How long and how wide boards must be is told with the
// estimate.
func (r *reader) fitRough(p *wanted, of []lumber, onHand []offer, with stock.Job) {
	if p.Thickness == 0 {
		remedy := "add the finished thickness: thickness ="
		if p.From == "added" {
			remedy = "write the finished thickness behind the width"
		}
		r.fault(p.place, fault.New("thickness is missing", remedy))
		return
	}
	job := with
	for _, o := range onHand {
		job.Stock = append(job.Stock, o.pieces()...)
	}
	for _, l := range of {
		job.Rough = append(job.Rough, l.Rough)
	}
	whole := p.Part
	whole.Resaw = false
	blank := whole.Blank(stock.Board)
	from, found := job.RoughFor(blank)
	switch {
	case !found && slices.ContainsFunc(onHand, func(o offer) bool { return o.Serves(blank) }):
		r.fit(p, onHand, with, thicknesses(onHand))
		return
	case !found:
		thickest := slices.MaxFunc(job.Rough, func(a, b stock.Rough) int { return int(a.Quarter.Rough() - b.Quarter.Rough()) }).Quarter
		r.fault(p.where("thickness"), fault.New(
			fmt.Sprintf("thickness %s is more than the rough lumber of %s gives (thickest %s, %s)",
				r.thick(p), p.Material, thickest, r.ruler.PrintUnit(thickest.Rough())),
			"make it thinner, or add thicker [[rough]]"))
		return
	}
	a := p.Allowance
	if both, err := from.Quarter.Surfaced(stock.TwoSides); err == nil && a.Face == 0 && a.Faces == 2 && p.Thickness > both {
		r.warn(p.where("thickness"), fault.New(
			fmt.Sprintf("no allowance for planing, and %s planed on both faces gives %s at the most", from.Quarter, r.ruler.PrintUnit(both)),
			"set face = under [allowance], or faces = 0 where it stays rough"))
	}
	if blank.Length > stock.LongestRough {
		r.warn(p.where("length"), fault.New(
			fmt.Sprintf("%s is longer than hardwood is commonly sold (%s)", r.ruler.PrintUnit(blank.Length), r.ruler.PrintUnit(stock.LongestRough)),
			"ask before you count on it"))
	}
	r.warnOfMilling(fitting{part: p, blank: blank, kind: stock.Board, ruler: r.ruler, saw: job.Saw}, job)
}

// thick writes the thickness of p with what is planed off.
func (r *reader) thick(p *wanted) string {
	return fitting{part: p, ruler: r.ruler}.sum(p.Thickness, p.Allowance.Faces, p.Allowance.Face, "planing")
}
