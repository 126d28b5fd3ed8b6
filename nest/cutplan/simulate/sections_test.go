package simulate

import (
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// Faults in where the sections of a board lie are found.
func TestSectionsAreSawnAsTheyLie(t *testing.T) {
	const mm = stock.Millimeter
	board := stock.Stock{Name: "ash 1", Kind: stock.Board, Length: 2400 * mm, Width: 150 * mm, Thickness: 27 * mm, Trim: 20 * mm}
	plan := func() *cutplan.Plan {
		p := &cutplan.Plan{Job: stock.Job{Saw: stock.Saw{Kerf: 3 * mm}}}
		for _, s := range board.ClearSections([]stock.Zone{{From: 700 * mm, To: 760 * mm}, {From: 1600 * mm, To: 1601 * mm}}, 3*mm) {
			p.Layouts = append(p.Layouts, cutplan.Layout{Stock: s, Repeat: 1})
		}
		return p
	}
	if p := plan(); len(p.Layouts) != 3 || apart(p) != nil {
		t.Fatal(len(p.Layouts), apart(p))
	}
	for _, test := range []struct {
		fault string
		plant func(p *cutplan.Plan)
		want  string
	}{
		{"no kerf", func(p *cutplan.Plan) { p.Layouts[2].Stock.Section.From -= mm }, "meet"},
		{"one on the other", func(p *cutplan.Plan) { p.Layouts[1].Stock.Section.From = 500 * mm }, "meet"},
		{"before the board", func(p *cutplan.Plan) { p.Layouts[0].Stock.Section.From = -mm }, "meet"},
		{"beyond the board", func(p *cutplan.Plan) { p.Layouts[2].Stock.Length += 21 * mm }, "ends at"},
		{"nothing", func(p *cutplan.Plan) { p.Layouts[2].Stock.Length = 0 }, "ends at"},
		{"twice", func(p *cutplan.Plan) { p.Layouts[0].Repeat = 2 }, "2 times"},
		{"of two boards", func(p *cutplan.Plan) { p.Layouts[1].Stock.Section.Board += mm }, "several sizes"},
	} {
		p := plan()
		test.plant(p)
		if err := apart(p); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v, want %q", test.fault, err, test.want)
		}
	}
}
