package design

import (
	"slices"

	"sawbill/stock"
)

// Tools is what a case is measured and cut with, as far as its sizes depend on it.
type Tools struct {
	// Step is what ruler, fence and stop are set by. Sizes that the design leaves free lie on it.
	// 0 keeps all sizes exact.
	Step stock.Length
	// Bits are the widths that router bits and groovers cut, Chisels those of mortise chisels, from
	// the smallest. Joints that the design leaves free take them; without any they stay exact.
	Bits, Chisels []stock.Length
	// Dowels are those at hand, by diameter, of each the longest first. Without any there are the
	// usual ones.
	Dowels []Dowel
}

// Dowel is a size of dowel.
type Dowel struct{ Diameter, Length stock.Length }

// UsualTools are those of a shop that works in units. A step of 1/32 in is what a table saw with
// a stop is good for: common practice, no source. Straight router bits, hollow mortise chisels and
// fluted dowels are from memory.
func UsualTools(units stock.Units) Tools {
	const mm, in = stock.Millimeter, stock.Inch
	if units == stock.Inches {
		return Tools{
			Step:    in / 32,
			Bits:    []stock.Length{in / 8, 3 * in / 16, in / 4, 5 * in / 16, 3 * in / 8, in / 2, 5 * in / 8, 3 * in / 4},
			Chisels: []stock.Length{in / 4, 5 * in / 16, 3 * in / 8, in / 2, 5 * in / 8, 3 * in / 4},
			Dowels: []Dowel{{in / 4, 5 * in / 4}, {in / 4, in}, {5 * in / 16, 3 * in / 2}, {5 * in / 16, 5 * in / 4},
				{3 * in / 8, 2 * in}, {3 * in / 8, 3 * in / 2}},
		}
	}
	return Tools{
		Step:    mm / 2,
		Bits:    []stock.Length{3 * mm, 4 * mm, 5 * mm, 6 * mm, 8 * mm, 10 * mm, 12 * mm, 16 * mm, 18 * mm, 20 * mm},
		Chisels: []stock.Length{6 * mm, 8 * mm, 10 * mm, 12 * mm, 16 * mm},
		Dowels: []Dowel{{6 * mm, 30 * mm}, {6 * mm, 25 * mm}, {8 * mm, 40 * mm}, {8 * mm, 35 * mm}, {8 * mm, 30 * mm},
			{10 * mm, 40 * mm}, {10 * mm, 35 * mm}, {10 * mm, 30 * mm}},
	}
}

// A dado stack makes any width from 1/4 to 13/16 in with its shims: from memory.
const (
	narrowestStack = stock.Inch / 4
	widestStack    = 13 * stock.Inch / 16
)

// OneOf is the size of a tool nearest to a third of the stock, the smaller of two, but no more than
// half of the stock; the third itself where there is none.
func OneOf(tools []stock.Length, third stock.Length) stock.Length {
	best, found := third, false
	for _, t := range tools {
		if 2*t <= 3*third && (!found || max(t-third, third-t) < max(best-third, third-best)) {
			best, found = t, true
		}
	}
	return best
}

// WarnOfWidth warns once of a width that none of the tools cuts. The text what names it: "finger"; key
// is the list of tools.
func (r *Reader) WarnOfWidth(what string, width stock.Length, tools []stock.Length, key string) {
	if len(tools) == 0 || slices.Contains(tools, width) {
		return
	}
	subject := "width of a " + what
	if slices.ContainsFunc(r.Cautions, func(c Caution) bool { return c.Subject == subject }) {
		return
	}
	r.Caution(subject, "None of the "+key+" under [tools] is "+r.Print(width)+" wide: see whether a saw cuts it, or list there what you have.")
}

// WarnOfFingers warns of a stated width of fingers that neither a bit nor a dado stack cuts.
func (r *Reader) WarnOfFingers(width stock.Length) {
	if width < narrowestStack || width > widestStack {
		r.WarnOfWidth("finger", width, r.From.Tools.Bits, "bits")
	}
}

// WarnOfNarrow warns of what is cut for a piece and is narrower than every bit. Anything wider is cut
// in two passes, or with a stack.
func (r *Reader) WarnOfNarrow(what string, width stock.Length) {
	if bits := r.From.Tools.Bits; len(bits) > 0 && width < bits[0] {
		r.WarnOfWidth(what, width, bits, "bits")
	}
}

// The rule of the step, in one place: a size that the design states never changes. A piece with room
// beside it, a gap or a clearance, is rounded down to the step, and the room takes what that leaves,
// less than a step. So room is never less than was given. Positions that are free are rounded too.

// Down is the last step at or below l. A length below the first step stays as it is.
func (r *Reader) Down(l stock.Length) stock.Length {
	step := r.From.Tools.Step
	if step == 0 || l < step {
		return l
	}
	return l - l%step
}

// Nearest is the step nearest to l, for l of 0 or more.
func (r *Reader) Nearest(l stock.Length) stock.Length { return r.Down(l + r.From.Tools.Step/2) }

// Up is the size of room that nothing else settles: up to the step. What is more goes to room.
func (r *Reader) Up(size stock.Sum, room string) stock.Sum {
	step := r.From.Tools.Step
	if step == 0 || size.Total()%step == 0 {
		return size
	}
	return append(slices.Clip(size), stock.Term{Times: 1, Value: step - size.Total()%step, Label: "rounded up, more " + room})
}

// Fitted is the size of a piece with n gaps beside it, all alike, rounded down. The sum names what
// they come to; more is what all of them take together.
func (r *Reader) Fitted(size stock.Sum, n int, gap stock.Length, name string) (fitted stock.Sum, more stock.Length) {
	more = size.Total() - r.Down(size.Total())
	if more <= 0 {
		return size, 0
	}
	left := name + " " + r.From.Ruler.Print(gap+more/stock.Length(n))
	return append(slices.Clip(size), stock.Term{Times: -1, Value: more, Label: "rounded down, " + left}), more
}
