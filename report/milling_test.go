package report

import (
	"testing"

	"sawbill/stock"
)

func TestMillingIsSaidInTheOrderOfWork(t *testing.T) {
	const mm = stock.Millimetre
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
		{[]stock.Milling{step(stock.CutMitre, 99, 1)}, "mitre one end, long point at 99"},
		{[]stock.Milling{step(stock.CutMitre, 99, 1), step(stock.CutMitre, 98, 1)}, "mitre both ends, long points at 98"},
	} {
		if got := millingSteps(test.steps, stock.Ruler{}); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}
