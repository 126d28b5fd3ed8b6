package casework

import (
	"fmt"
	"slices"

	"sawbill/stock"
)

// pins is how the holes of a loose shelf are bored.
type pins struct {
	inset stock.Length // of a row, from the shelf's front edge, edging and all, and its back edge
	pitch stock.Length
	holes int // for each shelf, in each row; the middle one bears it
}

// readPins fills in the defaults: rows 37 mm (1 1/2 in) in at a pitch of 32 mm
// (1 1/4 in), common practice, no source. Five holes move a shelf two steps up
// or down.
func (r *reader) readPins() pins {
	d := r.design.Shelf
	p := pins{
		inset: r.orDefault(d.PinInset, 37*stock.Millimetre, 3*stock.Inch/2),
		pitch: r.orDefault(d.PinPitch, 32*stock.Millimetre, 5*stock.Inch/4),
		holes: 5,
	}
	if d.PinHoles.Set {
		p.holes = d.PinHoles.Value
	}
	return p
}

// shelfPins marks two rows of holes on each face beside a loose shelf. The
// middle hole lies at the shelf's lower face, the others a pitch apart above and
// below. Holes that would come outside the opening are left out, and so are
// those that would come within a pitch of the next shelf's.
func (m *layout) shelfPins() {
	if !m.c.made.shelf.loose {
		return
	}
	p := m.readPins()
	for i, b := range m.c.bays {
		for _, o := range b.openings {
			shelves := m.shelvesIn(b, o)
			if len(shelves) == 0 {
				continue
			}
			front := m.frontOf(m.solids[shelves[0]])
			deep := m.solids[shelves[0]].End()[Y] - front
			if 2*p.inset >= deep {
				d := m.design.Shelf
				m.fault(m.place.under(d.Line, "shelf").under(d.PinInset.Line, "pin_inset"), fmt.Sprintf("two rows of pins %s from the edges meet under a shelf %s deep",
					m.print(p.inset), m.print(deep)), "give a smaller pin_inset")
				return
			}
			for _, s := range m.besides(i) {
				upright := m.solids[s.Solid]
				first := front + p.inset - upright.At[Y]
				if first < m.orDefault(Length{}, 5*stock.Millimetre, stock.Inch/4) { // a hole would break out
					d := m.design.Shelf
					m.fault(m.place.under(d.Line, "shelf").under(d.PinInset.Line, "pin_inset"),
						fmt.Sprintf("a row of pins %s from the front edge of a shelf would break out at that of the %s", m.print(p.inset), upright.Role),
						"give a greater pin_inset, or thinner edging")
					return
				}
				k := Mark{What: "shelf pins", Measure: Measure{From: upright.near(Z)}, Note: b.name + " " + o.name,
					Across: Measure{upright.near(Y), []stock.Length{first, first + deep - 2*p.inset}}}
				for _, h := range m.pinHeights(p, o, shelves) {
					k.At = append(k.At, h-upright.At[Z])
				}
				m.add(s, k)
			}
		}
	}
}

// frontOf is where a shelf begins with the strip on its front edge, if it has one.
func (m *layout) frontOf(shelf Solid) stock.Length {
	front := shelf.At[Y]
	for _, i := range m.of("shelf edging") {
		if s := m.solids[i]; s.At[X] == shelf.At[X] && s.At[Z] == shelf.At[Z] && s.End()[Y] == front {
			return s.At[Y]
		}
	}
	return front
}

// shelvesIn are the shelves of an opening, from below.
func (m *layout) shelvesIn(b bay, o opening) []int {
	var in []int
	for _, i := range m.of("shelf") {
		s := m.solids[i]
		if s.At[X] >= b.behind && s.End()[X] <= b.behind+b.panels && s.At[Z] >= o.floor && s.At[Z] < o.floor+o.height {
			in = append(in, i)
		}
	}
	slices.SortFunc(in, func(i, j int) int { return int(m.solids[i].At[Z] - m.solids[j].At[Z]) })
	return in
}

// pinHeights are the heights of a row's holes, from below.
func (m *layout) pinHeights(p pins, o opening, shelves []int) []stock.Length {
	steps := stock.Length(p.holes / 2)
	if len(shelves) > 1 { // evenly spaced
		between := m.solids[shelves[1]].At[Z] - m.solids[shelves[0]].At[Z]
		steps = max(0, min(steps, (between-p.pitch)/(2*p.pitch)))
	}
	var heights []stock.Length
	for _, i := range shelves {
		for step := -steps; step <= steps; step++ {
			if h := m.solids[i].At[Z] + step*p.pitch; h > o.floor && h < o.floor+o.height {
				heights = append(heights, h)
			}
		}
	}
	return heights
}
