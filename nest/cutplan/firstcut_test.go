package cutplan

import (
	"context"
	"fmt"
	"testing"

	"sawbill/stock"
)

func TestBoardsAreCutFirstAsTheSawSays(t *testing.T) {
	const long, wide = 2400 * mm, 90 * mm
	part := func(length, width stock.Length, count int) stock.Part {
		return stock.Part{Name: fmt.Sprint(length, width), Material: "spruce", Length: length, Width: width, Thickness: 38 * mm, Count: count}
	}
	turned := func(p stock.Part) stock.Part {
		p.Grain = stock.GrainWidth
		return p
	}
	tests := []struct {
		reason string
		first  stock.FirstCut
		trim   stock.Length
		parts  []stock.Part
		want   []Cut // first cuts that may be
	}{
		{"crosscut first", stock.FirstCrosscut, 0, []stock.Part{part(1100, 40, 8)}, []Cut{Crosscut}},
		{"rip first", stock.FirstRip, 0, []stock.Part{part(1100, 40, 8)}, []Cut{Rip}},
		{"free", stock.FirstAny, 0, []stock.Part{part(1100, 40, 8)}, []Cut{Crosscut, Rip}},
		{"a strip as long as the board has no crosscut", stock.FirstCrosscut, 0, []stock.Part{part(2400, 40, 2)}, []Cut{Rip}},
		{"as long as the trim leaves it", stock.FirstCrosscut, 15 * mm, []stock.Part{part(2370, 40, 2)}, []Cut{Rip}},
		{"a little shorter has one", stock.FirstCrosscut, 15 * mm, []stock.Part{part(2368, 40, 2)}, []Cut{Crosscut}},
		{"a piece as wide as the board has no rip", stock.FirstRip, 0, []stock.Part{part(1100, 90, 2)}, []Cut{Crosscut}},
		{"a whole board has no cut", stock.FirstCrosscut, 0, []stock.Part{part(2400, 90, 1)}, nil},
		{"a turned piece as wide as the board is long has no crosscut", stock.FirstCrosscut, 0, []stock.Part{turned(part(40, 2400, 2))}, []Cut{Rip}},
		{"a blank of another size leaves the rule in force", stock.FirstCrosscut, 0, []stock.Part{part(2300, 40, 2), part(2400, 90, 1)}, []Cut{Crosscut}},
	}
	for _, tt := range tests {
		j := stock.Job{
			Saw:    stock.Saw{Kerf: 3 * mm, BoardFirstCut: tt.first},
			Offcut: stock.Offcut{Length: 300 * mm, Width: 80 * mm},
			Stock: []stock.Stock{{Name: "board", Kind: stock.Board, Material: "spruce", Length: long, Width: wide,
				Thickness: 38 * mm, Trim: tt.trim, Price: 500}},
		}
		for _, p := range tt.parts {
			p.Length, p.Width = p.Length*mm, p.Width*mm
			j.Parts = append(j.Parts, p)
		}
		p, err := Make(context.Background(), j, Options{Iterations: 200})
		if err != nil {
			t.Fatal(err)
		}
		if !p.Complete() {
			t.Errorf("%s: %s", tt.reason, p.Unplaced[0].Reason)
		}
		for _, l := range p.Layouts {
			if l.Root.Use != Split {
				continue
			}
			allowed := false
			for _, c := range tt.want {
				allowed = allowed || c == l.Root.Cut
			}
			if !allowed {
				t.Errorf("%s: a board is cut by %s first", tt.reason, l.Root.Cut)
			}
		}
	}
}

// A board of 3000 x 100 with kerfs holds 1800 and 1200 beside 2000 and 1000 only
// if it is ripped first: so crosscutting first takes two, and both are the least
// by their own rule.
func TestBoundIsAboutTheFirstCut(t *testing.T) {
	part := func(length stock.Length) stock.Part {
		return stock.Part{Name: fmt.Sprint(length), Material: "spruce", Length: length * mm, Width: 50 * mm, Thickness: 38 * mm, Count: 1}
	}
	for first, boards := range map[stock.FirstCut]int{stock.FirstCrosscut: 2, stock.FirstRip: 1, stock.FirstAny: 1} {
		j := stock.Job{
			Saw: stock.Saw{Kerf: 3 * mm, BoardFirstCut: first},
			Stock: []stock.Stock{{Name: "board", Kind: stock.Board, Material: "spruce", Length: 3003 * mm, Width: 103 * mm,
				Thickness: 38 * mm, Price: 500}},
			Parts: []stock.Part{part(1800), part(1200), part(2000), part(1000)},
		}
		p, err := Make(context.Background(), j, Options{Iterations: 2000})
		if err != nil {
			t.Fatal(err)
		}
		if p.Cost != stock.Money(500*boards) || !p.Proven() || p.BoardRule() != first {
			t.Errorf("first cut %v: cost %v, bound %v, by the rule %v; want %d boards", first, p.Cost, p.Bound, p.BoardRule(), boards)
		}
		for i := range j.Parts {
			j.Parts[i].Width = 103 * mm
		}
		if p, err = Make(context.Background(), j, Options{Iterations: 200}); err != nil || p.BoardRule() != stock.FirstAny {
			t.Errorf("first cut %v: of blanks as wide as the board the rule is %v, %v", first, p.BoardRule(), err)
		}
	}
}
