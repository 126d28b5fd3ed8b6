package diagram

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/casework"
)

// Layout of the faces of uprights, in mm.
const (
	faceCaption = 8.0 // above: the name, and where the front is
	faceFoot    = 5.0 // below: distances from the front edge
	faceLeader  = 6.0 // from the outline to the positions beside it
	faceGap     = 5.0 // between two faces
	widestFace  = 70.0
	pinRadius   = 0.5
	faceSize    = drawing.SmallestSize
)

// face is one face of a side or a partition, as it is seen from its bay.
type face struct {
	name      string
	solid     casework.Solid
	frontLeft bool // else the front edge is on the right
	marks     []casework.Mark
}

// Uprights draws the faces of sides and partitions with their marks, all at one
// scale, in rows that fit into a room. Positions are those from the bottom end.
// It says the scale: "1 : 10".
func Uprights(c *casework.Case, r stock.Ruler, width, height float64) (rows []drawing.Drawing, scale string) {
	faces := facesOf(c)
	ratio := faceScale(faces, height-faceCaption-faceFoot)
	var row drawing.Drawing
	x := 0.0
	for _, f := range faces {
		picture := f.draw(ratio, height, r)
		if x > 0 && x+picture.Width > width {
			rows = append(rows, row)
			row, x = drawing.Drawing{}, 0
		}
		row.Place(picture, drawing.Point{X: x})
		row.Width, row.Height = x+picture.Width, max(row.Height, picture.Height)
		x += picture.Width + faceGap
	}
	if x > 0 {
		rows = append(rows, row)
	}
	return rows, fmt.Sprintf("1 : %d", ratio)
}

// facesOf are the faces of uprights that have marks, in the order of the pieces.
func facesOf(c *casework.Case) []face {
	var faces []face
	for i, s := range c.Solids {
		if s.Role != "side" && s.Role != "partition" {
			continue
		}
		before := len(faces)
		for _, k := range c.Marks {
			for _, spot := range k.Spots {
				if spot.Solid != i || !strings.HasSuffix(spot.Face, " face") { // ends are in the table alone
					continue
				}
				name := c.Parts[k.Part].Name
				for _, word := range []string{spot.Piece, spot.Face} {
					if word != "" {
						name += ", " + word
					}
				}
				at := slices.IndexFunc(faces, func(f face) bool { return f.name == name })
				if at < 0 {
					// Whoever looks at a right face looks to the left, the front at the
					// left hand; so it is with the inner face of the left side.
					at = len(faces)
					faces = append(faces, face{name: name, solid: s, frontLeft: spot.Face == "right face" || spot.Piece == "left"})
				}
				faces[at].marks = append(faces[at].marks, k)
			}
		}
		slices.SortFunc(faces[before:], func(a, b face) int { return cmp.Compare(a.name, b.name) }) // left, right
	}
	return faces
}

// faceScale is the largest of the recommended scales of ISO 5455 (from memory)
// at which every face fits.
func faceScale(faces []face, height float64) int {
	high, wide := 0.0, 0.0
	for _, f := range faces {
		high, wide = max(high, millimetres(f.solid.Size[casework.Z])), max(wide, millimetres(f.solid.Size[casework.Y]))
	}
	scales := []int{1, 2, 5, 10, 20, 50, 100, 200, 500}
	for _, s := range scales[:len(scales)-1] {
		if high/float64(s) <= height && wide/float64(s) <= widestFace {
			return s
		}
	}
	return scales[len(scales)-1]
}

func millimetres(l stock.Length) float64 { return float64(l) / float64(stock.Millimetre) }

// draw shows a face at a scale, captioned, with its positions beside it, as many
// as its height has room for.
func (f face) draw(ratio int, height float64, r stock.Ruler) drawing.Drawing {
	var d drawing.Drawing
	scale := func(l stock.Length) float64 { return millimetres(l) / float64(ratio) }
	box := drawing.Rect{Y: faceCaption, W: scale(f.solid.Size[casework.Y]), H: scale(f.solid.Size[casework.Z])}
	fromFront := func(l stock.Length) float64 {
		if f.frontLeft {
			return box.X + scale(l)
		}
		return box.Right() - scale(l)
	}
	labels, across := f.marksOn(&d, box, scale, fromFront, r)
	labels = fitting(labels, height-faceCaption-faceFoot)
	d.Box(box, drawing.Outline, drawing.NoFill)
	right, bottom := placeLabels(&d, box, labels)
	d.Width = max(right, box.Right(), f.captionWidth())
	d.Height = max(bottom, box.Bottom()) + faceFoot
	f.foot(&d, box, across, r, fromFront)
	d.Text(drawing.Text{At: drawing.Point{Y: drawing.RiseOf(f.name, drawing.Bold, 8)}, String: f.name, Size: 8, Face: drawing.Bold})
	d.Text(drawing.Text{At: drawing.Point{Y: drawing.LineHeight(8) + drawing.Rise(faceSize)}, String: f.front(), Size: faceSize})
	return d
}

func (f face) front() string {
	if f.frontLeft {
		return "front edge on the left"
	}
	return "front edge on the right"
}

func (f face) captionWidth() float64 {
	return max(drawing.Width(f.name, drawing.Bold, 8), drawing.Width(f.front(), drawing.Regular, faceSize))
}

