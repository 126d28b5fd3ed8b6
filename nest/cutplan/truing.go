package cutplan

import (
	"cmp"
	"slices"

	"sawbill/stock"
)

// Truing is one setting of the fence or the jointer that trues edges of blanks ripped
// over-wide.
type Truing struct {
	Edge    int          // 1: the first edge of each; 2: the other, the piece turned
	Setting stock.Length // the width that is left
	Off     stock.Length // what the edge loses
	Blanks  []TruedBlank
}

// TruedBlank is a line of the bill with the number of its blanks that are cut.
type TruedBlank struct{ Blank, Count int }

// Truings gathers all edges to true: first edges from the widest setting down, then second
// edges.
func (p *Plan) Truings() []Truing {
	count := make([]int, len(p.Bill))
	thickness := make([]stock.Length, len(p.Bill))
	for _, l := range p.Layouts {
		for _, n := range l.Leaves() {
			if n.Use == Part {
				count[n.Blank] += l.Repeat
				thickness[n.Blank] = l.Stock.Thickness
			}
		}
	}
	var all []Truing
	for i, b := range p.Bill {
		if count[i] == 0 {
			continue
		}
		edge := 0
		for _, m := range b.Milling(thickness[i]) { // edges are the same whatever the thickness
			if m.Operation != stock.TrueEdge {
				continue
			}
			edge++
			at := slices.IndexFunc(all, func(t Truing) bool {
				return t.Edge == edge && t.Setting == m.Setting && t.Off == m.Off
			})
			if at < 0 {
				at = len(all)
				all = append(all, Truing{Edge: edge, Setting: m.Setting, Off: m.Off})
			}
			all[at].Blanks = append(all[at].Blanks, TruedBlank{i, count[i]})
		}
	}
	slices.SortStableFunc(all, func(a, b Truing) int {
		return cmp.Or(cmp.Compare(a.Edge, b.Edge), cmp.Compare(b.Setting, a.Setting))
	})
	return all
}
