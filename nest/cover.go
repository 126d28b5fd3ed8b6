package nest

// Cover is what a plan leaves for one blank that is spoiled.
type Cover int

const (
	// Uncovered: a replacement takes another trip.
	Uncovered Cover = iota
	// FromOffcut: an offcut of the plan holds a replacement.
	FromOffcut
	// FromStock: no offcut does, but a whole piece on hand that the plan does
	// not cut.
	FromStock
)

// CoverOf says, for each blank of p, where one replacement could be cut from
// once plan has been carried out: under the rules of the stock that it then
// comes from, as if nothing else were spoiled. It is computed from p and plan
// alone.
func CoverOf(p Problem, plan Plan) []Cover {
	cover := make([]Cover, len(p.Blanks))
	for _, s := range p.unusedStock(plan) {
		p.cover(cover, s, p.Stock[s].Usable(), FromStock)
	}
	for _, l := range plan.Layouts {
		p.coverFrom(cover, l.Stock, l.Root)
	}
	return cover
}

// unusedStock lists the stock on hand of which plan leaves a piece whole.
func (p *Problem) unusedStock(plan Plan) (spare []int) {
	used := make([]int, len(p.Stock))
	for _, l := range plan.Layouts {
		used[l.Stock] += l.Repeat
	}
	for i, s := range p.Stock {
		if s.OnHand && (s.Count == 0 || used[i] < s.Count) {
			spare = append(spare, i)
		}
	}
	return spare
}

// coverFrom notes what the offcuts below n hold.
func (p *Problem) coverFrom(cover []Cover, stock int, n Node) {
	if n.Use == Offcut {
		p.cover(cover, stock, Size{n.Length, n.Width}, FromOffcut)
	}
	for _, c := range n.Children {
		p.coverFrom(cover, stock, c)
	}
}

// cover notes which blanks a piece of stock holds.
func (p *Problem) cover(cover []Cover, stock int, piece Size, where Cover) {
	for i, b := range p.Blanks {
		for _, f := range b.From {
			if f.Stock == stock && p.orientations(b, f, piece) != 0 {
				cover[i] = where
			}
		}
	}
}
