package knapsack

import "math/bits"

// counts holds how often a rectangle has each item, in packed fields.
type counts [2]uint64

// packing defines the fields. An item that may be cut once has one bit. Another one has a field
// and a guard bit above it. With slack added, a sum that exceeds the item's count reaches the
// guard bit.
type packing struct {
	fields []field
	once   counts // the fields of one bit
	guard  counts // the bits above the other fields
	slack  counts
}

type field struct {
	word  int
	shift uint
	mask  uint64
}

func newPacking(items []Item) (f packing, ok bool) {
	var used [2]uint
	for _, it := range items {
		n := uint(bits.Len(uint(it.Count)))
		room := n
		if n > 1 {
			room++
		}
		word := 0
		if used[0]+room > 64 {
			word = 1
		}
		if used[word]+room > 64 {
			return packing{}, false
		}
		fd := field{word, used[word], 1<<n - 1}
		used[word] += room
		f.fields = append(f.fields, fd)
		switch {
		case n == 1:
			f.once[word] |= 1 << fd.shift
		case n > 1:
			f.guard[word] |= 1 << (fd.shift + n)
			f.slack[word] |= (fd.mask - uint64(it.Count)) << fd.shift
		}
	}
	return f, true
}

func (f *packing) one(item int) (c counts) {
	fd := f.fields[item]
	c[fd.word] = 1 << fd.shift
	return c
}

func (f field) of(c *counts) int64 { return int64(c[f.word&1] >> (f.shift & 63) & f.mask) }

// sum adds counts; not ok if it exceeds the count of an item.
func (f *packing) sum(a, b counts) (sum counts, ok bool) {
	if a[0]&b[0]&f.once[0]|a[1]&b[1]&f.once[1] != 0 {
		return counts{}, false
	}
	sum = counts{a[0] + b[0], a[1] + b[1]}
	return sum, (sum[0]+f.slack[0])&f.guard[0]|(sum[1]+f.slack[1])&f.guard[1] == 0
}
