package casework

import (
	"strings"
	"testing"

	"sawbill/stock"
)

// 900 x 720 x 300 on a plinth of 100, set back 50, with an applied back of 6: the
// box is 720 - 100 = 620 high and 294 deep, its sides begin 100 up. The inside is
// 620 - 36 = 584 high. The plinth's front and back are 900 long, at 50 and at 294 -
// 18 = 276; the cross pieces 294 - 50 - 36 = 208, from 68.
func TestCaseOnAPlinth(t *testing.T) {
	d := plain()
	d.Back = Back{Fit: word("applied"), Material: word("back")}
	d.Base = Base{Kind: word("plinth"), Height: metric("100"), SetBack: metric("50")}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 620 x 294 x 18 carcass",
		"1 top 864 x 294 x 18 carcass",
		"1 bottom 864 x 294 x 18 carcass",
		"1 back 620 x 900 x 6 back",
		"2 plinth front and back 900 x 100 x 18 carcass",
		"2 plinth cross piece 208 x 100 x 18 carcass",
	}, cut(c, from.Ruler))
	wantLines(t, []string{
		"side at 0, 0, 100",
		"side at 882, 0, 100",
		"top at 18, 0, 702",
		"bottom at 18, 0, 100",
		"back at 0, 294, 100",
		"plinth front and back at 0, 50, 0",
		"plinth front and back at 0, 276, 0",
		"plinth cross piece at 0, 68, 0",
		"plinth cross piece at 882, 68, 0",
	}, standing(c, from.Ruler))
	wantLines(t, []string{"inside height 584 = 720 (outside height) - 18 (top) - 18 (bottom) - 100 (base)"},
		only(derivations(c, from.Ruler), "(base)"))
}

// A framed case of 40 x 30 x 20 on feet 4 high and 3 deep of 1 1/2 lumber, in front
// 2 1/2 further: 30 - 4 = 26 is left for the stiles and 26 - 2 x 2 1/2 = 21 for the
// opening. The front feet are 3 + 2 1/2 = 5 1/2 deep, more than high, so their
// grain runs level; the back feet, 3 deep and 4 high, stand upright, at 20 - 3 = 17.
func TestFramedCaseOnFeetThatReachForward(t *testing.T) {
	d := Design{
		Construction: word("framed"),
		OutsideWidth: imperial("40"), OutsideHeight: imperial("30"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
		Frame:   Frame{Material: word("spruce"), StileWidth: imperial("2 1/2"), RailWidth: imperial("2 1/2")},
		Base: Base{Kind: word("feet"), Material: word("spruce"), Height: imperial("4"), Depth: imperial("3"),
			Forward: imperial("2 1/2")},
	}
	from := workshop(stock.Inches)
	c := derive(t, d, from)
	wantLines(t, []string{
		"2 side 26 x 17 x 3/4 carcass",
		"1 top 38 1/2 x 17 x 3/4 carcass",
		"1 bottom 38 1/2 x 17 x 3/4 carcass",
		"4 stile 26 x 2 1/2 x 1 1/2 spruce",
		"4 rail 35 x 2 1/2 x 1 1/2 spruce",
		"2 front foot 5 1/2 x 4 x 1 1/2 spruce",
		"2 back foot 4 x 3 x 1 1/2 spruce",
	}, cut(c, from.Ruler))
	var low []string
	for _, line := range standing(c, from.Ruler) {
		if strings.Contains(line, "foot") || strings.HasPrefix(line, "stile") || strings.HasPrefix(line, "rail") {
			low = append(low, line)
		}
	}
	wantLines(t, []string{
		"stile at 0, 0, 4", "stile at 37 1/2, 0, 4", "stile at 0, 18 1/2, 4", "stile at 37 1/2, 18 1/2, 4",
		"rail at 2 1/2, 0, 4", "rail at 2 1/2, 0, 27 1/2", "rail at 2 1/2, 18 1/2, 4", "rail at 2 1/2, 18 1/2, 27 1/2",
		"front foot at 0, -2 1/2, 0", "front foot at 38 1/2, -2 1/2, 0",
		"back foot at 0, 17, 0", "back foot at 38 1/2, 17, 0",
	}, low)
	if got, want := c.Openings[0].Height, imperial("21").Value; got != want {
		t.Errorf("the opening is %d high, want %d", got, want)
	}
}

// Inside 300 and a base of 80 make 300 + 36 + 80 = 416 outside.
func TestBaseCountsOutwards(t *testing.T) {
	d := plain()
	d.OutsideHeight, d.InsideHeight = Length{}, metric("300")
	d.Base = Base{Kind: word("feet"), Height: metric("80"), Depth: metric("60")}
	if got, want := sizeNamed(t, derive(t, d, workshop(stock.Millimeters)), "outside height"), metric("416").Value; got != want {
		t.Errorf("outside height %d, want %d", got, want)
	}
}
