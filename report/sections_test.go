package report

import (
	"bytes"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/report/internal/drawing"
	"sawbill/report/internal/samples"
	"sawbill/stock"
)

// sectioned is a board with a knot, cut in two sections.
func sectioned() *cutplan.Plan {
	const mm = stock.Millimeter
	board := stock.Stock{Name: "oak A", Kind: stock.Board, Material: "oak", Length: 2400 * mm, Width: 180 * mm, Thickness: 27 * mm,
		Trim: 20 * mm, Count: 1, OnHand: true}
	m := samples.New(stock.Job{
		Title: "Rails", Saw: stock.Saw{Kerf: 3 * mm}, Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm},
		Stock: board.ClearSections([]stock.Zone{{From: 700 * mm, To: 760 * mm}, {From: 1600 * mm, To: 1700 * mm}}, 3*mm),
		Parts: []stock.Part{{Name: "rail", Material: "oak", Length: 600 * mm, Width: 180 * mm, Thickness: 25 * mm, Count: 2}},
	})
	m.Layout(0, 1, m.Crosscuts(0, m.Part(0), m.Rest()))
	m.Layout(1, 1, m.Crosscuts(0, m.Part(0), m.Rest()))
	p := m.Finished(0)
	return &p
}

func TestLayoutsOfSectionsSayWhereOnTheBoard(t *testing.T) {
	p := sectioned()
	for i, want := range []string{"Layout 1: oak A, from 20 to 700 mm", "Layout 2: oak A, from 760 to 1600 mm"} {
		if got := layoutHeading(p.Layouts[i], i, stock.Ruler{}); got != want {
			t.Errorf("%q, want %q", got, want)
		}
		if got := LayoutSVGs(p, Options{})[i]; !bytes.Contains(got, []byte(want+"</title>")) {
			t.Errorf("no %q in the picture", want)
		}
	}
	if got := layoutFacts(p, p.Layouts[1], stock.Ruler{}); !strings.HasSuffix(got, "on hand, "+onMap) {
		t.Error(got)
	}
	data := JSON(p, Options{})
	if !bytes.Contains(data, []byte("\"section\": {\n        \"from\": 760,\n        \"board_length\": 2400\n      },\n      \"kerf\": 3,\n      \"trim\": 0,")) {
		t.Errorf("%s", data)
	}
}

// One map shows a board with all its sections: each cut once, from the board's reference
// end, as worked out by hand.
func TestAMapHasEveryMarkOfItsBoard(t *testing.T) {
	p := sectioned()
	m, ok := boardMap(p, 0, stock.Ruler{})
	if _, again := boardMap(p, 1, stock.Ruler{}); !ok || again {
		t.Error("a board has one map, before its first layout")
	}
	said := map[string]bool{}
	drawn := m.Draw(180)
	for _, text := range drawn.Texts() {
		said[text.String] = true
	}
	// The sections lie from 20 to 700 and from 760 to 1600; the third is not cut. Each gives
	// a rail of 600 first.
	for _, want := range []string{"0", "20", "620", "700", "760", "1360", "1600", "a", "b", "c", "d", "1/1", "2/1", "layout 1: 680", "layout 2: 840", "not cut"} {
		if !said[want] {
			t.Errorf("no %q on the map, but %v", want, said)
		}
	}
	pages := lay(p, whole(Options{})).Pages
	for i, page := range pages {
		if err := drawing.CheckLegible(page); err != nil {
			t.Errorf("page %d: %v", i+1, err)
		}
	}
}

// Two sections are cut from one board.
func TestABoardIsTakenFromTheRackOnce(t *testing.T) {
	rack := fromTheRack(sectioned(), stock.Ruler{})
	if len(rack.rows) != 1 || strings.Join(rack.rows[0], "|") != "1|oak A|2400 x 180 x 27|oak|1, 2" {
		t.Errorf("%q", rack.rows)
	}
}

func TestShoppingListSumsBoardFeet(t *testing.T) {
	p := bench()
	list := func() listing { return planLists(p, Options{})[0].list(stock.Ruler{}) }
	if list := list(); len(list.columns) != 7 {
		t.Errorf("board feet of boards that have no nominal size: %q", list.rows)
	}
	n, err := stock.ParseNominal("2x4")
	if err != nil {
		t.Fatal(err)
	}
	p.Buy[1].Stock.Measure = n.Measure()
	var got []string
	for _, row := range list().rows {
		got = append(got, row[5])
	}
	if strings.Join(got, " ") != "- 10.67 10.67" { // two of 2 x 4 in x 8 ft / 12
		t.Errorf("board feet %q", got)
	}
}
