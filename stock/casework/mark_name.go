package casework

import (
	"fmt"
	"slices"
	"strings"
)

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
		face := s.Face.String()
		if pieces[face] == nil {
			faces = append(faces, face)
		}
		pieces[face] = append(pieces[face], s.Piece)
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
func (m *layout) name(solid int) string {
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
	case "divider", "shelf", "mid rail":
		return m.nameInBay(solid)
	case "drawer front and back":
		return first(Y, "front", "back")
	case "door":
		side, _ := m.hinged(solid)
		return "hinged " + side
	}
	return ""
}

// nameInBay tells a piece that lies between uprights by its bay, where the part is in
// several, and by its place in the bay, where several are: "bay 2 upper".
func (m *layout) nameInBay(solid int) string {
	s := m.solids[solid]
	home := m.bayOf(s)
	elsewhere, above, of := false, 0, 0
	for _, other := range m.solids {
		switch {
		case other.Part != s.Part:
		case m.bayOf(other) != home:
			elsewhere = true
		default:
			of++
			if other.At[Z] > s.At[Z] {
				above++
			}
		}
	}
	var said []string
	if elsewhere {
		said = append(said, m.c.bays[home].name)
	}
	switch {
	case of == 2:
		said = append(said, []string{"upper", "lower"}[above])
	case of > 2:
		said = append(said, fmt.Sprintf("number %d from the top", above+1))
	}
	return strings.Join(said, " ")
}

// bayOf is the index of the bay that the middle of a piece lies in.
func (m *layout) bayOf(s Solid) int {
	last := 0
	for i, b := range m.c.bays {
		if b.behind <= middle(s, X) {
			last = i
		}
	}
	return last
}

func numberOf(nth, of int) string {
	if of < 2 {
		return ""
	}
	return fmt.Sprint("number ", nth)
}
