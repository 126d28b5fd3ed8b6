package diagram

import (
	"slices"
	"strconv"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/stock"
)

// labels are all the writing on a diagram, placed.
type labels struct {
	numbers    []number
	arrows     []arrow
	edges      []edgeSize
	blocks     []block
	places     []drawing.Rect // of blocks
	top, right lane
	need       lanes
	short      []int
	unnamed    int
}

// place finds room for everything that is written on the stock. Cut numbers
// come first: they have less choice than labels.
func place(v View, f frame) labels {
	var l labels
	var without []narrow
	r := newRoom(v, f)
	placed, arrows, crowded := numbers(v, f, r)
	l.numbers, l.arrows = placed, arrows
	root := v.Layout.Root
	leaves(&root, nil, func(leaf, parent *cutplan.Node) {
		if leaf.Use == cutplan.Waste {
			return
		}
		w, piece := wordingOf(leaf, v), f.rect(leaf)
		inner := piece
		if leaf.Use == cutplan.Offcut {
			inner = piece.Inset(keepFrame)
		}
		inner = v.lie(leaf).Edged.Inset(inner, edgedRoom)
		if edges, ok := f.edgeSizes(leaf, v, arrows, r); ok && !v.Brief {
			taken := r.taken()
			for _, e := range edges {
				taken = append(taken, kept(e.box, wordGap))
			}
			if b, at, ok := fitAny(w.named(), inner, taken); ok {
				l.blocks, l.places, l.edges = append(l.blocks, b), append(l.places, at), append(l.edges, edges...)
				for _, e := range edges {
					r.take(e.box)
				}
				r.take(at)
				if leaf.Use == cutplan.Part && b.short {
					l.short = append(l.short, leaf.Blank)
				}
				return
			}
		}
		b, at, ok := fit(w, inner, r.taken())
		if ok {
			l.blocks, l.places = append(l.blocks, b), append(l.places, at)
			r.take(at)
		} else {
			without = append(without, narrow{piece, w.led(), parent, f.lead(piece)})
		}
		if leaf.Use == cutplan.Part && (ok && b.short || !ok && w.ledShort()) {
			l.short = append(l.short, leaf.Blank)
		}
	})
	slices.Sort(l.short)
	l.short = slices.Compact(l.short)
	tops, rights := f.callouts(without, crowded, r.writing)
	l.top, l.right, l.unnamed = f.arrange(tops, rights)
	l.need = lanes{top: l.top.need(), right: l.right.need()}
	for _, n := range placed {
		l.need.left = max(l.need.left, f.stock.X-n.box.X)
		l.need.below = max(l.need.below, n.box.Bottom()-f.stock.Bottom())
	}
	return l
}

func draw(v View, f frame, l labels) Picture {
	p := Picture{
		Drawing: drawing.Drawing{Width: f.picture.W, Height: f.picture.H},
		Scale:   f.scale, Short: l.short, Unnamed: l.unnamed, Stock: f.stock,
	}
	d := &p.Drawing
	drawPieces(d, v, f)
	drawCuts(d, v, f)
	d.Box(f.stock, drawing.Outline, drawing.NoFill)
	// Leaders lie below all writing, which has a white ground.
	l.top.leaders(d, f)
	l.right.leaders(d, f)
	for _, n := range l.numbers {
		n.lead(d)
	}
	for _, a := range l.arrows {
		a.draw(d)
	}
	l.ticks(d, v, f)
	for i, b := range l.blocks {
		b.write(d, l.places[i])
	}
	l.top.write(d, f)
	l.right.write(d, f)
	led := len(l.top.callouts)+len(l.right.callouts) > 0
	for _, e := range l.edges {
		e.write(d, led)
	}
	for _, a := range l.arrows {
		a.write(d)
	}
	for _, n := range l.numbers {
		n.write(d)
	}
	drawSeller(d, v.Layout.Stock, f.stock)
	drawSize(d, v, f)
	drawCorner(d, f)
	drawHead(d, v, f)
	return p
}

// keepFrame is how far inside an offcut its frame is drawn, mm.
const keepFrame = 0.8

// drawPieces hatches what is thrown away and frames what is kept.
func drawPieces(d *drawing.Drawing, v View, f frame) {
	root := v.Layout.Root
	if inner := f.rect(&root); inner != f.stock {
		drawTrim(d, f.stock, inner)
	}
	leaves(&root, nil, func(leaf, _ *cutplan.Node) {
		switch leaf.Use {
		case cutplan.Waste:
			d.Hatch(f.rect(leaf))
		case cutplan.Offcut:
			if r := f.rect(leaf).Inset(keepFrame); r.W > 0 && r.H > 0 {
				d.Box(r, drawing.TwoDots, drawing.NoFill)
			}
		case cutplan.Part:
			sides, off := v.edging(leaf, f.rect(leaf))
			sides.Draw(d, f.rect(leaf), off)
		}
	})
}

