package knapsack

import (
	"slices"
	"sort"
)

// closed is a rectangle that was combined with all rectangles closed before it.
type closed struct {
	has   counts
	value int64
	rect  int32
	cuts
}

// group holds closed rectangles of one size, the most valuable first.
type group struct {
	l, w         int64
	restL, restW int32 // points
	closed       []closed
}

func (g *group) add(c closed) {
	g.closed = append(g.closed, c)
	i := len(g.closed) - 1
	for ; i > 0 && g.closed[i-1].value < c.value; i-- {
		g.closed[i] = g.closed[i-1]
	}
	g.closed[i] = c
}

// groups finds the group of a size.
type groups struct {
	at    []group
	known map[[2]int64]int32
}

func (s *groups) clear() {
	clear(s.known)
	s.at = s.at[:0]
}

// of returns the group of a size, and whether it is new.
func (s *groups) of(l, w int64) (n int32, fresh bool) {
	n, ok := s.known[[2]int64{l, w}]
	if ok {
		return n, false
	}
	n = int32(len(s.at))
	if len(s.at) < cap(s.at) { // reuse the memory of an earlier search
		s.at = s.at[:n+1]
		s.at[n] = group{l: l, w: w, closed: s.at[n].closed[:0]}
	} else {
		s.at = append(s.at, group{l: l, w: w})
	}
	if s.known == nil {
		s.known = map[[2]int64]int32{}
	}
	s.known[[2]int64{l, w}] = n
	return n, true
}

// shelf holds the groups with one equal side.
type shelf struct {
	size   int64
	best   int64 // greatest value
	groups []int32
}

// shelves are in ascending order of size.
type shelves []shelf

// add adds a rectangle of a group.
func (s *shelves) add(size, value int64, group int32, fresh bool) {
	all := *s
	i := sort.Search(len(all), func(i int) bool { return all[i].size >= size })
	if i == len(all) || all[i].size != size {
		all = slices.Insert(all, i, shelf{size: size})
		*s = all
	}
	sh := &all[i]
	sh.best = max(sh.best, value)
	if fresh {
		sh.groups = append(sh.groups, group)
	}
}
