package pool

import "sawbill/nest/internal/setcover"

// Key stands for a pattern: a stock and the sum of its parts' keys. No stock has the number
// of a kind here, or one part of this on that would pass for one of that on this.
func Key(stock int, parts uint64) uint64 { return splitmix(parts ^ splitmix(^uint64(stock))) }

// PartKey of a part of some kind: sums of them tell which parts there are.
func PartKey(kind int) uint64 { return splitmix(uint64(kind)) }

func keyOf(p setcover.Pattern) uint64 {
	var parts uint64
	for _, c := range p.Counts {
		parts += uint64(c.Times) * PartKey(c.Kind)
	}
	return Key(p.Stock, parts)
}

// splitmix is one step of splitmix64 (Steele, Lea and Flood, OOPSLA 2014; from
// memory).
func splitmix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