// drawTrim hatches the frame that is cut off the stock's edges.
func drawTrim(d *drawing.Drawing, stock, inner drawing.Rect) {
	d.Hatch(drawing.Rect{X: stock.X, Y: stock.Y, W: stock.W, H: inner.Y - stock.Y})
	d.Hatch(drawing.Rect{X: stock.X, Y: inner.Bottom(), W: stock.W, H: stock.Bottom() - inner.Bottom()})
	d.Hatch(drawing.Rect{X: stock.X, Y: inner.Y, W: inner.X - stock.X, H: inner.H})
	d.Hatch(drawing.Rect{X: inner.Right(), Y: inner.Y, W: stock.Right() - inner.Right(), H: inner.H})
}

// drawCuts draws each cut as one line in the middle of its kerf; a cut right
// across the stock is the wider.
func drawCuts(d *drawing.Drawing, v View, f frame) {
	length, width := v.Layout.Stock.Usable()
	for _, s := range v.Steps {
		pen := drawing.FineCut
		if (s.Cut == cutplan.Rip && s.Run >= length) || (s.Cut == cutplan.Crosscut && s.Run >= width) {
			pen = drawing.Cut
		}
		from, to := f.cutLine(s, v.Kerf)
		d.Line(from, to, pen)
	}
}

// ticks draws the tick of every cut where it meets no writing.
func (l labels) ticks(d *drawing.Drawing, v View, f frame) {
	writing := slices.Clone(l.places)
	for _, n := range l.numbers {
		writing = append(writing, n.box)
	}
	for _, a := range l.arrows {
		writing = append(writing, a.box, a.line())
	}
	for _, e := range l.edges {
		writing = append(writing, e.box)
	}
	for _, s := range v.Steps {
		from, to := f.cutLine(s, v.Kerf)
		tick(d, s, from, to, v.row(s.Number).Waste == cutplan.Near, writing)
	}
}

// drawSize dimensions the stock below and on the left.
func drawSize(d *drawing.Drawing, v View, f frame) {
	s := v.Layout.Stock
	label := v.Ruler.Print(s.Length)
	y := f.stock.Bottom() + f.lanes.below + dimensionLane - 2.2
	d.LevelDimension(f.stock.X, f.stock.Right(), y-dimensionReach, y, label, dimensionSize)
	label = v.Ruler.Print(s.Width)
	// A narrow sheet has its width in the title alone.
	if drawing.Width(label, drawing.Regular, dimensionSize)+2 < f.stock.H {
		x := f.stock.X - f.lanes.left - 2.2
		d.UprightDimension(f.stock.Y, f.stock.Bottom(), x+dimensionReach, x, label, dimensionSize)
	}
}

// dimensionReach is how far the lines of the stock's own size reach towards it, mm: not
// into the tags between.
const dimensionReach = 2.4

// drawCorner points at the reference corner.
func drawCorner(d *drawing.Drawing, f frame) {
	tip := drawing.Point{X: f.stock.X - 0.9, Y: f.stock.Bottom() + 0.9}
	const side = 2.8
	d.Polygon(drawing.NoPen, drawing.Black, tip,
		drawing.Point{X: tip.X - side, Y: tip.Y}, drawing.Point{X: tip.X, Y: tip.Y + side})
	base := tip.Y + side + drawing.Height(legendSize)
	for _, word := range []string{"reference", "corner"} {
		d.Text(drawing.Text{At: drawing.Point{X: tip.X - 0.4, Y: base}, String: word,
			Size: legendSize, Align: drawing.Right})
		base += drawing.Height(legendSize)
	}
}

// drawHead writes the scale and draws the grain arrow above the stock.
func drawHead(d *drawing.Drawing, v View, f frame) {
	const size, arrow = 9.0, 22.0
	base := 4.0
	middle := base - drawing.Rise(size)/2
	x := f.stock.X
	write := func(s string) {
		d.Text(drawing.Text{At: drawing.Point{X: x, Y: base}, String: s, Size: size})
		x += drawing.Width(s, drawing.Regular, size) + 2
	}
	both := func(a, b drawing.Point) {
		d.Line(a, b, drawing.Narrow)
		d.Arrow(a, b)
		d.Arrow(b, a)
	}
	switch v.Layout.Stock.Grain {
	case stock.GrainLength:
		write("grain")
		both(drawing.Point{X: x, Y: middle}, drawing.Point{X: x + arrow, Y: middle})
		x += arrow + 8
	case stock.GrainWidth:
		write("grain")
		both(drawing.Point{X: x, Y: 0.2}, drawing.Point{X: x, Y: headLane - 0.6})
		x += 8
	default:
		write("no grain")
		x += 8
	}
	write("scale 1:" + strconv.Itoa(f.scale))
	x += 6
	drawSigns(d, v, drawing.Point{X: x, Y: middle}, f.picture.Right())
	if said := sellerNote(v.Layout.Stock); said != "" {
		x, base = f.stock.X, base+noteLane
		write(drawing.Shorten(said, drawing.Regular, size, f.picture.Right()-x))
	}
}
