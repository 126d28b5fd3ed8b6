package stock

import "testing"

// A car takes 1700 x 1300: lying either way, and of what is 1500 wide no more than 1300.
func TestWhatIsCarried(t *testing.T) {
	const mm = Millimeter
	car := Transport{Longest: 1700 * mm, Widest: 1300 * mm}
	for _, tt := range []struct {
		length, width Length
		fits          bool
	}{{1700 * mm, 1300 * mm, true}, {1300 * mm, 1700 * mm, true}, {1701 * mm, 100 * mm, false}, {1500 * mm, 1301 * mm, false}} {
		if car.Carries(tt.length, tt.width) != tt.fits {
			t.Errorf("%v x %v: not %v", tt.length, tt.width, tt.fits)
		}
	}
	for across, want := range map[Length]Length{1220 * mm: 1700 * mm, 1500 * mm: 1300 * mm, 1800 * mm: 0} {
		if got := car.Most(across); got != want {
			t.Errorf("beside %v: %v, want %v", across, got, want)
		}
	}
	// Without a width, nothing is wider than it may be long.
	roof := Transport{Longest: 2000 * mm}
	if roof.Carries(100*mm, 3000*mm) || !roof.Carries(1900*mm, 2000*mm) || !(Transport{}).Carries(9000*mm, 9000*mm) {
		t.Error("a limit of length alone is none of width")
	}
}

// A side that the seller cut loses its tolerance where the trim is less.
func TestSawnSidesAreTrimmed(t *testing.T) {
	const mm = Millimeter
	s := Stock{Length: 1000 * mm, Width: 500 * mm, Sawn: Trims{NearEnd: 2 * mm, FarEnd: 2 * mm}}
	for trim, want := range map[Length][2]Length{0: {996 * mm, 500 * mm}, mm: {996 * mm, 498 * mm}, 3 * mm: {994 * mm, 494 * mm}} {
		s.Trim = trim
		if length, width := s.Usable(); length != want[0] || width != want[1] {
			t.Errorf("trim %v: %v x %v", trim, length, width)
		}
	}
}

// 2.44 x 1.22 x 0.018 m at 680 kg/m3 is 36.436 kg: 2.9768 m2 x 0.018 m x 680.
func TestWeightOfAPiece(t *testing.T) {
	j := Job{Densities: map[string]int{"ply": 680}}
	s := Stock{Material: "ply", Length: 2440 * Millimeter, Width: 1220 * Millimeter, Thickness: 18 * Millimeter}
	if g, known := j.Grams(s); !known || g != 36_436 {
		t.Errorf("%d g", g)
	}
	s.Material = "oak"
	if _, known := j.Grams(s); known {
		t.Error("a weight without a density")
	}
}
