package choice

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/sellercuts"
	"sawbill/stock"
)

const mm = stock.Millimeter

func board(name, seller string, length int, price stock.Money) stock.Stock {
	return stock.Stock{Name: name, Seller: seller, Kind: stock.Board, Material: "pine", Price: price,
		Length: stock.Length(length) * mm, Width: 100 * mm, Thickness: 20 * mm}
}

func compare(t *testing.T, j stock.Job, o Options) *Comparison {
	t.Helper()
	if o.Iterations == 0 {
		o.Iterations = 200
	}
	c, err := Compare(context.Background(), j, o)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// shelves are five pieces of 1000 in pine, without kerf.
func shelves(offers ...stock.Stock) stock.Job {
	return stock.Job{
		Stock:  offers,
		Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm},
		Parts:  []stock.Part{{Name: "shelf", Material: "pine", Length: 1000 * mm, Width: 100 * mm, Thickness: 20 * mm, Count: 5}},
	}
}

// Five pieces of 1000: three boards of 2000 at 5.00 are 15.00, two of 3000 at
// 8.00 are 16.00, one of each size, 2 + 3, is 13.00.
func TestTwoLengthsByHand(t *testing.T) {
	short, long := board("short", "", 2000, 500), board("long", "", 3000, 800)
	m := compare(t, shelves(short, long), Options{}).Materials[0]
	type line struct {
		offers      []int
		cost        stock.Money
		pieces      int
		kept        int
		dominatedBy int
	}
	var got []line
	for _, c := range m.Choices {
		if !c.Plan.Proven() {
			t.Errorf("offers %v: %v is not proven", c.Offers, c.Plan.Cost)
		}
		got = append(got, line{c.Offers, c.Plan.Cost, c.Pieces, c.Offcuts, c.DominatedBy})
	}
	want := []line{{[]int{0, 1}, 1300, 2, 0, -1}, {[]int{0}, 1500, 3, 1, 0}, {[]int{1}, 1600, 2, 1, 0}}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(line{})); diff != "" {
		t.Error(diff)
	}
	// Two long ones cost 3.00 more, three short ones 2.00 more.
	extra := map[string]stock.Money{}
	for _, sub := range m.Substitutes {
		extra[sub.Offer.Name] = sub.Extra
		if m.Choices[sub.Choice].Plan.Cost-m.Best().Plan.Cost != sub.Extra {
			t.Errorf("%+v: the choice costs %v", sub, m.Choices[sub.Choice].Plan.Cost)
		}
	}
	if diff := cmp.Diff(map[string]stock.Money{"short": 300, "long": 200}, extra); diff != "" {
		t.Error(diff)
	}
}

func TestBreakEvenByHand(t *testing.T) {
	short, long := board("short", "", 2000, 500), board("long", "", 3000, 800)
	m := compare(t, shelves(short, long), Options{}).Materials[0]
	both, shorts, longs := m.Choices[0], m.Choices[1], m.Choices[2]
	tests := []struct {
		reason   string
		c, other Choice
		offer    stock.Stock
		want     stock.Money
		wins     bool
	}{
		{"two long ones cost 15.00 at 7.50", longs, shorts, long, 750, true},
		{"three short ones cost 16.00 at 5.33 1/3", shorts, longs, short, 533, true},
		{"two long ones cost no more than three short ones from 5.33 1/3 on", longs, shorts, short, 534, true},
		{"three short ones cost no more than two long ones from 7.50 on", shorts, longs, long, 750, true},
		{"a long and a short one: 15.00 less 5.00 for the long", both, shorts, long, 1000, true},
		{"two long ones win against a long and a short one if the second costs what the short one does", longs, both, long, 500, true},
		{"three short ones: the two beyond the one for the price of a long one", shorts, both, short, 400, true},
	}
	for _, tt := range tests {
		got, wins := BreakEven(tt.c, tt.other, tt.offer)
		if got != tt.want || wins != tt.wins {
			t.Errorf("%s: got %v, %v", tt.reason, got, wins)
		}
	}
	if p, wins := BreakEven(shorts, shorts, short); wins {
		t.Errorf("equal counts break even at %v", p)
	}
}

