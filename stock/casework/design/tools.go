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
}

// UsualTools are those of a shop that works in units. A step of 1/32 in is what a table saw with
// a stop is good for: common practice, no source.
func UsualTools(units stock.Units) Tools {
	if units == stock.Inches {
		return Tools{Step: stock.Inch / 32}
	}
	return Tools{Step: stock.Millimeter / 2}
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
