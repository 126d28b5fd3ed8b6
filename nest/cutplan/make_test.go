package cutplan

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"sawbill/stock"
)

const mm = stock.Millimeter

// randomJob draws a job of sheets and boards with all the rules that a saw or a
// material can bring.
func randomJob(seed uint64) stock.Job {
	r := rand.New(rand.NewPCG(seed, 7))
	upTo := func(lo, hi int) stock.Length { return stock.Length(lo+r.IntN(hi-lo+1)) * mm }
	j := stock.Job{
		Title:    fmt.Sprintf("random %d", seed),
		Offcut:   stock.Offcut{Length: 300 * mm, Width: 80 * mm},
		Shortest: stock.ShortestMilled,
		Saw: stock.Saw{
			ResawKerf:     2 * mm,
			Kerf:          []stock.Length{0, 3200 * mm / 1000, stock.Inch / 8}[r.IntN(3)],
			Stages:        []int{0, 0, 2, 3}[r.IntN(4)],
			FirstCut:      stock.FirstCut(r.IntN(3)),
			BoardFirstCut: stock.FirstCut(seed % 3),
			NarrowestRip:  []stock.Length{0, 10 * mm, 60 * mm}[r.IntN(3)],
			// Drawn from the seed alone, so that the jobs stay what they were.
			RipCapacity:      []stock.Length{0, 760 * mm, 300 * mm, 1 * mm}[seed%4],
			CrosscutCapacity: []stock.Length{0, 1200 * mm, 350 * mm}[seed%3],
		},
	}
	for i := range 1 + r.IntN(3) {
		j.Stock = append(j.Stock, stock.Stock{
			Name: fmt.Sprintf("sheet %d", i), Material: "ply", Thickness: 18 * mm,
			Length: upTo(1200, 2440), Width: upTo(600, 1220),
			Grain: stock.Grain(r.IntN(3)), Trim: upTo(0, 1) * 10,
			Price: stock.Money(r.IntN(9000)), Count: r.IntN(5),
		})
	}
	j.Stock[0].OnHand = r.IntN(3) == 0
	if j.Stock[0].OnHand {
		j.Stock[0].Price = 0
	}
	for i := range 1 + r.IntN(2) {
		j.Stock = append(j.Stock, stock.Stock{
			Name: fmt.Sprintf("board %d", i), Kind: stock.Board, Material: "spruce",
			Length: upTo(1800, 4000), Width: 89 * mm, Thickness: 38 * mm, Trim: upTo(0, 15),
			Price: stock.Money(100 + r.IntN(900)), Count: 0,
		})
	}
	for i := range 3 + r.IntN(15) {
		j.Parts = append(j.Parts, stock.Part{
			Name: fmt.Sprintf("part %d", i), Material: "ply", Thickness: 18 * mm,
			Length: upTo(60, 1100), Width: upTo(40, 580), Count: 1 + r.IntN(4), Grain: stock.Grain(r.IntN(3)),
			Allowance: stock.Allowance{Edge: mm, Edges: r.IntN(3), End: 2 * mm, Ends: r.IntN(3)},
		})
	}
	for i := range r.IntN(6) {
		width := stock.Length(89) * mm
		if r.IntN(3) == 0 {
			width = upTo(20, 80)
		}
		j.Parts = append(j.Parts, stock.Part{
			Name: fmt.Sprintf("rail %d", i), Material: "spruce", Thickness: 35 * mm,
			Length: upTo(100, 1700), Width: width, Count: 1 + r.IntN(4),
			Allowance: stock.Allowance{Face: mm, Faces: 2},
		})
		if i%3 == 2 {
			p := &j.Parts[len(j.Parts)-1]
			p.Thickness, p.Resaw = 16*mm, true // two of them are as thick as the board
		}
	}
	return j
}

// TestStepsSawEveryPiece plans random jobs (Make verifies each plan) and saws the steps of
// every layout. The pieces in the end must be the layout's pieces, no more and no less.
func TestStepsSawEveryPiece(t *testing.T) {
	for seed := range uint64(150) {
		j := randomJob(seed)
		p, err := Make(context.Background(), j, Options{Iterations: 60})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		parts := make([]int, len(p.Bill)) // held by what is cut and what is not
		for _, u := range p.Unplaced {
			parts[u.Blank] += u.Count * p.Bill[u.Blank].Holds()
		}
		for i, l := range p.Layouts {
			var want []Size
			for _, n := range l.Leaves() {
				want = append(want, Size{n.Length, n.Width})
				if n.Use == Part {
					parts[n.Blank] += l.Repeat * p.Bill[n.Blank].Holds()
				}
			}
			got := saw(t, l, p.Steps(l), j.Saw.Kerf)
			if d := cmp.Diff(sorted(want), sorted(got)); d != "" {
				t.Fatalf("seed %d, layout %d (-planned +sawn):\n%s", seed, i, d)
			}
		}
		if d := cmp.Diff(wanted(j), wantedOf(p, parts)); d != "" {
			t.Errorf("seed %d: parts (-wanted +planned):\n%s", seed, d)
		}
		if s := p.Totals.All; len(p.Layouts) > 0 && math.Abs(s.Yield+s.Offcut+s.Waste-1) > 1e-12 {
			t.Errorf("seed %d: shares %v do not add up to 1", seed, s)
		}
		if p.Complete() && p.Cost < p.Bound {
			t.Errorf("seed %d: cost %v is below the bound %v", seed, p.Cost, p.Bound)
		}
	}
}

// wanted counts the parts of a job by name.
func wanted(j stock.Job) map[string]int {
	count := make(map[string]int)
	for _, p := range j.Parts {
		count[p.Name] = p.Count
	}
	return count
}

// wantedOf counts likewise the parts that the blanks of a plan hold.
func wantedOf(p *Plan, parts []int) map[string]int {
	count := make(map[string]int)
	for i, b := range p.Bill {
		count[b.Part.Name] += parts[i]
	}
	return count
}

func TestEqualRunsGiveEqualPlans(t *testing.T) {
	for seed := range uint64(10) {
		j := randomJob(seed)
		a, err := Make(context.Background(), j, Options{Iterations: 500, Seed: 3})
		if err != nil {
			t.Fatal(err)
		}
		b, err := Make(context.Background(), j, Options{Iterations: 500, Seed: 3})
		if err != nil {
			t.Fatal(err)
		}
		if d := cmp.Diff(a, b, cmp.AllowUnexported(stock.Part{})); d != "" {
			t.Errorf("seed %d: %s", seed, d)
		}
	}
}