// At 50 % the 1000 left of three short boards counts 1.25, and the 1000 left of
// two long ones a third of 8.00, halved: 1.33.
func TestWorthByHand(t *testing.T) {
	m := compare(t, shelves(board("short", "", 2000, 500), board("long", "", 3000, 800)), Options{Worth: 50_00}).Materials[0]
	var net []stock.Money
	for _, c := range m.Choices {
		net = append(net, c.Net())
	}
	if diff := cmp.Diff([]stock.Money{1300, 1375, 1467}, net); diff != "" {
		t.Error(diff)
	}
}

// Two boards of 2 m x 100 x 20 mm are 0.008 m3: 4 kg at 500 kg/m3, and need a
// crosscut each.
func TestWeightAndCutsByHand(t *testing.T) {
	j := shelves(board("short", "", 2000, 500))
	j.Parts[0].Count = 4
	c := compare(t, j, Options{Density: func(string) float64 { return 500 }}).Materials[0].Best()
	if fmt.Sprintf("%.6f", c.Weight) != "4.000000" || c.Cuts != 2 || c.Setups != 1 || c.Pieces != 2 {
		t.Errorf("%v kg, %d cuts, %d setups, %d pieces", c.Weight, c.Cuts, c.Setups, c.Pieces)
	}
}

// North sells the short boards for less, South the long ones. Both together take
// 5.00 and 8.00; North alone three short ones, 15.00 rather than 5.00 and 11.00;
// South alone 6.00 and 8.00.
func TestSellersByHand(t *testing.T) {
	c := compare(t, shelves(
		board("short", "North", 2000, 500), board("long", "North", 3000, 1100),
		board("short", "South", 2000, 600), board("long", "South", 3000, 800)), Options{})
	if best, all := c.Best(), c.Unlimited(); best.Cost != 1300 || best.Bound != 1300 || all.Cost != 1300 {
		t.Errorf("best %+v, all %+v", best, all)
	}
	want := map[string]stock.Money{"North": 1500, "South": 1400}
	for _, seller := range c.Sellers() {
		if from, can := c.From(seller); !can || from.Cost != want[seller] {
			t.Errorf("%s: %v, want %v", seller, from.Cost, want[seller])
		}
	}
}

// Without the board on hand three short ones are bought, with it two.
func TestOnHandByHand(t *testing.T) {
	rack := board("rack", "", 1200, 0)
	rack.OnHand, rack.Count = true, 1
	m := compare(t, shelves(board("short", "", 2000, 500), rack), Options{}).Materials[0]
	if len(m.Choices) != 2 || m.Choices[0].Plan.Cost != 1000 || !m.Choices[0].OnHand || m.Choices[1].Plan.Cost != 1500 || m.Choices[1].OnHand {
		t.Errorf("%+v", m.Choices)
	}
}

// A board too short for the parts is no choice alone, and comes last.
func TestIncompleteChoicesComeLast(t *testing.T) {
	m := compare(t, shelves(board("stub", "", 900, 10), board("short", "", 2000, 500)), Options{}).Materials[0]
	last := m.Choices[len(m.Choices)-1]
	if !m.Best().Plan.Complete() || last.Plan.Complete() || len(last.Offers) != 1 || last.Offers[0] != 0 {
		t.Errorf("%+v", last)
	}
}

// A thick board is planed down only for want of other stock. The cheaper board alone is
// shown beside the choice of both, whose plan does not use it.
func TestThickBoardsStayTheirOwnChoice(t *testing.T) {
	thick := board("thick", "", 2000, 300)
	thick.Thickness = 50 * mm
	m := compare(t, shelves(board("thin", "", 2000, 500), thick), Options{}).Materials[0]
	for _, c := range m.Choices {
		want := stock.Money(1500)
		if len(c.Offers) == 1 && c.Offers[0] == 1 {
			want = 900
		}
		if c.Plan.Cost != want {
			t.Errorf("offers %v cost %v, want %v", c.Offers, c.Plan.Cost, want)
		}
	}
}

