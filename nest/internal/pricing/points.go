package pricing

import "sawbill/nest/internal/halt"

// normalPoints lists the sums of the given sizes up to limit, in ascending order from 0: Herz,
// IBM J. Res. Dev. 16, 1972. Each size may repeat. It returns nil beyond most points,
// and once stop is on.
func normalPoints(sizes []int64, limit int64, most int, stop halt.Signal) []int64 {
	if limit < 1<<22 {
		return normalPointsDense(sizes, limit, most, stop)
	}
	return normalPointsSparse(sizes, limit, most, stop)
}

func normalPointsDense(sizes []int64, limit int64, most int, stop halt.Signal) []int64 {
	can := make([]bool, limit+1)
	can[0] = true
	for _, s := range sizes {
		if stop.On() {
			return nil
		}
		for x := s; x <= limit; x++ {
			can[x] = can[x] || can[x-s]
		}
	}
	var points []int64
	for x, ok := range can {
		if ok {
			points = append(points, int64(x))
		}
	}
	if len(points) > most {
		return nil
	}
	return points
}

func normalPointsSparse(sizes []int64, limit int64, most int, stop halt.Signal) []int64 {
	points := []int64{0}
	for _, s := range sizes {
		if stop.On() {
			return nil
		}
		// Merge the points with themselves shifted by s. The shifted list may use points that s
		// itself has added.
		merged := make([]int64, 0, 2*len(points))
		for i, j := 0, 0; ; {
			next := int64(-1)
			if i < len(points) {
				next = points[i]
			}
			if j < len(merged) && merged[j]+s <= limit && (next < 0 || merged[j]+s < next) {
				next = merged[j] + s
			}
			if next < 0 {
				break
			}
			for i < len(points) && points[i] == next {
				i++
			}
			for j < len(merged) && merged[j]+s <= next {
				j++
			}
			merged = append(merged, next)
			if len(merged) > most {
				return nil
			}
		}
		points = merged
	}
	return points
}

// rasterPoints keeps the normal points that a piece of size limit needs: limit less each point,
// rounded down to a point. Terno, Lindemann and Scheithauer, 1987. The last one stands for
// limit itself.
func rasterPoints(points []int64, limit int64) []int64 {
	var thin []int64
	k := 0
	for i := len(points) - 1; i >= 0; i-- {
		left := limit - points[i]
		for k+1 < len(points) && points[k+1] <= left {
			k++
		}
		if n := len(thin); n == 0 || thin[n-1] != points[k] {
			thin = append(thin, points[k])
		}
	}
	return thin
}

// pair is a cut: the indices of the two sizes that it makes.
type pair struct{ less, more int32 }

// cuts lists the cuts worth trying for every point: less is at most more, and for equal more
// only the largest less. It returns nil once stop is on.
func cuts(points []int64, stop halt.Signal) [][]pair {
	all := make([][]pair, len(points))
	for i, size := range points {
		if stop.On() {
			return nil
		}
		k := i
		for less := 1; less < len(points) && 2*points[less] <= size; less++ {
			for points[k] > size-points[less] {
				k--
			}
			p := pair{int32(less), int32(k)}
			if n := len(all[i]); n > 0 && all[i][n-1].more == p.more {
				all[i][n-1] = p
			} else {
				all[i] = append(all[i], p)
			}
		}
	}
	return all
}
