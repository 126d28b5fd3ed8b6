package cutplan

import (
	"context"
	"fmt"
	"math/rand/v2"
	"testing"

	"sawbill/stock"
)

// For any boards, parts and saw rules, no piece is ripped that is too short for the
// machines. The exception is a piece with a blank that the job warns about, since no board
// is long enough or it may not be ganged.
func TestNoShortPieceIsRipped(t *testing.T) {
	rips, warned := 0, 0
	for seed := range uint64(400) {
		job := benchJob(rand.New(rand.NewPCG(seed, 7)))
		p, err := Make(context.Background(), job, Options{Seed: seed, Iterations: 20})
		if err != nil {
			t.Fatalf("seed %d: %v", seed, err)
		}
		for _, l := range p.Layouts {
			for _, s := range p.Steps(l) {
				if s.Cut != Rip {
					continue
				}
				rips++
				switch short := s.Piece.Length < job.Shortest; {
				case short && holdsShort(p, l, s):
					warned++
				case short:
					t.Fatalf("seed %d: a piece %d long is ripped, %d is safe\n%+v\n%+v", seed, s.Piece.Length, job.Shortest, s, job)
				}
			}
		}
	}
	if rips < 1000 || warned < 20 {
		t.Errorf("%d rips, %d of short pieces: too few to tell anything", rips, warned)
	}
}

// holdsShort reports whether the piece that s rips holds a blank with a valid warning.
func holdsShort(p *Plan, l Layout, s Step) bool {
	for _, n := range l.Leaves() {
		within := n.X >= s.X && n.X < s.X+s.Run && n.Y >= s.Y-s.Setting && n.Y < s.Y-s.Setting+s.Piece.Width
		if !within || n.Use != Part || !p.Job.ShortToMill(p.Bill[n.Blank].Blank) {
			continue
		}
		b, room := p.Bill[n.Blank].Blank, stock.Length(0)
		for _, i := range p.Job.Sources(b) {
			if length, width := p.Job.Stock[i].Usable(); width >= b.Width {
				room = max(room, length)
			}
		}
		if b.Part.Alone || n.Turned || room < p.Job.Shortest {
			return true
		}
	}
	return false
}

// benchJob has some short parts and boards of several sizes, on hand and for
// sale, some of them too short to hold a gang.
func benchJob(r *rand.Rand) stock.Job {
	upTo := func(most int) stock.Length { return stock.Length(1+r.IntN(most)) * mm }
	of := func(few ...int) stock.Length { return stock.Length(few[r.IntN(len(few))]) * mm }
	job := stock.Job{
		Saw:      stock.Saw{Kerf: 3 * mm, ResawKerf: 2 * mm, BoardFirstCut: stock.FirstCut(r.IntN(3)), Stages: 3 * r.IntN(2)},
		Shortest: of(150, 300, 305),
		Offcut:   stock.Offcut{Length: of(100, 300), Width: of(20, 50)},
	}
	for i := range 1 + r.IntN(3) {
		s := stock.Stock{
			Name: fmt.Sprint("board ", i), Kind: stock.Board, Material: "ash", Trim: of(0, 20), Price: stock.Money(100 + r.IntN(900)),
			Length: of(240, 600, 1200, 2400), Width: of(40, 90, 150, 330), Thickness: of(20, 27, 52),
		}
		if r.IntN(3) == 0 {
			s.OnHand, s.Price, s.Count = true, 0, 1+r.IntN(2)
		}
		job.Stock = append(job.Stock, s)
	}
	for i := range 1 + r.IntN(4) {
		p := stock.Part{
			Name: fmt.Sprint("part ", i), Material: "ash", Count: 1 + r.IntN(6), Grain: stock.Grain(r.IntN(3)), Alone: r.IntN(6) == 0, Resaw: r.IntN(4) == 0,
			Length: upTo(400), Width: of(20, 38, 40, 90, 150), Thickness: of(9, 18, 20, 27),
			Allowance: stock.Allowance{Edge: mm, Face: mm, End: 5 * mm, Edges: 2 * r.IntN(2), Faces: 2 * r.IntN(2), Ends: 2 * r.IntN(2)},
		}
		if p.Grain == stock.GrainWidth {
			p.Length, p.Width = p.Width, p.Length
		}
		job.Parts = append(job.Parts, p)
	}
	return job
}
