package recut

import (
	"fmt"
	"slices"

	"sawbill/nest/cutplan"
	"sawbill/stock"
)

// leftover is waste or an offcut in a piece that goes on as planned. It may give a missing
// blank, and nothing else of the piece changes.
type leftover struct {
	piece int
	path  []int // from the root, by child
	stock stock.Stock
}

// leftovers lists the leftovers with room for at least one wanted blank. It is empty if
// the saw limits the levels of cuts, since a leftover would need more of them.
func (r *rest) leftovers(replanned map[int]bool, wanted []int) []leftover {
	var all []leftover
	if r.job.Saw.Stages > 0 {
		return nil
	}
	for i, p := range r.pieces {
		if replanned[i] {
			continue
		}
		find := func(n, parent cutplan.Node, path []int) {
			if parent.Cut == cutplan.Rip && n.Width < r.job.Saw.NarrowestRip {
				return
			}
			s := p.Stock
			s.Name, s.Length, s.Width = fmt.Sprint("leftover ", len(all)), n.Length, n.Width
			s.Trim, s.Sawn, s.Section = 0, stock.Trims{}, stock.Section{}
			s.Next = stock.NextRip
			if parent.Cut == cutplan.Rip {
				s.Next = stock.NextCrosscut
			}
			for b, n := range wanted {
				if n > 0 && s.Serves(r.bill[b].Blank) && s.HasRoom(r.bill[b].Blank) {
					all = append(all, leftover{i, slices.Clone(path), s})
					return
				}
			}
		}
		eachLeftover(p.Root, nil, find)
	}
	return all
}

func eachLeftover(n cutplan.Node, path []int, do func(n, parent cutplan.Node, path []int)) {
	for i, c := range n.Children {
		at := append(path, i)
		switch c.Use {
		case cutplan.Split:
			eachLeftover(c, at, do)
		case cutplan.Offcut, cutplan.Waste:
			do(c, n, at)
		}
	}
}

// grafted returns n with the node at a path replaced.
func grafted(n cutplan.Node, path []int, by cutplan.Node) cutplan.Node {
	if len(path) == 0 {
		return by.Moved(n.X-by.X, n.Y-by.Y)
	}
	n.Children = slices.Clone(n.Children)
	n.Children[path[0]] = grafted(n.Children[path[0]], path[1:], by)
	return n
}