// beside is a position beside a face: the height that it tells of, and the words.
type beside struct {
	y    float64
	text string
	// between: neither the first nor the last of its mark.
	between bool
}

// fitting are the positions that have room one below the other: if need be only
// the first and the last of each mark, or none. The table has them all.
func fitting(labels []beside, height float64) []beside {
	most := int(height / labelHeight())
	if len(labels) > most {
		labels = slices.DeleteFunc(labels, func(l beside) bool { return l.between })
	}
	if len(labels) > most {
		return nil
	}
	return labels
}

func labelHeight() float64 { return drawing.Height(faceSize) + 0.2 }

// marksOn draws the marks of a face. It returns the positions to write beside
// it, and those from the front edge, each once.
func (f face) marksOn(d *drawing.Drawing, box drawing.Rect, scale, fromFront func(stock.Length) float64, r stock.Ruler) (labels []beside, across []stock.Length) {
	for _, k := range f.marks {
		if k.From != "bottom end" {
			f.upright(d, box, k, scale, fromFront)
			continue
		}
		for i, at := range k.At {
			y := box.Bottom() - scale(at)
			labels = append(labels, beside{y, r.Print(at) + " " + k.What, 0 < i && i < len(k.At)-1})
			level := func(y float64, pen drawing.Pen) {
				d.Line(drawing.Point{X: box.X, Y: y}, drawing.Point{X: box.Right(), Y: y}, pen)
			}
			switch {
			case k.Spacers != nil:
				front := stock.Length(0)
				if len(k.Across.At) > 0 {
					front = k.Across.At[0]
				}
				d.Line(drawing.Point{X: fromFront(front), Y: y}, drawing.Point{X: fromFront(f.solid.Size[casework.Y]), Y: y}, drawing.FineCut)
			case len(k.Across.At) > 0:
				for _, row := range k.Across.At {
					d.Disc(drawing.Point{X: fromFront(row), Y: y}, pinRadius, drawing.NoPen, drawing.Black)
				}
			case k.Depth > 0:
				d.Hatch(drawing.Rect{X: box.X, Y: y - scale(k.Width), W: box.W, H: scale(k.Width)})
				level(y, drawing.FineCut)
				level(y-scale(k.Width), drawing.FineCut)
			case k.Width > 0:
				level(y, drawing.Dashed)
				level(y-scale(k.Width), drawing.Dashed)
			default:
				level(y, drawing.FineCut)
			}
		}
		across = append(across, k.Across.At...)
	}
	slices.Sort(across)
	return labels, slices.Compact(across)
}

// upright draws a rabbet or a groove along the back edge.
func (f face) upright(d *drawing.Drawing, box drawing.Rect, k casework.Mark, scale, fromFront func(stock.Length) float64) {
	for _, at := range k.At {
		back := f.solid.Size[casework.Y] - at
		from, to := fromFront(back), fromFront(back-k.Width)
		band := drawing.Rect{X: min(from, to), Y: box.Y, W: scale(k.Width), H: box.H}
		d.Hatch(band)
		for _, x := range []float64{from, to} {
			d.Line(drawing.Point{X: x, Y: box.Y}, drawing.Point{X: x, Y: box.Bottom()}, drawing.FineCut)
		}
	}
}

// placeLabels writes positions to the right of a face, none over another, each
// with a leader. It returns how far they reach.
func placeLabels(d *drawing.Drawing, box drawing.Rect, labels []beside) (right, bottom float64) {
	slices.SortStableFunc(labels, func(a, b beside) int { return cmp.Compare(a.y, b.y) })
	wanted, extents := make([]float64, len(labels)), make([]float64, len(labels))
	for i, l := range labels {
		wanted[i], extents[i] = l.y, labelHeight()
	}
	half := drawing.Height(faceSize) / 2
	for i, y := range spread(wanted, extents, box.Y-half, max(box.Bottom()+half, box.Y-half+total(extents))) {
		l := labels[i]
		at := drawing.Point{X: box.Right() + faceLeader, Y: y - drawing.Height(faceSize)/2 + drawing.Rise(faceSize)}
		d.Line(drawing.Point{X: box.Right() + 0.6, Y: l.y}, drawing.Point{X: at.X - 0.8, Y: y}, drawing.Narrow)
		d.Text(drawing.Text{At: at, String: l.text, Size: faceSize})
		right, bottom = max(right, at.X+drawing.Width(l.text, drawing.Regular, faceSize)), max(bottom, y+extents[i]/2)
	}
	return right, bottom
}

// foot writes the distances of rows from the front edge below a face.
func (f face) foot(d *drawing.Drawing, box drawing.Rect, across []stock.Length, r stock.Ruler, fromFront func(stock.Length) float64) {
	at := slices.Clone(across)
	if !f.frontLeft {
		slices.Reverse(at)
	}
	wanted, extents := make([]float64, len(at)), make([]float64, len(at))
	for i, l := range at {
		wanted[i], extents[i] = fromFront(l), drawing.Width(r.Print(l), drawing.Regular, faceSize)+1.5
	}
	base := d.Height - faceFoot + 1.2 + drawing.Rise(faceSize)
	for i, x := range spread(wanted, extents, 0, max(d.Width, total(extents))) {
		d.Text(drawing.Text{At: drawing.Point{X: x, Y: base}, String: r.Print(at[i]), Size: faceSize, Align: drawing.Centre})
		d.Width = max(d.Width, x+extents[i]/2)
	}
}
