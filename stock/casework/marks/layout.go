// Package marks lays out on the pieces of a case what is cut, bored and fitted: joints, notches,
// slides, shelf pins, handles and hinges.
package marks

import (
	"slices"

	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/pieces"
	"sawbill/stock/casework/solid"
)

// layout marks what follows from the openings of a case: slides, pins, handles and hinges.
type layout struct {
	*joints.Marker
	c *pieces.Maker
}

// LayOut marks what is laid out on the pieces, and gathers the pegs of their joints. The marks are in the order of the parts; of one part, in the order below.
func LayOut(r *pieces.Maker) *joints.Marker {
	m := &joints.Marker{In: r.In, Solids: r.Solids, Frame: r.Built.Frame, Back: r.Built.Back, Tenons: r.Built.LooseTenons,
		Run: r.Sizes.Body().Depth.Total(), FixedShelves: !r.Built.Shelf.Loose}
	l := &layout{Marker: m, c: r}
	for i := range r.Solids {
		m.Names = append(m.Names, l.name(i))
	}
	for _, s := range r.Built.Seats() {
		s.Joint.Mark(m, s)
	}
	notches(m)
	m.MarkPegs()
	for _, mark := range m.Last {
		mark()
	}
	l.slides()
	l.shelfPins()
	l.handles()
	l.doorHandles()
	l.hinges()
	for i := range m.Marks {
		m.Marks[i].On = on(m, m.Marks[i].Spots)
	}
	slices.SortStableFunc(m.Marks, func(a, b solid.Mark) int { return a.Part - b.Part })
	return m
}

// uprights are the left side, the partitions and the right side: bay i lies
// between uprights i and i + 1.
func (m *layout) uprights() []int {
	sides := m.Marker.Of("side")
	all := append([]int{sides[0]}, m.Marker.Of("partition")...)
	return append(all, sides[1])
}

// besides are the two faces that bay i lies between.
func (m *layout) besides(bay int) [2]solid.Spot {
	all := m.uprights()
	left, right := solid.Spot{Solid: all[bay], Face: solid.Face{Side: solid.Right, Extent: solid.Broad}}, solid.Spot{Solid: all[bay+1], Face: solid.Face{Side: solid.Left, Extent: solid.Broad}}
	if bay == 0 {
		left.Face = solid.Face{Side: solid.Inner, Extent: solid.Broad}
	}
	if bay == len(m.c.Built.Bays)-1 {
		right.Face = solid.Face{Side: solid.Inner, Extent: solid.Broad}
	}
	return [2]solid.Spot{left, right}
}
