package label

import (
	"strings"
	"testing"

	"sawbill/report/internal/drawing"
)

// However much a label has to say, it keeps within its lines, apart and legible.
func TestALabelHoldsWhatItIsGiven(t *testing.T) {
	long := strings.Repeat("ÉÅ côté, drawer front/back ", 12)
	full := Label{
		Mark: "WWW", Name: long, Of: "299 of 300", Cut: "cut to " + long, Finished: "finished " + long, Where: long,
		Lines: []string{long, long}, Fill: "date", Job: long, Plan: "7K3Q-21",
		Next: "next: " + long, Piece: Piece{Grain: Across, Edge: "lower", End: "right", Inside: true, Edged: Sides{true, true, true, true}},
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
					inside = inside || g.cell(c).Inset(1).Contains(text.Box())
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
