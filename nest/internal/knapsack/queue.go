package knapsack

// entry is an open rectangle.
type entry struct {
	bound int64 // on patterns around it
	rect  int32
}

func (e entry) before(o entry) bool {
	return e.bound > o.bound || e.bound == o.bound && e.rect < o.rect
}

// queue is a heap with the greatest bound on top; among equals, the oldest.
type queue []entry

func (q *queue) push(e entry) {
	h := append(*q, e)
	*q = h
	i := len(h) - 1
	for i > 0 {
		up := (i - 1) / 2
		if !e.before(h[up]) {
			break
		}
		h[i] = h[up]
		i = up
	}
	h[i] = e
}

func (q *queue) pop() int32 {
	h := *q
	top := h[0].rect
	n := len(h) - 1
	e := h[n]
	h = h[:n]
	*q = h
	if n == 0 {
		return top
	}
	i := 0
	for {
		down := 2*i + 1
		if down >= n {
			break
		}
		if down+1 < n && h[down+1].before(h[down]) {
			down++
		}
		if !h[down].before(e) {
			break
		}
		h[i] = h[down]
		i = down
	}
	h[i] = e
	return top
}
