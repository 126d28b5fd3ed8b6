package stock

import "testing"

// mustLength reads a length that the test knows to be right.
func mustLength(t *testing.T, text string) Length {
	t.Helper()
	l, err := ParseLength(text, Inches)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func TestBoardMeasure(t *testing.T) {
	for _, test := range []struct {
		thickness, width, length string
		want                     string
		source                   string
	}{
		{"1 in", "12 in", "1 ft", "1.00", "the definition: 144 cubic inches"},
		{"1 in", "1 in", "12 ft", "1.00", "the definition"},
		{"2 in", "4 in", "8 ft", "5.33", "thickness x width x feet / 12"},
		{"2 in", "6 in", "10 ft", "10.00", "thickness x width x feet / 12"},
		{"1 in", "12 in", "12 ft", "12.00", "thickness x width x feet / 12"},
		{"1-1/4 in", "6 in", "12 ft", "7.50", "thickness x width x feet / 12"},
		{"1/2 in", "6 in", "8 ft", "4.00", "under 1 in counts as 1 in (PS 20, from memory)"},
		{"1 in", "5 in", "8 ft", "3.33", "a third rounds down"},
		{"1 in", "10 in", "8 ft", "6.67", "two thirds round up"},
		{"1 in", "0.06 in", "1 ft", "0.01", "half a hundredth rounds up"},
		{"100 m", "100 m", "100 m", "423776000.66", "1e6 m3 / 2359.737216 cm3, far beyond 64 bits on the way"},
	} {
		got := BoardMeasure(mustLength(t, test.thickness), mustLength(t, test.width), mustLength(t, test.length))
		if got.String() != test.want {
			t.Errorf("%s x %s x %s = %v, want %s: %s", test.thickness, test.width, test.length, got, test.want, test.source)
		}
	}
}

func TestSoftwoodIsTalliedByNominalSize(t *testing.T) {
	for _, test := range []struct{ nominal, length, want string }{
		{"2x4", "8 ft", "5.33"},
		{"1x6", "8 ft", "4.00"},
		{"5/4x6", "12 ft", "7.50"},
		{"3/4x6", "8 ft", "4.00"},
		{"6x6", "10 ft", "30.00"},
	} {
		n, err := ParseNominal(test.nominal)
		if err != nil {
			t.Fatal(err)
		}
		if got := n.Measure().Volume(mustLength(t, test.length), 1).BoardFeet(); got.String() != test.want {
			t.Errorf("%s x %s: %v board feet, want %s", test.nominal, test.length, got, test.want)
		}
	}
}

// Source: surface measure after the rules of the National Hardwood Lumber
// Association. The worked example 8/4, 6-1/4 in x 8 ft and the tally of 5-1/4 in
// x 8-1/2 ft are from "Measurement", americanhardwood.org; 5/4, 6-1/2 in x 8 ft
// is computed by the same rule; the others are from trade tables of the rules.
func TestHardwoodIsTalliedBySurfaceMeasure(t *testing.T) {
	for _, test := range []struct {
		thickness, width, length string
		surface                  int
		feet                     string
	}{
		{"2 in", "6-1/4 in", "8 ft", 4, "8.00"},     // 4-1/6
		{"1 in", "6-1/2 in", "8 ft", 4, "4.00"},     // 4-1/3
		{"1 in", "8 in", "12 ft", 8, "8.00"},        // exactly
		{"1 in", "10 in", "13 ft", 11, "11.00"},     // 10-5/6
		{"1-1/4 in", "6-1/2 in", "8 ft", 4, "5.00"}, // 4 x 1.25
		{"1/2 in", "8 in", "12 ft", 8, "8.00"},      // counts as 1 in (from memory)
		{"1 in", "6 in", "8 ft 11 in", 4, "4.00"},   // the fraction of a foot is dropped
	} {
		thickness, width, length := mustLength(t, test.thickness), mustLength(t, test.width), mustLength(t, test.length)
		var tally, again Tally
		if got := tally.SurfaceMeasure(width, length); got != test.surface {
			t.Errorf("%s x %s: surface measure %d, want %d", test.width, test.length, got, test.surface)
		}
		if got := again.BoardFeet(thickness, width, length); got.String() != test.feet {
			t.Errorf("%s, %s x %s: %v board feet, want %s", test.thickness, test.width, test.length, got, test.feet)
		}
	}
	var tally Tally
	width, length := tally.Width(mustLength(t, "5-1/4 in")), WholeFeet(mustLength(t, "8-1/2 ft"))
	if width != 5 || length != 8 {
		t.Errorf("5-1/4 in x 8-1/2 ft is written down as %d in x %d ft, want 5 x 8", width, length)
	}
}

// Source: "Rounding Numbers when Figuring Board Feet", woodweb.com: exact
// halves alternate, one board up and the next down.
func TestTallyAlternatesExactHalves(t *testing.T) {
	var tally Tally
	half := mustLength(t, "6-3/4 in") // x 8 ft: 4-1/2
	third := mustLength(t, "6-1/2 in")
	want := []int{5, 4, 4, 5}
	for i, width := range []Length{half, half, third, half} {
		if got := tally.SurfaceMeasure(width, 8*Foot); got != want[i] {
			t.Errorf("board %d: surface measure %d, want %d", i+1, got, want[i])
		}
	}
	if got := tally.Width(mustLength(t, "5-1/2 in")); got != 5 {
		t.Errorf("5-1/2 in after an odd number of halves is %d, want 5", got)
	}
}

// Ten 2x4 x 8 ft are 53 1/3 board feet, not ten times 5.33; of two boards of a
// surface measure of 4 1/2 one counts as 5 and one as 4.
func TestSeveralPiecesAreReckonedTogether(t *testing.T) {
	n, err := ParseNominal("2x4")
	if err != nil {
		t.Fatal(err)
	}
	q, err := ParseQuarter("8/4")
	if err != nil {
		t.Fatal(err)
	}
	soft, hard := n.Measure().Volume(8*Foot, 10), q.Measure(mustLength(t, "6-3/4 in")).Volume(8*Foot, 2)
	if soft.BoardFeet().String() != "53.33" || hard.BoardFeet().String() != "18.00" {
		t.Errorf("%v and %v board feet, want 53.33 and 18.00", soft.BoardFeet(), hard.BoardFeet())
	}
	third := n.Measure().Volume(8*Foot, 1) // 5 1/3
	if sum := third.Plus(third).Plus(third).Plus(Volume{}); sum.BoardFeet().String() != "16.00" {
		t.Errorf("three times 5 1/3 are %v, want 16.00", sum.BoardFeet())
	}
}
