package recut_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
)

// smallJob is a job of a few parts and small sheets of two sizes.
func smallJob(random *rand.Rand) stock.Job {
	const mm = stock.Millimeter
	size := func(least, most int) stock.Length { return stock.Length(least+random.IntN(most-least)) * mm }
	sheet := func(name string, length, width stock.Length, price stock.Money) stock.Stock {
		return stock.Stock{Name: name, Material: "ply", Length: length, Width: width, Thickness: 18 * mm, Price: price}
	}
	job := stock.Job{
		Saw: stock.Saw{Kerf: 3 * mm}, Offcut: stock.Offcut{Length: 150 * mm, Width: 80 * mm},
		Stock: []stock.Stock{sheet("large", 1200*mm, 600*mm, 3000), sheet("small", 600*mm, 400*mm, 1200)},
	}
	for i := range 3 + random.IntN(3) {
		job.Parts = append(job.Parts, stock.Part{
			Name: fmt.Sprint("part ", i), Material: "ply", Thickness: 18 * mm, Grain: stock.GrainAny, Count: 1 + random.IntN(3),
			Length: size(200, 560), Width: size(100, 390),
		})
	}
	return job
}

// If the rest costs something, no set of replanned pieces costs less. Among the sets at
// that cost, Make takes one of the smallest. The test tries all sets.
func TestTheRestCostsLeastAndChangesFewest(t *testing.T) {
	jobs, paid, changed, more := 0, 0, 0, 0
	for seed := range uint64(280) {
		random := rand.New(rand.NewPCG(seed, 9))
		options := cutplan.Options{Iterations: 400}
		p, err := cutplan.Make(t.Context(), smallJob(random), options)
		if err != nil {
			t.Fatal(err)
		}
		s := progress.Begin(p)
		happen(random, s, 2+random.IntN(8))
		o := recut.Options{Code: "K7F2M", Options: options}
		pieces := recut.Pieces(s, o)
		if s.Done() || pieces == 0 || pieces > 4 {
			continue
		}
		jobs++
		made, err := recut.Make(t.Context(), s, o)
		if err != nil {
			t.Fatal(err)
		}
		least, fewest, proven := stock.Money(-1), 0, true
		for of := range 1 << pieces {
			anew := map[int]bool{}
			for i := range pieces {
				if of>>i&1 == 1 {
					anew[i] = true
				}
			}
			cost, sure, err := recut.Try(t.Context(), s, o, anew)
			if err != nil {
				t.Fatal(err)
			}
			proven = proven && sure
			if least < 0 || cost < least || cost == least && len(anew) < fewest {
				least, fewest = cost, len(anew)
			}
		}
		if !proven {
			continue
		}
		if made.Plan.Cost != least {
			t.Errorf("seed %d: the rest costs %v, %v is possible", seed, made.Plan.Cost, least)
		}
		if made.Plan.Bound > least {
			t.Errorf("seed %d: the bound is %v, %v is possible", seed, made.Plan.Bound, least)
		}
		if least > 0 {
			paid++
		}
		if n := len(made.Replanned); n > 0 {
			changed++
			if n > fewest {
				more++
			}
		}
	}
	t.Logf("%d jobs, of %d the rest costs something, of %d pieces are changed, of %d more than needed", jobs, paid, changed, more)
	if jobs < 100 || paid < 20 || changed < 5 {
		t.Error("the test says little")
	}
	if 10*more > changed {
		t.Error("too often more is changed than needed")
	}
}
