package marksheet

import (
	"slices"

	"sawbill/stock"
)

// Paper of a broken view, in mm.
const (
	beside   = 7.0  // kept to scale at either side of a break, at most
	parted   = 4.0  // between the two lines of a break
	longFree = 34.0 // a free stretch that may be broken
)

// fold lays a length of a piece on the paper to scale. Where it is too long, long
// stretches without marks are left out, as in a broken view (ISO 128-3, from
// memory).
type fold struct {
	ratio  float64
	knots  []knot // ascending; between two, paper is shared out evenly
	breaks []stretch
}

// unbroken is where no break must be.
const unbroken stock.Length = -1

// knot is a place on the piece, and on the paper, in mm.
type knot struct {
	at    stock.Length
	paper float64
}

// stretch is of paper, in mm.
type stretch struct{ from, to float64 }

// folded lays out a size at 1:ratio. Where it takes more than so much paper, the
// free stretches between the places to keep are broken, those that are long. The
// one that begins at breakAt, if any does, is broken in any case.
func folded(size stock.Length, keep []stock.Length, ratio int, most float64, breakAt stock.Length) fold {
	f := fold{ratio: float64(ratio)}
	stops := append([]stock.Length{0, size}, keep...)
	slices.Sort(stops)
	stops = slices.Compact(stops)
	f.knots = []knot{{}}
	paper := 0.0
	for i := 1; i < len(stops); i++ {
		free := f.mm(stops[i] - stops[i-1])
		if f.mm(size) > most && free > longFree || stops[i-1] == breakAt {
			kept := min(beside, free/3)
			back := stock.Length(kept * f.ratio * float64(stock.Millimeter))
			gap := stretch{paper + kept, paper + kept + parted}
			f.breaks = append(f.breaks, gap)
			f.knots = append(f.knots, knot{stops[i-1] + back, gap.from}, knot{stops[i] - back, gap.to})
			free = 2*kept + parted
		}
		paper += free
		f.knots = append(f.knots, knot{stops[i], paper})
	}
	return f
}

// mm is a length on the paper.
func (f fold) mm(l stock.Length) float64 { return float64(l) / float64(stock.Millimeter) / f.ratio }

// length is the paper that all of it takes.
func (f fold) length() float64 { return f.knots[len(f.knots)-1].paper }

// at is where a place lies, from the near edge; places beyond the ends lie beyond
// them.
func (f fold) at(l stock.Length) float64 {
	i, found := slices.BinarySearchFunc(f.knots, l, func(k knot, l stock.Length) int {
		return int(max(-1, min(1, k.at-l)))
	})
	switch {
	case found:
		return f.knots[i].paper
	case i == 0:
		return f.mm(l)
	case i == len(f.knots):
		return f.length() + f.mm(l-f.knots[i-1].at)
	}
	a, b := f.knots[i-1], f.knots[i]
	return a.paper + (b.paper-a.paper)*float64(l-a.at)/float64(b.at-a.at)
}
