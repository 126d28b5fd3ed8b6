package label

import (
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
	"sawbill/report/internal/edging"
)

// However much a label has to say, it keeps within its lines, apart and legible.
func TestALabelHoldsWhatItIsGiven(t *testing.T) {
	long := strings.Repeat("ÉÅ côté, drawer front/back ", 12)
	full := Label{
		Mark: "WWW", Name: long, Of: "299 of 300", Cut: "cut to " + long, Finished: "finished " + long, Where: long,
		Lines: []string{long, long}, Fill: "date", Job: long, Plan: "7K3Q-21",
		Next: "next: " + long, Piece: Piece{Grain: Across, Edge: "lower", End: "right", Inside: true, Edged: edging.Sides{Lower: true, Upper: true, Left: true, Right: true}},
	}
	for _, l := range []Label{{}, {Mark: "A"}, {Mark: strings.Repeat("W", 40), Of: "1 of 1"}, {Name: strings.Repeat("x", 300)}, full} {
		for _, size := range [][2]float64{{186, 252}, {191.9, 234}} {
			g := New(size[0], size[1])
			page := g.Pages([]Label{l, l, l, l})[0]
			if err := drawing.CheckLegible(page); err != nil {
				t.Fatal(err)
			}
			for i, text := range page.Texts() {
				inside := false
				for c := range 4 {
					inside = inside || g.Cell(c).Inset(1).Contains(text.Box())
				}
				if !inside {
					t.Errorf("text %d, %q, is in no label", i, text.String)
				}
			}
		}
	}
}

func TestWhatFindsNoRoomEndsInAnEllipsis(t *testing.T) {
	var d drawing.Drawing
	write(&d, []string{"one", "two", "three"}, drawing.Regular, []float64{9, 7}, drawing.Rect{W: 30, H: 2.2 * drawing.LineHeight(7)})
	texts := d.Texts()
	if len(texts) != 2 || texts[1].String != "two …" || texts[0].Size != 7 {
		t.Errorf("%+v", texts)
	}
}

func TestLabelsRunOnOverPages(t *testing.T) {
	g := New(186, 252)
	pages := g.Pages(make([]Label, g.Columns*g.Rows+1))
	if len(pages) != 2 || pages[0].Height != 252 || pages[1].Height != 42 {
		t.Errorf("%d pages", len(pages))
	}
}

// Labels lie on a sheet as its grid says, without lines to cut along, and keep within their
// cells.
func TestLabelsLieOnTheirSheet(t *testing.T) {
	g := Grid{Columns: 3, Rows: 8, Width: 210, Height: 297, Sides: 7, Top: 12, ColumnGap: 2.5, RowGap: 1, Sheet: true}
	// (210 - 14 - 5) / 3 = 63.67 wide, (297 - 24 - 7) / 8 = 33.25 high.
	if got := g.Cell(4); got.X < 73.1 || got.X > 73.2 || got.Y != 46.25 || got.H != 33.25 {
		t.Errorf("the fifth label lies at %.2f", got)
	}
	l := Label{Mark: "A", Name: "side", Of: "1 of 2", Cut: "cut to 720 x 315 x 17.7", Finished: "finished 700 x 315 x 17.7", Next: "next: stop at 700",
		Where: "layout 1, cut 17", Lines: []string{"birch ply"}, Job: "Cabinet", Plan: "7K3QA", Piece: Piece{Along, "front", "top", true, edging.Sides{Lower: true}}}
	for _, g := range []Grid{g, {Columns: 4, Rows: 10, Width: 210, Height: 279.4, Sides: 8, Top: 10, Sheet: true}} {
		page := g.Pages([]Label{l, l, l, l, l})[0]
		if err := drawing.CheckLegible(page); err != nil {
			t.Error(err)
		}
		if page.Width != 210 || page.Height != g.Height {
			t.Errorf("a sheet of %.1f x %.1f", page.Width, page.Height)
		}
		for _, text := range page.Texts() {
			inside := false
			for i := range 5 {
				inside = inside || g.Cell(i).Inset(1).Contains(text.Box())
			}
			if !inside {
				t.Errorf("%q is in no label", text.String)
			}
		}
		for _, m := range page.Marks {
			if line, ok := m.(drawing.Line); ok && line.Pen == drawing.Fine {
				t.Errorf("a line to cut along: %v", line)
			}
		}
	}
}
