package stock

import (
	"slices"
	"testing"
)

func TestThinPartsAreResawnFromTheBoardThatWastesLeast(t *testing.T) {
	const mm = Millimeter
	board := func(thickness, length Length) Stock {
		return Stock{Kind: Board, Material: "ash", Thickness: thickness * mm, Width: 100 * mm, Length: length * mm}
	}
	// 8 mm and a millimeter for each face: layers of 10 mm, 2 mm between.
	part := func(count int) Part {
		return Part{Material: "ash", Length: 500 * mm, Width: 60 * mm, Thickness: 8 * mm, Count: count, Resaw: true,
			Allowance: Allowance{Face: mm, Faces: 2}}
	}
	onHand := func(s Stock) Stock {
		s.OnHand, s.Count = true, 1
		return s
	}
	across := part(4) // it lies turned in a board 100 mm wide
	across.Length, across.Width, across.Grain = 60*mm, 500*mm, GrainWidth
	whole := part(4)
	whole.Resaw = false
	type line struct{ count, layers, spare int }
	for _, test := range []struct {
		reason  string
		part    Part
		stock   []Stock
		want    []line
		sources []int
	}{
		{"two layers and a kerf, exactly", part(4), []Stock{board(22, 2000)}, []line{{2, 2, 0}}, []int{0}},
		{"a hair too thin", part(4), []Stock{{Kind: Board, Material: "ash", Thickness: 22*mm - 1, Width: 100 * mm, Length: 2000 * mm}},
			[]line{{4, 1, 0}}, []int{0}},
		{"an odd one leaves a spare piece", part(5), []Stock{board(22, 2000)}, []line{{2, 2, 0}, {1, 2, 1}}, []int{0}},
		{"no more layers than parts", part(1), []Stock{board(22, 2000)}, []line{{1, 1, 0}}, []int{0}},
		{"24 of 34 is better than 16 of 25 and 8 of 12", part(6),
			[]Stock{board(12, 2000), board(25, 2000), board(34, 2000)}, []line{{2, 3, 0}}, []int{2}},
		{"a board that is too short is no choice", part(6), []Stock{board(22, 2000), board(34, 400)}, []line{{3, 2, 0}}, []int{0}},
		{"all boards that give as many serve", part(4), []Stock{board(22, 2000), board(27, 3000), board(12, 2000)}, []line{{2, 2, 0}}, []int{0, 1}},
		{"what is for sale without limit goes before a better board on hand", part(6),
			[]Stock{onHand(board(34, 2000)), board(25, 2000)}, []line{{3, 2, 0}}, []int{1}},
		{"and what is on hand before none", part(6), []Stock{onHand(board(34, 2000)), board(25, 400)}, []line{{2, 3, 0}}, []int{0}},
		{"with its grain across", across, []Stock{board(22, 2000)}, []line{{2, 2, 0}}, []int{0}},
		{"not to be resawn", whole, []Stock{board(22, 2000)}, []line{{4, 1, 0}}, []int{0}},
	} {
		j := Job{Saw: Saw{Kerf: 3 * mm, ResawKerf: 2 * mm}, Stock: test.stock}
		var got []line
		for _, b := range j.BlanksOf(test.part) {
			got = append(got, line{b.Count, b.Layers, b.Spare})
			if from := j.Sources(b); !slices.Equal(from, test.sources) {
				t.Errorf("%s: from %v, want %v", test.reason, from, test.sources)
			}
		}
		if !slices.Equal(got, test.want) {
			t.Errorf("%s: %v, want %v", test.reason, got, test.want)
		}
	}
}
