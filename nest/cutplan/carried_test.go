package cutplan

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"sawbill/stock"
)

// sheets is a job of one sheet for sale, and what can be carried.
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

func carry(t *testing.T, job stock.Job) *Plan {
	t.Helper()
	p, err := Make(context.Background(), job, Options{Iterations: 500})
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
	if d.Count != 1 || d.Cuts() != 1 || d.Cut != Crosscut || d.Pieces[0]+d.Pieces[1]+4*mm != 2440*mm || d.Cost != 1_50 {
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

// What fits is not cut: 2440 x 1220 goes where 2500 x 1300 goes, lying either way.
func TestWhatFitsIsNotCutByTheSeller(t *testing.T) {
	limits := stock.Transport{Longest: 2500 * mm, Widest: 1300 * mm, Cuts: 2, CutPrice: 1_50, CutKerf: 4 * mm}
	if p := carry(t, sheets(1220*mm, 2440*mm, limits, shelf(1200*mm, 600*mm, 2))); len(p.AtSeller) > 0 || p.Cost != 60_00 {
		t.Errorf("cost %v with %+v", p.Cost, p.AtSeller)
	}
}

// Of a sheet 1000 long, carried in pieces of 500 at most, with a kerf of 4 and a
// tolerance of 2: pieces 498 + 4 + 498, each good for 498 - 2 = 496.
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

// Whatever the job: verifyCarried holds (Make checks it), limits only cost more, and
// the bound is never above the cost.
func TestLimitsOnlyCostMore(t *testing.T) {
	cut := 0
	for seed := range uint64(40) {
		r := rand.New(rand.NewPCG(seed, 9))
		size := func(least, most int) stock.Length { return stock.Length(least+r.IntN(most-least)) * mm }
		var parts []stock.Part
		for i := range 2 + r.IntN(3) {
			part := shelf(size(200, 1100), size(80, 500), 1+r.IntN(3))
			part.Name += string(rune('a' + i))
			parts = append(parts, part)
		}
		limits := stock.Transport{Longest: size(1250, 2000), Widest: size(600, 1250), Cuts: 1 + r.IntN(2), CutPrice: stock.Money(r.IntN(300)),
			CutKerf: size(2, 6), CutTolerance: size(0, 4)}
		job := sheets(2440*mm, 1220*mm, limits, parts...)
		job.Stock[0].Trim = size(0, 8)
		if r.IntN(2) == 0 {
			job.Stock = append(job.Stock, stock.Stock{Name: "half", Material: "ply", Thickness: 18 * mm, Length: 1220 * mm, Width: 1220 * mm, Price: 36_00})
		}
		with := carry(t, job)
		job.Transport = stock.Transport{}
		without := carry(t, job)
		cut += len(with.AtSeller)
		if with.Complete() && (with.Cost < without.Bound || with.Bound > with.Cost) {
			t.Errorf("seed %d: %v with limits, bound %v; %v without, bound %v", seed, with.Cost, with.Bound, without.Cost, without.Bound)
		}
	}
	if cut < 10 {
		t.Errorf("only %d offers were cut", cut)
	}
}
