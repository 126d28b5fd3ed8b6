package report

import (
	"fmt"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/paper"
	"sawbill/stock"
)

const (
	labelColumns = 3
	labelHeight  = 38.0 // mm
	labelPad     = 2.5  // mm
)

// RackLabels is a PDF with a label for each piece: its id, large, then size,
// material, where it came from and the note.
//
// The warnings name characters that the page's fonts lack. The error is the PDF
// writer's own.
func RackLabels(pieces []stock.Piece, o Options) (pdf []byte, warned []string, err error) {
	all := rackLabelPages(pieces, o)
	if pdf, err = drawing.PDF(all); err != nil {
		return nil, nil, fmt.Errorf("writing the PDF: %w", err)
	}
	var whole drawing.Drawing
	for _, page := range all.Pages {
		whole.Place(drawing.Drawing{Missing: page.Missing}, drawing.Point{})
	}
	if len(whole.Missing) > 0 {
		warned = append(warned, fmt.Sprintf("the font of the labels lacks the characters %q; %q is printed for each", string(whole.Missing), drawing.Replacement))
	}
	return pdf, warned, nil
}

// rackLabelsTitle tells these labels from other documents of the program.
const rackLabelsTitle = "Labels for the rack"

func rackLabelPages(pieces []stock.Piece, o Options) drawing.Document {
	b := paper.New(o.Paper.size(), rackLabelsTitle, "", "Sizes in "+unitName(o.Ruler)+": length x width x thickness. ≈ marks a rounded figure.")
	b.Page("labels")
	b.Paragraph("Cut the labels apart along the lines, and fix each to its piece.")
	for i := 0; i < len(pieces); i += labelColumns {
		b.Picture(labelRow(pieces[i:min(i+labelColumns, len(pieces))], b.Width()/labelColumns, o.Ruler))
	}
	return b.Close()
}

func labelRow(pieces []stock.Piece, width float64, r stock.Ruler) drawing.Drawing {
	row := drawing.Drawing{Width: width * float64(len(pieces)), Height: labelHeight}
	for i, p := range pieces {
		at := drawing.Rect{X: width * float64(i), W: width, H: labelHeight}
		row.Box(at, drawing.Fine, drawing.NoFill)
		pieceLabel(&row, p, at.Inset(labelPad), r)
	}
	return row
}

// pieceLabel writes what is to be known of a piece, as far as there is room.
func pieceLabel(d *drawing.Drawing, p stock.Piece, in drawing.Rect, r stock.Ruler) {
	const large, medium, small = 30.0, 12.0, 8.5 // pt
	y := in.Y
	fitting := func(s string, size float64) float64 {
		for size > small && drawing.Width(s, drawing.Bold, size) > in.W {
			size -= 0.5
		}
		return size
	}
	write := func(s string, face drawing.Face, size float64, most int) {
		for i, line := range drawing.Wrap(s, face, size, in.W) {
			if i == most || line == "" || y+drawing.LineHeight(size) > in.Bottom() {
				return
			}
			rise := max(drawing.Rise(size), drawing.RiseOf(line, face, size))
			d.Text(drawing.Text{At: drawing.Point{X: in.X, Y: y + rise}, String: drawing.Shorten(line, face, size, in.W), Size: size, Face: face})
			y += max(drawing.LineHeight(size), drawing.HeightOf(line, face, size)+0.2)
		}
	}
	write(p.ID, drawing.Bold, fitting(p.ID, large), 1)
	write(pieceSize(p, r), drawing.Bold, fitting(pieceSize(p, r), medium), 2)
	write(p.Material, drawing.Regular, small, 2)
	write(p.Note, drawing.Regular, small, 2)
	write(p.From, drawing.Regular, small, 1)
}
