package casework

import (
	"fmt"

	"sawbill/stock"
)

// reader looks up what a design says, and keeps what is wrong with it.
type reader struct {
	design Design
	from   Context
	place  at // of the [case] table

	cautions []Caution
	faults   []Fault
	doubts   []string // keys whose value is no good
}

func (r *reader) print(l stock.Length) string { return r.from.Ruler.PrintUnit(l) }

// printOrNothing prints what is left.
func (r *reader) printOrNothing(left stock.Length) string {
	if left <= 0 {
		return "nothing"
	}
	return r.print(left)
}

// reckoned prints a size with the sum it came from, where there is one.
func (r *reader) reckoned(size stock.Sum) string {
	if len(size) == 1 && size[0].Times == 1 && size[0].Over <= 1 {
		return fmt.Sprintf("%s (%s)", r.print(size[0].Value), size[0].Label)
	}
	return size.Print(r.from.Ruler)
}

// required is a length that has no default.
func (r *reader) required(a at, key string, l Length, meaning string) stock.Length {
	if !l.Set {
		r.doubt(a.under(0, key))
		r.fault(a.under(0, key), "not given, and needed", "give "+meaning)
	}
	return l.Value
}

// orDefault is the given length, or the default in the units of the job.
func (r *reader) orDefault(given Length, metric, inch stock.Length) stock.Length {
	switch {
	case given.Set:
		return given.Value
	case r.from.Ruler.Units == stock.Inches:
		return inch
	}
	return metric
}

// grams is a weight as given: kg, in a job in inches pounds.
func (r *reader) grams(given Count) stock.Grams {
	if r.from.Ruler.Units == stock.Inches {
		return stock.OfPounds(given.Value)
	}
	return stock.Grams(1000 * given.Value)
}

// drawerKey is the place of a key of [case.drawer].
func (r *reader) drawerKey(key string) at {
	d := r.design.Drawer
	line := map[string]int{"slide_line": d.SlideLine.Line, "slide_length": d.SlideLength.Line,
		"handle_spacing": d.HandleSpacing.Line, "finger_width": d.FingerWidth.Line}[key]
	return r.place.under(d.Line, "drawer").under(line, key)
}
