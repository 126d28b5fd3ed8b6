// Package luby gives the lengths of runs between restarts if the best length is unknown.
package luby

import "math/bits"

// Term returns term n, from 1, of the Luby sequence 1 1 2 1 1 2 4 1 1 2 1 1 2 4 8. Luby,
// Sinclair and Zuckerman, Inf. Process. Lett. 47, 1993; from memory.
func Term(n int) int {
	for {
		k := bits.Len(uint(n))
		if n == 1<<k-1 {
			return 1 << (k - 1)
		}
		n -= 1<<(k-1) - 1
	}
}
