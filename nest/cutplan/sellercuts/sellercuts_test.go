package sellercuts

import (
	"context"
	"slices"
	"strings"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

const mm = stock.Millimeter

// sheets is a job of one sheet for sale, with limits for carrying.
func sheets(length, width stock.Length, t stock.Transport, parts ...stock.Part) stock.Job {
	return stock.Job{
		Saw: stock.Saw{Kerf: 3 * mm}, Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm}, Transport: t,
		Stock: []stock.Stock{{Name: "full", Material: "ply", Thickness: 18 * mm, Length: length, Width: width, Price: 60_00}},
		Parts: parts,
	}
}

func shelf(length, width stock.Length, count int) stock.Part {
	return stock.Part{Name: "shelf", Material: "ply", Length: length, Width: width, Thickness: 18 * mm, Count: count}
}

func carry(t *testing.T, job stock.Job) *cutplan.Plan {
	t.Helper()
	p, err := Make(context.Background(), job, cutplan.Options{Iterations: 500})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Two shelves 1200 long, 600 wide, from a sheet 2440 x 1220, of which 1500 can be
// carried, a cut for 1.50: one crosscut makes 1240 + 4 + 1196 or the like; the piece
// of 1202 or more holds both, 600 + 3 + 600 = 1203 of its 1220. So one sheet, one cut,
// 61.50; and no plan without that cut can be carried, which is the bound as well.
func TestASheetIsCutSoThatItCanBeCarried(t *testing.T) {
	limits := stock.Transport{Longest: 1500 * mm, Widest: 1300 * mm, Cuts: 2, CutPrice: 1_50, CutKerf: 4 * mm, CutTolerance: 2 * mm}
	p := carry(t, sheets(2440*mm, 1220*mm, limits, shelf(1200*mm, 600*mm, 2)))
	if !p.Complete() || p.Cost != 61_50 || p.Bound != 61_50 || len(p.AtSeller) != 1 {
		t.Fatalf("cost %v, bound %v, cuts %+v", p.Cost, p.Bound, p.AtSeller)
	}
	d := p.AtSeller[0]
	if d.Count != 1 || d.Cuts() != 1 || d.Cut != cutplan.Crosscut || d.Pieces[0]+d.Pieces[1]+4*mm != 2440*mm || d.Cost != 1_50 {
		t.Errorf("division %+v", d)
	}
	if largest := slices.Max(d.Pieces); largest < 1202*mm || largest > 1500*mm {
		t.Errorf("the larger piece is %d", largest)
	}
}

// A shelf 2000 long cannot be carried in a car that takes 1500, nor cut from what can.
func TestAPartLongerThanWhatIsCarriedIsNotCut(t *testing.T) {
	limits := stock.Transport{Longest: 1500 * mm, Widest: 1300 * mm, Cuts: 2, CutKerf: 4 * mm}
	if p := carry(t, sheets(2440*mm, 1220*mm, limits, shelf(2000*mm, 300*mm, 1))); p.Complete() {
		t.Errorf("a plan with %+v", p.AtSeller)
	}
}

// Stock that fits is not cut: 2440 x 1220 goes where 2500 x 1300 goes, lying either way.
func TestWhatFitsIsNotCutByTheSeller(t *testing.T) {
	limits := stock.Transport{Longest: 2500 * mm, Widest: 1300 * mm, Cuts: 2, CutPrice: 1_50, CutKerf: 4 * mm}
	if p := carry(t, sheets(1220*mm, 2440*mm, limits, shelf(1200*mm, 600*mm, 2))); len(p.AtSeller) > 0 || p.Cost != 60_00 {
		t.Errorf("cost %v with %+v", p.Cost, p.AtSeller)
	}
}

// A sheet 1000 long is carried in pieces of 500 or less, with a kerf of 4 and a tolerance
// of 2: pieces 498 + 4 + 498, each good for 498 - 2 = 496.
func TestToleranceIsTakenOffTheEdgeThatTheSellerCut(t *testing.T) {
	limits := stock.Transport{Longest: 1220 * mm, Widest: 500 * mm, Cuts: 1, CutKerf: 4 * mm, CutTolerance: 2 * mm}
	for _, tt := range []struct {
		length stock.Length
		fits   bool
	}{{496 * mm, true}, {497 * mm, false}} {
		job := sheets(1000*mm, 1220*mm, limits, shelf(tt.length, 1200*mm, 2))
		if p := carry(t, job); p.Complete() && p.Buy[0].Count == 1 != tt.fits {
			t.Errorf("two of %d: %d sheets, %+v", tt.length, p.Buy[0].Count, p.AtSeller)
		}
	}
}

// The error of the seller's saw is cut off at home, so that a part is to size. A piece 498
// long keeps 496, by a trim of its far end alone, and 1220 - 1200 is left beside.
func TestTheSideThatTheSellerCutIsTrimmed(t *testing.T) {
	limits := stock.Transport{Longest: 1220 * mm, Widest: 500 * mm, Cuts: 1, CutKerf: 4 * mm, CutTolerance: 2 * mm}
	p := carry(t, sheets(1000*mm, 1220*mm, limits, shelf(496*mm, 1200*mm, 2)))
	if len(p.Layouts) != 1 || p.Layouts[0].Repeat != 2 || p.Layouts[0].Stock.Length != 498*mm {
		t.Fatalf("%+v", p.Layouts)
	}
	steps := p.Steps(p.Layouts[0])
	first := steps[0]
	if !first.Trim || first.Cut != cutplan.Crosscut || first.Setting != 496*mm || first.X != 496*mm {
		t.Errorf("%+v", first)
	}
	second := steps[1]
	if second.Trim || second.Cut != cutplan.Rip || second.Setting != 1200*mm || second.Piece != (cutplan.Size{Length: 496 * mm, Width: 1220 * mm}) {
		t.Errorf("%+v", second)
	}
}

// Two tops 1218 long: of a full sheet, 2440 with a cut of 4 and up to 2 off beside it, one
// piece gives 1220 - 2 = 1218 and the other 2440 - 1220 - 4 - 2 = 1214. So a full
// sheet, 61.50 with its cut, gives one; two are 123.00, one and a half sheet 97.50, and
// two half sheets 72.00.
func TestSmallerStockIsBoughtWhereTheCutCostsAPart(t *testing.T) {
	job := sheets(2440*mm, 1220*mm, oneCut(1300*mm, 1300*mm), shelf(1218*mm, 1200*mm, 2))
	half := job.Stock[0]
	half.Name, half.Length, half.Price = "half", 1220*mm, 36_00
	job.Stock = append(job.Stock, half)
	if p := carry(t, job); p.Cost != 72_00 || len(p.AtSeller) != 0 || p.Bound != 61_50 {
		t.Errorf("%v, bound %v, with %+v", p.Cost, p.Bound, p.AtSeller)
	}
}

// Four such tops of full sheets alone take four. A narrow sheet at 16.00, cheaper but
// of no use, is not bought instead.
func TestWhatIsBoughtIsOfUse(t *testing.T) {
	job := sheets(2440*mm, 1220*mm, oneCut(1300*mm, 1300*mm), shelf(1218*mm, 1200*mm, 4))
	narrow := job.Stock[0]
	narrow.Name, narrow.Width, narrow.Price = "narrow", 300*mm, 16_00
	job.Stock = append(job.Stock, narrow)
	if p := carry(t, job); !p.Complete() || p.Cost != 4*61_50 || len(p.Buy) != 1 || p.Buy[0].Count != 4 {
		t.Errorf("%v for %+v", p.Cost, p.Buy)
	}
	job.Stock[0].Count = 3 // no more are to be had: three tops are cut
	if p := carry(t, job); len(p.Unplaced) != 1 || p.Unplaced[0].Count != 1 || p.Cost != 3*61_50 {
		t.Errorf("%v for %+v, missing %+v", p.Cost, p.Buy, p.Unplaced)
	}
}

// A van takes 2450 x 1215. A door 2400 x 900 needs a rip; a top 1210 x 1216, its grain
// along, needs the width of 1220 and so crosscuts, at 1215 at the most: 1212 + 4 +
// 1212 + 4 + 8. So two sheets with one cut and two: 2 x 60.00 + 3 x 1.50.
func TestOneOfferIsCutInTwoWays(t *testing.T) {
	limits := oneCut(2450*mm, 1215*mm)
	limits.Cuts = 2
	top, door := shelf(1210*mm, 1216*mm, 1), shelf(2400*mm, 900*mm, 1)
	door.Name = "door"
	p := carry(t, sheets(2440*mm, 1220*mm, limits, top, door))
	if !p.Complete() || p.Cost != 124_50 || len(p.AtSeller) != 2 || p.AtSeller[0].Cut == p.AtSeller[1].Cut || p.Buy[0].Count != 2 {
		t.Errorf("%v for %+v", p.Cost, p.AtSeller)
	}
}

// A board of 3000 goes into a car of 1000 in three: 1000 + 4 + 1000 + 4 + 992. Its ends are
// out by up to 2 where they were cut, one of the first and the last, both of the middle:
// 998, 996 and 990 are good, together one board at 9.00 with two cuts at 1.50; with
// 998, 997 and 990 there is no room for the second.
func TestBoardsAreCrosscutBySellers(t *testing.T) {
	limits := stock.Transport{Longest: 1000 * mm, Widest: 500 * mm, Cuts: 2, CutPrice: 1_50, CutKerf: 4 * mm, CutTolerance: 2 * mm}
	for _, tt := range []struct {
		second stock.Length
		boards int
	}{{996 * mm, 1}, {997 * mm, 2}} {
		job := sheets(3000*mm, 95*mm, limits, shelf(998*mm, 95*mm, 1), shelf(tt.second, 95*mm, 1), shelf(990*mm, 95*mm, 1))
		job.Stock[0].Kind, job.Stock[0].Price = stock.Board, 9_00
		job.Parts[1].Name, job.Parts[2].Name = "second", "third"
		p := carry(t, job)
		if !p.Complete() || p.Buy[0].Count != tt.boards || p.Cost != stock.Money(tt.boards)*12_00 {
			t.Errorf("%v: %v for %+v", tt.second, p.Cost, p.AtSeller)
		}
	}
}

// A sheet of 2440 x 1220 in a car of 2500 x 700 is ripped: 610 - 2 less 2 off gives 606,
// so four shelves of 600 x 600 come from each half, 3 x 603 + 600 = 2409; eight from one sheet.
func TestWhatIsTooWideIsRipped(t *testing.T) {
	p := carry(t, sheets(2440*mm, 1220*mm, oneCut(2500*mm, 700*mm), shelf(600*mm, 600*mm, 8)))
	if p.Cost != 61_50 || !p.Proven() || p.AtSeller[0].Cut != cutplan.Rip {
		t.Errorf("%v, bound %v, %+v", p.Cost, p.Bound, p.AtSeller)
	}
}

// If no cut is allowed nothing is bought, and the plan says why.
func TestWithoutCutsNothingTooLargeIsBought(t *testing.T) {
	for _, kind := range []stock.Kind{stock.Sheet, stock.Board} {
		limits := oneCut(1500*mm, 1300*mm)
		limits.Cuts = 0
		job := sheets(2440*mm, 200*mm, limits, shelf(600*mm, 200*mm, 2))
		job.Stock[0].Kind = kind
		p := carry(t, job)
		if p.Cost != 0 || len(p.Buy) != 0 || len(p.Unplaced) != 1 || !strings.HasPrefix(p.Unplaced[0].Reason, "larger than any ply that can be carried home") {
			t.Errorf("%v: %+v", kind, p.Unplaced)
		}
	}
}

// Stock without a price is bought as sparingly: two tops of 1100 from one sheet.
func TestWithoutPricesAsLittleIsBought(t *testing.T) {
	job := sheets(2440*mm, 1220*mm, oneCut(1300*mm, 1300*mm), shelf(1100*mm, 600*mm, 4))
	job.Stock[0].Price, job.Transport.CutPrice = 0, 0
	if p := carry(t, job); !p.Complete() || p.Buy[0].Count != 1 || p.Cost != 0 {
		t.Errorf("%+v", p.Buy)
	}
}

func oneCut(longest, widest stock.Length) stock.Transport {
	return stock.Transport{Longest: longest, Widest: widest, Cuts: 1, CutPrice: 1_50, CutKerf: 4 * mm, CutTolerance: 2 * mm}
}

// A sheet of 2440 is 2 mm longer than what is carried, which is less than the seller's
// kerf: one cut is enough none the less. Seven parts of 1000 x 580 take two sheets, 4 + 3,
// for 50.00 and a cut each, not three small ones for 90.00.
func TestASheetAHairTooLongIsCutOnce(t *testing.T) {
	limits := stock.Transport{Longest: 2438 * mm, Widest: 1300 * mm, Cuts: 2, CutPrice: 1_00, CutKerf: 4 * mm, CutTolerance: 2 * mm}
	job := sheets(2440*mm, 1220*mm, limits, shelf(1000*mm, 580*mm, 7))
	job.Stock[0].Price = 50_00
	small := job.Stock[0]
	small.Name, small.Length, small.Price = "small", 1220*mm, 90_00
	job.Stock = append(job.Stock, small)
	if p := carry(t, job); !p.Proven() || p.Cost != 102_00 {
		t.Errorf("cost %v, bound %v", p.Cost, p.Bound)
	}
}

func TestFewestCuts(t *testing.T) {
	for _, tt := range []struct {
		length, most stock.Length
		cuts         int // -1: not to be had
	}{
		{2440 * mm, 2440 * mm, 0}, {2440 * mm, 2438 * mm, 1}, {2444 * mm, 1220 * mm, 1}, {2445 * mm, 1220 * mm, 2},
		{3668 * mm, 1220 * mm, 2}, {3669 * mm, 1220 * mm, -1},
	} {
		s := stock.Stock{Kind: stock.Board, Length: tt.length, Width: 100 * mm}
		cuts, can := fewestCuts(s, stock.Transport{Longest: tt.most, Cuts: 2, CutKerf: 4 * mm})
		if can != (tt.cuts >= 0) || can && cuts != tt.cuts {
			t.Errorf("%v in pieces of %v: %d cuts, %v", tt.length, tt.most, cuts, can)
		}
	}
}

// One part of 600 x 400 needs no more than the one cut with which a sheet of 2440 goes
// where 1500 go, though a second costs nothing.
func TestCutsForNothingAreNotAskedForInVain(t *testing.T) {
	limits := stock.Transport{Longest: 1500 * mm, Cuts: 2, CutKerf: 4 * mm, CutTolerance: 2 * mm}
	p := carry(t, sheets(2440*mm, 1220*mm, limits, shelf(600*mm, 400*mm, 1)))
	if len(p.AtSeller) != 1 || p.AtSeller[0].Cuts() != 1 {
		t.Errorf("%+v", p.AtSeller)
	}
}
