package lowerbound

// node is a partial choice: the first stocks of the order have their counts.
type node struct {
	fixed  int
	counts []int
	cost   int64
	lower  int64 // bound on the cost of every completion
}

// queue orders nodes by their lower bound. Among equals the one with more counts fixed comes
// first, so that a complete choice is found soon.
type queue []node

func (q queue) Len() int { return len(q) }
func (q queue) Less(i, j int) bool {
	if q[i].lower != q[j].lower {
		return q[i].lower < q[j].lower
	}
	return q[i].fixed > q[j].fixed
}
func (q queue) Swap(i, j int) { q[i], q[j] = q[j], q[i] }
func (q *queue) Push(x any)   { *q = append(*q, x.(node)) }
func (q *queue) Pop() any {
	old := *q
	n := old[len(old)-1]
	*q = old[:len(old)-1]
	return n
}
