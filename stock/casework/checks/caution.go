package checks

import (
	"fmt"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/pieces"
)

// defers ends every caution.
const defers = " Follow the maker's instructions, local codes and licensed practice."

// tips says why the case may tip: it is tall, or has drawers. A hung one cannot.
func (r *checker) tips() (why []string) {
	if r.Built.Hung() {
		return nil
	}
	if r.Sizes.Height.Outside >= tallCase {
		why = append(why, fmt.Sprintf("it is %s high (%s or more is tall)", r.In.Print(r.Sizes.Height.Outside), r.In.Print(tallCase)))
	}
	if r.Built.AnyOpening(func(o construction.Opening) bool { return len(o.Stack) > 0 }) {
		why = append(why, "it has drawers, and open drawers move its weight forward")
	}
	return why
}

// cautionTipping is given where there is no telling how far the case is from
// tipping, for want of what is missing.
func (r *checker) cautionTipping(why, missing []string) {
	r.In.Caution("tipping", "This case can tip: "+strings.Join(why, "; ")+
		". Fix it to the wall. This is a rule of thumb, not a stability test; where the case is to hold clothing, see ASTM F2057 and EN 14749. "+
		"For an estimate of its moments give "+strings.Join(missing, " and ")+"."+defers)
}

// cautionShelf is given where a load of books would bend a shelf or a
// divider past the trade's limit, if it were of the softest panel: its own
// modulus is not known.
func (r *checker) cautionShelf(p pieces.Piece) {
	limit := resting.longest(design.SoftestPanel, bookLoad, p.Panel.Thickness)
	if p.Length.Total() <= limit {
		return
	}
	r.In.Caution("shelf span", fmt.Sprintf("A %s is %s long and %s thick. Loaded with books it may sag more than 1/144 of its length: "+
		"particle board and MDF do beyond about %s, softwood plywood beyond about %s. Check it for its material and load, "+
		"or make the bay narrower, the shelf thicker, or stiffen its front edge. This is an estimate for a loose shelf in its first loading; "+
		"sag grows with time. For its sag in figures give the [[material]] %q a wood or a modulus.", p.Role, r.In.Print(p.Length.Total()), r.In.Print(p.Panel.Thickness),
		r.In.Print(wholeSpan(limit)), r.In.Print(wholeSpan(resting.longest(design.SoftwoodPlywood, bookLoad, p.Panel.Thickness))), p.Panel.Material)+defers)
}

// wholeSpan cuts an estimate down to a multiple of 1/2 in, 12.7 mm: neither
// figure is better known than that.
func wholeSpan(l stock.Length) stock.Length { return l - l%(stock.Inch/2) }

// cautionNarrow warns of measured drawers that are narrower than the widest of their bay: their
// slides need packing.
func (r *checker) cautionNarrow(b construction.Bay) {
	s := r.Built.Drawers
	most := s.WidthNeed(b).Total()
	for _, o := range b.Openings {
		for i, x := range o.Stack {
			if spare := most - s.WidthOf(o, x).Total(); x.Measured && spare > 0 {
				r.In.Caution("drawers of unequal width", fmt.Sprintf("In %s %s, drawer %d is %s narrower than its bay has room for: pack its slides out by half of that on each side.",
					b.Name, o.Name, i+1, r.In.Print(spare)))
			}
		}
	}
}

// cautionUse adds the cautions for the use of the case.
func (r *checker) cautionUse() {
	for _, b := range r.Built.Bays {
		r.cautionNarrow(b)
		for _, o := range b.Openings {
			r.cautionBehindDoors(b, o)
		}
	}
}
