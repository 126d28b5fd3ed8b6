package cutplan

import (
	"context"
	"math/rand/v2"
	"testing"

	"sawbill/stock"
)

// rackOf draws boards on hand with defects, and the defects of each by name.
func rackOf(r *rand.Rand, kerf stock.Length) ([]stock.Stock, map[string][]stock.Zone) {
	defects := make(map[string][]stock.Zone)
	var pieces []stock.Stock
	for _, name := range []string{"A", "B", "C"} {
		board := stock.Stock{
			Name: name, Kind: stock.Board, Material: "oak", Thickness: 27 * mm, Count: 1, OnHand: true,
			Length: stock.Length(900+r.IntN(1500)) * mm, Width: stock.Length(90+r.IntN(120)) * mm,
			Trim: stock.Length(r.IntN(30)) * mm,
		}
		for range r.IntN(5) {
			from := stock.Length(r.IntN(int(board.Length / mm)))
			to := min(from*mm+stock.Length(1+r.IntN(700))*mm/10, board.Length)
			defects[name] = append(defects[name], stock.Zone{From: from * mm, To: to})
		}
		pieces = append(pieces, board.ClearSections(defects[name], kerf)...)
	}
	return pieces, defects
}

// No part of a plan, put back in its place on the board, holds a defect, lies in the trim
// or overlaps a part of another section.
func TestNoPartHoldsADefect(t *testing.T) {
	for seed := range uint64(60) {
		r := rand.New(rand.NewPCG(seed, 11))
		j := stock.Job{
			Saw:    stock.Saw{Kerf: []stock.Length{0, 3200 * mm / 1000, 4 * mm}[r.IntN(3)]},
			Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm},
			Rough:  []stock.Rough{{Material: "oak", Quarter: quarter(t, "8/4"), Grade: stock.GradeOf("FAS")}},
		}
		var defects map[string][]stock.Zone
		j.Stock, defects = rackOf(r, j.Saw.Kerf)
		for range 1 + r.IntN(6) {
			j.Parts = append(j.Parts, stock.Part{
				Name: string(rune('a' + len(j.Parts))), Material: "oak", Thickness: 25 * mm, Count: 1 + r.IntN(4),
				Length: stock.Length(80+r.IntN(700)) * mm, Width: stock.Length(30+r.IntN(70)) * mm,
			})
		}
		p, err := Make(context.Background(), j, Options{Iterations: 40})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if p.Cost != 0 || !p.Complete() || !p.Proven() {
			t.Errorf("seed %d: cost %v, %d unplaced, although rough lumber gives what the boards do not", seed, p.Cost, len(p.Unplaced))
		}
		cut := make([]int, len(j.Parts))
		taken := make(map[string][]stock.Zone) // of each board, the sections that are cut
		for _, l := range p.Layouts {
			on := l.Stock.OnBoard()
			for _, z := range taken[l.Stock.Name] {
				if on.From < z.To+j.Saw.Kerf && z.From < on.To+j.Saw.Kerf {
					t.Errorf("seed %d: sections %v and %v of board %s lie too close", seed, on, z, l.Stock.Name)
				}
			}
			taken[l.Stock.Name] = append(taken[l.Stock.Name], on)
			for _, n := range l.Leaves() {
				if n.Use != Part {
					continue
				}
				cut[n.Blank] += l.Repeat
				from, to := on.From+n.X, on.From+n.X+n.Length
				for _, d := range defects[l.Stock.Name] {
					if from < d.To && d.From < to {
						t.Errorf("seed %d: board %s: a part from %d to %d holds the defect %v", seed, l.Stock.Name, from, to, d)
					}
				}
			}
		}
		// Every blank is cut or estimated, and none is both.
		for _, e := range p.Estimates {
			for _, w := range e.Blanks {
				cut[w.Blank] += w.Count
			}
		}
		for i, part := range j.Parts {
			if cut[i] != part.Count {
				t.Errorf("seed %d: %d of %s are cut or estimated, want %d", seed, cut[i], part.Name, part.Count)
			}
		}
	}
}

func quarter(t *testing.T, name string) stock.Quarter {
	t.Helper()
	q, err := stock.ParseQuarter(name)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// Sheets that are bought keep their proof beside lumber by the board foot, and a
// blank that neither rough lumber nor a board can give stays unplaced.
func TestEstimatesLeaveCostAndBoundAlone(t *testing.T) {
	sheet := stock.Stock{Name: "ply", Material: "ply", Length: 1000 * mm, Width: 500 * mm, Thickness: 18 * mm, Price: 4000}
	j := stock.Job{
		Stock: []stock.Stock{sheet},
		Rough: []stock.Rough{
			{Material: "oak", Quarter: quarter(t, "8/4"), Grade: stock.GradeOf("FAS"), Price: 1200},
			{Material: "oak", Quarter: quarter(t, "4/4"), Grade: stock.GradeOf("FAS"), Price: 900},
		},
		Parts: []stock.Part{
			{Name: "panel", Material: "ply", Length: 900 * mm, Width: 400 * mm, Thickness: 18 * mm, Count: 2},
			{Name: "leg", Material: "oak", Length: 12 * stock.Inch, Width: 12 * stock.Inch, Thickness: 45 * mm, Count: 10},
			{Name: "rail", Material: "oak", Length: 12 * stock.Inch, Width: 6 * stock.Inch, Thickness: 20 * mm, Count: 2},
			{Name: "post", Material: "oak", Length: 500 * mm, Width: 90 * mm, Thickness: 90 * mm, Count: 3},
		},
	}
	p, err := Make(context.Background(), j, Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	if p.Cost != 8000 || p.Bound != 8000 || p.Complete() || len(p.Unplaced) != 1 || p.Unplaced[0].Blank != 3 || p.Unplaced[0].Count != 3 {
		t.Errorf("cost %v, bound %v, unplaced %+v", p.Cost, p.Bound, p.Unplaced)
	}
	if len(p.Estimates) != 2 {
		t.Fatalf("%d estimates, want 2", len(p.Estimates))
	}
	legs, rails := p.Estimates[0], p.Estimates[1]
	if legs.Rough != j.Rough[0] || legs.Net.String() != "20.00" || legs.Least != 24 || legs.Blanks[0] != (Wanted{1, 10}) {
		t.Errorf("legs: %+v", legs)
	}
	if rails.Rough != j.Rough[1] || rails.Net.String() != "1.00" || rails.Least != 2 || rails.Blanks[0] != (Wanted{2, 2}) {
		t.Errorf("rails: %+v", rails)
	}
}
