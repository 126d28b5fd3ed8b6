package construction

import (
	"fmt"

	"sawbill/stock"
	"sawbill/stock/casework/design"
	"sawbill/stock/casework/internal/sums"
	"sawbill/stock/casework/internal/wording"
)

// Contents are alike pieces in rows that must go into an opening.
type Contents struct {
	At                   design.Place
	name                 string        // "bottles"; "" where none was given
	width, Height, Depth design.Length // of one; what is not given claims nothing
	across, High, Deep   int
	Shelves              int // between the rows; 0 where they stand on one another
	clearance            stock.Length
	weight               stock.Grams // of all; 0 if it was not given
}

// contents reads what must go into an opening, nil if nothing was said of it.
func (r *Construction) contents(a design.Place, d design.Opening) *Contents {
	in := d.Contents
	if in == (design.Contents{}) {
		return nil
	}
	shelvesAt := a.Path + ".shelves"
	a = a.Under(in.Line, "contents")
	rows := max(d.Shelves.Value, 0) + 1
	c := &Contents{At: a, name: in.Name.Value, width: in.Width, Height: in.Height, Depth: in.Depth,
		across: orCount(in.Across, 1), High: orCount(in.High, rows), Deep: orCount(in.Deep, 1), Shelves: rows - 1,
		// Room for a hand or a swelling book: common practice, no source.
		clearance: r.In.OrDefault(in.Clearance, 10*stock.Millimeter, 3*stock.Inch/8),
		weight:    r.In.Grams(in.Weight)}
	if !in.Weight.Set && !in.Width.Set && !in.Height.Set && !in.Depth.Set && !r.In.DoubtfulWithin(a.Path) {
		r.In.Fault(a, "contents without a size or a weight claim nothing", "give width, height or depth of one piece, or the weight of all")
		return nil
	}
	for _, way := range []struct {
		key, size string
		design.Count
		given bool
	}{{"across", "width", in.Across, in.Width.Set}, {"high", "height", in.High, in.Height.Set}, {"deep", "depth", in.Deep, in.Depth.Set}} {
		if way.Set && !way.given && !r.In.Doubtful(a.Path+"."+way.size) {
			r.In.Fault(a.Under(way.Line, way.key), way.key+" has no use without a "+way.size, "give the "+way.size+" of one piece, or leave "+way.key+" out")
		}
	}
	if rows > 1 && c.High != rows && !r.In.Doubtful(shelvesAt) {
		r.In.Fault(a.Under(in.High.Line, "high"), fmt.Sprintf("%s %s %d spaces, each for one row, and %s given",
			wording.Counted(c.Shelves, "shelf", "shelves"), wording.Many(c.Shelves, "makes", "make"), rows, wording.Counted(c.High, "row is", "rows are")), "make high "+fmt.Sprint(rows)+" or leave it out, or change shelves")
	}
	if len(d.Drawers) > 0 {
		r.In.Fault(a, "an opening holds contents or drawers, and both are given", "make two openings of it")
		return nil
	}
	return c
}

func orCount(given design.Count, otherwise int) int {
	if given.Set {
		return given.Value
	}
	return otherwise
}

// number is how many there are, 0 where they were not told to fill the width.
func (c Contents) number() int {
	if !c.width.Set {
		return 0
	}
	return c.across * c.High * c.Deep
}

// called is their name in a sum. What has a name of its own keeps it: whether that
// is of one or of many is not known.
func (c Contents) called(n int) string {
	if c.name == "" {
		return wording.Many(n, "piece", "pieces")
	}
	return c.name
}

// String names them, with their number where there are several.
func (c Contents) String() string {
	switch n := c.number(); {
	case n == 1 && c.name == "":
		return "1 piece"
	case n < 2:
		return c.called(n)
	default:
		return fmt.Sprint(n, " ", c.called(n))
	}
}

// Room is what so many pieces take in one direction, nil if their size in it was
// not given.
func (c Contents) Room(times int, one design.Length, clearances int) stock.Sum {
	if !one.Set {
		return nil
	}
	return sums.Plus(nil, stock.Term{Times: times, Value: one.Value, Label: c.called(times)},
		stock.Term{Times: clearances, Value: c.clearance, Label: "clearance"})
}

// WidthNeed is the width that they need at least, nil if their size in it is not given.
func (c Contents) WidthNeed() stock.Sum { return c.Room(c.across, c.width, 1) }

// HeightNeed counts a clearance for each space between shelves.
func (c Contents) HeightNeed(shelf stock.Length) stock.Sum {
	need := c.Room(c.High, c.Height, c.Shelves+1)
	if need == nil {
		return nil
	}
	return sums.Plus(need, stock.Term{Times: c.Shelves, Value: shelf, Label: "shelf"})
}

// Row is the weight of one of the rows that stand on shelves of their own; without
// shelves all of them stand on one another.
func (c *Contents) Row() stock.Grams {
	if c == nil {
		return 0
	}
	rows := stock.Grams(c.Shelves + 1)
	return (c.weight + rows - 1) / rows
}
