package knapsack

import "sawbill/nest/internal/instance"

// none stands for no rectangle.
const none = -1

// rect is a rectangle that is cut into items: one, or two rectangles beside
// each other.
type rect struct {
	has           counts
	value         int64
	l, w          int64
	restL, restW  int64 // what it leaves of the stock, as far as that matters
	first, second int32 // rectangles; an item and none
	next          int32 // with the same counts
	cuts
	turned bool // as an item
	dead   bool // another with the same counts leaves as much room
}

// rects keeps, for all counts met, the rectangles of which none leaves as much
// room as another in both directions. One can take the other's place in every
// pattern.
type rects struct {
	at    []rect
	heads []int32 // hash table, open addressing: the first with some counts
	used  int
	rules Rules
}

func (t *rects) clear(rules Rules) {
	t.rules = rules
	t.at = t.at[:0]
	t.used = 0
	if len(t.heads) == 0 {
		t.heads = make([]int32, 1<<10)
	}
	for i := range t.heads {
		t.heads[i] = none
	}
}

// add keeps r unless another makes it needless.
func (t *rects) add(r rect) (id int32, kept bool) {
	head := t.slot(&r.has)
	if *head == none {
		t.used++
	}
	for i := *head; i != none; i = t.at[i].next {
		if t.replaces(&t.at[i], &r) {
			return none, false
		}
	}
	id = int32(len(t.at))
	r.next = none
	last := head
	for i := *head; i != none; i = t.at[i].next {
		if o := &t.at[i]; t.replaces(&r, o) {
			o.dead = true
			*last = o.next
		} else {
			last = &o.next
		}
	}
	*last = id
	t.at = append(t.at, r)
	if t.used > len(t.heads)/2 {
		t.grow()
	}
	return id, true
}

// replaces reports whether r can take the place of o, which holds the same.
func (t *rects) replaces(r, o *rect) bool {
	if r.restL < o.restL || r.restW < o.restW {
		return false
	}
	if t.rules.none() {
		return true
	}
	return (t.rules.Stages >= instance.NoLimit || r.noDeeper(&o.cuts)) &&
		(o.dir != t.rules.First || t.rules.beginsWith(&r.cuts, r.restL, r.restW))
}

// slot is where the chain of rectangles with such counts begins.
func (t *rects) slot(has *counts) *int32 {
	mask := len(t.heads) - 1
	for i := has.hash() & uint64(mask); ; i = (i + 1) & uint64(mask) {
		if h := t.heads[i]; h == none || t.at[h].has == *has {
			return &t.heads[i]
		}
	}
}

func (t *rects) grow() {
	old := t.heads
	t.heads = make([]int32, 4*len(old))
	for i := range t.heads {
		t.heads[i] = none
	}
	for _, h := range old {
		if h != none {
			*t.slot(&t.at[h].has) = h
		}
	}
}

func (c *counts) hash() uint64 {
	const odd = 0x9e3779b97f4a7c15
	h := (c[0]*odd ^ c[1]) * odd
	return h ^ h>>29
}