// randomJob draws sheets of one material, at two sellers, and perhaps one on
// hand.
func randomJob(seed uint64) stock.Job {
	r := rand.New(rand.NewPCG(seed, 3))
	j := stock.Job{Saw: stock.Saw{Kerf: 3 * mm}, Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm}}
	for i := range 2 + r.IntN(2) {
		j.Stock = append(j.Stock, stock.Stock{
			Name: fmt.Sprint("sheet ", i), Seller: []string{"North", "South"}[r.IntN(2)], Material: "ply", Thickness: 18 * mm,
			Length: stock.Length(600+300*r.IntN(4)) * mm, Width: stock.Length(600+100*r.IntN(3)) * mm,
			Price: stock.Money(1000 + r.IntN(3000)), Count: r.IntN(2) * (2 + r.IntN(4)),
		})
	}
	if r.IntN(2) == 0 {
		j.Stock = append(j.Stock, stock.Stock{Name: "rack", OnHand: true, Count: 1, Material: "ply", Thickness: 18 * mm,
			Length: stock.Length(400+r.IntN(600)) * mm, Width: stock.Length(300+r.IntN(300)) * mm})
	}
	for i := range 2 + r.IntN(4) {
		j.Parts = append(j.Parts, stock.Part{
			Name: fmt.Sprint("part ", i), Material: "ply", Thickness: 18 * mm, Count: 1 + r.IntN(2),
			Length: stock.Length(100+r.IntN(480)) * mm, Width: stock.Length(80+r.IntN(400)) * mm,
		})
	}
	return j
}

func TestMoreToChooseFromNeverCostsMore(t *testing.T) {
	compared := 0
	for seed := range uint64(40) {
		j := randomJob(seed)
		with := compare(t, j, Options{Seed: seed}).Materials[0].Best()
		if !with.Plan.Complete() {
			continue
		}
		for i, s := range j.Stock {
			without := j
			without.Stock = append(append([]stock.Stock{}, j.Stock[:i]...), j.Stock[i+1:]...)
			less := compare(t, without, Options{Seed: seed}).Materials[0].Best()
			if less.Plan.Complete() && less.Plan.Cost < with.Plan.Cost {
				t.Errorf("seed %d: %v with %s, %v without", seed, with.Plan.Cost, s.Name, less.Plan.Cost)
			}
			compared++
		}
	}
	if compared < 60 {
		t.Errorf("only %d comparisons", compared)
	}
}

// The best choice costs as much as a plan with all offers, and no choice costs less than
// its bound.
func TestTheBestIsWhatThePlanFinds(t *testing.T) {
	proven := 0
	for seed := range uint64(60) {
		j := randomJob(seed)
		c := compare(t, j, Options{Seed: seed})
		p, err := sellercuts.Make(context.Background(), j, cutplan.Options{Seed: seed, Iterations: 1000})
		if err != nil {
			t.Fatal(err)
		}
		if p.Complete() != c.Materials[0].Best().Plan.Complete() {
			t.Errorf("seed %d: complete %v", seed, p.Complete())
		}
		if best := c.Best(); p.Proven() && p.Cost != best.Cost {
			t.Errorf("seed %d: the best choice costs %v, the plan %v", seed, best.Cost, p.Cost)
		}
		if p.Proven() {
			proven++
		}
		for _, choice := range c.Materials[0].Choices {
			account(t, choice)
		}
	}
	if proven < 20 {
		t.Errorf("only %d plans are proven", proven)
	}
}

