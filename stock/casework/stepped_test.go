package casework

import (
	"testing"

	"sawbill/stock"
	"sawbill/stock/casework/sample"
)

// withTools is the workshop with usual tools.
func withTools(units stock.Units) Context {
	from := workshop(units)
	from.Tools = UsualTools(units)
	return from
}

// Three fronts in 690 - 36 = 654, less four gaps of 2: 646 / 3 = 215.33, down to 215. The 1 that is
// left makes each gap 2.25. Boxes: 215 - 12.7 = 202.3, down to 202; wide 900 - 36 - 2 x 12.7 = 838.6,
// down to 838.5; bottoms 838.5 - 24 + 12 - 1.5 = 825. Nothing that is given changes.
func TestFreeSizesLieOnTheStep(t *testing.T) {
	d, from := plain(), withTools(stock.Millimeters)
	d.OutsideHeight = metric("690")
	made(&d, "inset", DrawerBox{Count: count(3)})
	c := derive(t, d, from)
	wantLines(t, []string{
		"6 drawer side 282 x 202 x 12 box",
		"6 drawer front and back 814.5 x 202 x 12 box",
		"3 drawer bottom 825 x 268.5 x 6 back",
	}, only(cut(c, from.Ruler), "drawer"))
	wantLines(t, []string{"3 false front 860 x 215 x 18 carcass"}, only(cut(c, from.Ruler), "false front"))
	wantLines(t, []string{"bay 1 opening 1 front height 215 = 646 / 3 (left to share) - ≈0.3 (rounded down, gap 2.25)"}, only(derivations(c, from.Ruler), "front height"))

	from.Tools.Step = 0
	wantLines(t, []string{"6 drawer front and back 814.6 x ≈202.6 x 12 box"}, only(cut(derive(t, d, from), from.Ruler), "drawer front"))
}

// A back of 13/64 in leaves 11 3/4 - 13/64 = 11 35/64 inside: the partition is 11 17/32 wide, and 1/64
// is left behind it.
func TestPanelsBeforeABackLieOnTheStep(t *testing.T) {
	d := Design{
		OutsideWidth: imperial("46"), OutsideHeight: imperial("40"), OutsideDepth: imperial("11 3/4"),
		Carcass: Carcass{Material: word("carcass")},
		Back:    Back{Fit: word("rabbet"), Material: word("thin"), Depth: imperial("3/8")},
		Bays:    []Bay{{}, {}},
	}
	from := withTools(stock.Inches)
	from.Materials["thin"] = Material{Kind: stock.Sheet, Thicknesses: []stock.Length{imperial("13/64").Value}}
	c := derive(t, d, from)
	part := partNamed(t, c, "partition")
	if got := part.How[1].Sum.Print(from.Ruler); got != "11 17/32 = 11 35/64 (inside depth) - 1/64 (rounded down, gap behind 1/64)" {
		t.Error(got)
	}
}

// Three openings share 721 - 36 - 2 x 18 = 649: 216.33 each. The dividers lie at 18 + 216.33 = 234.33 and
// 234.33 + 18 + 216.33 = 468.67 above the sides' lower end, and move to 234.5 and 468.5.
func TestDividersLieOnTheStep(t *testing.T) {
	d, from := plain(), withTools(stock.Millimeters)
	d.OutsideHeight = metric("721")
	d.Bays = []Bay{{Openings: []Opening{{}, {}, {}}}}
	c := derive(t, d, from)
	wantLines(t, []string{"inner face: from the bottom end 234.5, 468.5; 18 wide, 0 deep"}, marked(c, from.Ruler, "side", "divider line"))
	if high := c.Openings[0].Height + c.Openings[1].Height + c.Openings[2].Height; high != metric("649").Value-1 {
		t.Errorf("openings are %d high together, not 649 less a unit of rounding", high)
	}
}

// A third of 38 is 12.67: chisels of 12 are nearest, and of 10 where there is no other. Cheeks lie
// (38 - 12) / 2 = 13 in, and 14.
func TestTenonsAreAsThickAsAChisel(t *testing.T) {
	d, from := framed(), withTools(stock.Millimeters)
	d.Frame.Corner, d.Frame.TenonLength = word("mortise-and-tenon"), metric("30")
	wantLines(t, []string{"both ends: from the front face 13, 25"}, marked(derive(t, d, from), from.Ruler, "rail", "tenon cheeks"))
	from.Tools.Chisels = []stock.Length{metric("10").Value}
	wantLines(t, []string{"both ends: from the front face 14, 24"}, marked(derive(t, d, from), from.Ruler, "rail", "tenon cheeks"))
}

// A width of loose tenons that no bit cuts stays, and is warned of; a third of 18 is a bit of 6.
func TestAStatedWidthStaysWithACaution(t *testing.T) {
	d, from := plain(), withTools(stock.Millimeters)
	d.Carcass.Joint = word("loose-tenon")
	d.LooseTenon = LooseTenon{Material: word("spruce"), Length: metric("40")}
	thick := func() (string, int) {
		c := derive(t, d, from)
		warned := 0
		for _, k := range c.Cautions {
			if k.Subject == "width of a mortise for a loose tenon" {
				warned++
			}
		}
		return from.Ruler.Print(partNamed(t, c, "loose tenon strip").Thickness), warned
	}
	if got, warned := thick(); got != "6" || warned != 0 {
		t.Errorf("%s thick, %d cautions", got, warned)
	}
	d.LooseTenon.Thickness = metric("7")
	if got, warned := thick(); got != "7" || warned != 1 {
		t.Errorf("%s thick, %d cautions", got, warned)
	}
}

// No free size of a part is off the step that has room beside it.
func TestWhatHasRoomLiesOnTheStep(t *testing.T) {
	looked := 0
	from := withTools(stock.Millimeters)
	sample.Each(func(seed uint64, d Design) {
		if len(d.Edgings) > 0 {
			return // strips are taken off their panels
		}
		for _, p := range derive(t, d, from).Parts {
			for _, how := range p.How {
				for _, term := range how.Sum {
					if term.Label == "clearance" && p.Name != "loose tenon strip" {
						looked++
						if how.Sum.Total()%from.Tools.Step != 0 {
							t.Errorf("seed %d: %s %s is off the step: %s", seed, p.Name, how.Dimension, how.Sum.Print(from.Ruler))
						}
					}
				}
			}
		}
	})
	if looked < 20 {
		t.Errorf("only %d sizes were looked at", looked)
	}
}
