package setcover

import "bytes"

// nogoods is a hash set of residual problems without a solution. It is limited in size;
// problems beyond are searched again.
type nogoods struct {
	width int // numbers in a problem
	keys  []byte
	table []int32 // open addressing: index plus one; 0 is free
	used  int
	key   []byte // scratch
}

// maxNogoods limits the keys, in bytes.
const maxNogoods = 32 << 20

func newNogoods(width int) nogoods { return nogoods{width: width, table: make([]int32, 1<<8)} }

func (m *nogoods) has(demand, pieces []int) bool {
	m.encode(demand, pieces)
	return *m.slot(m.key) != 0
}

func (m *nogoods) add(demand, pieces []int) {
	m.encode(demand, pieces)
	if len(m.keys)+len(m.key) > maxNogoods {
		return
	}
	slot := m.slot(m.key)
	if *slot != 0 {
		return
	}
	m.keys = append(m.keys, m.key...)
	m.used++
	*slot = int32(m.used)
	if 2*m.used > len(m.table) {
		m.table = make([]int32, 2*len(m.table))
		for n := range m.used {
			*m.slot(m.keys[n*m.size():][:m.size()]) = int32(n + 1)
		}
	}
}

// size returns the length of a key: two bytes for each number.
func (m *nogoods) size() int { return 2 * m.width }

func (m *nogoods) encode(demand, pieces []int) {
	m.key = m.key[:0]
	for _, n := range demand {
		m.key = append(m.key, byte(n), byte(n>>8))
	}
	for _, n := range pieces {
		m.key = append(m.key, byte(n), byte(n>>8))
	}
}

// slot returns the place of a key in the table.
func (m *nogoods) slot(key []byte) *int32 {
	hash := uint64(14695981039346656037) // FNV-1a
	for _, b := range key {
		hash = (hash ^ uint64(b)) * 1099511628211
	}
	mask := uint64(len(m.table) - 1)
	for i := (hash ^ hash>>32) & mask; ; i = (i + 1) & mask {
		n := m.table[i]
		if n == 0 || bytes.Equal(m.keys[int(n-1)*m.size():][:m.size()], key) {
			return &m.table[i]
		}
	}
}
