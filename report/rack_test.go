package report

import (
	"bytes"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/report/internal/drawing"
	"sawbill/stock"
	"sawbill/stock/rack"
)

func onHand() []stock.Piece {
	mm := stock.Millimeter
	return []stock.Piece{
		{ID: "R1", Material: "birch ply 18", Length: 600 * mm, Width: 400 * mm, Thickness: 18 * mm, From: "Potting bench K7F2", Since: "2026-03-05"},
		{ID: "R12", Material: "birch ply 18", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm, Name: "birch 18, 8x4"},
		{ID: "A-1", Kind: stock.Board, Material: "walnut", Length: 800 * mm, Width: 150 * mm, Thickness: 25*mm + mm/4, Note: "wild grain near one end, keep it for the drawer front"},
		{ID: "R3", Material: "MDF 12", Length: 300 * mm, Width: 900 * mm, Thickness: 12 * mm, Grain: stock.GrainAny},
	}
}

func TestRackList(t *testing.T) {
	var b bytes.Buffer
	if err := RackList(&b, onHand(), Options{}); err != nil {
		t.Fatal(err)
	}
	const want = `On the rack
  id   kind   material      size (mm)          grain  name           from                since       note
  R3   sheet  MDF 12        300 x 900 x 12     none
  R12  sheet  birch ply 18  2440 x 1220 x 18          birch 18, 8x4
  R1   sheet  birch ply 18  600 x 400 x 18                           Potting bench K7F2  2026-03-05
  A-1  board  walnut        800 x 150 x 25.25                                                        wild grain near one end, keep it for the drawer front
  4 pieces, 3 materials
`
	if d := cmp.Diff(want, b.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
	b.Reset()
	if err := RackList(&b, nil, Options{}); err != nil || b.String() != "The rack is empty.\n" {
		t.Errorf("%q, %v", b.String(), err)
	}
}

func TestRackFitsTellWhatIsLeft(t *testing.T) {
	part := stock.Part{Material: "birch ply 18", Length: 380 * stock.Millimeter, Width: 300 * stock.Millimeter, Grain: stock.GrainAny}
	var b bytes.Buffer
	if err := RackFits(&b, rack.Find(onHand(), part, 3*stock.Millimeter), Options{}); err != nil {
		t.Fatal(err)
	}
	const want = `Best fitting first
  id   material      size (mm)         the part lies  left (mm)
  R1   birch ply 18  600 x 400 x 18    across it      297 x 400 and 300 x 17
  R12  birch ply 18  2440 x 1220 x 18  across it      2137 x 1220 and 300 x 837
`
	if d := cmp.Diff(want, b.String()); d != "" {
		t.Errorf("(-want +got):\n%s", d)
	}
}

// Each label has its piece's id and size, nothing overlaps or leaves the page,
// and a page holds whole labels only.
func TestRackLabels(t *testing.T) {
	pieces := onHand()
	long := pieces[2]
	long.Material = strings.Repeat("a material with a long name ", 9)
	long.Note, long.From = strings.Repeat("a long remark ", 40), strings.Repeat("Wunderkammer", 20)
	long.ID = "WWWWWWWW"
	for range 30 {
		pieces = append(pieces, long)
	}
	for _, o := range []Options{{}, {Paper: Letter, Ruler: inches}} {
		pages := rackLabelPages(pieces, o).Pages
		if len(pages) != 2 {
			t.Errorf("%d labels take %d pages", len(pieces), len(pages))
		}
		var said strings.Builder
		for n, page := range pages {
			if err := drawing.CheckWriting(page); err != nil {
				t.Errorf("page %d: %v", n+1, err)
			}
			for _, text := range page.Texts() {
				said.WriteString(text.String + "\n")
			}
		}
		for _, p := range pieces {
			if !strings.Contains(said.String(), p.ID+"\n") || !strings.Contains(said.String(), pieceSize(p, o.Ruler)+"\n") {
				t.Errorf("no label tells of %s, %s", p.ID, pieceSize(p, o.Ruler))
			}
		}
	}
	strange := onHand()[:1]
	strange[0].Note = "木"
	first, warned, err := RackLabels(strange, Options{})
	if err != nil || len(warned) != 1 || !strings.Contains(warned[0], "木") {
		t.Errorf("warnings %q, %v", warned, err)
	}
	if again, _, _ := RackLabels(strange, Options{}); !bytes.Equal(first, again) {
		t.Error("equal pieces give other bytes")
	}
}