// account checks the money of a repriced or inherited choice. The cost is that of its
// purchases, they are on offer, and its layouts use them.
func account(t *testing.T, c Choice) {
	t.Helper()
	cut := map[stock.Stock]int{}
	for _, l := range c.Plan.Layouts {
		cut[l.Stock] += l.Repeat
	}
	cost := stock.Money(0)
	for _, b := range c.Plan.Buy {
		cost += b.Cost
		offered := false
		for _, s := range c.Plan.Job.Stock {
			offered = offered || s == b.Stock
		}
		if !offered || b.Cost != b.Stock.Price.Times(b.Count) || cut[b.Stock] != b.Count || b.Stock.Count > 0 && b.Count > b.Stock.Count {
			t.Errorf("offers %v: %d of %+v for %v, %d of them cut", c.Offers, b.Count, b.Stock, b.Cost, cut[b.Stock])
		}
	}
	if cost != c.Plan.Cost || c.Plan.Complete() && c.Plan.Bound > cost {
		t.Errorf("offers %v: cost %v, purchases %v, bound %v", c.Offers, c.Plan.Cost, cost, c.Plan.Bound)
	}
}

// One size with two sellers is planned once, and shown at both prices.
func TestOtherPricesAreNoOtherProblem(t *testing.T) {
	j := shelves(board("a", "North", 2000, 500), board("b", "South", 2000, 710))
	solved := 0
	m := compare(t, j, Options{Progress: func(_, of int) { solved = of }}).Materials[0]
	if solved != 1 || len(m.Choices) != 2 || m.Choices[1].Plan.Cost != 2130 || m.Choices[1].Plan.Bound != 2130 {
		t.Errorf("%d solved, %+v", solved, m.Choices)
	}
	for _, c := range m.Choices {
		account(t, c)
	}
}

func TestEqualIterationsGiveEqualComparisons(t *testing.T) {
	for seed := range uint64(6) {
		j := randomJob(seed)
		a, b := compare(t, j, Options{Seed: seed}), compare(t, j, Options{Seed: seed})
		if x, y := fmt.Sprintf("%+v", dereferenced(a)), fmt.Sprintf("%+v", dereferenced(b)); x != y {
			t.Errorf("seed %d:\n%s\n%s", seed, x, y)
		}
	}
}

// dereferenced returns c with its plans in place of pointers to them.
func dereferenced(c *Comparison) (all []any) {
	for _, m := range c.Materials {
		for _, o := range m.Choices {
			plan := *o.Plan
			o.Plan = nil
			all = append(all, o, plan)
		}
		all = append(all, m.Substitutes)
	}
	return all
}

// Boards of 3000 at 8.00 do not go into a car for 2000: each is cut by the seller, for
// 1.00, into 2000 and 1000 less nothing, which is three pieces of 1000 in each, so two
// boards and 18.00. Three of 2000 at 5.00 go in as they are, and cost 15.00. The one is
// no pattern of the other at another price, though 8.00 / 5.00 is one.
func TestStockThatTheSellerCutsIsComparedWithItsCuts(t *testing.T) {
	j := shelves(board("short", "", 2000, 500), board("long", "", 3000, 800))
	j.Transport = stock.Transport{Longest: 2000 * mm, Cuts: 1, CutPrice: 100}
	costs := map[string]stock.Money{}
	for _, c := range compare(t, j, Options{}).Materials[0].Choices {
		if len(c.Plan.Buy) == 1 {
			costs[c.Plan.Buy[0].Stock.Name] = c.Plan.Cost
		}
	}
	if diff := cmp.Diff(map[string]stock.Money{"short": 1500, "long": 1800}, costs); diff != "" {
		t.Error(diff)
	}
}

// Boards 40 thick at 3.00 would be the cheapest for shelves 20 thick, but nobody planes
// half of a board away who can have one of 20 at 5.00: that is the best, as it is for a
// plan with all offers.
func TestABoardMuchThickerThanItsPartsIsNeverTheBest(t *testing.T) {
	thick := board("thick", "", 2000, 300)
	thick.Thickness = 40 * mm
	m := compare(t, shelves(board("thin", "", 2000, 500), thick), Options{}).Materials[0]
	if best := m.Best(); best.Plan.Cost != 1500 || best.RelaxedSources {
		t.Errorf("the best costs %v", best.Plan.Cost)
	}
	if last := m.Choices[len(m.Choices)-1]; last.Plan.Cost != 900 || !last.RelaxedSources {
		t.Errorf("the last costs %v", last.Plan.Cost)
	}
}

