package drawing

import "testing"

// Halves of a thousandth print alike whatever noise they come with.
func TestHalvesGoUp(t *testing.T) {
	for _, v := range []float64{9.5175, 43.1375, 22.1925, 1000.0005} {
		for _, noise := range []float64{-1e-12, 0, 1e-12} {
			if got, want := number(v+noise), number(v+0.0004); got != want {
				t.Errorf("%.15g prints as %s, want %s", v+noise, got, want)
			}
		}
	}
}
