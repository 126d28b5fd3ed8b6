package nest

// Cover says where a replacement for a blank could come from if one is spoiled.
type Cover int

const (
	// Uncovered: from new stock only.
	Uncovered Cover = iota
	// FromOffcut: from an offcut of the plan.
	FromOffcut
	// FromStock: from no offcut, but from a whole piece on hand that the plan does not cut.
	FromStock
)

// CoverOf returns the cover of each blank of p once plan is carried out, if nothing else is
// spoiled. Replacements obey the rules of the stock that they come from. An offcut counts as
// a piece of its stock, with stages and first cut counted anew.
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

// unusedStock lists the stock on hand that plan leaves at least one piece of.
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

// coverFrom records the blanks that fit the offcuts below n.
func (p *Problem) coverFrom(cover []Cover, stock int, n Node) {
	if n.Use == Offcut {
		p.cover(cover, stock, Size{n.Length, n.Width}, FromOffcut)
	}
	for _, c := range n.Children {
		p.coverFrom(cover, stock, c)
	}
}

// cover records the blanks that fit a piece of stock.
func (p *Problem) cover(cover []Cover, stock int, piece Size, where Cover) {
	for i, b := range p.Blanks {
		for _, f := range b.From {
			if f.Stock == stock && p.orientations(b, f, piece) != 0 {
				cover[i] = where
			}
		}
	}
}
