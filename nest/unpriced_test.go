package nest_test

import (
	"slices"
	"strings"
	"testing"

	"sawbill/nest"
)

// Stock without prices is planned as if its area were its price.
func TestUnpricedStockIsProvenByArea(t *testing.T) {
	proven := 0
	for seed := range uint64(250) {
		p := randomProblem(seed)
		for i := range p.Stock {
			p.Stock[i].Price = 0
			for j := range p.Blanks { // one group: all compete for all
				if !slices.ContainsFunc(p.Blanks[j].From, func(f nest.Source) bool { return f.Stock == i }) {
					p.Blanks[j].From = append(p.Blanks[j].From, nest.Source{Stock: i, Upright: true, Turned: true})
				}
			}
		}
		plan := solve(t, p, nest.Options{Iterations: 400, Seed: seed})
		if plan.Cost != 0 || plan.Bound != 0 {
			t.Fatalf("seed %d: cost %d, bound %d without prices", seed, plan.Cost, plan.Bound)
		}
		var area, bound, unit int64
		for _, u := range plan.Unpriced {
			var common int64
			for _, s := range u.Stock {
				common = gcd(common, p.Stock[s].Length*p.Stock[s].Width)
			}
			area, bound, unit = area+u.Area*common, bound+u.Bound*common, common
		}
		var want int64
		for _, l := range plan.Layouts {
			if s := p.Stock[l.Stock]; !s.OnHand {
				want += s.Length * s.Width * int64(l.Repeat)
			}
		}
		if area != want || plan.Complete() && bound > area {
			t.Fatalf("seed %d: area %d, bound %d; %d is bought", seed, area, bound, want)
		}
		if len(plan.Unpriced) != 1 {
			continue
		}
		priced := p
		priced.Stock = slices.Clone(p.Stock)
		for _, s := range plan.Unpriced[0].Stock {
			priced.Stock[s].Price = p.Stock[s].Length * p.Stock[s].Width / unit
		}
		again := solve(t, priced, nest.Options{Iterations: 400, Seed: seed})
		if again.Cost != plan.Unpriced[0].Area || again.Bound != plan.Unpriced[0].Bound {
			t.Errorf("seed %d: %+v; priced by area it costs %d, bound %d", seed, plan.Unpriced, again.Cost, again.Bound)
		}
		if again.Proven() && again.Cost > 0 {
			proven++
		}
	}
	if proven < 30 {
		t.Errorf("only %d plans bought something and were proven", proven)
	}
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

func TestUnpricedStockOfOneSizeIsCountedInPieces(t *testing.T) {
	p := one(24400, 12200, 32, 6000, 4000, 25, true)
	p.Stock[0].Price = 0
	plan := solve(t, p, nest.Options{Iterations: 4000})
	if len(plan.Unpriced) != 1 || plan.Unpriced[0].Area != 3 || plan.Unpriced[0].Bound != 3 {
		t.Errorf("%+v; 25 parts, of which 12 fit a sheet, take three", plan.Unpriced)
	}
}

func TestVerifyRefusesFalseTalkOfUnpricedStock(t *testing.T) {
	tests := []struct {
		reason string
		spoil  func(*nest.Problem, *nest.Unpriced)
		want   string
	}{
		{"more area than is bought", func(_ *nest.Problem, u *nest.Unpriced) { u.Area++ }, "but"},
		{"a bound above the area", func(_ *nest.Problem, u *nest.Unpriced) { u.Bound++ }, "bound 4 of area 3"},
		{"a negative bound", func(_ *nest.Problem, u *nest.Unpriced) { u.Bound = -1 }, "bound -1"},
		{"no area, yet a bound", func(_ *nest.Problem, u *nest.Unpriced) { u.Area = 0 }, "area 0"},
		{"a price", func(p *nest.Problem, _ *nest.Unpriced) { p.Stock[0].Price = 1 }, "has a price"},
		{"on hand", func(p *nest.Problem, _ *nest.Unpriced) { p.Stock[0].OnHand = true }, "on hand"},
		{"no such stock", func(_ *nest.Problem, u *nest.Unpriced) { u.Stock = []int{1} }, "stock 1, there are 1"},
	}
	for _, test := range tests {
		t.Run(test.reason, func(t *testing.T) {
			p := one(24400, 12200, 32, 6000, 4000, 25, true)
			p.Stock[0].Price = 0
			plan := solve(t, p, nest.Options{Iterations: 4000})
			test.spoil(&p, &plan.Unpriced[0])
			if err := nest.Verify(p, plan); err == nil || !strings.Contains(err.Error(), test.want) {
				t.Errorf("%v; want %q", err, test.want)
			}
		})
	}
}
