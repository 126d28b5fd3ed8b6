package harvest

// Key stands for a pattern: a stock and the sum of its parts' keys.
func Key(stock int, parts uint64) uint64 { return scatter(parts ^ scatter(uint64(stock))) }

// PartKey of a part of some kind: sums of them tell which parts there are.
func PartKey(kind int) uint64 { return scatter(uint64(kind)) }

// scatter is one step of splitmix64 (Steele, Lea and Flood, OOPSLA 2014; from
// memory).
func scatter(x uint64) uint64 {
	x += 0x9e3779b97f4a7c15
	x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
	x = (x ^ x>>27) * 0x94d049bb133111eb
	return x ^ x>>31
}
