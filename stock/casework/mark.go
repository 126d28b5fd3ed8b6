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
	Face  string // "inner face", "both ends"
}

// Measure is positions from one edge of a part.
type Measure struct {
	From string // "bottom end"; "" if there is none
	At   []stock.Length
}

func (m Measure) same(n Measure) bool { return m.From == n.From && slices.Equal(m.At, n.At) }

// same reports whether two marks differ in nothing but the pieces they are on.
func (k Mark) same(l Mark) bool {
	return k.Part == l.Part && k.What == l.What && k.Measure.same(l.Measure) && k.Across.same(l.Across) &&
		k.Width == l.Width && k.Depth == l.Depth && k.Stops == l.Stops && k.GapFirst == l.GapFirst && slices.Equal(k.Spacers, l.Spacers) && k.Note == l.Note
}

// marker finds the marks of a case from where its pieces stand and how they
// are made.
type marker struct {
	*reckoner
	solids []Solid
	marks  []Mark
}

// marks are in the order of the parts; of one part, in the order below.
func (r *reckoner) marks(solids []Solid) []Mark {
	m := &marker{reckoner: r, solids: solids}
	m.housings()
	m.notches()
	m.frameJoints()
	m.pegs()
	m.boxJoints()
	m.slides()
	m.shelfPins()
	m.handles()
	m.doorHandles()
	for i := range m.marks {
		m.marks[i].On = m.on(m.marks[i].Spots)
	}
	slices.SortStableFunc(m.marks, func(a, b Mark) int { return a.Part - b.Part })
	return m.marks
}

// add takes a mark. One that other pieces of the part have too is kept once.
func (m *marker) add(s Spot, k Mark) {
	s.Piece = m.name(s.Solid)
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
	end string
	Mark
}

// endOf names the end of a piece that a joint's room is at.
func endOf(s, room Solid) string {
	if room.At[s.Along] == s.At[s.Along] {
		return edgeOf(s, s.Along)
	}
	return map[Axis]string{X: "right end", Y: "back end", Z: "top end"}[s.Along]
}

// addAtEnds takes the marks of a piece's ends: once, if both are alike.
func (m *marker) addAtEnds(i int, ends []endMark) {
	if len(ends) == 2 && ends[0].same(ends[1].Mark) {
		ends = []endMark{{"both ends", ends[0].Mark}}
	}
	for _, e := range ends {
		m.add(Spot{Solid: i, Face: e.end}, e.Mark)
	}
}

// edge names where a piece is measured from along an axis: its side next to
// the case's zero point.
func edgeOf(s Solid, a Axis) string {
	end := "edge"
	switch a {
	case s.Along:
		end = "end"
	case s.Through:
		end = "face"
	}
	switch {
	case a == X:
		return "left " + end
	case a == Y:
		return "front " + end
	case a == s.Along:
		return "bottom end"
	}
	return "lower " + end
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

// uprights are the left side, the partitions and the right side: bay i lies
// between uprights i and i + 1.
func (m *marker) uprights() []int {
	sides := m.of("side")
	all := append([]int{sides[0]}, m.of("partition")...)
	return append(all, sides[1])
}

// besides are the two faces that bay i lies between.
func (m *marker) besides(bay int) [2]Spot {
	all := m.uprights()
	left, right := Spot{Solid: all[bay], Face: "right face"}, Spot{Solid: all[bay+1], Face: "left face"}
	if bay == 0 {
		left.Face = "inner face"
	}
	if bay == len(m.bays)-1 {
		right.Face = "inner face"
	}
	return [2]Spot{left, right}
}