// With one board of each size, no choice gives six shelves. Both together give 2 + 3 and
// are the best, though each alone costs less.
func TestWhereNothingIsEnoughTheMostIsTheBest(t *testing.T) {
	short, long := board("short", "", 2000, 500), board("long", "", 3000, 800)
	short.Count, long.Count = 1, 1
	j := shelves(short, long)
	j.Parts[0].Count = 6
	var missing []int
	for _, c := range compare(t, j, Options{}).Materials[0].Choices {
		missing = append(missing, c.Unplaced())
	}
	if diff := cmp.Diff([]int{1, 3, 4}, missing); diff != "" {
		t.Error(diff)
	}
}

// A board of 3000 at 9.00, cut by the seller into 2000 and 1000 or the like, for two
// shelves: the 1000 left are a third of it, at 50 % worth 1.50. The cut is not.
func TestWhatIsKeptOfPiecesThatTheSellerCutCounts(t *testing.T) {
	j := shelves(board("long", "", 3000, 900))
	j.Parts[0].Count = 2
	j.Transport = stock.Transport{Longest: 2000 * mm, Cuts: 1, CutPrice: 100}
	if c := compare(t, j, Options{Worth: 50_00}).Materials[0].Best(); c.Plan.Cost != 1000 || c.Worth != 150 {
		t.Errorf("cost %v, worth %v", c.Plan.Cost, c.Worth)
	}
}

// Among five lengths the best is one of 5000 at 10.00. Without it the five shelves take
// one of 2000 and one of 3000, 13.00, which neither one size nor one seller offers.
func TestOfManyOffersAnotherMixReplacesWhatIsSoldOut(t *testing.T) {
	j := shelves(board("two", "North", 2000, 500), board("three", "South", 3000, 800), board("five", "South", 5000, 1000),
		board("one", "West", 1000, 900), board("two and a half", "East", 2500, 2000))
	m := compare(t, j, Options{}).Materials[0]
	if m.Best().Plan.Cost != 1000 || len(m.Substitutes) != 1 || m.Substitutes[0].Extra != 300 {
		t.Errorf("best %v, %+v", m.Best().Plan.Cost, m.Substitutes)
	}
}

// Any yard has the boards of 3000 among five lengths. With the boards of 2000 at North
// they are 13.00, without a second errand.
func TestWhatNamesNoSellerIsBoughtAtAny(t *testing.T) {
	j := shelves(board("two", "North", 2000, 500), board("three", "", 3000, 800), board("five", "South", 5000, 2000),
		board("one", "South", 1000, 900), board("two and a half", "South", 2500, 2000))
	c := compare(t, j, Options{})
	if north, can := c.From("North"); !can || north.Cost != 1300 {
		t.Errorf("North %v", north.Cost)
	}
	if best := c.Materials[0].Best(); best.Plan.Cost != 1300 || len(best.Sellers) != 1 {
		t.Errorf("%v from %q", best.Plan.Cost, best.Sellers)
	}
}

// Three choices of two lengths, reported as they begin.
func TestChoicesAreToldInTheirOrder(t *testing.T) {
	var told [][2]int
	compare(t, shelves(board("short", "", 2000, 500), board("long", "", 3000, 800)),
		Options{Progress: func(begun, of int) { told = append(told, [2]int{begun, of}) }})
	if diff := cmp.Diff([][2]int{{1, 3}, {2, 3}, {3, 3}}, told); diff != "" {
		t.Error(diff)
	}
}

// A panic on a goroutine of Compare reaches the caller, who can report it.
func TestAPanicReachesTheCaller(t *testing.T) {
	defer func() {
		if p, ok := recover().(error); !ok || p.Error() != "no more choices" {
			t.Errorf("recovered %v", p)
		}
	}()
	Compare(t.Context(), shelves(board("short", "", 2000, 500), board("long", "", 3000, 800)),
		Options{Iterations: 1, Progress: func(int, int) { panic("no more choices") }})
	t.Error("Compare returned")
}
