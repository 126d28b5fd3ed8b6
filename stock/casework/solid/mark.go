package solid

import (
	"slices"
	"strings"

	"sawbill/stock"
)

// Mark is a layout line, cut or hole on a part, drawn before it is cut, bored or fitted. Every
// position is exact and measured from the one edge that is named; none is the sum of others, so
// printing them rounded adds up no error.
type Mark struct {
	Part int // index into Case.Parts
	// On names the pieces of the part that have the mark, if not all of them, and
	// where: "left, inner face". Spots are the same one by one.
	On    string
	Spots []Spot
	What  string // "dado", "slide line", "mortise"
	// Measure is where the marks lie along the part. Those with a Width begin there and reach away
	// from the edge. In a box joint the positions are the borders of fingers and gaps, and Width is
	// the width of the first.
	Measure
	// Across is the second measure of marks that are points, or of slide lines
	// that begin behind the edge: each of its positions with each of Measure.
	Across Measure
	Width  stock.Length // 0 for a line or a point
	Depth  stock.Length // of what is cut; 0 where nothing is, or right through
	// Diameter is that of a bored hole; 0 where none is bored, or where the note tells it.
	Diameter stock.Length
	// Stops is how far what is cut, or a slide, keeps from where the piece begins and
	// ends, along the cut or the line; 0 where it runs through.
	Stops [2]stock.Length
	// GapFirst marks the mate of a box joint that starts with a gap.
	GapFirst bool
	// Spacers set slides without measuring: each stands on the bottom or the
	// divider below and reaches to its line.
	Spacers []stock.Length
	Note    string // "starts with a finger"
}

// Names of marks that drawings show in a manner of their own.
const (
	SlideLine  = "slide line"
	ShelfPins  = "shelf pins"
	HandleHole = "handle hole"
	Hinge      = "hinge"
	Catch      = "catch"
)

// Kind is what a single position of the mark is called beside its figure: "slide" of
// slide lines, "dowel" of dowel holes.
func (k Mark) Kind() string {
	switch k.What {
	case ShelfPins:
		return "pin"
	case "box-joint fingers":
		return "finger"
	}
	for _, last := range []string{" line", " hole", " center"} {
		if kind, ok := strings.CutSuffix(k.What, last); ok {
			return kind
		}
	}
	return k.What
}

// Spot is a place on one piece.
type Spot struct {
	Solid int    // index into Case.Solids
	Piece string // "left": distinguishes the piece from others of its part; or ""
	Face  Face
}

// Measure is positions from one edge of a part.
type Measure struct {
	From Face // none if there are no positions
	At   []stock.Length
}

// Same reports whether two measures have the same positions from the same edge.
func (m Measure) Same(n Measure) bool { return m.From == n.From && slices.Equal(m.At, n.At) }

// Same reports whether two marks differ in nothing but the pieces they are on.
func (k Mark) Same(l Mark) bool {
	return k.Part == l.Part && k.What == l.What && k.Measure.Same(l.Measure) && k.Across.Same(l.Across) &&
		k.Width == l.Width && k.Depth == l.Depth && k.Diameter == l.Diameter && k.Stops == l.Stops && k.GapFirst == l.GapFirst && slices.Equal(k.Spacers, l.Spacers) && k.Note == l.Note
}
