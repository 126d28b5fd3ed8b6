package report

import (
	"strings"
	"testing"

	"sawbill/stock"
)

func TestMillingIsSaidInTheOrderOfWork(t *testing.T) {
	const mm = stock.Millimeter
	step := func(o stock.Operation, setting, pieces int) stock.Milling {
		return stock.Milling{Operation: o, Setting: stock.Length(setting) * mm, Pieces: pieces}
	}
	for _, test := range []struct {
		steps []stock.Milling
		want  string
	}{
		{[]stock.Milling{step(stock.Plane, 20, 1), step(stock.TrueEdge, 60, 1), step(stock.CutToLength, 400, 1)},
			"plane to 20; true an edge at 60; stop at 400"},
		{[]stock.Milling{step(stock.Plane, 22, 1), step(stock.Plane, 20, 1), step(stock.TrueEdge, 62, 1), step(stock.TrueEdge, 60, 1),
			step(stock.SquareEnd, 310, 1), step(stock.CutToLength, 96, 3)},
			"plane to 22, turn, 20; true the edges at 62, turn, 60; square one end; stop at 96, 3 off"},
		{[]stock.Milling{step(stock.Resaw, 10, 2), step(stock.Plane, 9, 1), step(stock.Plane, 8, 1), step(stock.CutToLength, 96, 3)},
			"resaw into 2 at 10; plane each to 9, turn, 8; stop at 96, 3 off of each"},
		{[]stock.Milling{{Operation: stock.Resaw, Setting: 10 * mm, Pieces: 2, Rest: 25 * mm}, step(stock.Plane, 9, 1)},
			"resaw 2 off at 10, keep the rest, 25; plane each to 9"},
		{[]stock.Milling{{Operation: stock.Resaw, Setting: 10 * mm, Pieces: 1, Rest: 25 * mm}, step(stock.Plane, 9, 1)},
			"resaw 10 off, keep the rest, 25; plane to 9"},
		{[]stock.Milling{step(stock.CutMiter, 99, 1)}, "miter one end, long point at 99"},
		{[]stock.Milling{step(stock.CutMiter, 99, 1), step(stock.CutMiter, 98, 1)}, "miter both ends, long points at 98"},
	} {
		if got := millingSteps(test.steps, stock.Ruler{}); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

// One strip alone is resawn off a board that is thick enough, and is cautioned of.
func TestResawingIsCautionedOf(t *testing.T) {
	const mm = stock.Millimeter
	j := stock.Job{Saw: stock.Saw{Kerf: 3 * mm, ResawKerf: 2 * mm},
		Stock: []stock.Stock{{Kind: stock.Board, Material: "ash", Thickness: 45 * mm, Width: 95 * mm, Length: 2400 * mm}},
		Parts: []stock.Part{{Name: "trim", Material: "ash", Length: 700 * mm, Width: 18 * mm, Thickness: 8 * mm, Count: 1, Grain: stock.GrainLength}}}
	for _, resaw := range []bool{false, true} {
		j.Parts[0].Resaw = resaw
		var text strings.Builder
		if err := PartList(&text, j, Options{}); err != nil {
			t.Fatal(err)
		}
		if got := strings.Contains(text.String(), atTheResaw[0]); got != resaw {
			t.Errorf("resawn %t, cautioned %t:\n%s", resaw, got, &text)
		}
	}
}
