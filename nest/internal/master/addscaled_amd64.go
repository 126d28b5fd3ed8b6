//go:build !noasm

package master

import "gonum.org/v1/gonum/floats"

// addScaled adds times x to sum, with the system's assembly. That rounds product and sum
// separately.
func addScaled(sum []float64, times float64, x []float64) { floats.AddScaled(sum, times, x) }
