package diagram

import (
	"slices"
	"strconv"

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
)

// newBoard draws the board, and below it the pieces that are divided further.
func newBoard(v View, width float64) Picture {
	saw := sawnBy(v.Steps)
	details := detailsOf(v, saw, v.Layout.Root)
	closed := map[extent]string{}
	for _, s := range details {
		for i, n := range s.equal {
			closed[extentOf(n)] = s.sources[i]
		}
	}
	board := slab{v: v, saw: saw, equal: []cutplan.Node{v.Layout.Root}, whole: true, closed: closed}
	scale := max(board.scaleFor(width, 0), v.Scale)
	p := Picture{Scale: scale}
	p.Width = width
	p.addRow([]placedSlab{board.place(scale, width)})

	larger := detailScale(details, width)
	var beside []placedSlab
	left := width
	for _, s := range details {
		wide := min(width, s.widthAt(larger))
		if wide > left {
			p.addRow(beside)
			beside, left = nil, width
		}
		beside = append(beside, s.place(larger, wide))
		left -= wide + detailGap
	}
	p.addRow(beside)
	slices.Sort(p.Short)
	p.Short = slices.Compact(p.Short)
	return p
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

// detailsOf lists the pieces of n that more than one cut divides, equal ones
// together. A single strip would be the board once more, so its own pieces are
// looked at instead.
func detailsOf(v View, saw sawn, n cutplan.Node) []slab {
	var all []slab
	for i, c := range n.Children {
		if saw.inside(c) < 2 {
			continue
		}
		number, rest := saw.source(n, i)
		at := slices.IndexFunc(all, func(s slab) bool { return same(s.equal[0], c) })
		if at < 0 {
			at = len(all)
			all = append(all, slab{v: v, saw: saw})
		}
		s := &all[at]
		s.equal = append(s.equal, c)
		source := "piece from " + strconv.Itoa(number)
		if rest {
			source = "rest of " + strconv.Itoa(number)
		}
		s.sources = append(s.sources, source)
		s.from = append(s.from, number)
		s.rest = s.rest || rest
	}
	if n.Cut == cutplan.Rip && len(all) == 1 && len(all[0].equal) == 1 {
		return detailsOf(v, saw, all[0].equal[0])
	}
	for i := range all {
		all[i].title = all[i].heading()
	}
	return all
}

// heading names the pieces that a detail stands for.
func (s slab) heading() string {
	n := s.equal[0]
	size := s.v.Ruler.Size(n.Length, n.Width)
	switch {
	case len(s.equal) == 1:
		return s.sources[0] + ": " + size
	case s.rest:
		last := len(s.from) - 1
		return "pieces from " + ranges(s.from[:last], 3) + ", " + s.sources[last] + ": " + size + " each"
	}
	return "pieces from " + ranges(s.from, 3) + ": " + size + " each"
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
	title   string
	sources []string // where each of them comes from
	from    []int
	rest    bool
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

// leaves calls visit for every piece that gets a label of its own, with its parent.
func (s slab) leaves(visit func(leaf, parent *cutplan.Node)) {
	var walk func(n, parent *cutplan.Node)
	walk = func(n, parent *cutplan.Node) {
		if n.Use != cutplan.Split || s.isClosed(*n) {
			visit(n, parent)
			return
		}
		for i := range n.Children {
			walk(&n.Children[i], n)
		}
	}
	walk(&s.equal[0], nil)
}
