//go:build !amd64 || noasm

package master

// addScaled adds times x to sum.
func addScaled(sum []float64, times float64, x []float64) {
	for i, v := range x {
		sum[i] += float64(times * v)
	}
}
