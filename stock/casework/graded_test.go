package casework

import (
	"fmt"
	"strings"
	"testing"

	"sawbill/stock"
)

// gradedChest is 500 x 600 x 400 with four inset drawers, 20 mm between one
// front and the next. Its opening is 600 - 36 = 564 high.
func gradedChest() Design {
	d := Design{
		OutsideWidth: metric("500"), OutsideHeight: metric("600"), OutsideDepth: metric("400"),
		Carcass: Carcass{Material: word("carcass")},
	}
	made(&d, "inset", DrawerBox{Count: count(4)})
	d.Bays[0].Openings[0].Graded = metric("20")
	return d
}

// Fronts share 564 - 5 x 2 = 554, less 6 steps (0 + 1 + 2 + 3) of 20: 434 / 4 =
// 108.5 for the top one, then 128.5, 148.5 and 168.5.
func TestGradedFrontsFillTheOpening(t *testing.T) {
	from := workshop(stock.Millimeters)
	c := derive(t, gradedChest(), from)
	wantLines(t, []string{
		"1 false front, drawer 1 460 x 108.5 x 18 carcass",
		"1 false front, drawer 2 460 x 128.5 x 18 carcass",
		"1 false front, drawer 3 460 x 148.5 x 18 carcass",
		"1 false front, drawer 4 460 x 168.5 x 18 carcass",
	}, only(cut(c, from.Ruler), "false front"))
	wantLines(t, []string{
		"bay 1 opening 1 fronts without grading 434 = 564 (bay 1 opening 1 height) - 5 x 2 (gap) - 6 x 20 (graded)",
		"bay 1 opening 1 front 1 height 108.5 = 434 / 4 (without grading)",
		"bay 1 opening 1 front 2 height 128.5 = 434 / 4 (without grading) + 20 (graded)",
		"bay 1 opening 1 front 3 height 148.5 = 434 / 4 (without grading) + 2 x 20 (graded)",
		"bay 1 opening 1 front 4 height 168.5 = 434 / 4 (without grading) + 3 x 20 (graded)",
	}, only(derivations(c, from.Ruler), "front"))
}

// Inches: 36 13/16 for five fronts, less 10 times 3/4: 29 5/16 / 5 = 5.8625, down to 5 27/32. What
// that leaves, 3/32, goes to six gaps of 1/8: 9/64 each. Without grading 36 13/16 / 5 = 7.3625, down
// to 7 11/32: five alike leave 3/32 too.
func TestFrontsLieOnTheRuler(t *testing.T) {
	d := Design{
		OutsideWidth: imperial("30"), OutsideHeight: imperial("39 1/16"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
	}
	made(&d, "inset", DrawerBox{Count: count(5)})
	d.Drawer.GrooveDepth, d.Drawer.Gap = imperial("1/4"), imperial("1/8") // 39 1/16 - 1 1/2 - 6/8 = 36 13/16
	from := workshop(stock.Inches)
	from.Tools = UsualTools(stock.Inches)
	heights := func() []string {
		var all []string
		c := derive(t, d, from)
		for _, p := range c.Parts {
			if strings.HasPrefix(p.Name, "false front") {
				all = append(all, fmt.Sprint(p.Count, " of ", from.Ruler.Print(p.Width)))
			}
		}
		return all
	}
	wantLines(t, []string{"5 of 7 11/32"}, heights())
	d.Bays[0].Openings[0].Graded = imperial("3/4")
	wantLines(t, []string{"1 of 5 27/32", "1 of 6 19/32", "1 of 7 11/32", "1 of 8 3/32", "1 of 8 27/32"}, heights())
	wantLines(t, []string{"bay 1 opening 1 front 5 height 8 27/32 = 29 5/16 / 5 (without grading) - ≈1/64 (rounded down, gap 9/64) + 4 x 3/4 (graded)"},
		only(derivations(derive(t, d, from), from.Ruler), "front 5"))
}

// Whatever the opening, to the last unit of Length: each front is its grade higher than the one
// above, and together with their gaps they fill the opening but for less than a unit each, or with
// steps for less than a step each, which the gaps take.
func TestGradedFrontsSumExactly(t *testing.T) {
	for _, tools := range []Tools{{Step: 0}, {Step: stock.Millimeter / 2}} {
		from := workshop(stock.Millimeters)
		from.Tools = tools
		for more := range stock.Length(8) {
			d := gradedChest()
			d.OutsideHeight.Value += more * 4001
			c := derive(t, d, from)
			sum, last := 5*2*stock.Millimeter, stock.Length(0) // gaps
			for _, p := range c.Parts {
				if !strings.HasPrefix(p.Name, "false front") {
					continue
				}
				if last > 0 && p.Width != last+20*stock.Millimeter || tools.Step > 0 && p.Width%tools.Step != 0 {
					t.Errorf("%d more: %s is %d high, below one of %d", more, p.Name, p.Width, last)
				}
				sum, last = sum+p.Width, p.Width
			}
			if left := c.Openings[0].Height - sum; left < 0 || left >= 4*max(1, tools.Step) {
				t.Errorf("%d more: fronts and gaps are %d, the opening %d", more, sum, c.Openings[0].Height)
			}
		}
	}
}

// The top front settles all: 100 + 120 + 140 + 160 = 520, and 5 gaps of 2: the
// opening is 530, outside 566.
func TestTopFrontAndStepSettleTheCase(t *testing.T) {
	d := gradedChest()
	d.OutsideHeight = Length{}
	d.Bays[0].Openings[0].Drawers = []DrawerBox{{FrontHeight: metric("100")}, {Count: count(3)}}
	from := workshop(stock.Millimeters)
	c := derive(t, d, from)
	if got, want := sizeNamed(t, c, "outside height"), metric("566").Value; got != want {
		t.Errorf("outside height %d, want %d", got, want)
	}
	wantLines(t, []string{
		"1 false front, drawer 1 460 x 100 x 18 carcass",
		"1 false front, drawer 2 460 x 120 x 18 carcass",
		"1 false front, drawer 3 460 x 140 x 18 carcass",
		"1 false front, drawer 4 460 x 160 x 18 carcass",
	}, only(cut(c, from.Ruler), "false front"))
}

// only keeps the lines that have text in them.
func only(lines []string, text string) []string {
	var kept []string
	for _, l := range lines {
		if strings.Contains(l, text) {
			kept = append(kept, l)
		}
	}
	return kept
}
