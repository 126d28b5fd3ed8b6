package casework

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
)

// slides marks a line for every slide up the uprights beside a stack of
// drawers, and the spacers that set the slides without measuring. All stand on
// the bottom or the divider below, so that none carries the error of another:
//
//	|      |
//	|------|  slide line      |
//	|      |                  | spacer
//	|------|  slide line   |  |   slide line = lower edge of the box + slide_line
//	|______|        spacer |  |
//
// The lower edge of the box is where a slide's lower edge is set unless
// slide_line lifts it: common practice, no source.
func (m *layout) slides() {
	m.onBoxes()
	drawer := 0
	for i, b := range m.c.bays {
		for k, o := range b.openings {
			var lines []stock.Length
			for range o.stack {
				drawer++
				lines = append(lines, m.box(drawer).At[Z]+m.c.made.drawers.slideLine)
			}
			if len(lines) == 0 {
				continue
			}
			slices.Sort(lines)
			floor, below := m.c.dividerBelow(o)+m.c.made.divider.thickness, "divider"
			if k == len(b.openings)-1 {
				floor, below = m.c.origin()[Z]+m.c.made.carcass.thickness, "bottom"
			}
			mark := Mark{What: "slide line"}
			for _, line := range lines {
				mark.Spacers = append(mark.Spacers, line-floor)
			}
			mark.Note = b.name + " " + o.name + ", spacers stand on the " + below + " and reach to the line" + m.slideSize(b.name+" "+o.name, o, drawer)
			for _, s := range m.besides(i) {
				upright := m.solids[s.Solid]
				mark.Measure, mark.Across = Measure{From: upright.near(Z)}, m.slideFront(upright, drawer)
				for _, line := range lines {
					mark.At = append(mark.At, line-upright.At[Z])
				}
				m.add(s, mark)
			}
		}
	}
}

// slideFront is where on an upright the slides of a stack begin, whose last drawer
// has that number: with its box, where this stands back from the upright's front
// edge, behind a door or an inset front.
func (m *layout) slideFront(upright Solid, drawer int) Measure {
	back := m.box(drawer).At[Y] - upright.At[Y]
	if back <= 0 {
		return Measure{}
	}
	return Measure{upright.near(Y), []stock.Length{back}}
}

// onBoxes marks the line on the boxes as well, where it is not their lower edge.
func (m *layout) onBoxes() {
	line := m.c.made.drawers.slideLine
	if line == 0 {
		return
	}
	for _, i := range m.of("drawer side") {
		m.add(Spot{Solid: i, Face: Face{Outer, Broad}}, Mark{What: "slide line", Measure: Measure{m.solids[i].near(Z), []stock.Length{line}}})
	}
}

// box is a drawer's box: a measured drawer, or one side of it.
func (m *layout) box(drawer int) Solid {
	for _, s := range m.solids {
		if s.Drawer == drawer && (s.Role == "drawer side" || s.Role == "drawer") {
			return s
		}
	}
	panic("casework: a drawer that does not stand in its case")
}

// slideSize tells the slides for a stack of drawers, whose last has that number,
// and checks them.
func (m *layout) slideSize(name string, o opening, last int) string {
	s := m.c.made.drawers
	var usual []stock.Length // of each drawer, from the lowest
	told := false
	for n := range o.stack {
		b := m.box(last - n)
		if high := b.Size[Z]; s.slideLine >= high {
			m.fault(m.drawerKey("slide_line"), fmt.Sprintf("a slide line %s up lies above a box %s high", m.print(s.slideLine), m.print(high)),
				"make it less than the height of the lowest box")
		}
		usual = append(usual, m.usualSlide(min(m.slideRoom(o), b.Size[Y])))
		if deep := b.Size[Y]; s.slideLength > deep && !told {
			told = true
			m.caution("slides longer than the drawer", fmt.Sprintf("In %s a slide %s long reaches past a box %s deep: see whether its drawer member may stand over.",
				name, m.print(s.slideLength), m.print(deep)))
		}
	}
	switch {
	case s.slideLength > m.slideRoom(o):
		m.fault(m.drawerKey("slide_length"), fmt.Sprintf("a slide %s long does not go in, for %s are left inside", m.print(s.slideLength), m.print(m.slideRoom(o))),
			"take a shorter slide, or make the case deeper")
	case s.slideLength > 0:
		return ", slide " + m.print(s.slideLength)
	}
	return m.usualSlides(usual)
}

// usualSlides words the longest usual ones of a stack: one length, if all are alike.
func (m *layout) usualSlides(each []stock.Length) string {
	if slices.Max(each) == 0 {
		return ""
	}
	var said []string
	for _, l := range each {
		if l == 0 {
			said = append(said, "none so short")
			continue
		}
		said = append(said, m.print(l))
	}
	if slices.Min(each) == slices.Max(each) {
		return ", longest usual slide " + said[0]
	}
	return ", longest usual slides, from the lowest drawer, " + strings.Join(said, ", ")
}

// slideRoom is the greatest length of a slide: the inside depth, less what doors
// and an inset front take, less 1/8 in (common practice, no source).
func (m *layout) slideRoom(o opening) stock.Length {
	room := m.c.depth.clear - m.orDefault(Length{}, 3*stock.Millimetre, stock.Inch/8)
	s := m.c.made.drawers
	return room - s.takenBefore(o).Total() - s.insetFront(o).Value
}

// usualSlide is the longest slide that is sold and goes in, 0 if there is none:
// even inches from 10 to 28, or 250 to 700 mm by 50 (common practice, no source).
func (m *layout) usualSlide(room stock.Length) stock.Length {
	shortest, longest, step := 250*stock.Millimetre, 700*stock.Millimetre, 50*stock.Millimetre
	if m.from.Ruler.Units == stock.Inches {
		shortest, longest, step = 10*stock.Inch, 28*stock.Inch, 2*stock.Inch
	}
	room = min(room, longest)
	if room < shortest {
		return 0
	}
	return room - (room-shortest)%step
}
