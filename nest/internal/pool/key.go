package pool

import "sawbill/nest/internal/setcover"

// Key identifies a pattern by its stock and the sum of its parts' keys. Stock is hashed twice,
// so that no stock has the key of a kind.
func Key(stock int, parts uint64) uint64 { return splitmix(parts ^ splitmix(^uint64(stock))) }

// PartKey returns the key of one part of a kind. Sums of them identify multisets of parts.
func PartKey(kind int) uint64 { return splitmix(uint64(kind)) }

func keyOf(p setcover.Pattern) uint64 {
	var parts uint64
	for _, c := range p.Counts {
		parts += uint64(c.Times) * PartKey(c.Kind)
	}
	return Key(p.Stock, parts)
}

// splitmix is one step of splitmix64: Steele, Lea and Flood, OOPSLA 2014; from memory.
func splitmix(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
