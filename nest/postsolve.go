package nest

import (
	"slices"

	"sawbill/nest/internal/instance"
)

// postsolve turns an instance's plan into layouts of the problem, and lists the blanks that are
// missing.
func (d *subproblem) postsolve(p *instance.Plan) (layouts []Layout, unplaced []Unplaced) {
	left := make([][]int, len(d.kinds)) // per kind: how many of each item are not yet assigned
	for k, items := range d.kinds {
		for _, i := range items {
			left[k] = append(left[k], d.items[i].Count)
		}
	}
	sorted := slices.Clone(p.Layouts)
	slices.SortStableFunc(sorted, func(a, b instance.Layout) int {
		if a.Stock != b.Stock {
			return a.Stock - b.Stock
		}
		return instance.ComparePieces(a.Root, b.Root)
	})
	for _, lay := range sorted {
		l := Layout{Stock: d.stock[lay.Stock], Repeat: 1, Root: d.postsolveNode(d.arranged(lay), left)}
		if st := d.problem.Stock[l.Stock]; len(st.Defects) > 0 {
			st.wasteDefects(&l.Root, st.TrimLength, st.TrimWidth, d.problem.Kerf)
		}
		if n := len(layouts); n > 0 && layouts[n-1].Stock == l.Stock && equal(layouts[n-1].Root, l.Root) {
			layouts[n-1].Repeat++
			continue
		}
		layouts = append(layouts, l)
	}
	for k, counts := range left {
		for i, n := range counts {
			if n > 0 {
				unplaced = d.problem.leaveOut(unplaced, d.items[d.kinds[k][i]], n, StockUsedUp)
			}
		}
	}
	return layouts, unplaced
}

// arranged returns a layout in an order in which no part holds a defect. The search keeps no plan
// that has none.
func (d *subproblem) arranged(lay instance.Layout) instance.Piece {
	root, ok := d.in.Arrange(lay.Stock, lay.Root)
	if !ok {
		panic("nest: a layout has a part in a defect")
	}
	return root
}

// wasteDefects makes waste of the offcuts of node n, at x, y, that hold a defect.
func (s *Stock) wasteDefects(n *Node, x, y, kerf int64) {
	if n.Use == Offcut && s.hasDefect(x, y, n.Length, n.Width) {
		n.Use = Waste
	}
	for i := range n.Children {
		c := &n.Children[i]
		s.wasteDefects(c, x, y, kerf)
		if n.Cut == Rip {
			y += c.Width + kerf
		} else {
			x += c.Length + kerf
		}
	}
}

// hasDefect reports whether a rectangle holds some of a defect.
func (s *Stock) hasDefect(x, y, length, width int64) bool {
	for _, d := range s.Defects {
		if x < d.X+d.Length && d.X < x+length && y < d.Y+d.Width && d.Y < y+width {
			return true
		}
	}
	return false
}

// postsolveNode takes the kerf off again: a piece of the instance is one kerf larger each way
// than the piece that the saw delivers.
func (d *subproblem) postsolveNode(p instance.Piece, left [][]int) Node {
	kerf := d.problem.Kerf
	n := Node{Length: p.L*d.unit - kerf, Width: p.W*d.unit - kerf}
	switch {
	case len(p.Children) > 0:
		n.Use, n.Cut = Split, Rip
		if p.Dir == instance.Crosscut {
			n.Cut = Crosscut
		}
		for _, c := range p.Children {
			if c.Kind == instance.Leftover && len(c.Children) == 0 && min(c.L, c.W)*d.unit <= kerf {
				continue // the blade ran off the edge
			}
			if child := d.postsolveNode(c, left); child.Use == Split && child.Cut == n.Cut {
				n.Children = append(n.Children, child.Children...) // a run needs no cuts of its own level
			} else {
				n.Children = append(n.Children, child)
			}
		}
	case p.Kind == instance.Leftover:
		n.Use = Waste
		if k := d.problem.Keep; n.Length >= k.Length && n.Width >= k.Width {
			n.Use = Offcut
		}
	default:
		n.Use, n.Turned = Part, p.Turned
		counts := left[p.Kind]
		i := slices.IndexFunc(counts, func(c int) bool { return c > 0 })
		counts[i]--
		it := d.items[d.kinds[p.Kind][i]]
		if it.group >= 0 {
			return d.problem.run(n, it.group)
		}
		n.Blank = it.blank
	}
	return n
}

func equal(a, b Node) bool {
	return a.Length == b.Length && a.Width == b.Width && a.Use == b.Use && a.Cut == b.Cut &&
		a.Blank == b.Blank && a.Turned == b.Turned && slices.EqualFunc(a.Children, b.Children, equal)
}
