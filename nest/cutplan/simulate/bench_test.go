package simulate_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"sawbill/nest/cutplan"
	"sawbill/nest/cutplan/simulate"
	"sawbill/stock"
)

// BenchmarkCheck saws a plan of 10,000 parts of 400 sizes.
func BenchmarkCheck(b *testing.B) {
	const mm = stock.Millimeter
	r := rand.New(rand.NewPCG(1, 2))
	j := stock.Job{
		Saw:   stock.Saw{Kerf: 32 * mm / 10},
		Stock: []stock.Stock{{Name: "sheet", Material: "ply", Length: 2440 * mm, Width: 1220 * mm, Thickness: 18 * mm, Trim: 5 * mm, Price: 5000}},
	}
	for i := range 400 {
		j.Parts = append(j.Parts, stock.Part{Name: fmt.Sprint("part ", i), Material: "ply", Thickness: 18 * mm,
			Length: stock.Length(100+r.IntN(900)) * mm, Width: stock.Length(60+r.IntN(500)) * mm, Count: 25})
	}
	p, err := cutplan.Make(context.Background(), j, cutplan.Options{Iterations: 20})
	if err != nil {
		b.Fatal(err)
	}
	b.Logf("%d layouts", len(p.Layouts))
	for b.Loop() {
		if err := simulate.Check(p); err != nil {
			b.Fatal(err)
		}
		if _, err := simulate.Figures(p, stock.Ruler{}); err != nil {
			b.Fatal(err)
		}
	}
}
