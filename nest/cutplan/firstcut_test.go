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
