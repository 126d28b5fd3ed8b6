package knapsack

import (
	"sawbill/nest/internal/halt"
	"sawbill/nest/internal/instance"
)

// none is the index of no rectangle.
const none = -1

// rect is a rectangle that is cut into items: one item, or two rectangles side by side. Its 64
// bytes are one cache line, which dominates the time to compare rectangles with equal counts.
type rect struct {
	has           counts
	value         int64
	l, w          int64
	first, second int32 // rectangles; or an item and none
	next          int32 // with equal counts
	cuts
	turned    bool // item
	dominated bool // another with equal counts leaves as much room
}

// rects keeps the rectangles that no other with equal counts dominates. A dominating one can
// replace the other in every pattern.
type rects struct {
	chunks   []*chunk
	n        int    // rectangles
	heads    []head // hash table, open addressing
	used     int
	rules    Rules
	l, w     int64 // of the stock
	bounds   *bounds
	compared int64 // rectangles with equal counts
	halt     halt.Signal
}

// chunk holds rectangles in the order in which they came. Nothing is copied as they become more.
type chunk [chunkSize]rect

const (
	chunkBits = 11 // 128 KiB
	chunkSize = 1 << chunkBits
)

// at returns rectangle id.
func (t *rects) at(id int32) *rect { return &t.chunks[id>>chunkBits][id&(chunkSize-1)] }

// head begins the chain of rectangles with equal counts.
type head struct {
	tag  uint32 // other bits of the counts' hash than the place
	rect int32
}

func (t *rects) clear() {
	t.n = 0
	t.used = 0
	if len(t.heads) == 0 {
		t.heads = make([]head, 1<<10)
	}
	for i := range t.heads {
		t.heads[i].rect = none
	}
}

// growAsks is how many places grow moves before it asks whether to stop.
const growAsks = 1 << 12

// add keeps r unless another dominates it.
func (t *rects) add(r rect) (id int32, kept bool) {
	first := t.slot(&r.has)
	if *first == none {
		t.used++
	}
	for i := *first; i != none; i = t.at(i).next {
		t.compared++
		if t.dominates(t.at(i), &r) {
			return none, false
		}
	}
	id = int32(t.n)
	r.next = none
	last := first
	for i := *first; i != none; i = t.at(i).next {
		if o := t.at(i); t.dominates(&r, o) {
			o.dominated = true
			*last = o.next
		} else {
			last = &o.next
		}
	}
	*last = id
	if t.n == len(t.chunks)*chunkSize {
		t.chunks = append(t.chunks, new(chunk))
	}
	t.n++
	*t.at(id) = r
	if t.used > len(t.heads)/2 {
		t.grow()
	}
	return id, true
}

// dominates reports whether r can replace o, which has equal counts.
func (t *rects) dominates(r, o *rect) bool {
	smaller := r.l <= o.l && r.w <= o.w
	if t.rules.none() {
		return smaller || t.leavesAsMuch(r, o)
	}
	// A rest up to the edge may need one cut more than a rest between items. So only a smaller
	// rectangle dominates here.
	return smaller && (t.rules.Stages >= instance.NoLimit || r.noDeeper(&o.cuts)) &&
		(o.dir != t.rules.FirstCut || t.rules.beginsWith(&r.cuts, t.l-r.l, t.w-r.w))
}

// leavesAsMuch reports whether r leaves as much room as o.
func (t *rects) leavesAsMuch(r, o *rect) bool {
	rL, rW := t.bounds.usableRest(r.l, r.w)
	oL, oW := t.bounds.usableRest(o.l, o.w)
	return rL >= oL && rW >= oW
}

// slot returns the head of the chain for counts.
func (t *rects) slot(has *counts) *int32 {
	hash := has.hash()
	mask := uint64(len(t.heads) - 1)
	for i := hash & mask; ; i = (i + 1) & mask {
		h := &t.heads[i]
		if h.rect == none {
			h.tag = uint32(hash >> 32)
			return &h.rect
		}
		if h.tag == uint32(hash>>32) && t.at(h.rect).has == *has {
			return &h.rect
		}
	}
}

// grow doubles the hash table. At halt it keeps the old one, in which little more follows.
func (t *rects) grow() {
	old := t.heads
	t.heads = make([]head, 2*len(old))
	for i := range t.heads {
		t.heads[i].rect = none
	}
	for n, h := range old {
		if n%growAsks == 0 && t.halt.On() {
			t.heads = old
			return
		}
		if h.rect != none {
			*t.slot(&t.at(h.rect).has) = h.rect
		}
	}
}

func (c *counts) hash() uint64 {
	const odd = 0x9e3779b97f4a7c15
	h := (c[0]*odd ^ c[1]) * odd
	return h ^ h>>29
}
