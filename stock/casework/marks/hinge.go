package marks

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/construction"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// hinges marks the middles of the hinges on the back of every door and, at the same
// heights, on the panel that it hangs on; and its catches at the edge that opens. The
// first and the last hinge lie 90 mm (3 1/2 in) from the ends of the door, in a low door
// a quarter of its height, the others evenly between; catches 50 mm (2 in) from the ends:
// common practice, no source.
func (m *layout) hinges() {
	for _, i := range m.Marker.Of("door") {
		door := m.Marker.Solids[i]
		high := door.Size[solid.Z]
		side, _ := m.hinged(i)
		near := side == "left"
		at := m.evenly(high, min(m.In.OrDefault(design.Length{}, 90*stock.Millimeter, 7*stock.Inch/2), high/4), construction.Hinges(high))
		back := solid.Spot{Solid: i, Face: solid.Face{Side: solid.Rear, Extent: solid.Broad}}
		m.Marker.Add(back, solid.Mark{What: solid.Hinge, Note: m.cupNote(), Stops: m.atEdge(door.Size[solid.X], near),
			Measure: solid.Measure{From: door.Near(solid.Z), At: at}})
		m.Marker.Add(back, solid.Mark{What: solid.Catch, Note: "none with hinges that close by themselves", Stops: m.atEdge(door.Size[solid.X], !near),
			Measure: solid.Measure{From: door.Near(solid.Z), At: m.catches(high)}})
		if m.c.Built.Frame != nil {
			continue // what it hangs on is made of members
		}
		spot := m.hungOn(i, near)
		upright := m.Marker.Solids[spot.Solid]
		plates := solid.Mark{What: solid.Hinge, Note: "as high as on the door; where plates or leaves go from the edge, see the hinges",
			Stops: m.atEdge(upright.Size[solid.Y], true), Measure: solid.Measure{From: upright.Near(solid.Z)}}
		for _, h := range at {
			plates.At = append(plates.At, door.At[solid.Z]+h-upright.At[solid.Z])
		}
		m.Marker.Add(spot, plates)
	}
}

// cupNote is how hinges that are let in are bored: 35 mm cups, 12.5 mm deep (common
// practice, no source).
func (m *layout) cupNote() string {
	return fmt.Sprintf("their middles; a cup %s in diameter is bored %s deep, so far from the edge as its maker says", m.In.Print(35*stock.Millimeter), m.In.Print(25*stock.Millimeter/2))
}

// atEdge are the stops of a short line at the near or the far edge of a face so wide.
func (m *layout) atEdge(wide stock.Length, near bool) [2]stock.Length {
	rest := wide - min(wide/3, m.In.OrDefault(design.Length{}, 50*stock.Millimeter, 2*stock.Inch))
	if near {
		return [2]stock.Length{0, rest}
	}
	return [2]stock.Length{rest, 0}
}

// evenly are n places on a length, the first and the last so far from its ends, each on the step.
func (m *layout) evenly(long, end stock.Length, n int) []stock.Length {
	var all []stock.Length
	for k := range n {
		all = append(all, m.In.Down(end+(long-2*end)*stock.Length(k)/stock.Length(n-1)))
	}
	return all
}

// catches are the heights of the catches of a door so high, from below.
func (m *layout) catches(high stock.Length) []stock.Length {
	in := min(m.In.OrDefault(design.Length{}, 50*stock.Millimeter, 2*stock.Inch), high/4)
	if construction.Catches(high) == 1 {
		return []stock.Length{m.In.Down(high - in)}
	}
	return []stock.Length{m.In.Down(in), m.In.Down(high - in)}
}

// hungOn is the face of the panel that a door hangs on.
func (m *layout) hungOn(door int, left bool) solid.Spot {
	middle := solid.Middle(m.Marker.Solids[door], solid.X)
	home := 0
	for i, b := range m.c.Built.Bays {
		if b.Left <= middle {
			home = i
		}
	}
	if left {
		return m.besides(home)[0]
	}
	return m.besides(home)[1]
}
