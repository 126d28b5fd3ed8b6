package casework

import (
	"fmt"

	"sawbill/stock"
)

// contents is what must go into an opening: alike pieces in rows.
type contents struct {
	at                   at
	name                 string // "bottles"; "" where none was given
	width, height, depth Length // of one; what is not given claims nothing
	across, high, deep   int
	shelves              int // between the rows; 0 where they stand on one another
	clearance            stock.Length
	weight               stock.Grams // of all; 0 if it was not given
}

// contents reads what must go into an opening, nil if nothing was said of it.
func (r *reckoner) contents(a at, d Opening) *contents {
	in := d.Contents
	if in == (Contents{}) {
		return nil
	}
	shelvesAt := a.path + ".shelves"
	a = a.under(in.Line, "contents")
	rows := max(d.Shelves.Value, 0) + 1
	c := &contents{at: a, name: in.Name.Value, width: in.Width, height: in.Height, depth: in.Depth,
		across: orCount(in.Across, 1), high: orCount(in.High, rows), deep: orCount(in.Deep, 1), shelves: rows - 1,
		// Room for a hand or a swelling book: common practice, no source.
		clearance: r.orDefault(in.Clearance, 10*stock.Millimetre, 3*stock.Inch/8),
		weight:    r.grams(in.Weight)}
	if !in.Weight.Set && !in.Width.Set && !in.Height.Set && !in.Depth.Set && !r.doubtfulWithin(a.path) {
		r.fault(a, "contents without a size or a weight claim nothing", "give width, height or depth of one piece, or the weight of all")
		return nil
	}
	for _, way := range []struct {
		key, size string
		Count
		given bool
	}{{"across", "width", in.Across, in.Width.Set}, {"high", "height", in.High, in.Height.Set}, {"deep", "depth", in.Deep, in.Depth.Set}} {
		if way.Set && !way.given && !r.doubtful(a.path+"."+way.size) {
			r.fault(a.under(way.Line, way.key), way.key+" has no use without a "+way.size, "give the "+way.size+" of one piece, or leave "+way.key+" out")
		}
	}
	if rows > 1 && c.high != rows && !r.doubtful(shelvesAt) {
		r.fault(a.under(in.High.Line, "high"), fmt.Sprintf("%s %s %d spaces, each for one row, and %s given",
			counted(c.shelves, "shelf", "shelves"), many(c.shelves, "makes", "make"), rows, counted(c.high, "row is", "rows are")), "make high "+fmt.Sprint(rows)+" or leave it out, or change shelves")
	}
	if len(d.Drawers) > 0 {
		r.fault(a, "an opening holds contents or drawers, and both are given", "make two openings of it")
		return nil
	}
	return c
}

func orCount(given Count, otherwise int) int {
	if given.Set {
		return given.Value
	}
	return otherwise
}

// number is how many there are, 0 where they were not told to fill the width.
func (c contents) number() int {
	if !c.width.Set {
		return 0
	}
	return c.across * c.high * c.deep
}

// called is their name in a sum. What has a name of its own keeps it: whether that
// is of one or of many is not known.
func (c contents) called(n int) string {
	if c.name == "" {
		return many(n, "piece", "pieces")
	}
	return c.name
}

// String names them, with their number where there are several.
func (c contents) String() string {
	switch n := c.number(); {
	case n == 1 && c.name == "":
		return "1 piece"
	case n < 2:
		return c.called(n)
	default:
		return fmt.Sprint(n, " ", c.called(n))
	}
}

// room is what so many pieces take in one direction, nil if their size in it was
// not given.
func (c contents) room(times int, one Length, clearances int) stock.Sum {
	if !one.Set {
		return nil
	}
	return plus(nil, stock.Term{Times: times, Value: one.Value, Label: c.called(times)},
		stock.Term{Times: clearances, Value: c.clearance, Label: "clearance"})
}

func (c contents) widthNeed() stock.Sum { return c.room(c.across, c.width, 1) }

// heightNeed counts a clearance for each space between shelves.
func (c contents) heightNeed(shelf stock.Length) stock.Sum {
	need := c.room(c.high, c.height, c.shelves+1)
	if need == nil {
		return nil
	}
	return plus(need, stock.Term{Times: c.shelves, Value: shelf, Label: "shelf"})
}

// contentsDepth is the least inside depth for what goes into an opening: the
// panels that bear it begin behind a front frame, shelves behind their set-back,
// and an inset door stands before it.
func (r *reckoner) contentsDepth(o opening) stock.Sum {
	need := o.contents.room(o.contents.deep, o.contents.depth, 1)
	if need == nil {
		return nil
	}
	front := r.origin()[Y]
	need = plus(need, stock.Term{Times: 1, Value: front, Label: "front frame"})
	need = minus(need, stock.Sum{r.made.doors.shelfFront(o, front)})
	if o.shelves > 0 {
		need = plus(need, stock.Term{Times: 1, Value: r.made.shelf.setBack, Label: "set back"})
	}
	return need
}

// widestContents are those of a bay that need most width.
func (b bay) widestContents() (widest *contents, need stock.Sum) {
	for _, o := range b.openings {
		if o.contents == nil {
			continue
		}
		if width := o.contents.widthNeed(); width != nil && (need == nil || width.Total() > need.Total()) {
			widest, need = o.contents, width
		}
	}
	return widest, need
}

// hold lets a member take what must go into it. They settle it, at least, where
// nothing else does; else they must find room. The size was written in the table
// at a, or settled by drawers.
func (r *reckoner) hold(m *member, c *contents, need stock.Sum, size string, written Length, a at) bool {
	switch {
	case !m.settled:
		m.size, m.settled, m.least = need, true, true
	case need.Total() <= m.size.Total():
	case written.Set:
		m.refused = &refusal{at: a.under(written.Line, size), size: size, of: size + " of " + m.name, need: need.Total(), least: true,
			cause: fmt.Sprintf("%s is given, but the contents need %s", r.print(written.Value), r.reckoned(need))}
		m.size, m.least = need, true
		return false
	default:
		r.fault(c.at, fmt.Sprintf("the contents need a %s of %s, but what else stands in %s needs %s", size, r.reckoned(need), m.name,
			r.reckoned(m.size)), "put them in a bay of their own")
		return false
	}
	return true
}
