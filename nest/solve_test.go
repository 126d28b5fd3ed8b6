package nest_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"reflect"
	"runtime"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"sawbill/nest"
)

// solve plans p within a budget and checks the plan.
func solve(t testing.TB, p nest.Problem, o nest.Options) nest.Plan {
	t.Helper()
	plan, err := nest.Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	if err := nest.Verify(p, plan); err != nil {
		t.Fatal(err)
	}
	return plan
}

// one is a problem of n equal parts from as many equal sheets as it takes.
func one(length, width, kerf, partLength, partWidth int64, n int, turned bool) nest.Problem {
	return nest.Problem{
		Kerf:   kerf,
		Stock:  []nest.Stock{{Length: length, Width: width, Price: 1}},
		Blanks: []nest.Blank{{Length: partLength, Width: partWidth, Count: n, From: []nest.Source{{Upright: true, Turned: turned}}}},
	}
}

// The most equal parts that one sheet or board gives, by the formula
// n = floor((L+k)/(a+k)) along a board and by exhaustive search on a sheet:
// worked by hand and by machine outside this project. Lengths in 1/8 in and
// 0.1 mm.
func TestKerfIsPaidBetweenPartsOnly(t *testing.T) {
	tests := []struct {
		reason                         string
		length, width, kerf, part, wid int64
		turned                         bool
		most                           int
	}{
		{"96 in board, 12 in pieces: 7 leave 11-1/4 in", 768, 28, 1, 96, 28, false, 7},
		{"96 in board, 24 in pieces: the fourth lacks the kerfs", 768, 28, 1, 192, 28, false, 3},
		{"96 in board, 23-7/8 in pieces", 768, 28, 1, 191, 28, false, 4},
		{"2440 mm, 600 mm pieces", 24400, 890, 32, 6000, 890, false, 4},
		{"1220 mm, 302.6 mm pieces fit to a hair", 12200, 890, 32, 3026, 890, false, 4},
		{"2440 mm, 240 mm pieces, narrow kerf", 24400, 890, 22, 2400, 890, false, 10},
		{"48 x 96 in, 24 x 16 in, fixed", 768, 384, 1, 192, 128, false, 6},
		{"48 x 96 in, 24 x 16 in, mixed", 768, 384, 1, 192, 128, true, 8},
		{"48 x 96 in, 23-7/8 x 15-7/8 in", 768, 384, 1, 191, 127, false, 12},
		{"1220 x 2440 mm, 600 x 400 mm", 24400, 12200, 32, 6000, 4000, true, 12},
		{"1220 x 2440 mm, 700 x 450 mm, fixed", 24400, 12200, 32, 7000, 4500, false, 6},
		{"1220 x 2440 mm, 700 x 450 mm, mixed", 24400, 12200, 32, 7000, 4500, true, 8},
		{"1220 x 2440 mm, 560 x 300 mm", 24400, 12200, 32, 5600, 3000, false, 16},
		{"1525 x 1525 mm, 500 x 350 mm", 15250, 15250, 32, 5000, 3500, false, 12},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			p := one(test.length, test.width, test.kerf, test.part, test.wid, test.most, test.turned)
			if plan := solve(t, p, nest.Options{Iterations: 4000}); plan.Cost != 1 {
				t.Errorf("%d parts take %d pieces of stock", test.most, plan.Cost)
			}
			p.Blanks[0].Count++
			if plan := solve(t, p, nest.Options{Iterations: 500}); plan.Cost != 2 {
				t.Errorf("%d parts take %d pieces of stock", test.most+1, plan.Cost)
			}
		})
	}
}

// V. Chvatal, Linear Programming, 1983, chapter 13 (from memory): rolls of
// 100; 97 of 45, 610 of 36, 395 of 31, 211 of 14; the optimum is 453.
func TestTextbookRolls(t *testing.T) {
	p := nest.Problem{Stock: []nest.Stock{{Length: 100, Width: 1, Price: 1}}}
	for _, b := range [][2]int64{{45, 97}, {36, 610}, {31, 395}, {14, 211}} {
		p.Blanks = append(p.Blanks, nest.Blank{Length: b[0], Width: 1, Count: int(b[1]), From: []nest.Source{{Upright: true}}})
	}
	plan := solve(t, p, nest.Options{Iterations: 2000, Walks: 1})
	if plan.Cost < 453 || plan.Bound > 453 {
		t.Errorf("cost %d, bound %d; no plan takes fewer than 453 and one takes 453", plan.Cost, plan.Bound)
	}
	if plan.Cost > 475 {
		t.Errorf("cost %d is over 5 %% above the optimum 453", plan.Cost)
	}
}

