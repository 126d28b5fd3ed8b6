package report

import (
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/edging"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// places tells, one piece after another, where in a case it belongs. Pieces of a
// part are alike, so the first that is cut takes the first place.
type places struct {
	of     *casework.Case // nil: there is none
	units  map[int]string // the sub-assembly of a part that is in no drawer
	stands [][]int        // by part: its solids that have no piece yet
	// unsure are the parts of which some pieces are there already: nobody knows which
	// places these have.
	unsure []bool
}

// place is where a piece, or what one blank holds, belongs.
type place struct {
	into []string // sub-assemblies and names: "carcass, left", "drawer 2"
	// edge and end are those at the lower edge and the right end of a label that
	// lies along the piece on its face; empty for several pieces in one blank. The face is
	// the inside where a piece has one.
	face, edge, end string
	inside          bool
	edged           edging.Sides    // of the label's picture, that get edging
	edging          []casework.Face // the same by their names
	marks           []string        // what is laid out on it: "rabbet"
}

// newPlaces are those for the pieces of a bill.
func newPlaces(c *casework.Case, bill []cutplan.Blank) *places {
	p := &places{of: c}
	if c == nil {
		return p
	}
	p.units = make(map[int]string)
	for _, u := range c.Units() {
		for _, it := range u.Items {
			if u.Drawers == nil {
				p.units[it.Part] = u.Name
			}
		}
	}
	p.stands = make([][]int, len(c.Parts))
	for i, s := range c.Solids {
		if s.Part >= 0 {
			p.stands[s.Part] = append(p.stands[s.Part], i)
		}
	}
	p.unsure = make([]bool, len(c.Parts))
	coming := make([]int, len(c.Parts))
	for _, b := range bill {
		if part := p.part(b); part >= 0 {
			coming[part] += b.Count * b.Holds()
		}
	}
	for part, n := range coming {
		p.unsure[part] = n < len(p.stands[part])
	}
	return p
}

// next is the place of the next piece of a blank; nothing if it is of no case.
func (p *places) next(b cutplan.Blank) place {
	if p.of == nil {
		return place{}
	}
	part := p.part(b)
	if part < 0 {
		return place{}
	}
	if p.unsure[part] {
		return p.anyOf(part)
	}
	n := min(b.Holds(), len(p.stands[part]))
	solids := p.stands[part][:n]
	p.stands[part] = p.stands[part][n:]
	var at place
	for _, i := range solids {
		add(&at.into, p.into(i))
	}
	if at.into == nil && p.units[part] != "" {
		at.into = []string{p.units[part]} // stock for joinery stands nowhere
	}
	for _, k := range p.of.Marks {
		if k.Part == part && (len(k.Spots) == 0 || slices.ContainsFunc(k.Spots, func(s casework.Spot) bool { return slices.Contains(solids, s.Solid) })) {
			add(&at.marks, k.What)
		}
	}
	if n == 1 && b.Gang*b.Layers == 1 {
		p.sides(&at, solids[0])
	}
	return at
}

// part is that of a blank; -1 if it is of no case.
func (p *places) part(b cutplan.Blank) int {
	return slices.IndexFunc(p.of.Parts, func(of stock.Part) bool { return of.From == b.Part.From && of.Name == b.Part.Name })
}

// anyOf is the place of a piece of a part of which others are there: where it goes is
// seen at the case.
func (p *places) anyOf(part int) place {
	var at place
	var all []string
	for _, i := range p.stands[part] {
		add(&all, p.into(i))
	}
	if all != nil {
		at.into = []string{strings.Join(all, " or ")}
	}
	for _, k := range p.of.Marks {
		if k.Part == part {
			add(&at.marks, k.What)
		}
	}
	return at
}

// add appends s unless it is there.
func add(to *[]string, s string) {
	if s != "" && !slices.Contains(*to, s) {
		*to = append(*to, s)
	}
}

// into names the sub-assembly of a solid, and which of the alike pieces in it it is.
func (p *places) into(solid int) string {
	s := p.of.Solids[solid]
	said := p.units[s.Part]
	if s.Drawer > 0 {
		said = "drawer " + strconv.Itoa(s.Drawer)
	}
	for _, k := range p.of.Marks {
		for _, spot := range k.Spots {
			if spot.Solid == solid && spot.Piece != "" {
				return said + ", " + spot.Piece
			}
		}
	}
	return said
}

// What lies low and high along an axis: as an edge or end, and as a face.
var (
	lowSide  = [...]string{casework.X: "left", casework.Y: "front", casework.Z: "lower"}
	highSide = [...]string{casework.X: "right", casework.Y: "back", casework.Z: "top"}
	lowFace  = [...]string{casework.X: "left face", casework.Y: "front face", casework.Z: "underside"}
	highFace = [...]string{casework.X: "right face", casework.Y: "back face", casework.Z: "upper face"}
)

// sides sets the face of a piece that a label goes on, and what lies at the label's lower
// edge and right end. Of a piece with an inside that is the face; of others the one that
// is seen with the low edge below and the high end to the right.
func (p *places) sides(at *place, solid int) {
	s := p.of.Solids[solid]
	if s.Along == s.Across || s.Across == s.Through || s.Along == s.Through {
		return
	}
	// Length to the right, width upwards: what looks at the reader is the far side
	// of the third axis where the three follow one another as X, Y, Z do.
	far, turned := (s.Along+1)%3 == s.Across, false
	lower := lowSide
	if inner, ok := p.insideFar(s); ok {
		at.inside = true
		if inner != far { // turned over along its length
			far, turned, lower = inner, true, highSide
		}
	}
	names := lowFace
	if far {
		names = highFace
	}
	at.face, at.edge, at.end = names[s.Through], lower[s.Across], highSide[s.Along]
	if s.Role == "side" && at.inside {
		at.face = "inner face"
	}
	at.edging = p.of.Edged(solid)
	for _, e := range at.edging {
		axis, far, _ := e.Side.Axis()
		switch {
		case axis == s.Along && far:
			at.edged.Right = true
		case axis == s.Along:
			at.edged.Left = true
		case far == turned:
			at.edged.Lower = true
		default:
			at.edged.Upper = true
		}
	}
}

// insideFar reports whether the far face of a piece looks to the middle of the case, or of
// its drawer; ok is false for pieces that stand inside, and have no inside themselves.
func (p *places) insideFar(s casework.Solid) (far, ok bool) {
	switch s.Role {
	case "shelf", "divider", "partition", "mid stile", "mid rail":
		return false, false
	}
	if s.Role.Strip() || s.Role.Base() {
		return false, false
	}
	var from, to stock.Length
	first := true
	for _, other := range p.of.Solids {
		if other.Drawer != s.Drawer || other.Role.Base() {
			continue
		}
		if first {
			from, to, first = other.At[s.Through], other.End()[s.Through], false
		}
		from, to = min(from, other.At[s.Through]), max(to, other.End()[s.Through])
	}
	middle := s.At[s.Through] + s.End()[s.Through]
	return middle < from+to, middle != from+to
}
