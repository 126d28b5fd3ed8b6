package casework

import (
	"testing"

	"sawbill/stock"
)

// 900 x 720 x 300: at each corner 300 / 150 = 2 tenons, 8 in all, 18 / 3 = 6 thick
// and 3 x 6 = 18 wide. One strip of 8 x 40 and 7 saw cuts of 3.175 is 342.225 long.
// Top and bottom are as for a butt joint, 900 - 36 = 864.
func TestLooseTenonsInACarcass(t *testing.T) {
	d := plain()
	d.Carcass.Joint = word("loose-tenon")
	d.LooseTenon = LooseTenon{Material: word("oak"), Length: metric("40")}
	from := withOak(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 720 x 300 x 18 carcass",
		"1 top 864 x 300 x 18 carcass",
		"1 bottom 864 x 300 x 18 carcass",
		"1 loose tenon strip ≈342.2 x 18 x 6 oak",
	}, cut(c, from.Ruler))
	p := partNamed(t, c, "loose tenon strip")
	if got, want := p.Length, 8*metric("40").Value+7*from.Kerf; got != want {
		t.Errorf("the strip is %d long, want %d", got, want)
	}
	if got, want := p.How[2].Sum.Print(from.Ruler), "6 = 18 / 3 (carcass)"; got != want {
		t.Errorf("thickness %q, want %q", got, want)
	}
}

// A framed case of two bays in 1 1/2 lumber, 2 1/2 wide: two frames with 4 rail
// ends each and a mid stile with 2 more: 12 tenons, 1/2 thick and 1 1/2 wide. At 3
// and 1/8 of kerf, 24 1/8 / 3 1/8 = 7 go into a strip: two strips of 6, 6 x 3 + 5 x
// 1/8 = 18 5/8. The rails are 40 - 5 = 35, the mid stile 30 - 5 = 25.
func TestLooseTenonsInFrames(t *testing.T) {
	d := Design{
		Construction: word("framed"),
		OutsideWidth: imperial("40"), OutsideHeight: imperial("30"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
		Frame: Frame{Material: word("spruce"), StileWidth: imperial("2 1/2"), RailWidth: imperial("2 1/2"),
			Corner: word("loose-tenon")},
		LooseTenon: LooseTenon{Material: word("oak"), Length: imperial("3")},
		Bays:       make([]Bay, 2),
	}
	from := withOak(stock.Inches)
	wantLines(t, []string{
		"2 side 30 x 17 x 3/4 carcass",
		"1 top 38 1/2 x 17 x 3/4 carcass",
		"1 bottom 38 1/2 x 17 x 3/4 carcass",
		"4 stile 30 x 2 1/2 x 1 1/2 spruce",
		"4 rail 35 x 2 1/2 x 1 1/2 spruce",
		"2 mid stile 25 x 2 1/2 x 1 1/2 spruce",
		"1 partition 28 1/2 x 17 x 3/4 carcass",
		"2 loose tenon strip 18 5/8 x 1 1/2 x 1/2 oak",
	}, cut(derive(t, d, from), from.Ruler))
}

func TestSplinesAndGlueBlocks(t *testing.T) {
	d := plain()
	d.Spline = Joinery{Count: count(4), Material: word("back"), Length: metric("300"), Width: metric("24")}
	d.GlueBlock = Joinery{Count: count(8), Material: word("oak"), Thickness: metric("20"), Length: metric("60"), Width: metric("20")}
	from := withOak(stock.Millimeters)
	wantLines(t, []string{"4 spline 300 x 24 x 6 back", "8 glue block 60 x 20 x 20 oak"}, cut(derive(t, d, from), from.Ruler)[3:])
}
