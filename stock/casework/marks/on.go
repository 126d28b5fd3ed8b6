package marks

import (
	"slices"
	"strings"

	"sawbill/stock/casework/joints"
	"sawbill/stock/casework/solid"
)

// on words the pieces that have a mark, and the face: "left and right, inner
// face".
func on(m *joints.Marker, spots []solid.Spot) string {
	part := m.Solids[spots[0].Solid].Part
	count := 0
	for _, s := range m.Solids {
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
