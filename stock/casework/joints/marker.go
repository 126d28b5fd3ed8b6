package joints

import (
	"slices"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/solid"
)

// Marker lays out marks on the pieces of a case.
type Marker struct {
	In     *design.Reader
	Solids []solid.Solid
	Names  []string // of the solids: each distinguished from the others of its part
	Marks  []solid.Mark

	// How the case is made, as far as joints depend on it.
	Frame        *Frame // nil in a case of panels alone
	Back         Back
	Tenons       []LooseTenons
	Run          stock.Length // of the corners of the carcass
	FixedShelves bool

	Pegs []Pegged // of all joints on dowels or loose tenons
	Last []func() // what is marked after all else that joints mark
}

// later marks something after what other joints mark.
func (m *Marker) later(mark func()) { m.Last = append(m.Last, mark) }

// Add takes a mark. One that other pieces of the part have too is kept once.
func (m *Marker) Add(s solid.Spot, k solid.Mark) {
	s.Piece = m.Names[s.Solid]
	k.Part = m.Solids[s.Solid].Part
	for i := range m.Marks {
		if on := &m.Marks[i]; on.Same(k) {
			if !slices.Contains(on.Spots, s) {
				on.Spots = append(on.Spots, s)
			}
			return
		}
	}
	k.Spots = []solid.Spot{s}
	m.Marks = append(m.Marks, k)
}

// EndMark is a mark on an end, an edge or a face of a piece.
type EndMark struct {
	End solid.Face
	solid.Mark
}

// AddAtEnds takes the marks of a piece's ends: once, if both are alike.
func (m *Marker) AddAtEnds(i int, ends []EndMark) {
	if len(ends) == 2 && ends[0].Same(ends[1].Mark) {
		ends = []EndMark{{solid.BothEnds, ends[0].Mark}}
	}
	for _, e := range ends {
		m.Add(solid.Spot{Solid: i, Face: e.End}, e.Mark)
	}
}

// addJoined takes marks on faces of a piece. Those that differ in their positions alone are one.
func (m *Marker) addJoined(i int, marks []EndMark) {
	var all []EndMark
	for _, k := range marks {
		n := slices.IndexFunc(all, func(l EndMark) bool {
			l.At = k.At
			return l.End == k.End && l.Same(k.Mark)
		})
		if n < 0 {
			all = append(all, k)
			continue
		}
		all[n].At = append(all[n].At, k.At...)
		slices.Sort(all[n].At)
	}
	for _, k := range all {
		m.Add(solid.Spot{Solid: i, Face: k.End}, k.Mark)
	}
}

// Of lists the solids with one of the roles.
func (m *Marker) Of(roles ...solid.Role) []int {
	var found []int
	for i, s := range m.Solids {
		if slices.Contains(roles, s.Role) {
			found = append(found, i)
		}
	}
	return found
}

// lowest reports whether no other piece of the part lies lower.
func (m *Marker) lowest(i int) bool {
	return !slices.ContainsFunc(m.Solids, func(s solid.Solid) bool {
		return s.Part == m.Solids[i].Part && s.Drawer == m.Solids[i].Drawer && s.At[solid.Z] < m.Solids[i].At[solid.Z]
	})
}
