package design

import (
	"fmt"
	"reflect"
	"slices"

	"sawbill/stock"
	"sawbill/stock/fault"
)

// Reader looks up what a design says, fills in defaults, and keeps what is wrong with it.
type Reader struct {
	Design Design
	From   Context
	Root   Place // of the [case] table

	Cautions []Caution
	Faults   []fault.Fault
	Doubts   []string // keys whose value is no good
}

// Read checks each value of a design alone. JointWords are the words of a key whose field has the
// tag joint:"...".
func Read(d Design, from Context, jointWords func(tag string) []string) *Reader {
	r := &Reader{Design: d, From: from, Root: Place{d.Line, "case"}}
	checker{r, jointWords}.table(reflect.ValueOf(&r.Design).Elem(), r.Root)
	return r
}

// InOrder are the faults in the order of their lines.
func (r *Reader) InOrder() []fault.Fault {
	slices.SortStableFunc(r.Faults, func(a, b fault.Fault) int { return a.Line - b.Line })
	return r.Faults
}

// Print writes a length with its unit.
func (r *Reader) Print(l stock.Length) string { return r.From.Ruler.PrintUnit(l) }

// PrintOrNothing prints what is left.
func (r *Reader) PrintOrNothing(left stock.Length) string {
	if left <= 0 {
		return "nothing"
	}
	return r.Print(left)
}

// Explained prints a size with the sum it came from, where there is one.
func (r *Reader) Explained(size stock.Sum) string {
	if len(size) == 1 && size[0].Times == 1 && size[0].Over <= 1 {
		return fmt.Sprintf("%s (%s)", r.Print(size[0].Value), size[0].Label)
	}
	return size.Print(r.From.Ruler)
}

// Required is a length that has no default.
func (r *Reader) Required(a Place, key string, l Length, meaning string) stock.Length {
	if !l.Set {
		r.Doubt(a.Under(0, key))
		r.Fault(a.Under(0, key), "not given, and needed", "give "+meaning)
	}
	return l.Value
}

// OrDefault is the given length, or the default in the units of the job.
func (r *Reader) OrDefault(given Length, metric, inch stock.Length) stock.Length {
	switch {
	case given.Set:
		return given.Value
	case r.From.Ruler.Units == stock.Inches:
		return inch
	}
	return metric
}

// Grams is a weight as given: kg, in a job in inches pounds.
func (r *Reader) Grams(given Count) stock.Grams {
	if r.From.Ruler.Units == stock.Inches {
		return stock.OfPounds(given.Value)
	}
	return stock.Grams(1000 * given.Value)
}

// DrawerKey is the place of a key of [case.drawer].
func (r *Reader) DrawerKey(key string) Place {
	d := r.Design.Drawer
	line := map[string]int{"slide_line": d.SlideLine.Line, "slide_length": d.SlideLength.Line,
		"handle_spacing": d.HandleSpacing.Line, "finger_width": d.FingerWidth.Line}[key]
	return r.Root.Under(d.Line, "drawer").Under(line, key)
}

// Sound reports whether nothing is wrong and nothing in doubt.
func (r *Reader) Sound() bool { return len(r.Faults) == 0 && len(r.From.Doubts)+len(r.Doubts) == 0 }

// Or is the word that was written, or the default.
func Or(word Word, otherwise string) string {
	if word.Set {
		return word.Value
	}
	return otherwise
}
