package diagram

import (
	"cmp"
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

// callout is a label that is led out to a lane beside the stock, because what
// it names is too narrow to write on. Equal neighbors share one.
type callout struct {
	dots []drawing.Point // where the leader ends, one on each piece
	text string
	cut  bool // a cut's number rather than a piece's label
}

const (
	calloutSize  = drawing.SmallestSize
	calloutGap   = 0.8  // mm from one to the next
	leaderRoom   = 6.0  // mm of lane for the slanting leaders
	widest       = 34.0 // mm of text in a lane: more would cost the drawing its scale
	countRoom    = 6.0  // mm of it for "12 x "
	leaderMargin = 1.0  // mm between a leader's end and the text
)

// led is w in one line for a callout. A long name gives way to the size, but for
// that of an offcut.
func (w wording) led() string {
	switch {
	case w.brief && !w.keep:
		return w.mark
	case w.brief && w.name != "":
		return w.name // a lane as wide as a size too would leave the stock too little of a narrow screen
	case w.keep && w.name != "":
		return w.name + ", " + w.size
	}
	room := widest - countRoom
	without := wording{mark: w.mark, name: "", size: w.size}.single()
	width := drawing.Width(w.single(), drawing.Regular, calloutSize)
	if width <= room || w.name == "" {
		return w.single()
	}
	const between = " , "
	room -= drawing.Width(without+between, drawing.Regular, calloutSize)
	w.name = drawing.Shorten(w.name, drawing.Regular, calloutSize, room)
	if w.name == "" {
		return without
	}
	return w.single()
}

// ledShort reports whether a callout for w leaves something out.
func (w wording) ledShort() bool {
	return !w.brief && (w.finish != "" || drawing.Width(w.single(), drawing.Regular, calloutSize) > widest-countRoom)
}

// narrow is a piece that has no room for a label.
type narrow struct {
	piece  drawing.Rect
	text   string
	parent *cutplan.Node
	toTop  bool // to the lane above, else to the one on the right
}

// lead chooses the direction that crosses the least of the stock.
func (f frame) lead(piece drawing.Rect) (toTop bool) {
	return piece.Y-f.stock.Y < f.stock.Right()-piece.Right()
}

// callouts leads out the labels of narrow pieces and crowded cuts; equal
// neighbors are joined: "4 x C slat". Leaders avoid the labels in written.
func (f frame) callouts(pieces []narrow, crowded []cut, written []drawing.Rect) (tops, rights []callout) {
	for len(pieces) > 0 {
		n := 1
		for n < len(pieces) && pieces[n].text == pieces[0].text && pieces[n].toTop == pieces[0].toTop &&
			(pieces[n].parent == pieces[0].parent || inLine(pieces[n-1].piece, pieces[n].piece)) {
			n++
		}
		c := callout{text: pieces[0].text, dots: f.dots(pieces[:n], written)}
		if n > 1 {
			c.text = strconv.Itoa(n) + " x " + c.text
		}
		if pieces[0].toTop {
			tops = append(tops, c)
		} else {
			rights = append(rights, c)
		}
		pieces = pieces[n:]
	}
	for _, c := range crowded {
		out := callout{text: c.text, cut: true, dots: slices.Clone(c.centers())}
		toTop := f.lead(drawing.Rect{X: out.dots[0].X, Y: out.dots[0].Y})
		nearestFirst(out.dots, toTop)
		if toTop {
			tops = append(tops, out)
		} else {
			rights = append(rights, out)
		}
	}
	return tops, rights
}

// dots puts one dot on each piece, in line towards their lane, where the leader
// crosses the fewest labels. The one nearest the lane comes first.
func (f frame) dots(pieces []narrow, written []drawing.Rect) []drawing.Point {
	toTop := pieces[0].toTop
	best, fewest := []drawing.Point(nil), -1
	for _, share := range []float64{0.5, 0.3, 0.7, 0.12, 0.88} {
		dots := make([]drawing.Point, len(pieces))
		for i, p := range pieces {
			dots[i] = p.piece.Center()
			if toTop {
				dots[i].X = p.piece.X + share*p.piece.W
			} else {
				dots[i].Y = p.piece.Y + share*p.piece.H
			}
		}
		nearestFirst(dots, toTop)
		path := drawing.Rect{X: dots[0].X, Y: f.stock.Y, W: 0.1, H: dots[0].Y - f.stock.Y}
		if !toTop {
			path = drawing.Rect{X: dots[0].X, Y: dots[0].Y, W: f.stock.Right() - dots[0].X, H: 0.1}
		}
		crossed := 0
		for _, r := range written {
			if path.Overlaps(r) {
				crossed++
			}
		}
		if fewest < 0 || crossed < fewest {
			best, fewest = dots, crossed
		}
	}
	return best
}

// inLine reports whether two pieces lie beside one another and are as long, or
// behind one another and as wide.
func inLine(a, b drawing.Rect) bool {
	const close, equal = 1.5, 0.05 // mm
	beside := abs(a.X-b.X) < equal && abs(a.W-b.W) < equal && min(abs(a.Y-b.Bottom()), abs(b.Y-a.Bottom())) < close
	behind := abs(a.Y-b.Y) < equal && abs(a.H-b.H) < equal && min(abs(a.X-b.Right()), abs(b.X-a.Right())) < close
	return beside || behind
}

// nearestFirst sorts dots by how near they are to their lane.
func nearestFirst(dots []drawing.Point, toTop bool) {
	slices.SortStableFunc(dots, func(a, b drawing.Point) int {
		if toTop {
			return cmp.Compare(a.Y, b.Y)
		}
		return cmp.Compare(b.X, a.X)
	})
}

func (c callout) width() float64 {
	if c.cut {
		return drawing.NumberBox(drawing.Point{}, c.text).W
	}
	return drawing.Width(c.text, drawing.Regular, calloutSize)
}

func (c callout) height() float64 {
	if c.cut {
		return drawing.NumberBox(drawing.Point{}, c.text).H
	}
	return drawing.HeightOf(c.text, drawing.Regular, calloutSize)
}

// arrange gives every callout a place in one of the lanes. A lane that is full
// passes on to the other; what fits neither is counted.
func (f frame) arrange(tops, rights []callout) (top, right lane, unnamed int) {
	top, right = lane{above: true}, lane{}
	// The lane above ends where the texts of the other one begin.
	topEnd := min(f.picture.W, f.stock.Right()+leaderRoom-1)
	topRoom, rightRoom := topEnd-f.stock.X, f.stock.Bottom()-headLane
	add := func(c callout, lanes ...*lane) {
		for _, l := range lanes {
			room := &rightRoom
			if l.above {
				room = &topRoom
			}
			if e := l.extent(c); e <= *room {
				*room -= e
				l.callouts = append(l.callouts, c)
				return
			}
		}
		unnamed += len(c.dots)
	}
	for _, c := range tops {
		add(c, &top, &right)
	}
	for _, c := range rights {
		add(c, &right, &top)
	}
	slices.SortStableFunc(top.callouts, func(a, b callout) int { return cmp.Compare(a.dots[0].X, b.dots[0].X) })
	slices.SortStableFunc(right.callouts, func(a, b callout) int { return cmp.Compare(a.dots[0].Y, b.dots[0].Y) })
	top.level = true
	if total(top.extents()) > topEnd-f.stock.X {
		top.level = false
	}
	top.settle(f.stock.X, topEnd)
	right.settle(headLane, f.stock.Bottom())
	return top, right, unnamed
}
