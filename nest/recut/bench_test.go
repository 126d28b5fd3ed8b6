package recut_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"sawbill/nest/cutplan"
	"sawbill/nest/progress"
	"sawbill/nest/recut"
	"sawbill/stock"
)

// cabinets is a job of about 60 typical furniture parts in two materials. Each material
// has three sizes of sheets, and grain mostly matters.
func cabinets(random *rand.Rand) stock.Job {
	const mm = stock.Millimeter
	job := stock.Job{
		Saw: stock.Saw{Kerf: 3200 * mm / 1000}, Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm},
	}
	for i, material := range []string{"birch ply 18", "back ply 6"} {
		thickness := []stock.Length{18 * mm, 6 * mm}[i]
		for n, size := range [][2]stock.Length{{2440, 1220}, {1220, 1220}, {1250, 625}} {
			job.Stock = append(job.Stock, stock.Stock{
				Name: fmt.Sprint(material, ", ", n), Material: material, Length: size[0] * mm, Width: size[1] * mm, Thickness: thickness,
				Price: []stock.Money{7450, 4100, 2300}[n] / stock.Money(1+i),
			})
		}
	}
	wanted := 60
	for i := 0; wanted > 0; i++ {
		p := stock.Part{Name: fmt.Sprint("part ", i), Material: "birch ply 18", Thickness: 18 * mm, Count: min(wanted, 1+random.IntN(4)),
			Length: stock.Length(200+random.IntN(700)) * mm, Width: stock.Length(80+random.IntN(420)) * mm}
		if random.IntN(4) == 0 {
			p.Material, p.Thickness = "back ply 6", 6*mm
		}
		if random.IntN(4) == 0 {
			p.Grain = stock.GrainAny
		}
		wanted -= p.Count
		job.Parts = append(job.Parts, p)
	}
	return job
}

// BenchmarkRecut plans the rest of 60 parts within a second, half of the layouts cut and
// three blanks spoiled. It reports the time to the first plan, the total time, and how
// many plans are proven.
func BenchmarkRecut(b *testing.B) {
	var shops []*progress.State
	for seed := range uint64(20) {
		random := rand.New(rand.NewPCG(seed, 60))
		limited, stop := context.WithTimeout(b.Context(), 2*time.Second)
		p, err := cutplan.Make(limited, cabinets(random), cutplan.Options{})
		stop()
		if err != nil {
			b.Fatal(err)
		}
		s := progress.Begin(p)
		for i := range (len(p.Layouts) + 1) / 2 {
			if err := s.Apply(progress.Event{Word: "cut", Value: fmt.Sprint(i + 1)}); err != nil {
				b.Fatal(err)
			}
		}
		spoiled := 0
		for _, at := range random.Perm(len(p.Bill)) {
			if spoiled < 3 && s.Apply(progress.Event{Word: "spoiled", Value: p.Bill[at].Mark}) == nil {
				spoiled++
			}
		}
		shops = append(shops, s)
	}
	first, worst, proven, runs := time.Duration(0), time.Duration(0), 0, 0
	for b.Loop() {
		for _, of := range shops {
			limited, stop := context.WithTimeout(b.Context(), time.Second)
			start, seen := time.Now(), time.Duration(0)
			made, err := recut.Make(limited, of, recut.Options{Code: "K7F2M", Options: cutplan.Options{
				Progress: func(p cutplan.Progress) {
					if seen == 0 && p.Complete {
						seen = time.Since(start)
					}
				}}})
			stop()
			if err != nil {
				b.Fatal(err)
			}
			runs++
			first, worst = first+seen, max(worst, seen)
			if made.Plan.Proven() {
				proven++
			}
		}
	}
	b.ReportMetric(float64(first.Microseconds())/1000/float64(runs), "ms/first")
	b.ReportMetric(float64(worst.Microseconds())/1000, "ms/worst-first")
	b.ReportMetric(100*float64(proven)/float64(runs), "%proven")
	b.ReportMetric(float64(b.Elapsed().Milliseconds())/float64(runs), "ms/rest")
}
