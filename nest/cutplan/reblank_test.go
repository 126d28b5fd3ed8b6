package cutplan

import (
	"context"
	"math/rand/v2"
	"testing"

	"sawbill/stock"
)

// The board on hand gives four layers, the rough lumber for sale only two. The missing
// parts are estimated in blanks of two.
func TestWhatABoardOnHandDoesNotGiveIsResawnFromRoughLumber(t *testing.T) {
	j := stock.Job{
		Saw: stock.Saw{Kerf: 3 * mm, ResawKerf: 1600 * mm / 1000}, Shortest: stock.ShortestMilled,
		Stock: []stock.Stock{{Name: "board", Kind: stock.Board, Material: "oak", Length: 700 * mm, Width: 120 * mm, Thickness: 2 * stock.Inch, OnHand: true, Count: 1}},
		Rough: []stock.Rough{{Material: "oak", Quarter: quarter(t, "4/4"), Grade: stock.GradeOf("FAS")}},
		Parts: []stock.Part{
			{Name: "slat", Material: "oak", Length: 600 * mm, Width: 50 * mm, Thickness: 9 * mm, Count: 41, Resaw: true},
			{Name: "post", Material: "oak", Length: 500 * mm, Width: 90 * mm, Thickness: 90 * mm, Count: 3},
			{Name: "rail", Material: "oak", Length: 800 * mm, Width: 90 * mm, Thickness: 20 * mm, Count: 1},
		},
	}
	p, err := Make(context.Background(), j, Options{Iterations: 100})
	if err != nil {
		t.Fatal(err)
	}
	type line struct {
		mark          string
		count, layers int
		spare         int
	}
	want := []line{{"A", 2, 4, 0}, {"B", 16, 2, 0}, {"C", 1, 2, 1}, {"D", 3, 1, 0}, {"E", 1, 1, 0}}
	for i, b := range p.Bill {
		if got := (line{b.Mark, b.Count, b.Layers, b.Spare}); i >= len(want) || got != want[i] {
			t.Errorf("blank %d: %+v", i, got)
		}
	}
	if len(p.Bill) != len(want) || len(p.Estimates) != 1 || len(p.Estimates[0].Blanks) != 3 {
		t.Fatalf("%d blanks, estimates %+v", len(p.Bill), p.Estimates)
	}
	for i, w := range []Wanted{{1, 16}, {2, 1}, {4, 1}} {
		if p.Estimates[0].Blanks[i] != w {
			t.Errorf("estimate of %+v, want %+v", p.Estimates[0].Blanks[i], w)
		}
	}
	if len(p.Unplaced) != 1 || p.Unplaced[0].Blank != 3 { // no post
		t.Errorf("unplaced %+v", p.Unplaced)
	}
	if got := p.Thicknesses()[1]; len(got) != 1 || got[0] != stock.Inch {
		t.Errorf("blank B is milled from %v", got)
	}
}

// New blanks get marks that no blank had, in the bill or before it.
func TestMarksOfNewBlanksWereNeverGiven(t *testing.T) {
	j := stock.Job{
		Saw: stock.Saw{Kerf: 3 * mm, ResawKerf: 1600 * mm / 1000}, Shortest: stock.ShortestMilled,
		Stock: []stock.Stock{{Name: "board", Kind: stock.Board, Material: "oak", Length: 700 * mm, Width: 120 * mm, Thickness: 2 * stock.Inch, OnHand: true, Count: 1}},
		Rough: []stock.Rough{{Material: "oak", Quarter: quarter(t, "4/4"), Grade: stock.GradeOf("FAS")}},
		Parts: []stock.Part{{Name: "slat", Material: "oak", Length: 600 * mm, Width: 50 * mm, Thickness: 9 * mm, Count: 40, Resaw: true}},
	}
	for given, want := range map[int]string{0: "B", 9: "L"} {
		p, err := Make(context.Background(), j, Options{Iterations: 100, Bill: CuttingBill(j), Marks: given})
		if err != nil {
			t.Fatal(err)
		}
		marks := ""
		for _, b := range p.Bill[1:] {
			marks += b.Mark
		}
		if marks != want {
			t.Errorf("%d marks were given: the new blanks are %q, want %q", given, marks, want)
		}
	}
}

// For any stock on hand and lumber by the board foot, the blanks hold the wanted parts.
// Each blank is cut, estimated or unplaced as often as the bill says. Nothing is unplaced
// that rough lumber can give.
func TestPlansWithRoughLumberAccountForEveryPart(t *testing.T) {
	anew := 0
	for seed := range uint64(300) {
		r := rand.New(rand.NewPCG(seed, 11))
		job := benchJob(r)
		for i := range job.Stock {
			job.Stock[i].OnHand, job.Stock[i].Count, job.Stock[i].Price = true, 1, 0
		}
		thin := &job.Parts[0]
		thin.Resaw, thin.Thickness, thin.Count = true, 9*mm, 10+r.IntN(30)
		for _, q := range []string{"3/4", "4/4", "8/4"}[r.IntN(3):] {
			job.Rough = append(job.Rough, stock.Rough{Material: "ash", Quarter: quarter(t, q), Grade: stock.GradeOf("FAS")})
		}
		p, err := Make(context.Background(), job, Options{Seed: seed, Iterations: 20})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		if err := verify(job, p.Bill); err != nil {
			t.Fatalf("seed %d: %v\n%+v", seed, err, job)
		}
		told := make([]int, len(p.Bill))
		for _, l := range p.Layouts {
			for _, n := range l.Leaves() {
				if n.Use == Part {
					told[n.Blank] += l.Repeat
					if size := (Size{n.Length, n.Width}); size != (Size{p.Bill[n.Blank].Length, p.Bill[n.Blank].Width}) &&
						size != (Size{p.Bill[n.Blank].Width, p.Bill[n.Blank].Length}) {
						t.Fatalf("seed %d: blank %s is cut %v", seed, p.Bill[n.Blank].Mark, size)
					}
				}
			}
		}
		for _, e := range p.Estimates {
			for _, w := range e.Blanks {
				told[w.Blank] += w.Count
				if b := p.Bill[w.Blank].Blank; b.Length < job.Shortest && !b.Part.Alone && b.Part.Grain == stock.GrainLength {
					t.Errorf("seed %d: %d long, to be ripped from rough lumber", seed, b.Length)
				}
			}
		}
		for _, u := range p.Unplaced {
			told[u.Blank] += u.Count
			if b := p.Bill[u.Blank].Blank; b.Part.Blank(stock.Board).Thickness <= job.Rough[len(job.Rough)-1].Quarter.Rough() {
				t.Errorf("seed %d: %q is unplaced", seed, b.Name())
			}
		}
		layers := map[string]int{}
		for i, b := range p.Bill {
			if told[i] != b.Count {
				t.Errorf("seed %d: %d of blank %s are told of, %d are in the bill", seed, told[i], b.Mark, b.Count)
			}
			if of, before := layers[b.Part.Name]; before && b.Layers != of {
				anew++
			}
			layers[b.Part.Name] = b.Layers
		}
	}
	if anew < 20 {
		t.Errorf("blanks were made anew %d times: too few to tell anything", anew)
	}
}
