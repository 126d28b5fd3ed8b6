package drawing

// Dimension lines, leaders and numbered discs, built from plain marks.
// Conventions of ISO 129-1 (from memory): a narrow line between two extension
// lines, filled arrowheads, the figure above the line and readable from below
// or from the right.

const (
	arrowLength = 2.5 // mm
	arrowWidth  = 0.8 // mm, a slender head of about 18°
	gap         = 0.8 // mm between a figure and its line
	overrun     = 1.5 // mm of extension line beyond the dimension line
)

// Arrow draws a filled head at tip that comes from the direction of from,
// which lies level with it or upright above or below.
func (d *Drawing) Arrow(tip, from Point) {
	back := func(length, side float64) Point {
		switch {
		case from.X < tip.X:
			return Point{tip.X - length, tip.Y + side}
		case from.X > tip.X:
			return Point{tip.X + length, tip.Y + side}
		case from.Y < tip.Y:
			return Point{tip.X + side, tip.Y - length}
		default:
			return Point{tip.X + side, tip.Y + length}
		}
	}
	d.Polygon(NoPen, Black, tip, back(arrowLength, arrowWidth/2), back(arrowLength, -arrowWidth/2))
}

// LevelDimension measures from x1 to x2 on a line at y; edge is the y of the
// outline that is measured, where the extension lines begin.
func (d *Drawing) LevelDimension(x1, x2, edge, y float64, label string, size float64) {
	beyond := overrun
	if y < edge {
		beyond = -overrun
	}
	for _, x := range []float64{x1, x2} {
		d.Line(Point{x, edge + beyond/2}, Point{x, y + beyond}, Narrow)
	}
	a, b := Point{x1, y}, Point{x2, y}
	d.Line(a, b, Narrow)
	d.Arrow(a, b)
	d.Arrow(b, a)
	if Width(label, Regular, size)+2*arrowLength > x2-x1 {
		// Too short for its figure, which then stands beyond it.
		d.Text(Text{At: Point{x2 + 2*overrun, y + Rise(size)/2}, String: label, Size: size})
		return
	}
	at := Point{(x1 + x2) / 2, y - gap - Descent*size*mmPerPoint/2}
	d.Text(Text{At: at, String: label, Size: size, Align: Center, Ground: true})
}

// UprightDimension measures from y1 to y2 on a line at x; edge is the x of the
// outline that is measured.
func (d *Drawing) UprightDimension(y1, y2, edge, x float64, label string, size float64) {
	beyond := overrun
	if x < edge {
		beyond = -overrun
	}
	for _, y := range []float64{y1, y2} {
		d.Line(Point{edge + beyond/2, y}, Point{x + beyond, y}, Narrow)
	}
	a, b := Point{x, y1}, Point{x, y2}
	d.Line(a, b, Narrow)
	d.Arrow(a, b)
	d.Arrow(b, a)
	at := Point{x - gap - Descent*size*mmPerPoint/2, (y1 + y2) / 2}
	d.Text(Text{At: at, String: label, Size: size, Align: Center, Turned: true, Ground: true})
}

// Leader draws a narrow line that ends in a dot within what it points at.
func (d *Drawing) Leader(to, from Point) {
	d.Line(from, to, Narrow)
	d.Disc(to, 0.45, NoPen, Black)
}

// NumberSize is the size of the figure in a numbered disc, points.
const NumberSize = 9

const (
	figureHeight = 0.72 // of figures, as a share of the size; none descends
	halo         = 0.35 // mm of white around a number, which keeps wide lines off the corners of its figure
	cornerHalo   = 0.45 // and around its figures, whose corners reach beyond the discs
)

// NumberBox is the room that Number takes around its center.
func NumberBox(center Point, number string) Rect {
	h := figureHeight*NumberSize*mmPerPoint + 1.2
	w := max(h, Width(number, Bold, NumberSize)+1.3)
	return Rect{center.X - w/2, center.Y - h/2, w, h}
}

// Number writes a white figure on a black ground, which cannot be taken for a
// size or a mark.
func (d *Drawing) Number(center Point, number string) {
	box := NumberBox(center, number)
	r := box.H / 2
	d.Disc(Point{box.X + r, center.Y}, r+halo, NoPen, White)
	if box.W > box.H {
		d.Disc(Point{box.Right() - r, center.Y}, r+halo, NoPen, White)
	}
	base := center.Y + figureHeight/2*NumberSize*mmPerPoint
	figure := Text{At: Point{center.X, base}, String: number, Size: NumberSize, Face: Bold, Align: Center, Reversed: true}
	if box.W > box.H {
		d.Box(figure.Box().Inset(-cornerHalo), NoPen, White)
		d.Box(Rect{box.X + r, box.Y, box.W - box.H, box.H}, NoPen, Black)
		d.Disc(Point{box.Right() - r, center.Y}, r, NoPen, Black)
	}
	d.Disc(Point{box.X + r, center.Y}, r, NoPen, Black)
	d.Text(figure)
}
