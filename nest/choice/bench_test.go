package choice

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"sawbill/stock"
)

// threeSellers is a job of sixty parts in two sheet materials and one of boards,
// each in four sizes at three sellers.
func threeSellers() stock.Job {
	r := rand.New(rand.NewPCG(5, 8))
	j := stock.Job{Saw: stock.Saw{Kerf: 3 * mm}, Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm}}
	length := func(lo, hi int) stock.Length { return stock.Length(lo+r.IntN(hi-lo+1)) * mm }
	for _, material := range []string{"ply 18", "ply 6", "pine"} {
		s := stock.Stock{Material: material, Thickness: 18 * mm, Trim: 5 * mm}
		sizes := [][2]int{{2440, 1220}, {1525, 1525}, {1220, 1220}, {1220, 610}}
		if material == "pine" {
			s.Kind, s.Trim = stock.Board, 0
			sizes = [][2]int{{2400, 140}, {3000, 140}, {3600, 140}, {4800, 140}}
		}
		for _, seller := range []string{"North", "South", "West"} {
			for i, size := range sizes {
				s.Name, s.Seller = fmt.Sprint("size ", i+1), seller
				s.Length, s.Width = stock.Length(size[0])*mm, stock.Length(size[1])*mm
				s.Price = stock.Money(size[0] * size[1] / 500 * (90 + r.IntN(30)) / 100)
				j.Stock = append(j.Stock, s)
			}
		}
		for i := range 10 {
			p := stock.Part{Name: fmt.Sprint(material, " part ", i), Material: material, Thickness: 18 * mm, Count: 2,
				Length: length(300, 1100), Width: length(120, 550)}
			if s.Kind == stock.Board {
				p.Width = 140 * mm
			}
			j.Parts = append(j.Parts, p)
		}
	}
	return j
}

// BenchmarkThreeSellers compares a job of sixty parts within 18 seconds.
func BenchmarkThreeSellers(b *testing.B) {
	for b.Loop() {
		start := time.Now()
		ctx, cancel := context.WithTimeout(context.Background(), 18*time.Second)
		c, err := Compare(ctx, threeSellers(), Options{})
		cancel()
		if err != nil {
			b.Fatal(err)
		}
		choices, proven := 0, 0
		for _, m := range c.Materials {
			choices += len(m.Choices)
			for _, o := range m.Choices {
				if o.Plan.Proven() {
					proven++
				}
			}
		}
		b.ReportMetric(float64(choices), "choices")
		b.ReportMetric(float64(proven), "proven")
		b.ReportMetric(time.Since(start).Seconds(), "seconds")
	}
}
