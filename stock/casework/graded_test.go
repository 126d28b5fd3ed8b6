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
		"bay 1 opening 1 fronts without their steps 434 = 564 (bay 1 opening 1 height) - 5 x 2 (gap) - 6 x 20 (step)",
		"bay 1 opening 1 front 1 height 108.5 = 434 / 4 (without steps)",
		"bay 1 opening 1 front 2 height 128.5 = 434 / 4 (without steps) + 20 (step)",
		"bay 1 opening 1 front 3 height 148.5 = 434 / 4 (without steps) + 2 x 20 (step)",
		"bay 1 opening 1 front 4 height 168.5 = 434 / 4 (without steps) + 3 x 20 (step)",
	}, only(derivations(c, from.Ruler), "front"))
}

// Inches: 36 13/16 for five fronts, less 10 steps of 3/4: 29 5/16 / 5 = 5.8625, down to
// 5 27/32, of which five leave 3/32 to the lowest. What is printed adds up: 5 27/32 + 6
// 19/32 + 7 11/32 + 8 3/32 + 8 15/16 = 36 13/16. Without steps 36 13/16 / 5 = 7.3625, down
// to 7 11/32: four of them and 7 7/16.
func TestFrontsLieOnTheRuler(t *testing.T) {
	d := Design{
		OutsideWidth: imperial("30"), OutsideHeight: imperial("39 1/16"), OutsideDepth: imperial("20"),
		Carcass: Carcass{Material: word("carcass")},
	}
	made(&d, "inset", DrawerBox{Count: count(5)})
	d.Drawer.GrooveDepth, d.Drawer.Gap = imperial("1/4"), imperial("1/8") // 39 1/16 - 1 1/2 - 6/8 = 36 13/16
	from := workshop(stock.Inches)
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
	wantLines(t, []string{"4 of 7 11/32", "1 of 7 7/16"}, heights())
	d.Bays[0].Openings[0].Graded = imperial("3/4")
	wantLines(t, []string{"1 of 5 27/32", "1 of 6 19/32", "1 of 7 11/32", "1 of 8 3/32", "1 of 8 15/16"}, heights())
	wantLines(t, []string{"bay 1 opening 1 front 5 height 8 15/16 = 5 27/32 (29 5/16 / 5, rounded down) + 4 x 3/4 (step) + 3/32 (rest of rounding)"},
		only(derivations(derive(t, d, from), from.Ruler), "front 5"))
}

// Whatever the opening, to the last unit of Length: each front is its step
// higher than the one above, the lowest takes the rest, and together with their
// gaps they fill the opening.
func TestGradedFrontsSumExactly(t *testing.T) {
	from := workshop(stock.Millimeters)
	for more := range stock.Length(8) {
		d := gradedChest()
		d.OutsideHeight.Value += more
		c := derive(t, d, from)
		var fronts []stock.Length
		for _, p := range c.Parts {
			if strings.HasPrefix(p.Name, "false front") {
				fronts = append(fronts, p.Width)
			}
		}
		sum := 5 * 2 * stock.Millimeter // gaps
		for i, f := range fronts {
			sum += f
			if i == 0 {
				continue
			}
			step := f - fronts[i-1] - 20*stock.Millimeter
			if step != 0 && i < 3 || step < 0 || step >= 4*stock.Millimeter/10 {
				t.Errorf("%d more: front %d is %d off its step", more, i+1, step)
			}
		}
		if want := c.Openings[0].Height; sum != want {
			t.Errorf("%d more: fronts and gaps are %d, the opening %d", more, sum, want)
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
