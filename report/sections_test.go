package report

import (
	"bytes"
	"cmp"
	"fmt"
	"slices"
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

// The blade runs outside each section: on the near side of its first cut, on the far side of
// the others. Every cut has two ticks.
func TestTicksOfAMapLieOutsideItsSections(t *testing.T) {
	m, _ := boardMap(sectioned(), 0, stock.Ruler{})
	type tick struct{ at, to float64 }
	var ticks []tick
	for _, mark := range m.Draw(180).Marks {
		if l, ok := mark.(drawing.Line); ok && l.Pen == drawing.Cut && l.From.Y == l.To.Y {
			ticks = append(ticks, tick{l.From.X, l.To.X})
		}
	}
	slices.SortStableFunc(ticks, func(a, b tick) int { return cmp.Compare(a.at, b.at) })
	got := ""
	for _, k := range ticks {
		if k.to < k.at {
			got += "<"
		} else {
			got += ">"
		}
	}
	if want := "<<" + ">>" + ">>" + "<<" + ">>" + ">>"; got != want { // a, 1/1, b, c, 2/1, d
		t.Errorf("ticks %s, want %s", got, want)
	}
}

// Every board with defects has one map, which holds all its sections that are cut.
func TestEachBoardWithDefectsHasOneMap(t *testing.T) {
	p := trial(t, "boards-bench").plan
	maps, sections := map[string]int{}, map[string]bool{}
	for i, l := range p.Layouts {
		if !l.Stock.IsSection() {
			continue
		}
		sections[l.Stock.Name] = true
		m, ok := boardMap(p, i, stock.Ruler{})
		if !ok {
			continue
		}
		maps[l.Stock.Name]++
		said := ""
		drawn := m.Draw(180)
		for _, text := range drawn.Texts() {
			said += text.String + "\n"
		}
		for n, of := range p.Layouts {
			if want := fmt.Sprintf("layout %d: ", n+1); of.Stock.IsSection() && of.Stock.Name == l.Stock.Name && !strings.Contains(said, want) {
				t.Errorf("the map of %s lacks %q", l.Stock.Name, want)
			}
		}
	}
	for name := range sections {
		if maps[name] != 1 {
			t.Errorf("%s has %d maps", name, maps[name])
		}
	}
	if len(sections) < 2 {
		t.Errorf("%d boards with defects are cut", len(sections))
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
