package report

import (
	"bytes"
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/choice"
	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// fiveShelves is a job of five pieces of 1000 out of boards of 2000 at 5.00 and
// of 3000 at 8.00: 13.00 for one short and one long board.
func fiveShelves(t *testing.T) *choice.Comparison {
	t.Helper()
	const mm = stock.Millimeter
	pine := stock.Stock{Kind: stock.Board, Material: "pine", Width: 100 * mm, Thickness: 20 * mm}
	short, long := pine, pine
	short.Name, short.Seller, short.Length, short.Price = "short", "North", 2000*mm, 500
	long.Name, long.Seller, long.Length, long.Price = "long", "South", 3000*mm, 800
	c, err := choice.Compare(context.Background(), stock.Job{
		Title:  "Shelves",
		Stock:  []stock.Stock{short, long},
		Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm},
		Parts:  []stock.Part{{Name: "shelf", Material: "pine", Length: 1000 * mm, Width: 100 * mm, Thickness: 20 * mm, Count: 5}},
	}, choice.Options{Iterations: 200, Density: func(string) float64 { return 500 }})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func TestComparisonSaysWhatIsReckonedByHand(t *testing.T) {
	var b bytes.Buffer
	if err := Comparison(&b, fiveShelves(t), Options{}); err != nil {
		t.Fatal(err)
	}
	check(t, b.String(), `Shelves: what could be bought

pine
  choice  buy                                     cost  at least  pieces    yield  waste  keep   kg  cuts  setups
       1  1 x short at North; 1 x long at South  13.00     13.00       2  100.0 %  0.0 %     0  5.0     3       1  best
       2  3 x short at North                     15.00     15.00       3   83.3 %  0.0 %     1  6.0     3       1
       3  2 x long at South                      16.00     16.00       2   83.3 %  0.0 %     1  6.0     4       1
  If short at North is out: in all 2 x long at South, 3.00 more.
  If long at South is out: in all 3 x short at North, 2.00 more.
  Choice 2 costs no more than choice 1 where short at North costs 4.00 or less (it is 5.00).
  Choice 3 costs no more than choice 1 where long at South costs 5.00 or less (it is 8.00).

The whole job
  bought                      cost  at least
  the best of each material  13.00     13.00
  all at North               15.00     15.00
  all at South               16.00     16.00
`)
}

func TestShoppingListIsBySeller(t *testing.T) {
	var b bytes.Buffer
	if err := ShoppingList(&b, fiveShelves(t), Options{}); err != nil {
		t.Fatal(err)
	}
	check(t, b.String(), `Shelves: shopping list

Buy at North
       buy  stock   size (mm)        material  each  cost
  [ ]    1  short   2000 x 100 x 20  pine      5.00  5.00
         1  in all                                   5.00
  If short at North is out: in all 2 x long at South, 3.00 more.

Buy at South
       buy  stock   size (mm)        material  each  cost
  [ ]    1  long    3000 x 100 x 20  pine      8.00  8.00
         1  in all                                   8.00
  If long at South is out: in all 3 x short at North, 2.00 more.

At all sellers together: 13.00.
`)
}

func TestSpreadsheetsOfAComparison(t *testing.T) {
	c := fiveShelves(t)
	check(t, string(ShoppingListCSV(c)), `seller,material,count,stock,length (mm),width (mm),thickness (mm),each,cost,if it is out
North,pine,1,short,2000,100,20,5.00,5.00,"If short at North is out: in all 2 x long at South, 3.00 more."
South,pine,1,long,3000,100,20,8.00,8.00,"If long at South is out: in all 3 x short at North, 2.00 more."
`)
	check(t, string(ComparisonCSV(c)), `material,choice,buy,on hand used,cost,at least,worth of what is kept,pieces,sellers,yield,waste,kept,weight in kg,cuts,setups,verdict
pine,1,1 x short at North; 1 x long at South,false,13.00,13.00,0.00,2,North; South,1.0000,0.0000,0,5.0,3,1,best
pine,2,3 x short at North,false,15.00,15.00,0.00,3,North,0.8333,0.0000,1,6.0,3,1,
pine,3,2 x long at South,false,16.00,16.00,0.00,2,South,0.8333,0.0000,1,6.0,4,1,
`)
}

func check(t *testing.T, got, want string) {
	t.Helper()
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// Lumber by the board foot is no cheapest choice at nothing: what to ask for is on the
// shopping list, at 6.00 a board foot, and no cost counts it.
func TestLumberByTheBoardFootIsComparedAsAnEstimate(t *testing.T) {
	const inch = stock.Inch
	quarter, err := stock.ParseQuarter("4/4")
	if err != nil {
		t.Fatal(err)
	}
	c, err := choice.Compare(context.Background(), stock.Job{
		Tax:    10_00,
		Offcut: stock.Offcut{Length: 12 * inch, Width: 3 * inch},
		Rough:  []stock.Rough{{Material: "oak", Quarter: quarter, Grade: stock.GradeOf("FAS"), Price: 6_00, Yield: stock.Percent(50)}},
		Parts:  []stock.Part{{Name: "shelf", Material: "oak", Length: 36 * inch, Width: 6 * inch, Thickness: 3 * inch / 4, Count: 2}},
	}, choice.Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	// 2 x 36 x 6 x 1 of 144 cubic inches are 3 board feet, half of what is asked for.
	var table, list bytes.Buffer
	if err := errors.Join(Comparison(&table, c, Options{}), ShoppingList(&list, c, Options{})); err != nil {
		t.Fatal(err)
	}
	check(t, table.String(), `What could be bought

oak
  choice  buy                      cost  at least  pieces  yield  waste  keep  cuts  setups
       1  6 board feet of 4/4 oak     -         -       0  0.0 %  0.0 %     0     0       0  an estimate

The whole job
  bought                     cost  at least
  the best of each material  0.00      0.00  without what is sold by the board foot

Ask for, by the board foot: an estimate
  board feet  lumber   grade   net  yield (%)  each   cost
  6           4/4 oak  FAS    3.00  50         6.00  36.00
  An estimate, and not in the costs here: boards differ. The plan says what they must give.
`)
	check(t, list.String(), `Shopping list

Ask for, by the board foot: an estimate
  board feet  lumber   grade   net  yield (%)  each   cost
  6           4/4 oak  FAS    3.00  50         6.00  36.00
  An estimate, and not in the costs here: boards differ. The plan says what they must give.
`)
	if got := string(ShoppingListCSV(c)); !strings.Contains(got, `,oak,,"6 board feet of 4/4 oak, FAS: an estimate",,,,6.00,,`) {
		t.Error(got)
	}
}

// Two shelves: a thin board at 5.00, or a thick one at 3.00, which is cut only for want of
// thin ones. Where the thin one is out, the thick one costs less, and more work.
func TestASubstituteMayCostLessAndMoreWork(t *testing.T) {
	const mm = stock.Millimeter
	thin := stock.Stock{Name: "thin", Kind: stock.Board, Material: "pine", Length: 2000 * mm, Width: 100 * mm, Thickness: 20 * mm, Price: 500}
	thick := thin
	thick.Name, thick.Thickness, thick.Price = "thick", 50*mm, 300
	c, err := choice.Compare(context.Background(), stock.Job{
		Stock: []stock.Stock{thin, thick},
		Parts: []stock.Part{{Name: "shelf", Material: "pine", Length: 1000 * mm, Width: 100 * mm, Thickness: 20 * mm, Count: 2}},
	}, choice.Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	check(t, strings.Join(substitutes(c.Materials[0]), "\n"), "If thin is out: in all 1 x thick, 2.00 less, needs more planing.")
}

// Nothing is so cheap that the seven boards of one choice make up for the one of the
// other: no price is told at which they would.
func TestNoPriceIsToldBelowACent(t *testing.T) {
	some := stock.Stock{Name: "some", Price: 100}
	other := stock.Stock{Name: "other", Price: 3}
	plan := func(s stock.Stock, n int) *cutplan.Plan {
		return &cutplan.Plan{Buy: []cutplan.Purchase{{Stock: s, Count: n, Cost: s.Price.Times(n)}}, Cost: s.Price.Times(n)}
	}
	m := choice.Material{Choices: []choice.Choice{{Plan: plan(other, 1)}, {Plan: plan(some, 7)}}}
	if said := breakEvens(m); said != nil {
		t.Error(said)
	}
}

// Of three parts of 900 x 900, one fits each sheet of 1000 x 1000, of which there are two:
// too few, but not too small. A sheet of 800 is too small.
func TestWhatCannotBeIsToldFromWhatWasNotFound(t *testing.T) {
	const mm = stock.Millimeter
	large := stock.Stock{Name: "large", Material: "ply", Thickness: 18 * mm, Length: 1000 * mm, Width: 1000 * mm, Price: 1000, Count: 2}
	small, enough := large, large
	small.Name, small.Length, small.Count = "small", 800*mm, 0
	enough.Name, enough.Length, enough.Price, enough.Count = "enough", 1100*mm, 2000, 0
	c, err := choice.Compare(context.Background(), stock.Job{
		Stock: []stock.Stock{large, small, enough},
		Parts: []stock.Part{{Name: "top", Material: "ply", Length: 900 * mm, Width: 900 * mm, Thickness: 18 * mm, Count: 3}},
	}, choice.Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	check(t, strings.Join(leftOut(c.Materials[0]), "\n"), `1 more choice cannot give every blank.
Of 2 more choices no plan was found that gives every blank.`)
}

// 5 kg are 11.02 lb.
func TestAJobInInchesIsComparedInPounds(t *testing.T) {
	m := fiveShelves(t).Materials[0]
	m.Choices[0].Plan.Job.Units = stock.Inches
	l := choices(m)
	const weights = 8
	if l.columns[weights].word != "lb" || l.rows[0][weights] != "11.0" {
		t.Errorf("%s %s", l.rows[0][weights], l.columns[weights].word)
	}
}

func TestWhatBuysTheSameIsOneLineOfTheSpreadsheet(t *testing.T) {
	c := fiveShelves(t)
	m := &c.Materials[0]
	m.Choices = append(m.Choices, m.Choices[2])
	if got := strings.Count(string(ComparisonCSV(c)), ",2 x long at South,"); got != 1 {
		t.Errorf("%d lines for choice 3", got)
	}
}

// The bound is one of cost: it does not say how much another plan would keep.
func TestNothingIsProvenOfWhatIsKept(t *testing.T) {
	m := fiveShelves(t).Materials[0]
	for worth, want := range map[stock.Share]string{0: "best", 40_00: "best found"} {
		m.Choices[0].Plan.Job.Worth = worth
		if got := verdict(m, 0); got != want {
			t.Errorf("worth %v: %q", worth, got)
		}
	}
}

// Two boards of 8 ft by 6 in, 4/4, are 4 board feet each, in the middle of the list of
// whoever sells them.
func TestAShoppingListBySellerCountsBoardFeet(t *testing.T) {
	const inch = stock.Inch
	oak := stock.Stock{Name: "oak", Material: "oak", Kind: stock.Board, Length: 96 * inch, Width: 6 * inch, Thickness: inch, Price: 33_00,
		Measure: stock.Measure{Thickness: inch, Width: 6 * inch}}
	pine := stock.Stock{Name: "pine", Material: "pine", Kind: stock.Board, Length: 96 * inch, Width: 6 * inch, Thickness: inch, Price: 9_00}
	e := sellerList{Receipt: cutplan.Receipt{Net: 75_00, Lines: []cutplan.ReceiptLine{
		{Purchase: cutplan.Purchase{Stock: pine, Count: 1, Cost: 9_00}, Cuts: []cutplan.Division{{Stock: pine, Count: 1, Pieces: []stock.Length{48 * inch, 47 * inch}}}},
		{Purchase: cutplan.Purchase{Stock: oak, Count: 2, Cost: 66_00}},
	}}}
	var feet []string
	l := e.list(stock.Ruler{Units: stock.Inches})
	at := slices.IndexFunc(l.columns, func(h heading) bool { return h.word == "board feet" })
	for _, row := range l.rows {
		feet = append(feet, row[at])
	}
	check(t, strings.Join(feet, " "), "- - 8.00 8.00")
}
