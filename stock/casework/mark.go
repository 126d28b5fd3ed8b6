package casework

import (
	"slices"

	"sawbill/stock"
)

// Mark is what is laid out on a part before it is cut, bored or fitted. Every
// position is exact and measured from the one edge that is named; none is the
// sum of others, so printing them rounded adds up no error.
type Mark struct {
	Part int // index into Case.Parts
	// On tells which pieces of the part have the mark, if not all of them, and
	// where: "left, inner face". Spots are the same one by one.
	On    string
	Spots []Spot
	What  string // "dado", "slide line", "mortise"
	// Measure is where the marks lie along the part. Those with a Width begin
	// there and reach away from the edge. Of box joints it is where fingers and
	// gaps meet; Width is that of the first.
	Measure
	// Across is the second measure of marks that are points, or of slide lines
	// that begin behind the edge: each of its positions with each of Measure.
	Across Measure
	Width  stock.Length // 0 for a line or a point
	Depth  stock.Length // of what is cut; 0 where nothing is, or right through
	// Stops is how far what is cut keeps from where the piece begins and ends,
	// along the cut; 0 where it runs through.
	Stops [2]stock.Length
	// GapFirst tells of the mates of a box joint the one that starts with a gap.
	GapFirst bool
	// Spacers set slides without measuring: each stands on the bottom or the
	// divider below and reaches to its line.
	Spacers []stock.Length
	Note    string // "starts with a finger"
}

// Spot is a place on one piece.
type Spot struct {
	Solid int    // index into Case.Solids
	Piece string // "left": tells the piece from others of its part; or ""
	Face  Face
}

// Measure is positions from one edge of a part.
type Measure struct {
	From Face // none if there are no positions
	At   []stock.Length
}

func (m Measure) same(n Measure) bool { return m.From == n.From && slices.Equal(m.At, n.At) }

// same reports whether two marks differ in nothing but the pieces they are on.
func (k Mark) same(l Mark) bool {
	return k.Part == l.Part && k.What == l.What && k.Measure.same(l.Measure) && k.Across.same(l.Across) &&
		k.Width == l.Width && k.Depth == l.Depth && k.Stops == l.Stops && k.GapFirst == l.GapFirst && slices.Equal(k.Spacers, l.Spacers) && k.Note == l.Note
}

// marker lays out marks on the pieces of a case.
type marker struct {
	*reader
	solids []Solid
	names  []string // of the solids: what tells each from the others of its part
	marks  []Mark

	// How the case is made, as far as joints depend on it.
	frame        *frame // nil in a case of panels alone
	back         back
	tenons       []looseTenons
	run          stock.Length // of the corners of the carcass
	fixedShelves bool

	pegs []pegged // of all joints on dowels or loose tenons
	last []func() // what is marked after all else that joints mark
}

// later marks something after what other joints mark.
func (m *marker) later(mark func()) { m.last = append(m.last, mark) }

// add takes a mark. One that other pieces of the part have too is kept once.
func (m *marker) add(s Spot, k Mark) {
	s.Piece = m.names[s.Solid]
	k.Part = m.solids[s.Solid].Part
	for i := range m.marks {
		if on := &m.marks[i]; on.same(k) {
			if !slices.Contains(on.Spots, s) {
				on.Spots = append(on.Spots, s)
			}
			return
		}
	}
	k.Spots = []Spot{s}
	m.marks = append(m.marks, k)
}

// endMark is a mark on an end of a piece.
type endMark struct {
	end Face
	Mark
}

// addAtEnds takes the marks of a piece's ends: once, if both are alike.
func (m *marker) addAtEnds(i int, ends []endMark) {
	if len(ends) == 2 && ends[0].same(ends[1].Mark) {
		ends = []endMark{{bothEnds, ends[0].Mark}}
	}
	for _, e := range ends {
		m.add(Spot{Solid: i, Face: e.end}, e.Mark)
	}
}

// of lists the solids with one of the roles.
func (m *marker) of(roles ...Role) []int {
	var found []int
	for i, s := range m.solids {
		if slices.Contains(roles, s.Role) {
			found = append(found, i)
		}
	}
	return found
}

// lowest reports whether no other piece of the part lies lower.
func (m *marker) lowest(i int) bool {
	return !slices.ContainsFunc(m.solids, func(s Solid) bool {
		return s.Part == m.solids[i].Part && s.Drawer == m.solids[i].Drawer && s.At[Z] < m.solids[i].At[Z]
	})
}
