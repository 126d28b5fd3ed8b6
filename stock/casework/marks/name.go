package marks

import (
	"fmt"
	"strings"

	"sawbill/stock/casework/solid"
)

// name distinguishes a piece from the others of its part: "left", "front lower", "2"; "" if they
// are all alike.
func (m *layout) name(piece int) string {
	s := m.Marker.Solids[piece]
	first := func(a solid.Axis, low, high string) string {
		for _, other := range m.Marker.Solids {
			if other.Part == s.Part && other.Drawer == s.Drawer && other.At[a] < s.At[a] {
				return high
			}
		}
		return low
	}
	nth, of := 0, 0
	for i, other := range m.Marker.Solids {
		if other.Part == s.Part && other.At[solid.Y] == s.At[solid.Y] {
			of++
			if i <= piece {
				nth++
			}
		}
	}
	switch s.Role {
	case "side":
		return first(solid.X, "left", "right")
	case "stile":
		return first(solid.Y, "front", "rear") + " " + first(solid.X, "left", "right")
	case "rail":
		return first(solid.Y, "front", "rear") + " " + first(solid.Z, "lower", "upper")
	case "mid stile":
		return strings.TrimSpace(first(solid.Y, "front", "rear") + " " + numberOf(nth, of))
	case "partition":
		return numberOf(nth, of)
	case "divider", "shelf", "mid rail":
		return m.nameInBay(piece)
	case "drawer front and back":
		return first(solid.Y, "front", "back")
	case "door":
		side, _ := m.hinged(piece)
		return "hinged " + side
	}
	return ""
}

// nameInBay distinguishes a piece that lies between uprights by its bay, where the part is in
// several, and by its place in the bay, where several are: "bay 2 upper".
func (m *layout) nameInBay(piece int) string {
	s := m.Marker.Solids[piece]
	home := m.bayOf(s)
	elsewhere, above, of := false, 0, 0
	for _, other := range m.Marker.Solids {
		switch {
		case other.Part != s.Part:
		case m.bayOf(other) != home:
			elsewhere = true
		default:
			of++
			if other.At[solid.Z] > s.At[solid.Z] {
				above++
			}
		}
	}
	var said []string
	if elsewhere {
		said = append(said, m.c.Built.Bays[home].Name)
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
func (m *layout) bayOf(s solid.Solid) int {
	last := 0
	for i, b := range m.c.Built.Bays {
		if b.Behind <= solid.Middle(s, solid.X) {
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
