package planfile

import (
	"fmt"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// The file has words where the program has constants. They stay as they are, whatever
// becomes of the constants, their order and their String methods.

// words lists the words of one enumeration.
type words[T comparable] []word[T]

type word[T comparable] struct {
	is   T
	said string
}

var (
	unitWords  = words[stock.Units]{{stock.Millimeters, "mm"}, {stock.Inches, "in"}}
	kindWords  = words[stock.Kind]{{stock.Sheet, "sheet"}, {stock.Board, "board"}}
	grainWords = words[stock.Grain]{{stock.GrainLength, "length"}, {stock.GrainWidth, "width"}, {stock.GrainAny, "any"}, {stock.GrainUnknown, "unknown"}}
	firstWords = words[stock.FirstCut]{{stock.FirstAny, "any"}, {stock.FirstRip, "rip"}, {stock.FirstCrosscut, "crosscut"}}
	nextWords  = words[stock.NextCut]{{stock.NextAsSaid, ""}, {stock.NextAny, "any"}, {stock.NextRip, "rip"}, {stock.NextCrosscut, "crosscut"}}
	useWords   = words[cutplan.Use]{{cutplan.Split, "split"}, {cutplan.Part, "part"}, {cutplan.Offcut, "offcut"}, {cutplan.Waste, "waste"}}
	cutWords   = words[cutplan.Cut]{{cutplan.Rip, "rip"}, {cutplan.Crosscut, "crosscut"}}
	guideWords = words[cutplan.Guide]{{cutplan.Fence, "fence"}, {cutplan.Stop, "stop"}, {cutplan.Marked, "mark"}}
)

// of returns the word for v.
func (w words[T]) of(v T) string {
	for _, one := range w {
		if one.is == v {
			return one.said
		}
	}
	panic(fmt.Sprintf("planfile: no word stands for %v", v))
}

// read returns the constant for a word.
func (w words[T]) read(d *decoder, said string) T {
	for _, one := range w {
		if one.said == said {
			return one.is
		}
	}
	d.bad("the word %q in the file has no meaning", said)
	return w[0].is
}
