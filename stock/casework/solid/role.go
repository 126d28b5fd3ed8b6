package solid

import "strings"

// Role names a piece's place in the case: "side", "mid stile", "false front end edging". It is also
// the name of its part.
type Role string

// Unit is the sub-assembly of a piece that is in no drawer. The last word identifies edging and
// feet, since the first names the panel.
func (r Role) Unit() string {
	words := strings.Fields(string(r))
	switch {
	case r.Strip():
		return "edging"
	case r.Base():
		return "base"
	}
	switch words[0] {
	case "stile", "rail", "mid":
		return "frames"
	case "back":
		return "back"
	case "shelf":
		return "shelves"
	case "door":
		return "doors"
	case "loose", "spline", "glue": // tenons, blocks
		return "joinery"
	}
	return "carcass"
}

// Strip reports whether a piece is a strip on the edges of panels.
func (r Role) Strip() bool {
	return strings.HasSuffix(string(r), "edging") || strings.HasSuffix(string(r), "trim")
}

// On reports whether a strip is on a panel of that role.
func (r Role) On(panel Role) bool {
	return r.Strip() && strings.HasPrefix(string(r), string(panel)+" ")
}

// Base reports whether the case stands on a piece.
func (r Role) Base() bool {
	return strings.HasPrefix(string(r), "plinth") || strings.HasSuffix(string(r), "foot")
}

// InFrame reports whether the ends of a member meet others in a frame.
func (r Role) InFrame() bool { return r == "rail" || r == "mid stile" || r == "mid rail" }

// Carries reports whether a piece is to carry loads and may sag.
func (r Role) Carries() bool { return r == "shelf" || r == "divider" }

// partsBays reports whether a piece stands between two bays, and so has a left and a right face.
func (r Role) partsBays() bool { return r == "partition" || r == "mid stile" }
