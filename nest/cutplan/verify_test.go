package cutplan

import (
	"math/rand/v2"
	"testing"

	"sawbill/stock"
)

// For any part, allowances, machines and boards, the blanks hold exactly the wanted parts.
// Each contains its parts, their allowances and the kerfs between, and milling it ends at
// the finished part. No blank is larger than all boards or shorter than the planer takes.
func TestBlanksHoldTheirPartsAndMillingLosesNothing(t *testing.T) {
	ganged, resawn, both := 0, 0, 0
	for seed := range uint64(20_000) {
		job := lumberJob(rand.New(rand.NewPCG(seed, 1)))
		bill := CuttingBill(job)
		if err := verify(job, bill); err != nil {
			t.Fatalf("seed %d: %v\n%+v", seed, err, job)
		}
		for _, b := range bill {
			if problem := unfit(job, b.Blank); problem != "" {
				t.Fatalf("seed %d: %s: %+v\n%+v", seed, problem, b, job)
			}
			switch {
			case b.Gang > 1 && b.Layers > 1:
				both++
			case b.Gang > 1:
				ganged++
			case b.Layers > 1:
				resawn++
			}
		}
	}
	if min(ganged, resawn, both) < 250 {
		t.Errorf("%d gangs, %d to be resawn, %d both: too few to tell anything", ganged, resawn, both)
	}
}

// unfit explains why b does not suit its boards or the planer.
func unfit(job stock.Job, b stock.Blank) string {
	room, fits, exact := stock.Length(0), false, false
	for _, i := range job.Sources(b) {
		s := job.Stock[i]
		if length, width := s.Usable(); b.Width <= width {
			room = max(room, length)
		}
		fits = fits || s.HasRoom(b)
		exact = exact || s.Thickness == b.Thickness
	}
	a, p := b.Part.Allowance, b.Part
	planed := a.Faces > 0 && a.Face > 0 || !exact
	switch {
	case !fits:
		return "larger than any board"
	case planed && b.Length < job.Shortest && room >= job.Shortest && !p.Alone && p.Grain != stock.GrainWidth:
		return "too short to be planed"
	}
	return ""
}

// lumberJob has one part and some boards that it can come from by itself.
func lumberJob(r *rand.Rand) stock.Job {
	upTo := func(most int) stock.Length { return stock.Length(r.IntN(most+1)) * stock.Millimeter / 8 }
	job := stock.Job{Saw: stock.Saw{Kerf: upTo(32), ResawKerf: upTo(20)}, Shortest: upTo(4000)}
	p := stock.Part{
		Name: "part", Material: "ash", Count: 1 + r.IntN(20), Resaw: r.IntN(2) == 0, Alone: r.IntN(8) == 0, Grain: stock.Grain(r.IntN(3)),
		Length: stock.Millimeter + upTo(1<<r.IntN(13)), Width: stock.Millimeter + upTo(800), Thickness: stock.Millimeter + upTo(1<<r.IntN(9)),
		Allowance: stock.Allowance{
			Edge: upTo(20), Face: upTo(20), End: upTo(80), Miter: upTo(16),
			Edges: r.IntN(3), Faces: r.IntN(3), Ends: r.IntN(3), Miters: r.IntN(3),
		},
	}
	alone := p.Blank(stock.Board)
	if p.Grain == stock.GrainWidth { // it lies turned
		alone.Length, alone.Width = alone.Width, alone.Length
	}
	for range 1 + r.IntN(3) {
		s := stock.Stock{
			Kind: stock.Board, Material: "ash", Trim: upTo(80),
			Length: alone.Length + upTo(1<<r.IntN(15)), Width: alone.Width + upTo(400), Thickness: alone.Thickness + upTo(1<<r.IntN(11)),
		}
		s.Length += 2 * s.Trim
		job.Stock = append(job.Stock, s)
	}
	job.Parts = []stock.Part{p}
	return job
}

// verify refuses a bill with any fault.
func TestVerifyRefusesBillsThatDoNotHold(t *testing.T) {
	job := stock.Job{
		Saw: stock.Saw{Kerf: 3 * mm, ResawKerf: 2 * mm}, Shortest: 300 * mm,
		Stock: []stock.Stock{{Kind: stock.Board, Material: "ash", Length: 2000 * mm, Width: 100 * mm, Thickness: 27 * mm}},
		Parts: []stock.Part{
			{Name: "side", Material: "ash", Length: 96 * mm, Width: 60 * mm, Thickness: 8 * mm, Count: 13, Resaw: true,
				Allowance: stock.Allowance{Edge: mm, Edges: 2, Face: mm, Faces: 2, End: 5 * mm, Ends: 2}},
			{Name: "rail", Material: "ash", Length: 900 * mm, Width: 60 * mm, Thickness: 24 * mm, Count: 2},
		},
	}
	if err := verify(job, CuttingBill(job)); err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		reason string
		change func(bill []Blank) []Blank
	}{
		{"one more", func(bill []Blank) []Blank { bill[0].Count++; return bill }},
		{"one less", func(bill []Blank) []Blank { bill[0].Gang--; return bill }},
		{"a spare piece is none", func(bill []Blank) []Blank { bill[1].Spare = 0; return bill }},
		{"a blank is missing", func(bill []Blank) []Blank { return bill[:2] }},
		{"a blank too many", func(bill []Blank) []Blank { return append(bill, bill[2]) }},
		{"of another part", func(bill []Blank) []Blank { bill[2].Part = bill[0].Part; return bill }},
		{"too short", func(bill []Blank) []Blank { bill[0].Length--; return bill }},
		{"too narrow", func(bill []Blank) []Blank { bill[0].Width--; return bill }},
		{"too thin", func(bill []Blank) []Blank { bill[0].Thickness--; return bill }},
		{"milled to another size", func(bill []Blank) []Blank { bill[2].Part.Length--; return bill }},
	} {
		if verify(job, test.change(CuttingBill(job))) == nil {
			t.Errorf("%s: accepted", test.reason)
		}
	}
}
