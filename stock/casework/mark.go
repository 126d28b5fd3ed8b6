package casework

import (
	"fmt"
	"slices"
	"strings"

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

// on words the pieces that have a mark, and the face: "left and right, inner
// face".
func (m *marker) on(spots []Spot) string {
	part := m.solids[spots[0].Solid].Part
	count := 0
	for _, s := range m.solids {
		if s.Part == part {
			count++
		}
	}
	var faces []string
	pieces := make(map[string][]string) // names, by face
	for _, s := range spots {
		if pieces[s.Face] == nil {
			faces = append(faces, s.Face)
		}
		pieces[s.Face] = append(pieces[s.Face], s.Piece)
	}
	for i, face := range faces {
		names := slices.Compact(pieces[face])
		if len(pieces[face]) < count && names[0] != "" {
			faces[i] = strings.Join(names, " and ") + ", " + face
		}
	}
	return strings.Join(faces, "; ")
}

// name tells a piece from the others of its part: "left", "front lower", "2";
// "" where they need not be told apart.
func (m *marker) name(solid int) string {
	s := m.solids[solid]
	first := func(a Axis, low, high string) string {
		for _, other := range m.solids {
			if other.Part == s.Part && other.Drawer == s.Drawer && other.At[a] < s.At[a] {
				return high
			}
		}
		return low
	}
	nth, of := 0, 0
	for i, other := range m.solids {
		if other.Part == s.Part && other.At[Y] == s.At[Y] {
			of++
			if i <= solid {
				nth++
			}
		}
	}
	switch s.Role {
	case "side":
		return first(X, "left", "right")
	case "stile":
		return first(Y, "front", "rear") + " " + first(X, "left", "right")
	case "rail":
		return first(Y, "front", "rear") + " " + first(Z, "lower", "upper")
	case "mid stile":
		return strings.TrimSpace(first(Y, "front", "rear") + " " + numberOf(nth, of))
	case "partition":
		return numberOf(nth, of)
	case "drawer front and back":
		return first(Y, "front", "back")
	case "door":
		side, _ := m.hinged(solid)
		return "hinged " + side
	}
	return ""
}

func numberOf(nth, of int) string {
	if of < 2 {
		return ""
	}
	return fmt.Sprint("number ", nth)
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
func (m *marker) of(roles ...string) []int {
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
