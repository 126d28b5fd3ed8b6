package drawing

// Spread finds the middles of things that lie in a row: as near as can be to
// where they are wanted (least squares), in order, without touching, and
// between lo and hi if they all fit there. wanted is ascending, extents are how
// much of the row each one takes.
//
// With the extents taken out this is isotonic regression, solved by pooling
// neighbors that are out of order (Ayer et al., 1955, from memory).
func Spread(wanted, extents []float64, lo, hi float64) []float64 {
	if len(wanted) == 0 {
		return nil
	}
	// offset[i] is how far i lies behind the first when all touch.
	offset := make([]float64, len(wanted))
	for i := 1; i < len(wanted); i++ {
		offset[i] = offset[i-1] + (extents[i-1]+extents[i])/2
	}
	type pool struct {
		sum   float64
		count int
	}
	mean := func(p pool) float64 { return p.sum / float64(p.count) }
	var pools []pool
	for i, w := range wanted {
		pools = append(pools, pool{w - offset[i], 1})
		for n := len(pools); n > 1 && mean(pools[n-2]) >= mean(pools[n-1]); n = len(pools) {
			pools[n-2].sum += pools[n-1].sum
			pools[n-2].count += pools[n-1].count
			pools = pools[:n-1]
		}
	}
	last := len(wanted) - 1
	first, end := lo+extents[0]/2, hi-extents[last]/2-offset[last]
	at := make([]float64, 0, len(wanted))
	for _, p := range pools {
		for range p.count {
			i := len(at)
			at = append(at, max(first, min(mean(p), end))+offset[i])
		}
	}
	return at
}
