package stock

import (
	"slices"
	"testing"
)

func TestThickBoardsServeOnlyForWantOfThinner(t *testing.T) {
	board := func(thickness, length Length) Stock {
		return Stock{Kind: Board, Material: "fir", Thickness: thickness, Length: length, Width: 4 * Inch}
	}
	blank := func(thickness, length Length) Blank {
		p := Part{Material: "fir", Thickness: thickness, Length: length, Width: 3 * Inch}
		return p.Blank(Board)
	}
	j := Job{Stock: []Stock{board(Inch, 6*Foot), board(Inch+PlaningLimit, 8*Foot), board(3*Inch, 12*Foot)}}
	tests := []struct {
		reason string
		blank  Blank
		want   []int
	}{
		{"boards up to the limit serve", blank(Inch, 5*Foot), []int{0, 1}},
		{"one that is too short does not keep the next away", blank(Inch, 7*Foot), []int{0, 1}},
		{"only the thick one is long enough", blank(Inch, 10*Foot), []int{0, 1, 2}},
		{"only the thick one is thick enough", blank(2*Inch, 5*Foot), []int{2}},
		{"none is thick enough", blank(4*Inch, 5*Foot), nil},
	}
	for _, test := range tests {
		if got := j.Sources(test.blank); !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.reason, got, test.want)
		}
	}
	one, few := board(Inch, 6*Foot), board(Inch, 6*Foot)
	one.OnHand, few.Count = true, 3
	for _, thin := range []Stock{one, few} {
		j := Job{Stock: []Stock{thin, board(3*Inch, 12*Foot)}}
		if got := j.Sources(blank(Inch, 5*Foot)); !slices.Equal(got, []int{0, 1}) {
			t.Errorf("thin boards that may be too few, on hand %v, count %d: %v", thin.OnHand, thin.Count, got)
		}
	}
}