// randomProblem draws a problem with every rule that stock can bring.
func randomProblem(seed uint64) nest.Problem {
	r := rand.New(rand.NewPCG(seed, 1))
	p := nest.Problem{
		Kerf:   int64(r.IntN(4)),
		Stages: []int{0, 0, 1, 2, 3, 4}[r.IntN(6)],
		Keep:   nest.Size{Length: int64(5 + r.IntN(20)), Width: int64(8 + r.IntN(10))},
	}
	for range 1 + r.IntN(4) {
		s := nest.Stock{
			Length: int64(40 + r.IntN(80)), Width: int64(20 + r.IntN(60)),
			TrimLength: int64(r.IntN(3)), TrimWidth: int64(r.IntN(3)),
			Price: int64(r.IntN(50)), Count: r.IntN(4), OnHand: r.IntN(4) == 0,
			FirstCut:     nest.Cut(r.IntN(3)),
			NarrowestRip: int64(r.IntN(8)),
		}
		if s.OnHand {
			s.Price = 0
		}
		p.Stock = append(p.Stock, s)
	}
	for range 1 + r.IntN(12) {
		b := nest.Blank{Length: int64(3 + r.IntN(60)), Width: int64(3 + r.IntN(40)), Count: r.IntN(6)}
		for s := range p.Stock {
			if r.IntN(4) > 0 {
				b.From = append(b.From, nest.Source{Stock: s, Upright: r.IntN(4) > 0, Turned: r.IntN(2) > 0})
			}
		}
		p.Blanks = append(p.Blanks, b)
	}
	return p
}

// Every plan of hundreds of random problems passes Verify, which balances its
// area exactly, and Solve leaves the problem as it was.
func TestPlansOfRandomProblemsHold(t *testing.T) {
	for seed := range uint64(400) {
		p, before := randomProblem(seed), randomProblem(seed)
		plan, err := nest.Solve(context.Background(), p, nest.Options{Iterations: 80, Seed: seed})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if err := nest.Verify(p, plan); err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if !reflect.DeepEqual(p, before) {
			t.Fatalf("seed %d: the problem was changed", seed)
		}
	}
}

func TestEqualSeedAndBudgetGiveEqualPlans(t *testing.T) {
	for seed := range uint64(20) {
		p := randomProblem(seed)
		a := solve(t, p, nest.Options{Iterations: 400, Seed: 5})
		b := solve(t, p, nest.Options{Iterations: 400, Seed: 5})
		if d := cmp.Diff(a, b); d != "" {
			t.Errorf("seed %d:\n%s", seed, d)
		}
	}
}

// Scaling all lengths and leaving out the order of blanks must not matter.
func TestUnitOfLengthChangesNothing(t *testing.T) {
	for seed := range uint64(20) {
		p := randomProblem(seed)
		q := randomProblem(seed)
		const by = 25_400
		q.Kerf *= by
		q.Keep = nest.Size{Length: q.Keep.Length * by, Width: q.Keep.Width * by}
		for i := range q.Stock {
			s := &q.Stock[i]
			s.Length, s.Width, s.TrimLength, s.TrimWidth, s.NarrowestRip = s.Length*by, s.Width*by, s.TrimLength*by, s.TrimWidth*by, s.NarrowestRip*by
		}
		for i := range q.Blanks {
			q.Blanks[i].Length *= by
			q.Blanks[i].Width *= by
		}
		a := solve(t, p, nest.Options{Iterations: 200})
		b := solve(t, q, nest.Options{Iterations: 200})
		if a.Cost != b.Cost || a.Bound != b.Bound || len(a.Layouts) != len(b.Layouts) {
			t.Errorf("seed %d: cost %d, bound %d in one unit; %d, %d in another", seed, a.Cost, a.Bound, b.Cost, b.Bound)
		}
	}
}

func TestStockOnHandIsUsedBeforeBuying(t *testing.T) {
	both := []nest.Source{{Stock: 0, Upright: true}, {Stock: 1, Upright: true}}
	p := nest.Problem{
		Stock: []nest.Stock{
			{Length: 100, Width: 50, Price: 10},
			{Length: 60, Width: 50, Count: 2, OnHand: true},
		},
		Blanks: []nest.Blank{{Length: 60, Width: 50, Count: 3, From: both}},
	}
	plan := solve(t, p, nest.Options{Iterations: 200})
	if plan.Cost != 10 || !plan.Proven() {
		t.Errorf("cost %d, bound %d; two blanks are on hand and one is to be bought for 10", plan.Cost, plan.Bound)
	}
}

