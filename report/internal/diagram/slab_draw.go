package diagram

import (
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
)

const headSize = 8.5 // pt

// draw puts the slab on paper.
func (p placedSlab) draw() drawing.Drawing {
	d := drawing.Drawing{Width: p.f.picture.W, Height: p.height}
	p.drawHead(&d)
	p.drawPieces(&d)
	p.drawCuts(&d)
	d.Box(p.f.stock, drawing.Outline, drawing.NoFill)
	if p.whole {
		drawSeller(&d, p.v.Layout.Stock, p.f.stock)
	}
	// Leaders lie below all writing, which has a white ground.
	p.drawTopLeaders(&d)
	for i, b := range p.blocks {
		b.write(&d, p.places[i])
	}
	p.top.write(&d, slabHead, false)
	p.drawFences(&d)
	for _, m := range p.lines {
		p.drawLine(&d, m)
	}
	for _, m := range p.lines {
		m.row.write(&d, m.y+markLeaders, true)
	}
	p.drawCorner(&d)
	return d
}

func (p placedSlab) drawHead(d *drawing.Drawing) {
	base := drawing.Rise(headSize) + 0.6
	face := drawing.Regular
	at := drawing.Point{Y: base}
	if p.whole {
		at.X = p.f.stock.X
	} else {
		face = drawing.Bold
	}
	words := p.head(p.f.scale)
	d.Text(drawing.Text{At: at, String: drawing.Shorten(words, face, headSize, d.Width-at.X), Size: headSize, Face: face})
	if !p.whole {
		return
	}
	x := at.X + drawing.Width(words+"    grain ", face, headSize)
	d.Text(drawing.Text{At: drawing.Point{X: x - drawing.Width("grain ", face, headSize), Y: base}, String: "grain", Size: headSize})
	a := drawing.Point{X: x + 1, Y: base - drawing.Rise(headSize)/2.4}
	b := drawing.Point{X: a.X + 18, Y: a.Y}
	d.Line(a, b, drawing.Narrow)
	d.Arrow(a, b)
	d.Arrow(b, a)
	if said := sellerNote(p.v.Layout.Stock); said != "" {
		at := drawing.Point{X: b.X + 5, Y: base}
		d.Text(drawing.Text{At: at, String: drawing.Shorten(said, drawing.Regular, headSize, d.Width-at.X), Size: headSize})
	}
}

func (p placedSlab) drawPieces(d *drawing.Drawing) {
	if inner := p.f.rect(&p.equal[0]); p.whole && inner != p.f.stock {
		drawTrim(d, p.f.stock, inner)
	}
	p.leaves(func(leaf *cutplan.Node) {
		switch leaf.Use {
		case cutplan.Waste:
			d.Hatch(p.f.rect(leaf))
		case cutplan.Offcut:
			if r := p.f.rect(leaf).Inset(keepFrame); r.W > 0 && r.H > 0 {
				d.Box(r, drawing.TwoDots, drawing.NoFill)
			}
		case cutplan.Part:
			sides, off := p.v.edging(leaf, p.f.rect(leaf))
			sides.Draw(d, p.f.rect(leaf), off)
		}
	})
}

// drawCuts draws each cut as one line in the middle of its kerf; a cut right
// across is the wider.
func (p placedSlab) drawCuts(d *drawing.Drawing) {
	length, width := p.equal[0].Length, p.equal[0].Width
	draw := func(s cutplan.Step) {
		pen := drawing.FineCut
		if s.Cut == cutplan.Rip && s.Run >= length || s.Cut == cutplan.Crosscut && s.Run >= width {
			pen = drawing.Cut
		}
		from, to := p.f.cutLine(s, p.v.Kerf)
		d.Line(from, to, pen)
		tick(d, s, from, to, p.v.row(s.Number).Waste == cutplan.Near, p.places)
	}
	for _, s := range p.v.Steps {
		if s.Trim && p.whole {
			draw(s)
		}
	}
	for _, split := range p.splits() {
		for _, c := range split {
			draw(c.step)
		}
	}
}

func (p placedSlab) drawTopLeaders(d *drawing.Drawing) {
	foot := slabHead + p.top.height() + 0.4
	for i := range p.top.tags {
		dots := p.dots[i]
		edge := drawing.Point{X: dots[0].X, Y: p.f.stock.Y}
		d.Leader(dots[0], edge)
		d.Line(edge, drawing.Point{X: p.top.at[i], Y: foot}, drawing.Narrow)
		// Dots along a strip are strung on one line, strips on another.
		strip := 0
		for j := 1; j < len(dots); j++ {
			if abs(dots[j].Y-dots[strip].Y) < 0.1 {
				d.Leader(dots[j], dots[j-1])
				continue
			}
			d.Leader(dots[j], dots[strip])
			strip = j
		}
	}
}

