package casework

import "slices"

// layout marks what follows from the openings of a case: slides, pins and handles.
type layout struct {
	*marker
	c *reckoner
}

// marks are in the order of the parts; of one part, in the order below.
func (r *reckoner) marks(solids []Solid) *marker {
	m := &marker{reader: r.reader, solids: solids, frame: r.made.frame, back: r.made.back, tenons: r.made.looseTenons,
		run: r.body().depth.Total(), fixedShelves: !r.made.shelf.loose}
	l := &layout{marker: m, c: r}
	for i := range solids {
		m.names = append(m.names, l.name(i))
	}
	for _, s := range r.seats() {
		s.joint.Mark(m, s)
	}
	m.notches()
	m.markPegs()
	for _, mark := range m.last {
		mark()
	}
	l.slides()
	l.shelfPins()
	l.handles()
	l.doorHandles()
	for i := range m.marks {
		m.marks[i].On = m.on(m.marks[i].Spots)
	}
	slices.SortStableFunc(m.marks, func(a, b Mark) int { return a.Part - b.Part })
	return m
}

// uprights are the left side, the partitions and the right side: bay i lies
// between uprights i and i + 1.
func (m *layout) uprights() []int {
	sides := m.of("side")
	all := append([]int{sides[0]}, m.of("partition")...)
	return append(all, sides[1])
}

// besides are the two faces that bay i lies between.
func (m *layout) besides(bay int) [2]Spot {
	all := m.uprights()
	left, right := Spot{Solid: all[bay], Face: Face{Right, Broad}}, Spot{Solid: all[bay+1], Face: Face{Left, Broad}}
	if bay == 0 {
		left.Face = Face{Inner, Broad}
	}
	if bay == len(m.c.bays)-1 {
		right.Face = Face{Inner, Broad}
	}
	return [2]Spot{left, right}
}