func TestEqualCostTakesTheLesserArea(t *testing.T) {
	both := []nest.Source{{Stock: 0, Upright: true}, {Stock: 1, Upright: true}}
	p := nest.Problem{
		Stock:  []nest.Stock{{Length: 100, Width: 50}, {Length: 70, Width: 50}},
		Blanks: []nest.Blank{{Length: 60, Width: 50, Count: 2, From: both}},
	}
	plan := solve(t, p, nest.Options{Iterations: 200})
	for _, l := range plan.Layouts {
		if l.Stock != 1 {
			t.Errorf("unpriced stock of greater area was cut: %+v", plan.Layouts)
		}
	}
}

func TestShortStockLeavesTheLeastUnplaced(t *testing.T) {
	p := nest.Problem{
		Stock:  []nest.Stock{{Length: 100, Width: 50, Price: 3, Count: 1}},
		Blanks: []nest.Blank{{Length: 90, Width: 40, Count: 1}, {Length: 20, Width: 10, Count: 3}},
	}
	for i := range p.Blanks {
		p.Blanks[i].From = []nest.Source{{Upright: true}}
	}
	plan := solve(t, p, nest.Options{Iterations: 500})
	for _, u := range plan.Unplaced {
		if u.Blank == 0 {
			t.Errorf("the large blank is left out: %v", plan.Unplaced)
		}
	}
}

func TestEndedContextReturnsTheFirstPlan(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	p := one(24400, 12200, 32, 700, 450, 300, true)
	plan, err := nest.Solve(ctx, p, nest.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if err := nest.Verify(p, plan); err != nil || !plan.Complete() {
		t.Error(err, plan.Unplaced)
	}
}

func TestSolveRefusesWhatMakesNoSense(t *testing.T) {
	good := one(100, 50, 1, 10, 10, 1, false)
	tests := []struct {
		reason string
		spoil  func(*nest.Problem)
	}{
		{"negative kerf", func(p *nest.Problem) { p.Kerf = -1 }},
		{"trim eats the sheet", func(p *nest.Problem) { p.Stock[0].TrimWidth = 25 }},
		{"negative price", func(p *nest.Problem) { p.Stock[0].Price = -1 }},
		{"price on hand", func(p *nest.Problem) { p.Stock[0].Price, p.Stock[0].OnHand = 1, true }},
		{"offcuts narrower than the narrowest rip", func(p *nest.Problem) { p.Stock[0].NarrowestRip = 5 }},
		{"no such stock", func(p *nest.Problem) { p.Blanks[0].From[0].Stock = 1 }},
		{"empty blank", func(p *nest.Problem) { p.Blanks[0].Width = 0 }},
		{"negative count", func(p *nest.Problem) { p.Blanks[0].Count = -1 }},
		{"too large for exact areas", func(p *nest.Problem) { p.Stock[0].Length = 1 << 40 }},
	}
	if _, err := nest.Solve(context.Background(), good, nest.Options{}); err != nil {
		t.Fatal(err)
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			p := one(100, 50, 1, 10, 10, 1, false)
			test.spoil(&p)
			if _, err := nest.Solve(context.Background(), p, nest.Options{Iterations: 1}); err == nil {
				t.Error("accepted")
			}
		})
	}
}

// BenchmarkFirstPlan is the time to the first plan of 100 different parts from
// three stock sizes, then how well a limit is kept and what memory the whole
// process has taken by then.
func BenchmarkFirstPlan(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	p := nest.Problem{Kerf: 32, Keep: nest.Size{Length: 3000, Width: 800}}
	for _, s := range [][2]int64{{24400, 12200}, {15250, 15250}, {12200, 6100}} {
		p.Stock = append(p.Stock, nest.Stock{Length: s[0], Width: s[1], Price: s[0] * s[1] / 100_000, TrimLength: 50, TrimWidth: 50})
	}
	from := []nest.Source{{Stock: 0, Upright: true}, {Stock: 1, Upright: true}, {Stock: 2, Upright: true}}
	for range 100 {
		p.Blanks = append(p.Blanks, nest.Blank{Length: int64(1000 + r.IntN(9000)), Width: int64(500 + r.IntN(5000)), Count: 1, From: from})
	}
	b.Run("first plan", func(b *testing.B) {
		ctx, cancel := context.WithCancel(context.Background())
		cancel()
		for b.Loop() {
			if _, err := nest.Solve(ctx, p, nest.Options{}); err != nil {
				b.Fatal(err)
			}
		}
	})
	for _, limit := range []time.Duration{200 * time.Millisecond, 2 * time.Second} {
		b.Run(fmt.Sprintf("limit %v", limit), func(b *testing.B) {
			for b.Loop() {
				ctx, cancel := context.WithTimeout(context.Background(), limit)
				_, err := nest.Solve(ctx, p, nest.Options{})
				cancel()
				if err != nil {
					b.Fatal(err)
				}
			}
			var memory runtime.MemStats
			runtime.ReadMemStats(&memory)
			b.ReportMetric(float64(memory.Sys)/(1<<20), "MiB")
		})
	}
}
