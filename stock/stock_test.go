package stock

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestTrimComesOffEveryEdgeOfASheetAndTheEndsOfABoard(t *testing.T) {
	for _, test := range []struct {
		kind                   Kind
		trim, length, width    Length
		usableLength, trimmedW Length
	}{
		{Sheet, 10, 2440, 1220, 2420, 1200},
		{Board, 15, 2400, 90, 2370, 90},
		{Sheet, 0, 2440, 1220, 2440, 1220},
	} {
		s := Stock{Kind: test.kind, Trim: test.trim, Length: test.length, Width: test.width}
		if length, width := s.Usable(); length != test.usableLength || width != test.trimmedW {
			t.Errorf("%v trimmed by %d: %d x %d, want %d x %d", test.kind, test.trim, length, width, test.usableLength, test.trimmedW)
		}
	}
}

func TestStockServesItsMaterialAndThickness(t *testing.T) {
	for _, test := range []struct {
		kind             Kind
		material         string
		thickness, blank Length
		want             bool
		reason           string
	}{
		{Sheet, "ply", 18, 18, true, "the very thickness"},
		{Sheet, "ply", 18, 12, false, "a sheet is not planed down"},
		{Sheet, "ply", 12, 18, false, "too thin"},
		{Board, "ply", 38, 20, true, "a board is planed down"},
		{Board, "ply", 38, 38, true, "the very thickness"},
		{Board, "ply", 19, 20, false, "too thin"},
		{Sheet, "oak", 18, 18, false, "another material"},
		{Board, "oak", 38, 20, false, "another material"},
	} {
		s := Stock{Kind: test.kind, Material: test.material, Thickness: test.thickness}
		b := Blank{Part: Part{Material: "ply"}, Thickness: test.blank}
		if got := s.Serves(b); got != test.want {
			t.Errorf("%v of %d for %d: %v, want %v: %s", test.kind, test.thickness, test.blank, got, test.want, test.reason)
		}
	}
}

func TestOffcutIsKeptUnlessSmallerInEitherDirection(t *testing.T) {
	keep := Offcut{Length: 300, Width: 80}
	for _, test := range []struct {
		length, width Length
		want          bool
	}{
		{300, 80, true}, {400, 100, true}, {299, 80, false}, {300, 79, false},
		{80, 300, false}, // length runs along the stock's length
	} {
		if got := keep.Keeps(test.length, test.width); got != test.want {
			t.Errorf("%d x %d kept: %v, want %v", test.length, test.width, got, test.want)
		}
	}
}

func TestCuttingBillFollowsThePartsAndTheirKindOfStock(t *testing.T) {
	planed := Allowance{Face: 2, Faces: 2}
	job := Job{
		Stock: []Stock{{Material: "birch ply 18", Kind: Sheet}, {Material: "spruce", Kind: Board}},
		Parts: []Part{
			{Name: "rail", Material: "spruce", Length: 500, Width: 60, Thickness: 30, Count: 4, Allowance: planed},
			{Name: "shelf", Material: "birch ply 18", Length: 900, Width: 300, Thickness: 18, Count: 2, Allowance: planed},
		},
	}
	want := []Blank{
		{Part: job.Parts[0], Length: 500, Width: 60, Thickness: 34, Count: 4, Gang: 1, Layers: 1,
			How: []Derivation{{"thickness", Sum{{Times: 1, Value: 30, Label: "part"}, {Times: 2, Value: 2, Label: "face"}}}}},
		{Part: job.Parts[1], Length: 900, Width: 300, Thickness: 18, Count: 2, Gang: 1, Layers: 1},
	}
	if diff := cmp.Diff(want, job.Blanks()); diff != "" {
		t.Errorf("cutting bill (-want +got):\n%s", diff)
	}
}
