package casework

import (
	"reflect"
	"strings"
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/sample"
	"sawbill/stock/casework/solid"
)

// onStep rounds every length that v states down to the step.
func onStep(v reflect.Value, step stock.Length) {
	if l, is := v.Addr().Interface().(*Length); is {
		l.Value -= l.Value % step
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				onStep(v.Field(i), step)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			onStep(v.Index(i), step)
		}
	}
}

// Where all that a design states lies on the step, no two parts of one material differ by less: they
// would be cut at two settings that nobody can tell apart. Dividers are not looked at: they fill
// their bay, which shares what is left and has no room to round into.
func TestPartsAreAlikeOrAStepApart(t *testing.T) {
	from := withTools(stock.Millimeters)
	pairs := 0
	sample.Each(func(seed uint64, d Design) {
		onStep(reflect.ValueOf(&d).Elem(), from.Tools.Step)
		parts := derive(t, d, from).Parts
		for i, a := range parts {
			for _, b := range parts[:i] {
				if a.Material != b.Material || a.Thickness != b.Thickness || strings.Contains(a.Name+b.Name, "divider") {
					continue
				}
				for _, of := range [][2]stock.Length{{a.Length, b.Length}, {a.Width, b.Width}} {
					pairs++
					if apart := max(of[0]-of[1], of[1]-of[0]); apart > 0 && apart < from.Tools.Step {
						t.Errorf("seed %d: %s is %s, %s is %s", seed, a.Name, from.Ruler.Print(of[0]), b.Name, from.Ruler.Print(of[1]))
					}
				}
			}
		}
	})
	if pairs < 10_000 {
		t.Errorf("only %d pairs of sides were looked at", pairs)
	}
}

// Hinges and catches of doors lie on the step, and so do slide lines, but for a few boxes that have
// no room to move.
func TestFreeMarksLieOnTheStep(t *testing.T) {
	from := withTools(stock.Millimeters)
	slides, off := 0, 0
	sample.Each(func(seed uint64, d Design) {
		onStep(reflect.ValueOf(&d).Elem(), from.Tools.Step)
		c := derive(t, d, from)
		for _, k := range c.Marks {
			part := c.Parts[k.Part].Name
			for _, at := range k.At {
				stepped := at%from.Tools.Step == 0
				switch {
				case k.What == solid.SlideLine:
					slides++
					if !stepped {
						off++
					}
				case (k.What == solid.Hinge || k.What == solid.Catch) && strings.HasPrefix(part, "door") && !stepped:
					t.Errorf("seed %d: %s of %s at %s", seed, k.What, part, from.Ruler.Print(at))
				}
			}
		}
	})
	if slides < 500 || 50*off > slides {
		t.Errorf("%d of %d slide lines are off the step", off, slides)
	}
}
