package marks

import (
	"fmt"
	"slices"
	"strings"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
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
	for i, b := range m.c.Built.Bays {
		for k, o := range b.Openings {
			var lines []stock.Length
			for range o.Stack {
				drawer++
				lines = append(lines, m.box(drawer).At[solid.Z]+m.c.Built.Drawers.SlideLine)
			}
			if len(lines) == 0 {
				continue
			}
			slices.Sort(lines)
			floor, below := m.c.Built.DividerBelow(o)+m.c.Built.Divider.Thickness, "divider"
			if k == len(b.Openings)-1 {
				floor, below = m.c.Built.Origin()[solid.Z]+m.c.Built.Carcass.Thickness, "bottom"
			}
			mark := solid.Mark{What: solid.SlideLine}
			for _, line := range lines {
				mark.Spacers = append(mark.Spacers, line-floor)
			}
			mark.Note = b.Name + " " + o.Name + ", spacers stand on the " + below + " and reach to the line" + m.slideSize(b.Name+" "+o.Name, o, drawer)
			for _, s := range m.besides(i) {
				upright := m.Marker.Solids[s.Solid]
				mark.Measure, mark.Across = solid.Measure{From: upright.Near(solid.Z)}, m.slideFront(upright, drawer)
				mark.Stops = m.slideStops(upright, drawer)
				for _, line := range lines {
					mark.At = append(mark.At, line-upright.At[solid.Z])
				}
				m.Marker.Add(s, mark)
			}
		}
	}
}

// slideFront is where on an upright the slides of a stack begin, whose last drawer
// has that number: with its box, where this stands back from the upright's front
// edge, behind a door or an inset front.
func (m *layout) slideFront(upright solid.Solid, drawer int) solid.Measure {
	back := m.box(drawer).At[solid.Y] - upright.At[solid.Y]
	if back <= 0 {
		return solid.Measure{}
	}
	return solid.Measure{From: upright.Near(solid.Y), At: []stock.Length{back}}
}

// slideStops is how far the slides of a stack, whose last drawer has that number, keep
// from the front and the back edge of an upright: they begin with the box, and end where
// their length is over, or before the back.
func (m *layout) slideStops(upright solid.Solid, drawer int) [2]stock.Length {
	from := max(0, m.box(drawer).At[solid.Y]-upright.At[solid.Y])
	to := upright.Size[solid.Y]
	if long := m.c.Built.Drawers.SlideLength; long > 0 {
		to = min(to, from+long)
	}
	for _, i := range m.Marker.Of("back") {
		to = min(to, m.Marker.Solids[i].At[solid.Y]-upright.At[solid.Y])
	}
	return [2]stock.Length{from, upright.Size[solid.Y] - max(from, to)}
}

// onBoxes marks the line on the boxes as well, where it is not their lower edge.
func (m *layout) onBoxes() {
	line := m.c.Built.Drawers.SlideLine
	if line == 0 {
		return
	}
	for _, i := range m.Marker.Of("drawer side") {
		m.Marker.Add(solid.Spot{Solid: i, Face: solid.Face{Side: solid.Outer, Extent: solid.Broad}}, solid.Mark{What: solid.SlideLine, Measure: solid.Measure{From: m.Marker.Solids[i].Near(solid.Z), At: []stock.Length{line}}})
	}
}

// box is a drawer's box: a measured drawer, or one side of it.
func (m *layout) box(drawer int) solid.Solid {
	for _, s := range m.Marker.Solids {
		if s.Drawer == drawer && (s.Role == "drawer side" || s.Role == "drawer") {
			return s
		}
	}
	panic("casework: a drawer that does not stand in its case")
}

// slideSize names the slides for a stack of drawers, whose last has that number,
// and checks them.
func (m *layout) slideSize(name string, o construction.Opening, last int) string {
	s := m.c.Built.Drawers
	var usual []stock.Length // of each drawer, from the lowest
	told := false
	for n := range o.Stack {
		b := m.box(last - n)
		if high := b.Size[solid.Z]; s.SlideLine >= high {
			m.In.Fault(m.In.DrawerKey("slide_line"), fmt.Sprintf("a slide line %s up lies above a box %s high", m.In.Print(s.SlideLine), m.In.Print(high)),
				"make it less than the height of the lowest box")
		}
		usual = append(usual, m.usualSlide(min(m.slideRoom(o), b.Size[solid.Y])))
		if deep := b.Size[solid.Y]; s.SlideLength > deep && !told {
			told = true
			m.In.Caution("slides longer than the drawer", fmt.Sprintf("In %s a slide %s long reaches past a box %s deep: see whether its drawer member may stand over.",
				name, m.In.Print(s.SlideLength), m.In.Print(deep)))
		}
	}
	switch {
	case s.SlideLength > m.slideRoom(o):
		m.In.Fault(m.In.DrawerKey("slide_length"), fmt.Sprintf("a slide %s long does not go in, for %s are left inside", m.In.Print(s.SlideLength), m.In.Print(m.slideRoom(o))),
			"take a shorter slide, or make the case deeper")
	case s.SlideLength > 0:
		return ", slide " + m.In.Print(s.SlideLength)
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
		said = append(said, m.In.Print(l))
	}
	if slices.Min(each) == slices.Max(each) {
		return ", longest usual slide " + said[0]
	}
	return ", longest usual slides, from the lowest drawer, " + strings.Join(said, ", ")
}

// slideRoom is the greatest length of a slide: the inside depth, less what doors
// and an inset front take, less 1/8 in (common practice, no source).
func (m *layout) slideRoom(o construction.Opening) stock.Length {
	room := m.c.Sizes.Depth.Clear - m.In.OrDefault(design.Length{}, 3*stock.Millimeter, stock.Inch/8)
	s := m.c.Built.Drawers
	return room - s.TakenBefore(o).Total() - s.InsetFront(o).Value
}

// usualSlide is the longest slide that is sold and goes in, 0 if there is none:
// even inches from 10 to 28, or 250 to 700 mm by 50 (common practice, no source).
func (m *layout) usualSlide(room stock.Length) stock.Length {
	shortest, longest, step := 250*stock.Millimeter, 700*stock.Millimeter, 50*stock.Millimeter
	if m.In.From.Ruler.Units == stock.Inches {
		shortest, longest, step = 10*stock.Inch, 28*stock.Inch, 2*stock.Inch
	}
	room = min(room, longest)
	if room < shortest {
		return 0
	}
	return room - (room-shortest)%step
}
