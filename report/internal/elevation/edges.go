package elevation

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// edge is a stretch of a level or upright line: at its height, or its distance
// from the left, between two ends.
type edge struct {
	upright  bool
	at       stock.Length
	from, to stock.Length
}

// edges sorts the edges of a picture into those that are seen and those that are
// hidden, each stretch once. Of the drawers, what is hidden is left out: their
// boxes would fill the picture.
func (p picture) edges() (seen, hidden []edge) {
	for i, s := range p.shapes {
		for _, e := range s.edges() {
			open, covered := p.split(i, e)
			seen = append(seen, open...)
			if s.Drawer == 0 {
				hidden = append(hidden, covered...)
			}
		}
	}
	seen = joined(seen)
	return seen, without(joined(hidden), seen)
}

func (a area) edges() []edge {
	return []edge{{true, a.x1, a.y1, a.y2}, {true, a.x2, a.y1, a.y2}, {false, a.y1, a.x1, a.x2}, {false, a.y2, a.x1, a.x2}}
}

// covers is the stretch of e that lies within a, not on its outline.
func (a area) covers(e edge) (from, to stock.Length, ok bool) {
	low, high, begin, end := a.y1, a.y2, a.x1, a.x2
	if e.upright {
		low, high, begin, end = a.x1, a.x2, a.y1, a.y2
	}
	from, to = max(e.from, begin), min(e.to, end)
	return from, to, low < e.at && e.at < high && from < to
}

// split parts an edge of shape i into what is seen and what is hidden. What a
// joint takes away of the shape is neither.
func (p picture) split(i int, e edge) (open, covered []edge) {
	open = []edge{e}
	for _, over := range p.shapes[i+1:] {
		from, to, ok := over.covers(e)
		if !ok {
			continue
		}
		taken := edge{e.upright, e.at, from, to}
		covered = without(covered, []edge{taken})
		if !letInto(over.Solid, p.shapes[i].Solid) {
			covered = append(covered, taken)
		}
		open = without(open, []edge{taken})
	}
	return open, covered
}

// joined sorts edges and makes one of those that meet or lie over each other.
func joined(edges []edge) []edge {
	slices.SortFunc(edges, func(a, b edge) int {
		switch {
		case a.upright && !b.upright:
			return -1
		case b.upright && !a.upright:
			return 1
		}
		return cmp.Or(cmp.Compare(a.at, b.at), cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to))
	})
	var all []edge
	for _, e := range edges {
		if n := len(all); n > 0 && all[n-1].upright == e.upright && all[n-1].at == e.at && e.from <= all[n-1].to {
			all[n-1].to = max(all[n-1].to, e.to)
			continue
		}
		all = append(all, e)
	}
	return all
}

// without is what of edges lies on none of the others.
func without(edges, others []edge) []edge {
	for _, o := range others {
		var left []edge
		for _, e := range edges {
			if e.upright != o.upright || e.at != o.at || o.to <= e.from || e.to <= o.from {
				left = append(left, e)
				continue
			}
			if e.from < o.from {
				left = append(left, edge{e.upright, e.at, e.from, o.from})
			}
			if o.to < e.to {
				left = append(left, edge{e.upright, e.at, o.to, e.to})
			}
		}
		edges = left
	}
	return edges
}
