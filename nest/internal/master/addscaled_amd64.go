//go:build !noasm

package master

import "gonum.org/v1/gonum/floats"

// addScaled adds so many times x to sum, as fast as it goes. This system's
// assembly rounds product and sum each on its own.
func addScaled(sum []float64, times float64, x []float64) { floats.AddScaled(sum, times, x) }
