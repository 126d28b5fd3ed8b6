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

// anyJob is a job under any rules that a saw may have: stages, first cuts, the narrowest
// rip, trim, limits, no prices, stock on hand, boards with a section between defects, gangs.
func anyJob(random *rand.Rand) stock.Job {
	const mm = stock.Millimeter
	size := func(least, most int) stock.Length { return stock.Length(least+random.IntN(most-least)) * mm }
	some := func(n int) bool { return random.IntN(n) == 0 }
	job := stock.Job{
		Saw:    stock.Saw{Kerf: stock.Length(random.IntN(5)) * mm, ResawKerf: 2 * mm, FirstCut: stock.FirstCut(random.IntN(3)), BoardFirstCut: stock.FirstCut(random.IntN(3))},
		Offcut: stock.Offcut{Length: size(50, 300), Width: size(30, 100)},
	}
	if some(3) {
		job.Saw.Stages = 2 + random.IntN(3)
	}
	if some(3) {
		job.Saw.NarrowestRip = size(5, 30)
	}
	if some(3) {
		job.Shortest = 300 * mm
	}
	for i := range 1 + random.IntN(3) {
		s := stock.Stock{Name: fmt.Sprint("sheet ", i), Material: "ply", Length: size(700, 1500), Width: size(500, 900), Thickness: 18 * mm,
			Grain: stock.Grain(random.IntN(3)), Trim: stock.Length(random.IntN(3)) * 5 * mm, Price: stock.Money(500 + random.IntN(5000))}
		if some(3) {
			s.Count = 1 + random.IntN(4)
		}
		if some(4) {
			s.OnHand, s.Price, s.Count = true, 0, 1+random.IntN(2)
		}
		job.Stock = append(job.Stock, s)
	}
	for i := range 1 + random.IntN(2) {
		s := stock.Stock{Name: fmt.Sprint("board ", i), Kind: stock.Board, Material: "oak", Length: size(1500, 3000), Width: size(90, 200), Thickness: size(24, 60),
			Trim: stock.Length(random.IntN(2)) * 15 * mm, Price: stock.Money(300 + random.IntN(2000))}
		if some(4) {
			s.OnHand, s.Price, s.Count = true, 0, 1
			job.Stock = append(job.Stock, s.ClearSections([]stock.Zone{{From: 400 * mm, To: 450 * mm}}, job.Saw.Kerf)...)
			continue
		}
		job.Stock = append(job.Stock, s)
	}
	for i := range job.Stock {
		if some(6) {
			job.Stock[i].Price = 0
		}
	}
	for i := range 2 + random.IntN(6) {
		p := stock.Part{Name: fmt.Sprint("part ", i), Material: "ply", Thickness: 18 * mm, Grain: stock.Grain(random.IntN(3)), Count: 1 + random.IntN(5),
			Length: size(60, 640), Width: size(40, 400)}
		if some(3) {
			p.Material, p.Thickness, p.Width, p.Grain, p.Resaw = "oak", size(4, 22), size(20, 85), stock.GrainLength, some(2)
			p.Allowance = stock.Allowance{Edge: mm, Face: mm, End: 5 * mm, Edges: random.IntN(3), Faces: random.IntN(3), Ends: random.IntN(3)}
		}
		job.Parts = append(job.Parts, p)
	}
	return job
}

// Under any rules of the saw, the rest of a job can be planned again and again.
func TestTheRestHoldsUnderAnyRules(t *testing.T) {
	rests := 0
	for seed := range uint64(200) {
		random := rand.New(rand.NewPCG(seed, 12))
		options := cutplan.Options{Iterations: 150}
		p, err := cutplan.Make(t.Context(), anyJob(random), options)
		if err != nil {
			t.Fatal(seed, err)
		}
		var before []progress.Made
		for round := range 3 {
			s := progress.Begin(p, before...)
			happen(random, s, 1+random.IntN(10))
			o := recut.Options{Code: fmt.Sprint("P", round), Options: options}
			if random.IntN(4) == 0 {
				o.Missing = []string{"ply"}
			}
			if random.IntN(3) == 0 {
				o.Was, o.Is = smallerParts(random, s)
			}
			made, err := recut.Make(t.Context(), s, o)
			if err != nil {
				t.Fatalf("seed %d, round %d: %v", seed, round, err)
			}
			if made.Plan.Complete() && made.Plan.Bound > made.Plan.Cost {
				t.Errorf("seed %d, round %d: the bound is above the cost", seed, round)
			}
			coming, there := map[string]int{}, map[string]int{}
			for _, part := range made.Plan.Job.Parts {
				coming[part.Name] = part.Count
				if o.Is == nil {
					continue
				}
				for _, q := range o.Is.Parts {
					if q.Name == part.Name && (part.Length != q.Length || part.Width != q.Width) {
						t.Errorf("seed %d, round %d: %q comes in its old size", seed, round, part.Name)
					}
				}
			}
			for _, b := range made.Made {
				there[b.Part.Name] += b.Count * b.Holds()
			}
			for _, part := range s.Parts() {
				if have := coming[part.Name] + there[part.Name]; have < part.Count {
					t.Errorf("seed %d, round %d: %d of %q are there or to come, wanted are %d", seed, round, have, part.Name, part.Count)
				}
			}
			rests++
			p, before = made.Plan, made.Made
		}
	}
	t.Logf("%d rests", rests)
}

// smallerParts returns the job as it is, and the job with some parts a little shorter or
// narrower.
func smallerParts(random *rand.Rand, s *progress.State) (was, is *stock.Job) {
	const mm = stock.Millimeter
	before, after := s.Plan().Job, s.Plan().Job
	before.Parts, after.Parts = s.Parts(), s.Parts()
	for i := range after.Parts {
		part := &after.Parts[i]
		if random.IntN(3) > 0 {
			continue
		}
		if less := stock.Length(random.IntN(20)) * mm; part.Length > 2*less {
			part.Length -= less
		}
		if less := stock.Length(random.IntN(3)) * mm; part.Width > 2*less {
			part.Width -= less
		}
	}
	return &before, &after
}
