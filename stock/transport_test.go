package stock

import "testing"

// A car takes 1700 x 1300: lying either way, and of what is 1500 wide no more than 1300.
func TestWhatIsCarried(t *testing.T) {
	const mm = Millimetre
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