// drawFences puts the settings of rips on the left: an arrow runs from the edge that
// guides the piece to the rip, or to the last of several at one setting.
func (p placedSlab) drawFences(d *drawing.Drawing) {
	for i, f := range p.fences {
		x := p.f.stock.X - chainGap
		first, last := f.rips[0], f.rips[len(f.rips)-1]
		guided := drawing.Point{X: x, Y: p.f.y(first.Y - first.Setting)}
		end := drawing.Point{X: x, Y: p.f.y(last.Y)}
		d.Line(guided, end, drawing.Narrow)
		if len(f.rips) > 1 {
			for _, s := range f.rips {
				at, _ := p.f.cutLine(s, p.v.Kerf)
				d.Line(drawing.Point{X: x, Y: at.Y}, drawing.Point{X: p.f.stock.X, Y: at.Y}, drawing.Narrow)
				d.Disc(drawing.Point{X: x, Y: at.Y}, 0.4, drawing.NoPen, drawing.Black)
			}
		} else if guided.Y-end.Y > arrowRoom {
			d.Arrow(end, guided)
		}
		drawGuide(d, guided, true, f.guide)
		t := p.pile[i]
		from, _ := p.f.cutLine(first, p.v.Kerf)
		to, _ := p.f.cutLine(last, p.v.Kerf)
		at := drawing.Point{X: p.f.stock.X, Y: from.Y}
		if len(f.rips) > 1 {
			at = drawing.Point{X: x, Y: (from.Y + to.Y) / 2}
		}
		d.Line(at, drawing.Point{X: p.f.stock.X - fenceGap + 0.4, Y: p.pileAt[i]}, drawing.Narrow)
		t.write(d, p.f.stock.X-fenceGap-t.width(), p.pileAt[i])
	}
}

// drawLine draws a level of lines: an origin, an arrow to each mark, and from
// there to its tag.
func (p placedSlab) drawLine(d *drawing.Drawing, m markRow) {
	for _, l := range m.lines {
		origin := drawing.Point{X: p.f.x(l.from), Y: m.y}
		before := origin
		for _, k := range l.marks {
			at := drawing.Point{X: p.f.x(k.x), Y: m.y}
			if k.at == 0 {
				continue
			}
			d.Line(before, at, drawing.Narrow)
			d.Line(drawing.Point{X: at.X, Y: p.f.stock.Bottom() + 0.5}, drawing.Point{X: at.X, Y: m.y + 0.8}, drawing.Narrow)
			if at.X-before.X > arrowRoom {
				d.Arrow(at, before)
			} else {
				d.Disc(at, 0.45, drawing.NoPen, drawing.Black)
			}
			p.drawStop(d, k, before, at)
			before = at
		}
		d.Line(drawing.Point{X: origin.X, Y: p.f.stock.Bottom() + 0.5}, drawing.Point{X: origin.X, Y: m.y + 0.8}, drawing.Narrow)
		d.Disc(origin, originRadius, drawing.Narrow, drawing.White)
	}
	top := m.y + markLeaders
	for i := range m.row.tags {
		d.Line(drawing.Point{X: m.x[i], Y: m.y + 0.8}, drawing.Point{X: m.row.at[i], Y: top - 0.3}, drawing.Narrow)
	}
}

// drawStop writes the setting of the stop on the line between two marks, behind the sign for
// it: the mark is where the cut lies, the stop how far that is from the end in hand.
func (p placedSlab) drawStop(d *drawing.Drawing, k mark, from, to drawing.Point) {
	const size, sign, gap, above = 9.0, 1.4, 0.5, 0.6 // above the leaders of other marks
	figure := p.v.Ruler.Print(k.stop)
	wide := sign + gap + drawing.Width(figure, drawing.Bold, size)
	if k.stop == 0 || to.X-from.X < wide+2*arrowRoom {
		return
	}
	x, ok := p.clearOfMarks(from.X+arrowRoom, to.X-arrowRoom-wide, wide, from.Y)
	if !ok {
		return
	}
	d.Box(drawing.Rect{X: x - gap, Y: from.Y - 0.9, W: wide + 2*gap, H: 1.65}, drawing.NoPen, drawing.White)
	d.Box(drawing.Rect{X: x, Y: from.Y - above - sign/2, W: sign, H: sign}, drawing.NoPen, drawing.Black)
	d.Text(drawing.Text{At: drawing.Point{X: x + sign + gap, Y: from.Y - above + 0.36*size*0.3528}, String: figure, Size: size, Face: drawing.Bold, Ground: true})
}

// clearOfMarks finds room on a line of marks at y, so wide, that begins from lo to hi, past
// which no mark of a line below is led.
func (p placedSlab) clearOfMarks(lo, hi, wide, y float64) (x float64, ok bool) {
	for _, share := range []float64{0.5, 0.25, 0.75, 0, 1} {
		x := lo + share*(hi-lo)
		if !slices.ContainsFunc(p.lines, func(m markRow) bool {
			return m.y > y && slices.ContainsFunc(append(slices.Clone(m.x), m.origins(p.f)...), func(at float64) bool { return at > x-1 && at < x+wide+1 })
		}) {
			return x, true
		}
	}
	return 0, false
}

// origins are where its lines begin.
func (m markRow) origins(f frame) []float64 {
	var all []float64
	for _, l := range m.lines {
		all = append(all, f.x(l.from))
	}
	return all
}

// arrowRoom is the least distance of two marks for an arrowhead between them, mm.
const arrowRoom = 3.5

// drawCorner points at the reference corner.
func (p placedSlab) drawCorner(d *drawing.Drawing) {
	tip := drawing.Point{X: p.f.stock.X - 0.9, Y: p.f.stock.Bottom() + 0.9}
	const side = 2.2
	d.Polygon(drawing.NoPen, drawing.Black, tip,
		drawing.Point{X: tip.X - side, Y: tip.Y}, drawing.Point{X: tip.X, Y: tip.Y + side})
	base := p.f.stock.Bottom() + 1.2 + drawing.Rise(legendSize)
	for _, word := range []string{"reference", "end"} {
		d.Text(drawing.Text{At: drawing.Point{X: tip.X - side - 1.2, Y: base}, String: word,
			Size: legendSize, Align: drawing.Right})
		base += drawing.Height(legendSize)
	}
}
