package stock

// Operation is one kind of milling.
type Operation int

const (
	Plane       Operation = iota // a face, on jointer or planer
	TrueEdge                     // an edge, against the fence or on the jointer
	Resaw                        // the thickness is divided
	SquareEnd                    // one end is cut square
	CutToLength                  // crosscuts at a stop
	CutMiter                     // one end at an angle, its long point at the stop
)

// String returns the word of the plan file: "plane", "true edge", "resaw",
// "square end", "cut to length" or "miter".
func (o Operation) String() string {
	return [...]string{"plane", "true edge", "resaw", "square end", "cut to length", "miter"}[o]
}

// Milling is a step on the way from a blank to its parts.
type Milling struct {
	Operation Operation
	// Setting is the size that is left of the piece in hand: what planer, fence
	// or stop is set to.
	Setting Length
	// Off is the loss of the piece in hand, all kerfs included.
	Off Length
	// Pieces come out of one piece in hand, all alike.
	Pieces int
	// Rest is how thick a piece is that resawing leaves over, worth keeping; else 0.
	Rest Length
}

// thinnestKept is the thinnest piece that is resawn off and kept instead of planed to
// shavings: 6 mm (1/4 in), common practice, no source.
const thinnestKept = 6 * Millimeter

// Milling lists, in order, what makes the parts of a blank out of stock as thick
// as from. It is empty where the saw delivers the part as it is.
//
// What two planed faces lose comes off in equal amounts, so that the piece stays
// flat. Ripped over-wide by two edges, the piece is trued on one edge, turned,
// and trued on the other. What is to be resawn needs a true edge to stand on
// first; from a board that is thick enough the rest is kept. All that is ganged is
// milled in one piece, and parted last.
func (b Blank) Milling(from Length) []Milling {
	a := b.Part.Allowance
	var steps []Milling
	if rest := b.rest(from); rest > 0 {
		steps = planed(steps, from, from-b.reference(), 1)
		steps = b.edges(steps)
		each, n := b.layer(), Length(b.Layers)
		steps = append(steps, Milling{Resaw, each, from - b.reference() - n*each, b.Layers, rest})
		steps = planed(steps, each, b.Part.Thickness, a.Faces)
	} else if b.Layers > 1 {
		each := b.layer()
		steps = planed(steps, from, b.Thickness, 1)
		steps = b.edges(steps)
		steps = append(steps, Milling{Resaw, each, b.Thickness - Length(b.Layers)*each, b.Layers, 0})
		steps = planed(steps, each, b.Part.Thickness, a.Faces)
	} else {
		steps = planed(steps, from, b.Part.Thickness, a.Faces)
		steps = b.edges(steps)
	}
	return b.lengths(steps)
}

// reference is planed off a board so that it has a true face to resaw along.
func (b Blank) reference() Length {
	if b.Part.Allowance.Faces == 0 {
		return 0
	}
	return b.Part.Allowance.Face
}

// rest is how thick a piece is kept of a board so thick when the layers are resawn off
// it; 0 where nothing is resawn or what is left is too thin.
func (b Blank) rest(from Length) Length {
	rest := from - b.reference() - b.Thickness - b.ResawKerf
	if !b.Part.Resaw || rest < thinnestKept {
		return 0
	}
	return rest
}

// layer is how thick one of the layers is before its faces are planed.
func (b Blank) layer() Length {
	return b.Part.Thickness + Length(b.Part.Allowance.Faces)*b.Part.Allowance.Face
}

// planed adds the planing from one thickness to another, which takes one face
// even where none is counted: the board is thicker than what is wanted of it.
func planed(steps []Milling, from, to Length, faces int) []Milling {
	if from == to {
		return steps
	}
	if faces > 1 {
		half := (from + to) / 2
		steps = append(steps, Milling{Plane, half, from - half, 1, 0})
		from = half
	}
	return append(steps, Milling{Plane, to, from - to, 1, 0})
}

func (b Blank) edges(steps []Milling) []Milling {
	a := b.Part.Allowance
	if a.Edge == 0 {
		return steps
	}
	for i := a.Edges - 1; i >= 0; i-- {
		steps = append(steps, Milling{TrueEdge, b.Part.Width + Length(i)*a.Edge, a.Edge, 1, 0})
	}
	return steps
}

// lengths adds what squares the ends and parts a gang. Of two ends, or where
// there is a gang to part, one is squared first, to lie at the stop.
func (b Blank) lengths(steps []Milling) []Milling {
	a, left := b.Part.Allowance, b.Length
	if a.End > 0 && (a.Ends == 2 || a.Ends == 1 && b.Gang > 1) {
		left -= a.End
		steps = append(steps, Milling{SquareEnd, left, a.End, 1, 0})
	}
	length := b.Part.Length + Length(a.Miters)*a.Miter
	if left > length {
		steps = append(steps, Milling{CutToLength, length, left - Length(b.Gang)*length, b.Gang, 0})
	}
	for range a.Miters {
		off := a.Miter
		length -= off
		steps = append(steps, Milling{CutMiter, length, off, 1, 0})
	}
	return steps
}
