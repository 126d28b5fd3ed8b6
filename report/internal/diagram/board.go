package diagram

import (
	"slices"
	"strconv"
	"strings"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// A board is drawn as it is worked: first whole, with what its first cuts free,
// then each piece that is divided further once more on its own, as it lies in
// hand. Such a piece is mostly shorter than the board and drawn larger, so that
// strips too narrow to write on at the board's scale have room for their labels.
//
// Crosscuts are told by running marks (ISO 129-1 calls them running dimensions,
// from memory): each is measured from one origin, the reference end, so that
// errors of marking never add up. The blade cuts beyond the mark.

const (
	mostDetail   = 26.0 // mm of height for a piece that is drawn on its own
	largestScale = 4    // n of 1:n for it, at least
	detailGap    = 4.0  // mm between two beside one another
	mostDots     = 12   // pieces and rips that may be led out of it
	mostLines    = 2    // lines of marks below it
)

// newBoard draws the board, below it the pieces that are divided further, and
// below those what is too crowded in them.
func newBoard(v View, width float64) Picture {
	board := slab{v: v, saw: sawnBy(v.Steps), equal: []cutplan.Node{v.Layout.Root}, whole: true}
	details := board.details()
	board.closed = names(details)
	p := Picture{Scale: board.scaleFor(width, 0)}
	p.Width = width
	placed := board.place(p.Scale, width)
	p.addRow([]placedSlab{placed})
	p.Stock = placed.f.stock
	for len(details) > 0 {
		var next []slab
		for _, group := range ofOneScale(details, width) {
			next = append(next, p.addDetails(group)...)
		}
		details = next
	}
	slices.Sort(p.Short)
	p.Short = slices.Compact(p.Short)
	return p
}

// addDetails draws pieces at one scale, as many beside one another as fit, and
// returns those that are drawn elsewhere in their turn.
func (p *Picture) addDetails(details []slab) (next []slab) {
	scale := detailScale(details, p.Width)
	var beside []placedSlab
	left := p.Width
	for _, s := range details {
		wide := min(p.Width, s.widthAt(scale))
		placed := s.place(scale, wide)
		if placed.crowded() {
			inner := s.details()
			s.closed = names(inner)
			next = append(next, inner...)
			placed = s.place(scale, wide)
		}
		if wide > left {
			p.addRow(beside)
			beside, left = nil, p.Width
		}
		beside = append(beside, placed)
		left -= wide + detailGap
	}
	p.addRow(beside)
	return next
}

// crowded reports whether so much is led out of the slab that its pieces are
// better drawn on their own.
func (p placedSlab) crowded() bool {
	dots := 0
	for _, d := range p.dots {
		dots += len(d)
	}
	return p.top.turned || dots > mostDots || len(p.lines) > mostLines
}

// ofOneScale groups neighbors that would be drawn at scales not far apart.
func ofOneScale(details []slab, width float64) (groups [][]slab) {
	least, most := 0, 0
	for _, s := range details {
		n := max(largestScale, s.scaleFor(width, mostDetail))
		if groups == nil || 2*max(most, n) > 3*min(least, n) {
			groups = append(groups, nil)
			least, most = n, n
		}
		least, most = min(least, n), max(most, n)
		last := len(groups) - 1
		groups[last] = append(groups[last], s)
	}
	return groups
}

// detailScale is the scale of the pieces that are drawn on their own: the largest
// there is room for, or a smaller one, by no more than half, at which they all
// stand beside one another.
func detailScale(details []slab, width float64) int {
	largest := largestScale
	for _, s := range details {
		largest = max(largest, s.scaleFor(width, mostDetail))
	}
	for n := largest; 2*n <= 3*largest; n++ {
		room := width + detailGap
		for _, s := range details {
			room -= s.widthAt(n) + detailGap
		}
		if room >= 0 {
			return n
		}
	}
	return largest
}

// addRow puts slabs beside one another below what is there.
func (p *Picture) addRow(slabs []placedSlab) {
	if len(slabs) == 0 {
		return
	}
	row := drawing.Drawing{Width: p.Width}
	x := 0.0
	for _, s := range slabs {
		d := s.draw()
		row.Place(d, drawing.Point{X: x})
		row.Height = max(row.Height, d.Height)
		x += d.Width + detailGap
		p.Short = append(p.Short, s.short...)
		p.Unnamed += s.unnamed
	}
	p.Rows = append(p.Rows, row)
	p.Place(row, drawing.Point{Y: p.Height})
	p.Height += row.Height
}

// details are the pieces of the slab that more than one cut divides, equal ones
// together. A lone one that is nearly as long would be the slab once more, so
// that its own pieces are looked at instead.
func (s slab) details() []slab {
	var all []slab
	first := s.equal[0]
	for i, c := range first.Children {
		if s.saw.inside(c) < 2 {
			continue
		}
		at := slices.IndexFunc(all, func(d slab) bool { return same(d.equal[0], c) })
		if at < 0 {
			at = len(all)
			all = append(all, slab{v: s.v, saw: s.saw})
		}
		for _, n := range s.equal {
			all[at].equal = append(all[at].equal, n.Children[i])
			all[at].sources = append(all[at].sources, s.saw.source(n, i))
		}
	}
	if len(all) == 1 && len(all[0].equal) == len(s.equal) && 4*all[0].equal[0].Length >= 3*first.Length {
		return all[0].details()
	}
	return all
}

// names are what the pieces that are drawn elsewhere are called.
func names(details []slab) map[extent]string {
	all := map[extent]string{}
	for _, d := range details {
		for i, n := range d.equal {
			all[extentOf(n)] = named(d.sources[i : i+1])
		}
	}
	return all
}

// heading names the pieces that a detail stands for; the board needs no name.
func (s slab) heading() string {
	if s.whole {
		return ""
	}
	n := s.equal[0]
	said := named(s.sources) + ": " + s.v.Ruler.Size(n.Length, n.Width)
	if len(s.equal) > 1 {
		said += " each"
	}
	return said
}

// source is the cut that frees a piece, or the one whose rest it is.
type source struct {
	number int
	rest   bool
}

// named names pieces as the steps do.
func named(sources []source) string {
	var pieces, rests []int
	for _, s := range sources {
		if s.rest {
			rests = append(rests, s.number)
		} else {
			pieces = append(pieces, s.number)
		}
	}
	var said []string
	for _, of := range []struct {
		numbers   []int
		one, many string
	}{{pieces, "piece from ", "pieces from "}, {rests, "rest of ", "rests of "}} {
		switch len(of.numbers) {
		case 0:
		case 1:
			said = append(said, of.one+strconv.Itoa(of.numbers[0]))
		default:
			said = append(said, of.many+ranges(of.numbers, 3))
		}
	}
	return strings.Join(said, ", ")
}

// extent is where a piece lies on the board, which is like no other's.
type extent struct{ x, y, length, width stock.Length }

func extentOf(n cutplan.Node) extent { return extent{n.X, n.Y, n.Length, n.Width} }

// slab is a board, or a piece of one, to be drawn.
type slab struct {
	v       View
	saw     sawn
	equal   []cutplan.Node    // pieces that are divided alike; the first is drawn
	whole   bool              // the board itself, its trim included
	closed  map[extent]string // pieces that are drawn elsewhere, with their names
	sources []source          // where each of equal comes from
}

func (s slab) size() (length, width stock.Length) {
	if s.whole {
		return s.v.Layout.Stock.Length, s.v.Layout.Stock.Width
	}
	return s.equal[0].Length, s.equal[0].Width
}

// splits are the cuts that are drawn.
func (s slab) splits() [][]parting {
	return s.saw.partings(s.equal, s.equal[0].X, s.isClosed)
}

func (s slab) isClosed(n cutplan.Node) bool { return s.closed[extentOf(n)] != "" }

// leaves calls visit for every piece that gets a label of its own.
func (s slab) leaves(visit func(leaf *cutplan.Node)) {
	var walk func(n *cutplan.Node)
	walk = func(n *cutplan.Node) {
		if n.Use != cutplan.Split || s.isClosed(*n) {
			visit(n)
			return
		}
		for i := range n.Children {
			walk(&n.Children[i])
		}
	}
	walk(&s.equal[0])
}
