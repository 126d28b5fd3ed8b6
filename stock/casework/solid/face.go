package solid

// Side is the direction in which a face of a piece looks, or an edge or an end lies.
type Side int

// Left to Upper are sides of the case. Inner and Outer are to and from the middle of the unit that
// the piece belongs to; Both is both ends of the piece.
const (
	NoSide Side = iota
	Left
	Right
	Front
	Rear
	Lower
	Upper
	Inner
	Outer
	Both
)

// Axis is the axis of a side of the case, and whether the side is the far one, away from the
// zero point. ok is false for any other side.
func (s Side) Axis() (a Axis, far, ok bool) {
	n := int(s - Left) // two sides for each axis, the near one first
	if n < 0 || n > int(Upper-Left) {
		return 0, false, false
	}
	return Axis(n / 2), n%2 == 1, true
}

// Extent distinguishes the faces of a piece by their size.
type Extent int

const (
	Broad Extent = iota // length x width: a face
	Edge                // length x thickness
	End                 // width x thickness
)

// Face is a face, an edge or an end of a piece. The zero Face is none.
type Face struct {
	Side   Side
	Extent Extent
}

// None reports whether it is no face at all.
func (f Face) None() bool { return f.Side == NoSide }

var sideNames = [...]string{Left: "left", Right: "right", Front: "front", Rear: "back", Lower: "lower", Upper: "upper", Inner: "inner", Outer: "outer", Both: "both"}

// String is how a maker calls it: "inner face", "lower edge", "bottom end", "both ends"; "" for
// the zero Face.
func (f Face) String() string {
	if f.None() {
		return ""
	}
	name := sideNames[f.Side]
	switch {
	case f.Extent == End && f.Side == Lower:
		name = "bottom"
	case f.Extent == End && f.Side == Upper:
		name = "top"
	}
	said := name + " " + [...]string{Broad: "face", Edge: "edge", End: "end"}[f.Extent]
	if f.Side == Both {
		said += "s"
	}
	return said
}

// BothEnds is where a mark is that both ends of a piece have.
var BothEnds = Face{Both, End}

// extent is the extent of the faces across an axis.
func (s Solid) extent(a Axis) Extent {
	switch a {
	case s.Along:
		return End
	case s.Through:
		return Broad
	}
	return Edge
}

// Near is the face across an axis next to the zero point of the case, from which places along the
// axis are measured.
func (s Solid) Near(a Axis) Face { return Face{Left + 2*Side(a), s.extent(a)} }

// Far is the face opposite near.
func (s Solid) Far(a Axis) Face { return Face{Right + 2*Side(a), s.extent(a)} }

// EndAt is the end of a piece at which the room of a joint lies.
func (s Solid) EndAt(room Solid) Face {
	if room.At[s.Along] == s.At[s.Along] {
		return s.Near(s.Along)
	}
	return s.Far(s.Along)
}

// FaceAt is the face or the edge of a piece into which a room reaches along an axis. Only pieces
// between two bays have two such faces.
func (s Solid) FaceAt(room Solid, depth Axis) Face {
	f := Face{Inner, Broad}
	if depth == s.Across {
		f.Extent = Edge
	}
	if s.Role.partsBays() {
		f.Side = Right
		if room.At[depth] == s.At[depth] {
			f.Side = Left
		}
	}
	return f
}
