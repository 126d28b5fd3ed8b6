package casework

import (
	"fmt"
	"strings"

	"sawbill/stock"
)

// defers ends every caution.
const defers = " Follow the maker's instructions, local codes and licensed practice."

func (r *reader) caution(subject, text string) {
	r.cautions = append(r.cautions, Caution{subject, text})
}

// tips tells why the case may tip: it is tall, or has drawers. A hung one cannot.
func (r *reckoner) tips() (why []string) {
	if r.hung() {
		return nil
	}
	if r.height.outside >= tallCase {
		why = append(why, fmt.Sprintf("it is %s high (%s or more is tall)", r.print(r.height.outside), r.print(tallCase)))
	}
	if r.anyOpening(func(o opening) bool { return len(o.stack) > 0 }) {
		why = append(why, "it has drawers, and open drawers move its weight forward")
	}
	return why
}

// cautionTipping is given where there is no telling how far the case is from
// tipping, for want of what is missing.
func (r *reckoner) cautionTipping(why, missing []string) {
	r.caution("tipping", "This case can tip: "+strings.Join(why, "; ")+
		". Fix it to the wall. This is a rule of thumb, not a stability test; where the case is to hold clothing, see ASTM F2057 and EN 14749. "+
		"For an estimate of its moments give "+strings.Join(missing, " and ")+"."+defers)
}

// cautionShelf is given where a load of books would bend a shelf or a
// divider past the trade's limit, if it were of the softest panel: its own
// modulus is not known.
func (r *reckoner) cautionShelf(p piece) {
	limit := resting.longest(softestPanel, bookLoad, p.panel.thickness)
	if p.length.Total() <= limit {
		return
	}
	r.caution("shelf span", fmt.Sprintf("A %s is %s long and %s thick. Loaded with books it may sag more than 1/144 of its length: "+
		"particle board and MDF do beyond about %s, softwood plywood beyond about %s. Check it for its material and load, "+
		"or make the bay narrower, the shelf thicker, or stiffen its front edge. This is an estimate for a loose shelf in its first loading; "+
		"sag grows with time. For its sag in figures give the [[material]] %q a wood or a modulus.", p.role, r.print(p.length.Total()), r.print(p.panel.thickness),
		r.print(wholeSpan(limit)), r.print(wholeSpan(resting.longest(softwoodPlywood, bookLoad, p.panel.thickness))), p.panel.material)+defers)
}

// wholeSpan cuts an estimate down to a multiple of 1/2 in, 12.7 mm: neither
// figure is better known than that.
func wholeSpan(l stock.Length) stock.Length { return l - l%(stock.Inch/2) }

// cautionPacking tells what slides need behind the stiles of a frame.
func (r *reckoner) cautionPacking(b bay, left, right stock.Length) {
	drawers := false
	for _, o := range b.openings {
		drawers = drawers || len(o.stack) > 0
	}
	if !drawers || left == 0 && right == 0 {
		return
	}
	r.caution("slides behind a frame", fmt.Sprintf("In %s the panels stand back behind the stiles: pack the slides out by %s on the left and %s on the right.",
		b.name, r.print(left), r.print(right)))
}

// cautionNarrow tells of measured drawers narrower than the room that the widest of their
// bay, whose slides need packing.
func (r *reckoner) cautionNarrow(b bay) {
	s := r.made.drawers
	most := s.widthNeed(b).Total()
	for _, o := range b.openings {
		for i, x := range o.stack {
			if spare := most - s.widthOf(o, x).Total(); x.measured && spare > 0 {
				r.caution("drawers of unequal width", fmt.Sprintf("In %s %s, drawer %d is %s narrower than its bay has room for: pack its slides out by half of that on each side.",
					b.name, o.name, i+1, r.print(spare)))
			}
		}
	}
}

// spaces lists the openings for the report.
func (r *reckoner) spaces() []Space {
	var spaces []Space
	for i, b := range r.bays {
		for k, o := range b.openings {
			spaces = append(spaces, Space{Bay: i + 1, Number: k + 1,
				Width: b.width, Height: o.height, Depth: r.depth.clear,
				At: Point{b.left, 0, o.floor}, Holds: o.holds()})
		}
	}
	return spaces
}

func (o opening) holds() string {
	var held []string
	if o.doors > 0 {
		held = append(held, counted(o.doors, "door", "doors"))
	}
	if len(o.stack) > 0 {
		held = append(held, counted(len(o.stack), "drawer", "drawers"))
	}
	if o.shelves > 0 {
		held = append(held, counted(o.shelves, "shelf", "shelves"))
	}
	if o.contents != nil {
		held = append(held, o.contents.String())
	}
	return strings.Join(held, ", ")
}
