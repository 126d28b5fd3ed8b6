package report

import (
	"bytes"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
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
	if got := layoutFacts(p, p.Layouts[1], stock.Ruler{}); !strings.HasSuffix(got, "on hand, first crosscut the board, 2400 long, at 760 mm and at 1600 mm from its reference end, the kerf outside this section") {
		t.Error(got)
	}
	s := p.Job.Stock[0]
	s.Section.From = 0
	if got := cutApart(s, stock.Ruler{}); !strings.Contains(got, "at 680 mm from") {
		t.Error(got)
	}
	s.Section.From = s.Section.Board - s.Length
	if got := cutApart(s, stock.Ruler{}); !strings.Contains(got, "at 1720 mm from") {
		t.Error(got)
	}
	data := JSON(p, Options{})
	if !bytes.Contains(data, []byte("\"section\": {\n        \"from\": 760,\n        \"board_length\": 2400\n      },\n      \"kerf\": 3,\n      \"trim\": 0,")) {
		t.Errorf("%s", data)
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
